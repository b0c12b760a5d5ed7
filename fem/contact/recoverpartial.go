package contact

import (
	"slices"

	"archload/fem"
)

// RecoverMoves computes the displacements of a contact state and leaves out what
// costs as much again: reactions, energies and checks, which Complete adds. The
// pads' forces live on the zone, so that the solve begins at its fronts.
func (s *Problem) RecoverMoves(st *State, lc LoadCase) *Result {
	r := s.partialResult(st, lc)
	c := s.plate
	c.addForces(r.Load, st.Lambda)
	r.U = slices.Clone(r.Load)
	c.plate.Hold(r.U)
	c.plate.Factor.SolveLast(r.U)
	c.plate.Follow(r.U)
	if c.loadU != nil {
		t := lc.share()
		for i, u := range c.loadU {
			r.U[i] += t * u
			r.Load[i] += t * c.loadF[i]
		}
	}
	return r
}

// RecoverPlateMoves is RecoverMoves without a body: a share of the loads on the
// plate alone.
func (c *Condensed) RecoverPlateMoves(share float64) *Result {
	r := &Result{Result: fem.Result{Plate: c.plate.System, Large: c.push != nil, U: make([]float64, len(c.loadF)), Load: c.loadsAt(LoadCase{Unapplied: 1 - share})}, partial: true}
	for i, u := range c.loadU {
		r.U[i] = share * u
	}
	return r
}

// Complete returns the result with reactions, energies and checks.
func (r *Result) Complete() *Result {
	if !r.partial {
		return r
	}
	w := *r
	w.complete()
	return &w
}

// BodyMoves returns the movement of every body node at full load, mm and rad, six
// a node, from the slack rest.
func (s *Problem) BodyMoves(st *State, lc LoadCase) []float64 {
	_, moves := s.bodyMoves(st, lc)
	return moves
}

// PadSinks returns how far the plate's outer surface gives way at each pad at
// full load, along the surface's normal, inward positive, mm, the pad's own
// bedding left out.
func (s *Problem) PadSinks(st *State) []float64 {
	n := len(s.plate.cols)
	out := make([]float64, len(s.plate.pads))
	for i := range out {
		row := i * s.per
		out[i] = -s.plate.loadAt[row]
		for j, c := range s.plate.c[row*n : (row+1)*n] {
			out[i] += c * st.Lambda[j]
		}
	}
	return out
}

// RecoverPlate is Recover without a body: loads on the plate alone, and what its wood does by
// itself.
func (c *Condensed) RecoverPlate() *Result {
	r := c.RecoverPlateMoves(1)
	if c.addSwelling(r); c.swollen != nil && !r.Large {
		for i, u := range c.swellU {
			r.U[i] += u
		}
		c.swollen.AddGrowth(r.U)
	}
	return r.Complete()
}
