package contact

import (
	"slices"

	"archload/fem"
	"archload/fem/vec3"
)

// Result is the answer of a plate with the body that stands on it.
type Result struct {
	fem.Result
	State           *State    // nil without a body
	Body            []float64 // six freedoms a body node, from the slack rest, mm and rad
	Guides          []float64 // force of each guide on the body, N or N·mm
	Complementarity float64   // worst pull, overlap or drift, relative: a check as those of Result

	problem  *Problem
	bending  []float64 // movements of the body's nodes without its rigid motion
	loadCase LoadCase
	partial  bool // movements alone: reactions, energies and checks are still to be found
}

// Recover computes displacements, reactions, energies and checks from a
// contact state.
func (s *Problem) Recover(st *State, lc LoadCase) *Result {
	r := s.partialResult(st, lc)
	copy(r.Load, s.plate.loadF)
	s.plate.addForces(r.Load, st.Lambda)
	s.plate.addSwelling(r)
	r.U = slices.Clone(r.Load)
	for i, f := range s.plate.push {
		r.U[i] += f
	}
	s.plate.plate.Solve(r.U)
	if r.Swollen != nil && !r.Large {
		r.Swollen.AddGrowth(r.U)
	}
	r.complete()
	return r
}

// addSwelling lets a result in the making feel what the wood does by itself. Where movements are of any size the push has it.
func (c *Condensed) addSwelling(r *Result) {
	r.Swollen = c.swollen
	if c.swollen == nil || r.Large {
		return
	}
	r.Load = slices.Clone(r.Load)
	for i, f := range c.swollen.Load {
		r.Load[i] += f
	}
}

// partialResult has the body's part of a result.
func (s *Problem) partialResult(st *State, lc LoadCase) *Result {
	r := &Result{Result: fem.Result{Plate: s.plate.plate.System, Large: s.plate.push != nil, Load: make([]float64, len(s.plate.loadF))},
		State: st, problem: s, loadCase: lc, partial: true, Guides: slices.Clone(st.Lambda[s.plate.padRows():])}
	r.bending, r.Body = s.bodyMoves(st, lc)
	return r
}

// complete adds reactions, energies and checks to the movements.
func (r *Result) complete() {
	r.partial = false
	r.Result.Recover()
	if r.Swollen != nil && !r.Large {
		r.CheckSwollen()
	}
	if r.problem == nil {
		r.checkAlone()
		return
	}
	r.addEnergies()
	r.check()
}

// checkAlone fills the checks of a plate without a body.
func (r *Result) checkAlone() {
	if r.Swollen == nil || r.Large {
		r.CheckAlone()
		return
	}
	load := slices.Clone(r.Load)
	for i, f := range r.Swollen.Load {
		load[i] -= f
	}
	w := r.Plate.Resultant(load)
	r.Applied = w.Force
	r.CheckBalance(w)
}

// bodyMoves recovers the movement of every body node, without and with the rigid
// motion.
func (s *Problem) bodyMoves(st *State, lc LoadCase) (bending, moves []float64) {
	b := s.bodyUnder(lc)
	fr := frame{body: b, factor: s.frame.factor}
	u, _ := fr.loadVector()
	for i, col := range s.cols {
		for k, d := range col.Dofs {
			u[d] += st.Lambda[i] * col.Vals[k]
		}
	}
	s.frame.factor.Solve(u)
	bending = slices.Clone(u)
	for i, p := range b.Nodes {
		for a := range 3 {
			var d [3]float64
			d[a] = 1
			row := ArmRow(b.Nodes[0], p, d)
			for m := range 6 {
				u[6*i+a] += row[m] * st.Rho[m]
			}
			u[6*i+3+a] += st.Rho[3+a]
		}
	}
	return bending, u
}

// addEnergies adds those of the body and of the pads' bedding.
func (r *Result) addEnergies() {
	fr := r.problem.frame
	var ub [12]float64
	for i := range fr.beams {
		fem.Gather(ub[:], r.bending, fr.body.Beams[i].Nodes[:])
		r.Energy.Add(fr.body.Part, fr.beams[i].Energy(&ub))
	}
	per := r.problem.per
	for i := range r.problem.plate.pads {
		bed := r.problem.plate.pads[i].Bedding
		for a := range per {
			l := r.State.Lambda[i*per+a]
			c := bed[1]
			if a == 0 {
				c = bed[0]
			}
			r.Energy.Add(fr.body.BeddingPart, c*l*l/2)
		}
	}
}

// check fills the built-in checks of a run with a body.
func (r *Result) check() {
	s := r.problem
	r.Complementarity = r.State.Residual
	if !r.Large && !r.State.onward { // of large movements the path's work is that of the linear problem beside
		r.CheckEnergy(r.State.Work-r.State.Lost, r.State.Work)
	}
	w := r.Plate.Resultant(s.plate.loadsAt(r.loadCase))
	for _, l := range s.bodyUnder(r.loadCase).Loads {
		w.Add(l.At, l.F)
	}
	r.Applied = w.Force
	if s.plate.hold.guided() {
		for i, g := range s.frame.body.Guides {
			if g.onPlate() {
				continue // it pulls at the plate as at the body
			}
			if f := vec3.Scale(g.Dir, r.Guides[i]); g.Turn {
				w.AddMoment(f)
			} else {
				w.Add(g.At, f)
			}
		}
	}
	r.CheckBalance(w)
}

// PadSinks is Problem.PadSinks of the result.
func (r *Result) PadSinks() []float64 { return r.problem.PadSinks(r.State) }

// LoadCase returns what the result is for.
func (r *Result) LoadCase() LoadCase { return r.loadCase }

// BodyMove returns the displacement of a point on a rigid arm from a body
// node, mm.
func (r *Result) BodyMove(node int32, at [3]float64) [3]float64 {
	p := r.problem.frame.body.Nodes[node]
	u := r.Body[6*int(node) : 6*int(node)+6]
	th := [3]float64{u[3], u[4], u[5]}
	return vec3.Add([3]float64{u[0], u[1], u[2]}, vec3.Cross(th, vec3.Sub(at, p)))
}
