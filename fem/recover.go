package fem

import (
	"math"
	"slices"

	"archload/fem/vec3"
)

// Reaction is what the ground gives to a held node or through a spring.
type Reaction struct {
	Node int32      // -1 for a spring
	At   [3]float64 // mm
	F    [6]float64 // N and N·mm
}

// Energy is the strain energy by kind, N·mm.
type Energy struct {
	Membrane, Bending, Shear float64 // of the plate
	Braces                   float64
	Bridge                   float64
	Bedding                  float64
	Rim                      float64 // sides, lining, blocks, springs
}

// Total is the sum, N·mm.
func (e Energy) Total() float64 {
	return e.Membrane + e.Bending + e.Shear + e.Braces + e.Bridge + e.Bedding + e.Rim
}

// Checks are the built-in checks of every run, each relative and near zero.
type Checks struct {
	Force   float64 // out-of-balance force over the applied force
	Moment  float64 // out-of-balance moment over force times size
	Energy  float64 // stored against work along the path
	Contact float64 // worst pull, overlap or drift
}

// Result is the answer at full load. Displacements mm, forces N.
type Result struct {
	Plate     *Prepared
	U         []float64 // six freedoms a node
	Body      []float64 // six freedoms a body node, from the slack rest
	State     *State    // nil without a body
	Reactions []Reaction
	Guides    []float64 // force of each guide on the body, N or N·mm
	Energy    Energy
	Applied   [3]float64 // resultant of all loads, N
	Checks    Checks

	problem  *Problem
	beamsU   []float64
	load     []float64 // on the plate's nodes, pads included, N and N·mm
	loadCase LoadCase
	partial  bool // movements alone: reactions, energies and checks are still to be found
}

// Recover computes displacements, reactions, energies and checks from a
// contact state.
func (s *Problem) Recover(st *State, fit LoadCase) *Result {
	c := s.plate
	r := &Result{Plate: c.plate, State: st, problem: s}
	f := slices.Clone(c.loadF)
	for i, col := range c.cols {
		for k, d := range col.Dofs {
			f[d] -= st.Lambda[i] * col.Vals[k]
		}
	}
	r.U = slices.Clone(f)
	c.plate.solve(r.U)
	r.body(s.bodyUnder(fit))
	r.Guides = slices.Clone(st.Lambda[len(c.cols):])
	r.load, r.loadCase = f, fit
	r.complete()
	return r
}

// complete adds reactions, energies and checks to the movements.
func (r *Result) complete() {
	r.react(r.load)
	r.energies()
	if r.problem != nil {
		r.check(r.problem, r.loadCase)
		return
	}
	work := 0.0
	for i, f := range r.load {
		work += f * r.U[i] / 2
	}
	r.Checks.Energy = relative(r.Energy.Total()-work, work)
	var ap, mo [3]float64
	r.Plate.resultant(r.load, &ap, &mo)
	r.Applied = ap
	r.balance(ap, mo)
}

// RecoverPlate is Recover without a body: loads on the plate alone.
func (c *Condensed) RecoverPlate() *Result {
	return c.RecoverPlateMoves(1).Complete()
}

func (s *Problem) bodyUnder(fit LoadCase) *Body {
	if fit.Loads == nil {
		return s.frame.body
	}
	b := *s.frame.body
	b.Loads = fit.Loads
	return &b
}

// body recovers the movement of every body node.
func (r *Result) body(b *Body) {
	s, st := r.problem, r.State
	fr := frame{body: b, factor: s.frame.factor}
	u, _ := fr.loadVector()
	for i, col := range s.cols {
		for k, d := range col.Dofs {
			u[d] += st.Lambda[i] * col.Vals[k]
		}
	}
	s.frame.factor.Solve(u)
	r.beamsU = slices.Clone(u)
	for i, p := range b.Nodes {
		for a := range 3 {
			var d [3]float64
			d[a] = 1
			row := armRow(b.Nodes[0], p, d)
			for m := range 6 {
				u[6*i+a] += row[m] * st.Rho[m]
			}
			u[6*i+3+a] += st.Rho[3+a]
		}
	}
	r.Body = u
}

// react sums the element forces at held nodes and takes the loads off.
func (r *Result) react(load []float64) {
	r.load = load
	s := r.Plate.System
	held := map[int32]*[6]float64{}
	for _, f := range s.Model.Fixed {
		held[f.Node] = new([6]float64)
	}
	s.internal(r.U, held)
	for _, n := range slices.Sorted(keys(held)) {
		f := *held[n]
		for k := range 6 {
			f[k] -= load[6*int(n)+k]
			if !s.fixed[6*int(n)+k] {
				f[k] = 0
			}
		}
		if f == ([6]float64{}) {
			continue // the idle freedoms of a lean node
		}
		r.Reactions = append(r.Reactions, Reaction{Node: n, At: s.Model.Nodes[n].P, F: f})
	}
	for i, sp := range s.Model.Springs {
		f := vec3.Scale(sp.Dir, -sp.K*s.springMove(i, r.U))
		r.Reactions = append(r.Reactions, Reaction{Node: -1, At: s.Model.Place(sp.At), F: [6]float64{f[0], f[1], f[2]}})
	}
}

func keys(m map[int32]*[6]float64) func(yield func(int32) bool) {
	return func(yield func(int32) bool) {
		for k := range m {
			if !yield(k) {
				return
			}
		}
	}
}

// internal adds the element forces at the wanted nodes.
func (s *System) internal(u []float64, want map[int32]*[6]float64) {
	var ks [324]float64
	var us [18]float64
	for i := range s.Shells {
		nodes := s.Model.Shells[i].Nodes[:]
		if !anyWanted(nodes, want) {
			continue
		}
		s.Shells[i].StiffnessTo(&ks)
		gather(us[:], u, nodes)
		scatterForce(want, nodes, ks[:], us[:])
	}
	for i := range s.Beams {
		if nodes := s.beamNodes(i); anyWanted(nodes, want) {
			_, k := s.beamStiffness(i)
			ub := make([]float64, 6*len(nodes))
			gather(ub, u, nodes)
			scatterForce(want, nodes, k, ub)
		}
	}
}

func anyWanted(nodes []int32, want map[int32]*[6]float64) bool {
	for _, n := range nodes {
		if want[n] != nil {
			return true
		}
	}
	return false
}

func gather(dst, u []float64, nodes []int32) {
	for k, n := range nodes {
		copy(dst[6*k:6*k+6], u[6*int(n):6*int(n)+6])
	}
}

func scatterForce(want map[int32]*[6]float64, nodes []int32, k, u []float64) {
	n := len(u)
	for a, node := range nodes {
		f := want[node]
		if f == nil {
			continue
		}
		for i := range 6 {
			row := k[(6*a+i)*n : (6*a+i+1)*n]
			for j, v := range row {
				f[i] += v * u[j]
			}
		}
	}
}

// energies sums the strain energy of every element by kind.
func (r *Result) energies() {
	s := r.Plate.System
	e := &r.Energy
	var us [18]float64
	for i := range s.Shells {
		el := &s.Model.Shells[i]
		gather(us[:], r.U, el.Nodes[:])
		m, b, q := s.Shells[i].Energy(&us)
		if s.Model.Sections[el.Section].Part == PartPlate {
			e.Membrane, e.Bending, e.Shear = e.Membrane+m, e.Bending+b, e.Shear+q
		} else {
			e.Rim += m + b + q
		}
	}
	for i := range s.Beams {
		el := &s.Model.Beams[i]
		ub := s.beamMove(i, r.U)
		if el.Part == PartBrace {
			e.Braces += s.Beams[i].Energy(&ub)
		} else {
			e.Rim += s.Beams[i].Energy(&ub)
		}
	}
	for i, sp := range s.Model.Springs {
		v := s.springMove(i, r.U)
		e.Rim += sp.K * v * v / 2
	}
	r.bodyEnergies()
}

func (r *Result) bodyEnergies() {
	if r.problem == nil {
		return
	}
	fr := r.problem.frame
	var ub [12]float64
	for i := range fr.beams {
		gather(ub[:], r.beamsU, fr.body.Beams[i].Nodes[:])
		r.Energy.Bridge += fr.beams[i].Energy(&ub)
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
			r.Energy.Bedding += c * l * l / 2
		}
	}
}

func relative(diff, scale float64) float64 {
	if scale == 0 {
		return math.Abs(diff)
	}
	return math.Abs(diff) / math.Abs(scale)
}
