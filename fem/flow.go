package fem

import (
	"errors"
	"math"

	"archload/fem/element"
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

	Braces []BraceFlow

	Total      float64 // downward load, N
	Divergence float64 // greatest error of a node's balance over the load, 1
	Correction float64 // mean square of the change over that of t, square root, 1

	plan   *flowPlan
	loc    *mesh.Locator
	nodal  [][2]float64 // mean of Whole about each node of the plan
	patch  []int32      // of each node of the plan; noPatch for most
	corner [][3]float64 // stream value of each corner less that of the next edge's middle, N
	loops  []*flowLoop
	gates  map[border]gate
}

// BraceFlow is the vertical force that one brace carries along its line.
type BraceFlow struct {
	Group    int32      // of the beams
	Force    float64    // greatest, N; positive toward the line's end
	At       [2]float64 // where, mm
	HandOver float64    // taken over from the plate in all, and given back, N
}

// leastFlow is the share of the load below which a node counts as unloaded.
const leastFlow = 1e-10

// ErrNoLoad says that a load does not press down, so that it has no flow.
var ErrNoLoad = errors.New("load flow: the load does not press down")

// Flow computes the load flow of a result. It refuses a plate without a
// downward load.
func (r *Result) Flow() (*Flow, error) {
	p, err := newFlowPlan(r.Plate.Model)
	if err != nil {
		return nil, err
	}
	f := &Flow{plan: p, Shells: p.shell}
	f.sources(r)
	for _, v := range f.Load {
		f.Total += v
	}
	if !(f.Total > 0) {
		return nil, ErrNoLoad
	}
	raw := make([][2]float64, len(p.tris))
	for t, i := range p.shell {
		raw[t] = verticalFlow(&r.Plate.Shells[i], r.ShellForces(int(i)))
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
// is projected on the plan and divided by n·z, the ratio of the areas.
func verticalFlow(s *element.Shell, r element.Resultants) [2]float64 {
	e := s.Frame()
	nz := e[2][2]
	w1 := r.N[0]*e[0][2] + r.N[2]*e[1][2] + r.Q[0]*nz
	w2 := r.N[2]*e[0][2] + r.N[1]*e[1][2] + r.Q[1]*nz
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
