package shape

import (
	"math"

	"archload/mesh"
	"archload/mesh/plane"
)

// Block is a block of wood behind a stretch of the edge, at the neck or the tail.
type Block struct {
	Name   string        // "neck" or "tail"
	Toward float64       // 1 toward the neck, -1 toward the tail
	Half   float64       // of its width, mm
	Depth  float64       // how far it reaches inward from the outermost place of the edge, mm; 0: it holds the edge alone
	Ends   [2]mesh.Point // where the outline leaves it on the bass and the treble side, mm
	Edge   mesh.Point    // the outline on the centre line, mm
	inner  float64       // y of its inner face, mm
}

// onBlock is how far beyond its measures a block still holds a node, mm.
const onBlock = 1e-3

// HoldsEdge says whether a place of the outline lies before the block, mm.
func (k *Block) HoldsEdge(p mesh.Point) bool {
	least := min(k.Toward*k.Ends[0][1], k.Toward*k.Ends[1][1])
	return math.Abs(p[0]) <= k.Half+onBlock && k.Toward*p[1] >= least-onBlock
}

// Holds says whether a place inside the outline is glued to the block, mm.
func (k *Block) Holds(p mesh.Point) bool {
	return k.Depth > 0 && math.Abs(p[0]) <= k.Half+onBlock && k.Toward*(p[1]-k.inner) >= -onBlock
}

// lines are chains of edges that the mesh keeps so that nodes stand where the block
// ends: about its glue face, or short ones inward from its two ends.
func (k *Block) lines() [][]mesh.Point {
	if k.Depth > 0 {
		return [][]mesh.Point{{k.Ends[0], {-k.Half, k.inner}, {k.Half, k.inner}, k.Ends[1]}}
	}
	const inward = 15 // mm
	return [][]mesh.Point{
		{k.Ends[0], {k.Ends[0][0], k.Ends[0][1] - k.Toward*inward}},
		{k.Ends[1], {k.Ends[1][0], k.Ends[1][1] - k.Toward*inward}},
	}
}

// outermost is the place of the outline at x that lies farthest toward an end, mm.
func outermost(o *plane.Curve, x, toward float64) (p mesh.Point, ok bool) {
	const steps = 4000
	last, step := o.At(0), o.Total()/steps
	for i := 1; i <= steps; i++ {
		u := step * float64(i)
		next := o.At(o.Wrap(u))
		if (last[0] < x) != (next[0] < x) {
			q := crossing(o, x, u-step, u, last[0] < x)
			if !ok || toward*q[1] > toward*p[1] {
				p, ok = q, true
			}
		}
		last = next
	}
	return p, ok
}

// crossing halves the stretch of a curve on which it comes to x, from below or
// from above.
func crossing(o *plane.Curve, x, from, to float64, rising bool) mesh.Point {
	for range 60 {
		mid := (from + to) / 2
		if (o.At(o.Wrap(mid))[0] < x) == rising {
			from = mid
		} else {
			to = mid
		}
	}
	p := o.At(o.Wrap((from + to) / 2))
	return mesh.Point{x, p[1]}
}
