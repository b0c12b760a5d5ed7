package flow

import (
	"math"

	"archload/mesh"
)

// The stream function chi of a triangle with the flow t is linear, with
// t = (chi,y, -chi,x): the flux through a cut from a to b, to the right of its
// direction, is chi(b) - chi(a). Where a node neither gives nor takes, its
// balance makes chi agree at the middles of all edges about it: a piecewise
// constant field without sources is the curl of a function that is linear in
// each triangle and continuous at the middles of edges (D. N. Arnold, R. S.
// Falk, SIAM Journal on Numerical Analysis 26, 1989, 1276-1290; from memory).
// With a value at the node too, chi closes to a continuous function on
// triangles of half the size. Its level lines cannot break, and the same force
// flows between two neighbours all along.
//
// Corner values are mean value coordinates of the middles about the node (M.
// S. Floater, Computer Aided Geometric Design 20, 2003, 19-27): positive, and
// exact for a uniform flow. At the plate's edge, chi steps by what the rim
// takes, half an edge each side; along a free edge it is constant.

// prepareLines finds the patches of nodes that give or take inside the plate,
// the values at all other corners, and the loops about the patches.
func (f *Flow) prepareLines() {
	p := f.plan
	f.findPatches()
	f.corner = make([][3]float64, len(p.tris))
	for n := range p.node {
		if f.patch[n] == noPatch {
			f.setCorners(int32(n))
		}
	}
	f.findLoops()
}

// setCorners fills the corner values about a node that is no inner source.
func (f *Flow) setCorners(n int32) {
	fan := f.plan.fan[n]
	chi := make([]float64, len(fan)+1) // at the edges' middles, from the first on
	for i, c := range fan {
		chi[i+1] = chi[i] + f.turn(c)
	}
	at := 0.0
	if f.plan.open(n) {
		_, after := f.rimShares(n)
		at = chi[len(fan)] + after
	} else {
		at = f.meanValue(n, chi)
	}
	for i, c := range fan {
		f.corner[c.tri][c.k] = at - chi[i]
	}
}

// turn is the flux out of the corner's node through the piece between the
// middles of its two edges, N.
func (f *Flow) turn(c corner) float64 {
	a, b := f.plan.middle(c.tri, c.k), f.plan.middle(c.tri, (c.k+2)%3)
	return cross2(f.Whole[c.tri], sub2(b, a))
}

// rimShares splits what the rim takes at an edge node, N: the half edge before
// the fan begins, and the one after its end, by length. An edge whose other
// end is free takes nothing if the other edge is held.
func (f *Flow) rimShares(n int32) (before, after float64) {
	fan := f.plan.fan[n]
	first, last := fan[0], fan[len(fan)-1]
	a, b := f.plan.length(first.tri, first.k), f.plan.length(last.tri, (last.k+2)%3)
	holdA := f.held(f.plan.tris[first.tri][(first.k+1)%3])
	holdB := f.held(f.plan.tris[last.tri][(last.k+2)%3])
	switch {
	case holdA && !holdB:
		b = 0
	case holdB && !holdA:
		a = 0
	}
	r := f.Rim[f.plan.node[n]]
	return r * a / (a + b), r * b / (a + b)
}

func (f *Flow) held(n int32) bool { return f.Rim[f.plan.node[n]] != 0 }

// meanValue interpolates the stream function at a node from the middles of its
// edges.
func (f *Flow) meanValue(n int32, chi []float64) float64 {
	p := f.plan
	fan := p.fan[n]
	x := p.pts[n]
	half := make([]float64, len(fan)) // tangent of half the angle of each corner
	away := make([]float64, len(fan)) // of each middle
	for i, c := range fan {
		a, b := sub2(p.middle(c.tri, c.k), x), sub2(p.middle(c.tri, (c.k+2)%3), x)
		la, lb := math.Hypot(a[0], a[1]), math.Hypot(b[0], b[1])
		away[i] = la
		half[i] = cross2(a, b) / (la*lb + a[0]*b[0] + a[1]*b[1])
	}
	sum, weight := 0.0, 0.0
	for i := range fan {
		w := (half[i] + half[(i+len(fan)-1)%len(fan)]) / away[i]
		sum, weight = sum+w*chi[i], weight+w
	}
	return sum / weight
}

// Stream returns the flow that the lines follow, N/mm: in each piece of a
// triangle the curl of the stream function. Outside the patches of loads and
// inner supports it keeps its force across every cut, to rounding; At is
// smoother.
func (f *Flow) Stream(x, y float64) (t [2]float64, inside bool) {
	tri, bary, inside := f.loc.Find(mesh.Point{x, y})
	piece := inner
	for k, b := range bary {
		if b > 0.5 {
			piece = k
		}
	}
	if piece != inner && f.patchOf(tri, piece) != noPatch {
		return f.Whole[tri], inside
	}
	var p [3][2]float64
	var v [3]float64
	for i, k := range pieceKnots(piece) {
		p[i], v[i] = f.knotPlace(tri, k), f.knotValue(tri, k)
	}
	a, b := sub2(p[1], p[0]), sub2(p[2], p[0])
	va, vb, det := v[1]-v[0], v[2]-v[0], cross2(a, b)
	return [2]float64{(a[0]*vb - b[0]*va) / det, (a[1]*vb - b[1]*va) / det}, inside
}
