package scene

import (
	"math"

	"archload/fem/vec3"
)

// postReach is how much of a post is drawn where the sides, whose height it
// has, are not modelled, mm: seen from the tail it stays behind the top.
const postReach = 34.0

// posts adds the props between top and back, whose upper end goes along with
// the top. Dashed lines show them through it, like the bars.
func (b *build) posts() {
	const corners = 16
	for i := range b.s.Top.Built.Case.Posts {
		p := &b.s.Top.Built.Case.Posts[i]
		at, _ := b.s.Top.Built.OnInner(p.At)
		top := b.k.spot(at).on(b.inner)
		foot := vec{p.At[0], p.At[1], -postReach}
		if b.s.Top.Built.Case.Rim.Support == "elastic" {
			foot[2] = -float64(b.s.Top.Built.Case.Rim.SideHeight)
		}
		if on, ok := b.onBack(p.At[0], p.At[1]); ok {
			foot = on
		}
		rings := [][]vec{make([]vec, corners), make([]vec, corners)}
		for k := range corners {
			sin, cos := math.Sincos(2 * math.Pi * float64(k) / corners)
			r := float64(p.Diameter) / 2
			rings[0][k] = plus(foot, 1, vec{r * cos, r * sin, 0})
			rings[1][k] = plus(top, 1, vec{r * cos, r * sin, 0})
		}
		o := lofted(p.Name, rings, braceColor())
		o.rounded(rings)
		b.solid(o)
		for _, side := range [2]vec{{float64(p.Diameter) / 2, 0, 0}, {-float64(p.Diameter) / 2, 0, 0}} {
			b.line(&Line{Points: []vec{vec3.Add(top, side), vec3.Add(foot, side)}, Width: 0.9, Dash: 4, Halo: true, Over: true, Paint: underColor()})
		}
	}
}
