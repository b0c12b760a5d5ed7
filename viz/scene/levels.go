package scene

import (
	"math"
	"slices"

	"archload/mesh"
)

// levelWays are the directions in plan, from where the field is greatest, along
// which the lines at the steps of the legend are given their values: unit
// vectors, treble and neck positive.
func levelWays() [2]mesh.Point { return [2]mesh.Point{{-0.35, -0.94}, {0.35, 0.94}} }

// levels writes the values of the lines at the legend's steps, where they cross
// two straight ways over the plate.
func (b *build) levels() {
	s := b.scene.Scale
	if b.values == nil || s == nil || s.Step == 0 || b.scene.Plain || b.in.Difference && b.told() {
		return
	}
	const step = 2.0 // mm
	from := b.greatest()
	lo, hi := b.k.lo, b.k.hi
	long := math.Hypot(hi[0]-lo[0], hi[1]-lo[1])
	for _, way := range levelWays() {
		last := math.NaN()
		for u := step; u < long; u += step {
			q := mesh.Point{from[0] + u*way[0], from[1] + u*way[1]}
			at, inside := b.s.Top.Built.WithinOuter(q)
			if !inside {
				last = math.NaN()
				continue
			}
			p := b.k.spot(at)
			v := (p.value(b.values) - s.Lo) / s.Step
			if k := math.Round((v + last) / 2); (v-k)*(last-k) < 0 && k > 0 && k < float64(s.Bands()) {
				b.label(Label{Text: s.Label(int(k)), At: b.lifted(p), Kind: Level, Toward: p.on(b.up)})
			}
			last = v
		}
	}
}

// told tells whether a pin has words of its own: of a difference they say more than signed values.
func (b *build) told() bool {
	return slices.ContainsFunc(b.in.Pins, func(p Pin) bool { return p.Text != "" })
}

// greatest is where the field is farthest from zero, in plan, mm.
func (b *build) greatest() mesh.Point {
	best, most := 0, -1.0
	for i, v := range b.values {
		if a := math.Abs(v); a > most {
			best, most = i, a
		}
	}
	return b.k.mesh.Points[best]
}
