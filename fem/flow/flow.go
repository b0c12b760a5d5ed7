package flow

import (
	"errors"

	"archload/fem"
	"archload/mesh"
)

// Flow is the path of the vertical load through the plate in plan: from where
// the load presses, through plate and braces, to the rim and the supports.
//
// Its vector t (N/mm) gives, through any cut of the plan, the upward force
// that the part beyond holds up the part before with: t·n for each mm of cut,
// n pointing beyond. Vertical equilibrium reads div t = downward load less
// upward reaction, so that t runs from foot to rim like a stream whose springs
// are the load.
//
// In each triangle t = Q + N·grad z from its stress resultants, taken to the
// plan so that every cut keeps its force. What braces carry along their lines
// is added over their width. The finite elements balance forces at nodes with
// drilling terms too, so t itself balances to mesh accuracy only; the smallest
// change in the mean square (a Poisson problem) makes it exact. Its lines of
// force are level lines of its stream function.
type Flow struct {
	Shells []int32      // the plate's triangles in the model
	Plate  [][2]float64 // of each, t in the plate alone, N/mm
	Whole  [][2]float64 // of each, with what braces carry, N/mm

	// What each node of the model gives to the stream or takes, N. At every
	// node the outflow of Plate is Load + Brace - Rim - Support.
	Load    []float64 // downward load from pads and forces on the plate
	Brace   []float64 // downward push of the braces; sums to zero over a brace
	Rim     []float64 // upward hold at the plate's edge: sides, lining, fixed nodes
	Support []float64 // upward hold elsewhere: posts, bench supports

	Braces []Brace

	Total      float64 // downward load, N
	Divergence float64 // greatest error of a node's balance over the load, 1
	Correction float64 // mean square of the change over that of t, square root, 1

	braces fem.Part // of the beams that carry
	plan   *plan
	loc    *mesh.Locator
	nodal  [][2]float64 // mean of Whole about each node of the plan
	patch  []int32      // of each node of the plan; noPatch for most
	corner [][3]float64 // stream value of each corner less that of the next edge's middle, N
	loops  []*loop
	gates  map[border]gate
}

// Brace is the vertical force that one brace carries along its line.
type Brace struct {
	Group    int32      // of the beams
	Force    float64    // greatest, N; positive toward the line's end
	At       [2]float64 // where, mm
	HandOver float64    // taken over from the plate in all, and given back, N
}

// leastFlow is the share of the load below which a node counts as unloaded.
const leastFlow = 1e-10

// ErrNoLoad says that a load does not press down, so that it has no flow.
var ErrNoLoad = errors.New("load flow: the load does not press down")

// At returns the flow at a place in plan, N/mm: nodal means of the triangles,
// linear between. inside is false beyond the edge and over a hole.
func (f *Flow) At(x, y float64) (t [2]float64, inside bool) {
	tri, bary, inside := f.loc.Find(mesh.Point{x, y})
	for c, n := range f.plan.tris[tri] {
		for k := range 2 {
			t[k] += bary[c] * f.nodal[n][k]
		}
	}
	return t, inside
}
