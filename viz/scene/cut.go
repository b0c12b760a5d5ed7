package scene

import (
	"math"

	"archload/mesh"
)

// cut draws on the outside where the plate is cut for a section.
func (b *build) cut() {
	const step = 3.0 // mm
	from, to := b.in.Cut[0], b.in.Cut[1]
	length := math.Hypot(to[0]-from[0], to[1]-from[1])
	var run []vec
	flush := func() {
		if len(run) > 1 {
			b.line(&Line{Points: run, Width: 1.3, Dash: 5, Paint: cutLineColor(), Halo: true})
		}
		run = nil
	}
	for i, n := 0, int(length/step); n > 0 && i <= n; i++ {
		u := float64(i) / float64(n)
		at, inside := b.s.Top.Built.OnOuter(mesh.Point{from[0] + u*(to[0]-from[0]), from[1] + u*(to[1]-from[1])})
		if !inside {
			flush()
			continue
		}
		run = append(run, b.lifted(b.k.spot(at)))
	}
	flush()
}
