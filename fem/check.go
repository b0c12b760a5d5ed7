package fem

import (
	"math"

	"archload/fem/element"
	"archload/fem/vec3"
)

// check fills the built-in checks of a run with a body.
func (r *Result) check(s *Problem, fit LoadCase) {
	r.Checks.Contact = r.State.Residual
	r.Checks.Energy = relative(r.Energy.Total()-(r.State.Work-r.State.Lost), r.State.Work)
	var ap, mo [3]float64
	s.plate.plate.resultant(s.plate.loadsAt(fit), &ap, &mo)
	for _, l := range s.bodyUnder(fit).Loads {
		addAt(&ap, &mo, l.At, l.F)
	}
	r.Applied = ap
	if s.plate.hold == Slip {
		for i, g := range s.frame.body.Guides {
			f := vec3.Scale(g.Dir, r.Guides[i])
			if g.Turn {
				mo = vec3.Add(mo, f)
			} else {
				addAt(&ap, &mo, g.At, f)
			}
		}
	}
	r.balance(ap, mo)
}

// resultant sums nodal loads into a force and a moment about the origin.
func (s *System) resultant(f []float64, force, moment *[3]float64) {
	for i := range s.Model.Nodes {
		n := f[6*i : 6*i+6]
		addAt(force, moment, s.Model.Nodes[i].P, [3]float64{n[0], n[1], n[2]})
		*moment = vec3.Add(*moment, [3]float64{n[3], n[4], n[5]})
	}
}

// balance compares the given force and moment with the reactions.
func (r *Result) balance(force, moment [3]float64) {
	scaleF, size := vec3.Norm(force), 0.0
	for _, re := range r.Reactions {
		p := re.At
		f := [3]float64{re.F[0], re.F[1], re.F[2]}
		addAt(&force, &moment, p, f)
		moment = vec3.Add(moment, [3]float64{re.F[3], re.F[4], re.F[5]})
		size = math.Max(size, vec3.Norm(p))
	}
	r.Checks.Force = relative(vec3.Norm(force), scaleF)
	r.Checks.Moment = relative(vec3.Norm(moment), scaleF*size)
}

// Place returns where a surface point lies on its facet: the point whose
// movement the shell's interpolation gives, mm.
func (m *Model) Place(at SurfacePoint) [3]float64 {
	el := &m.Shells[at.Shell]
	var x [3][3]float64
	h := 0.0
	for k, n := range el.Nodes {
		x[k] = m.Nodes[n].P
		h += m.Nodes[n].H / 3
	}
	if el.H != 0 {
		h = el.H
	}
	n := vec3.Cross(vec3.Sub(x[1], x[0]), vec3.Sub(x[2], x[0]))
	n = vec3.Scale(n, at.Zeta*h/2/vec3.Norm(n))
	for k := range 3 {
		n = vec3.Add(n, vec3.Scale(x[k], at.L[k]))
	}
	return n
}

// MoveAt returns the displacement of a place on a shell, mm.
func (r *Result) MoveAt(at SurfacePoint) [3]float64 { return r.Plate.moveAt(r.U, at) }

// BodyMove returns the displacement of a point on a rigid arm from a body
// node, mm.
func (r *Result) BodyMove(node int32, at [3]float64) [3]float64 {
	p := r.problem.frame.body.Nodes[node]
	u := r.Body[6*int(node) : 6*int(node)+6]
	th := [3]float64{u[3], u[4], u[5]}
	return vec3.Add([3]float64{u[0], u[1], u[2]}, vec3.Cross(th, vec3.Sub(at, p)))
}

// ShellForces returns the resultants of triangle i in its facet frame.
func (r *Result) ShellForces(i int) element.Resultants {
	var u [18]float64
	gather(u[:], r.U, r.Plate.Model.Shells[i].Nodes[:])
	return r.Plate.Shells[i].Resultants(&u)
}

// ShellStress returns the stress of triangle i in its wood axes, MPa, in the
// order LL RR TT RT LT LR; zeta is -1 at the inner and +1 at the outer face.
func (r *Result) ShellStress(i int, zeta float64) [6]float64 {
	var u [18]float64
	gather(u[:], r.U, r.Plate.Model.Shells[i].Nodes[:])
	return r.Plate.Shells[i].Stress(&u, zeta)
}

// ShellStresses is ShellStress at the outer face, the inner face and in the
// middle.
func (r *Result) ShellStresses(i int) (outer, inner, middle [6]float64) {
	el := &r.Plate.Shells[i]
	f := r.ShellForces(i)
	return el.StressOf(&f, 1), el.StressOf(&f, -1), el.StressOf(&f, 0)
}

// BeamForces returns the section forces of beam i.
func (r *Result) BeamForces(i int) element.BeamForces {
	u := r.Plate.beamMove(i, r.U)
	return r.Plate.Beams[i].Forces(&u)
}

func addAt(force, moment *[3]float64, at, f [3]float64) {
	*force = vec3.Add(*force, f)
	*moment = vec3.Add(*moment, vec3.Cross(at, f))
}

// Middle returns the mean of some places: where a force spread evenly over
// them acts, mm.
func (m *Model) Middle(points []SurfacePoint) [3]float64 {
	var sum [3]float64
	for _, p := range points {
		sum = vec3.Add(sum, m.Place(p))
	}
	return vec3.Scale(sum, 1/float64(len(points)))
}

// BeamEnergy returns the strain energy of beam i, N·mm.
func (r *Result) BeamEnergy(i int) float64 {
	u := r.Plate.beamMove(i, r.U)
	return r.Plate.Beams[i].Energy(&u)
}
