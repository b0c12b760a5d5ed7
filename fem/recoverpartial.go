package fem

import "slices"

// RecoverMoves computes the displacements of a contact state and leaves out what
// costs as much again: reactions, energies and checks, which Whole adds. The
// pads' forces live on the zone, so that the solve begins at the last front.
func (s *Problem) RecoverMoves(st *State, fit LoadCase) *Result {
	c := s.plate
	r := &Result{Plate: c.plate, State: st, problem: s, loadCase: fit, partial: true}
	r.load = make([]float64, len(c.loadF))
	for i, col := range c.cols {
		for k, d := range col.Dofs {
			r.load[d] -= st.Lambda[i] * col.Vals[k]
		}
	}
	r.U = slices.Clone(r.load)
	c.plate.Factor.SolveLast(r.U)
	if c.loadU != nil {
		t := fit.share()
		for i, u := range c.loadU {
			r.U[i] += t * u
			r.load[i] += t * c.loadF[i]
		}
	}
	r.body(s.bodyUnder(fit))
	r.Guides = slices.Clone(st.Lambda[len(c.cols):])
	return r
}

// RecoverPlateMoves is Moved without a body: a share of the loads on the plate alone.
func (c *Condensed) RecoverPlateMoves(share float64) *Result {
	r := &Result{Plate: c.plate, U: make([]float64, len(c.loadF)), load: c.loadsAt(LoadCase{Unapplied: 1 - share}), loadCase: LoadCase{Unapplied: 1 - share}, partial: true}
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
	w.partial = false
	w.complete()
	return &w
}

// share is the fraction of the loads on the plate.
func (f LoadCase) share() float64 { return 1 - f.Unapplied }

// loadsAt are the loads on the plate's nodes at their share, pads left out.
func (c *Condensed) loadsAt(fit LoadCase) []float64 {
	t := fit.share()
	if t == 1 {
		return c.loadF
	}
	out := make([]float64, len(c.loadF))
	for i, f := range c.loadF {
		out[i] = t * f
	}
	return out
}

// BodyMoves returns the movement of every body node at full load, mm and rad, six a
// node, from the slack rest.
func (s *Problem) BodyMoves(st *State, fit LoadCase) []float64 {
	r := &Result{problem: s, State: st}
	r.body(s.bodyUnder(fit))
	return r.Body
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
