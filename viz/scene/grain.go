package scene

import (
	"image/color"
	"math"

	"archload/mesh"
)

// Sizes of the grain as drawn.
const (
	grainApart = 3.4 // mm from line to line in the mean: a few yearly rings each
	grainStep  = 7.0 // mm along a line
)

// grain draws the late wood on both faces of the plate where no field is shown: fine
// lines along the grain, wider and narrower apart, and the joint in the middle.
func (b *build) grain() {
	if b.in.Field != Wood {
		return
	}
	lo, hi := b.k.lo, b.k.hi
	long := math.Hypot(hi[0]-lo[0], hi[1]-lo[1])
	mid := mesh.Point{0, (lo[1] + hi[1]) / 2}
	sin, cos := math.Sincos(float64(b.s.Top.Built.Case.Plate.GrainAngle) * math.Pi / 180)
	for k, x := 0, 0.0; x < long/2; k++ {
		for _, side := range [2]float64{1, -1} { // both halves of one billet, opened like a book
			dark := 34 + 30*math.Abs(math.Sin(2.3*float64(k)))
			if k == 0 {
				dark = 110
			}
			b.grainLine(mesh.Point{mid[0] + side*x*cos, mid[1] + side*x*sin}, mesh.Point{-sin, cos}, long/2, uint8(dark))
		}
		x += grainApart * (1 + 0.35*math.Sin(1.7*float64(k))) * (1 - 0.4*x/long)
	}
}

// grainLine draws one line through a place along a direction, to both sides, as far
// as there is wood.
func (b *build) grainLine(at, way mesh.Point, reach float64, dark uint8) {
	paint := color.NRGBA{120, 78, 40, dark}
	var above, below []vec
	flush := func() {
		for _, l := range [2][]vec{above, below} {
			if len(l) > 1 {
				b.line(&Line{Points: l, Width: 0.6, Paint: paint})
			}
		}
		above, below = nil, nil
	}
	for u := -reach; u <= reach; u += grainStep {
		q := mesh.Point{at[0] + u*way[0], at[1] + u*way[1]}
		p, inside := b.s.Top.Built.OnMiddle(q)
		if !inside {
			flush()
			continue
		}
		s := b.k.spot(p)
		above = append(above, b.lifted(s))
		below = append(below, plus(s.on(b.inner), -hover, s.on(b.up)))
	}
	flush()
}
