package fem

import "slices"

// Moved computes the displacements of a contact state and leaves out what
// costs as much again: reactions, energies and checks, which Whole adds. The
// pads' forces live on the zone, so that the solve begins at the last front.
func (s *Standing) Moved(st *State, fit Fit) *Result {
	c := s.plate
	r := &Result{Plate: c.plate, State: st, standing: s, fit: fit, moved: true}
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
	r.body(s.problemBody(fit))
	r.Guides = slices.Clone(st.Lambda[len(c.cols):])
	return r
}

// MovedBare is Moved without a body: a share of the loads on the plate alone.
func (c *Condensed) MovedBare(share float64) *Result {
	r := &Result{Plate: c.plate, U: make([]float64, len(c.loadF)), load: c.loadsAt(Fit{Less: 1 - share}), fit: Fit{Less: 1 - share}, moved: true}
	for i, u := range c.loadU {
		r.U[i] = share * u
	}
	return r
}

// Whole returns the result with reactions, energies and checks.
func (r *Result) Whole() *Result {
	if !r.moved {
		return r
	}
	w := *r
	w.moved = false
	w.settle()
	return &w
}

// share is the fraction of the loads on the plate.
func (f Fit) share() float64 { return 1 - f.Less }

// loadsAt are the loads on the plate's nodes at their share, pads left out.
func (c *Condensed) loadsAt(fit Fit) []float64 {
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
