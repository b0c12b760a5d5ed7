package body

import (
	"cmp"
	"slices"

	"archload/cases/design"
	"archload/mesh"
	"archload/mesh/plane"
)

// arc is the stretch of outline of one side, measured from the neck block's end to the tail block's.
type arc struct {
	outline *plane.Curve
	from    float64 // the outline's parameter where it begins, mm
	forward float64 // 1 where the outline runs with it, anticlockwise, as on the bass side; -1
	long    float64 // mm
}

// newArc is that of the bass side (0) or the treble side (1).
func newArc(b *design.Built, end int) arc {
	neck, tail := b.Geometry.Blocks[0].Ends[end], b.Geometry.Blocks[1].Ends[end]
	a := arc{outline: b.Geometry.Outline, forward: 1 - 2*float64(end)}
	a.from, _, _ = a.outline.Nearest(neck)
	a.long = a.along(tail)
	return a
}

// along is how far along a place lies, mm.
func (a arc) along(p mesh.Point) float64 {
	u, _, _ := a.outline.Nearest(p)
	return a.outline.Wrap(a.forward*(u-a.from) + 2*a.outline.Total())
}

// at is the place so far along.
func (a arc) at(s float64) mesh.Point {
	return a.outline.At(a.outline.Wrap(a.from + a.forward*s + 2*a.outline.Total()))
}

// spot is a force at a place along, N and mm.
type spot struct{ at, force float64 }

// spread sums forces over stations of equal length, N: each is even over the outline from half way to its one
// neighbour to half way to the other, as far as the arc's ends.
func (a arc) spread(all []spot, stations int) []float64 {
	slices.SortFunc(all, func(p, q spot) int { return cmp.Compare(p.at, q.at) })
	out, step := make([]float64, stations), a.long/float64(stations)
	for i, p := range all {
		lo, hi := 0.0, a.long
		if i > 0 {
			lo = (all[i-1].at + p.at) / 2
		}
		if i+1 < len(all) {
			hi = (p.at + all[i+1].at) / 2
		}
		for c := range out {
			if inside := min(hi, float64(c+1)*step) - max(lo, float64(c)*step); inside > 0 {
				out[c] += p.force * inside / (hi - lo)
			}
		}
	}
	return out
}
