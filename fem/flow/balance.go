package flow

import (
	"math"

	"archload/fem"
	"archload/fem/element"
	"archload/mesh"
)

// New computes the load flow of a completed result through the surface that is
// part 0; braces is the part whose beams carry force beside it. It refuses a
// surface without a downward load.
func New(r *fem.Result, braces fem.Part) (*Flow, error) {
	p, err := newPlan(r.Plate.Model)
	if err != nil {
		return nil, err
	}
	f := &Flow{plan: p, Shells: p.shell, braces: braces}
	f.sources(r)
	for _, v := range f.Load {
		f.Total += v
	}
	if !(f.Total > 0) {
		return nil, ErrNoLoad
	}
	raw := make([][2]float64, len(p.tris))
	for t, i := range p.shell {
		raw[t] = verticalFlow(&r.Plate.Shells[i], r.ShellFrame(int(i)), r.ShellForces(int(i)))
	}
	f.loc = mesh.NewLocator(p.asPlan())
	if err := f.balance(raw, f.braceFlow(r)); err != nil {
		return nil, err
	}
	f.nodal = p.nodalMeans(f.Whole)
	f.prepareLines()
	return f, nil
}

// verticalFlow takes the resultants of a facet to the plan: through a cut with
// the unit normal v in the facet, the vertical force per length is w·v with
// w_a = N_ab e_b·z + Q_a n·z. A flux keeps its force through every cut when w
// is projected on the plan and divided by n·z, the ratio of the areas. The forces have the axes
// of the facet where it has moved to; the cut is that of the unmoved one.
func verticalFlow(s *element.Shell, moved [3][3]float64, r element.Resultants) [2]float64 {
	e := s.Frame()
	nz := e[2][2]
	w1 := r.N[0]*moved[0][2] + r.N[2]*moved[1][2] + r.Q[0]*moved[2][2]
	w2 := r.N[2]*moved[0][2] + r.N[1]*moved[1][2] + r.Q[1]*moved[2][2]
	return [2]float64{(w1*e[0][0] + w2*e[1][0]) / nz, (w1*e[0][1] + w2*e[1][1]) / nz}
}

// balance makes the flow exactly conservative, first with the braces' forces on
// their glue lines, where the model ties them to the plate, then with these
// forces spread over the braces' width.
func (f *Flow) balance(raw [][2]float64, b *carriedFlow) error {
	want := make([]float64, len(f.plan.node))
	for i, n := range f.plan.node {
		want[i] = f.Load[n] - f.Rim[n] - f.Support[n]
	}
	f.Whole = sum2(raw, 1, b.lines)
	changed, err := f.conserve(f.Whole, want)
	if err != nil {
		return err
	}
	f.Plate = sum2(f.Whole, -1, b.lines)
	all := 0.0
	for t, v := range f.Plate {
		all += f.plan.area[t] * (v[0]*v[0] + v[1]*v[1])
	}
	f.Correction = math.Sqrt(changed / all)
	if len(f.Braces) > 0 {
		f.Whole = sum2(f.Plate, 1, b.strips)
		if _, err = f.conserve(f.Whole, want); err != nil {
			return err
		}
	}
	for i, v := range f.plan.outflow(f.Whole) {
		f.Divergence = math.Max(f.Divergence, math.Abs(v-want[i])/f.Total)
	}
	return nil
}

// conserve changes t so that every node's outflow is want, N. With the hat
// functions v of the nodes, the outflow of a node is -∫ t·grad v. Among all
// fields with the wanted outflow, t + grad(psi) differs least in the mean
// square, where psi solves the Poisson problem of what is missing. It returns
// ∫ |grad psi|².
func (f *Flow) conserve(t [][2]float64, want []float64) (changed float64, err error) {
	p := f.plan
	miss := p.outflow(t)
	for i := range miss {
		miss[i] = want[i] - miss[i]
	}
	psi, err := p.poisson(miss, 1e-12*f.Total)
	if err != nil {
		return 0, err
	}
	for i := range t {
		g := p.gradient(i, psi)
		t[i][0], t[i][1] = t[i][0]+g[0], t[i][1]+g[1]
		changed += p.area[i] * (g[0]*g[0] + g[1]*g[1])
	}
	return changed, nil
}

// sum2 returns a + k b.
func sum2(a [][2]float64, k float64, b [][2]float64) [][2]float64 {
	out := make([][2]float64, len(a))
	for i := range a {
		out[i] = [2]float64{a[i][0] + k*b[i][0], a[i][1] + k*b[i][1]}
	}
	return out
}
