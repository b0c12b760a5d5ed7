package fem

import (
	"math"
	"testing"

	"archload/fem/vec3"
	"archload/materials"
	"archload/mesh"
)

// blockedStrip is a strip of four squares along x, 5 mm wide and 1 mm thick, held
// at x = 0, whose last stretch from x = 15 to 20 is one block.
func blockedStrip() (*Model, int32) {
	wood := materials.Orthotropic{EL: 10000, ER: 10000, ET: 10000, GLR: 5000, GLT: 5000, GRT: 5000}
	m := &Model{Sections: []Section{{Wood: wood.Compliance(), Axes: materials.PlateAxes(materials.Cut{}), Density: 400}}}
	for i := range 5 {
		for j := range 2 {
			m.Nodes = append(m.Nodes, mesh.Node{P: [3]float64{5 * float64(i), 5 * float64(j), 0}, N: [3]float64{0, 0, 1}, H: 1})
		}
	}
	for i := range int32(4) {
		a := 2 * i
		m.Shells = append(m.Shells, ShellElem{Nodes: [3]int32{a, a + 2, a + 1}}, ShellElem{Nodes: [3]int32{a + 2, a + 3, a + 1}})
	}
	for n := range int32(2) {
		for d := range 6 {
			m.Fixed = append(m.Fixed, Fix{Node: n, Dof: d})
		}
	}
	return m, m.AddBody([3]float64{30, -4, 7}, []int32{6, 7, 8, 9})
}

// TestRigidBody: under a force on the block its nodes move as one rigid body, no
// energy is in it, and the strip answers as a cantilever of 15 mm under that force
// and its moment about x = 15: w = F (L³/3 + a L²/2)/EI with a the arm, plus shear.
func TestRigidBody(t *testing.T) {
	m, ref := blockedStrip()
	sys, err := Assemble(m, 1)
	if err != nil {
		t.Fatal(err)
	}
	p, err := sys.Prepare(1)
	if err != nil {
		t.Fatal(err)
	}
	r := &Result{Plate: sys, Load: make([]float64, 6*len(m.Nodes))}
	const force = 2.0 // N up, at the middle of the block's far end
	r.Load[6*8+2], r.Load[6*9+2] = force/2, force/2
	r.U = append([]float64(nil), r.Load...)
	p.Solve(r.U)
	r.Recover()
	r.CheckAlone()
	if c := r.Checks; c.Force > 1e-10 || c.Moment > 1e-10 || c.Energy > 1e-10 {
		t.Errorf("checks %+v", c)
	}
	u := r.U[6*ref : 6*ref+6]
	for _, n := range []int32{6, 7, 8, 9} {
		want := vec3.Add([3]float64(u[:3]), vec3.Cross([3]float64(u[3:]), vec3.Sub(m.Nodes[n].P, m.Nodes[ref].P)))
		if d := vec3.Norm(vec3.Sub([3]float64(r.U[6*n:6*n+3]), want)); d > 1e-12 {
			t.Errorf("node %d is %.2g mm off the rigid motion", n, d)
		}
	}
	const length, arm, ei, ga = 15.0, 5.0, 10000 * 5.0 / 12, 5000 * 5.0 * 5 / 6
	want := force*(length*length*length/3+arm*length*length/2)/ei + force*length/ga
	if got := (r.U[6*6+2] + r.U[6*7+2]) / 2; math.Abs(got/want-1) > 0.02 {
		t.Errorf("the strip's end rises %.5f mm, want %.5f (beam, E 10000, nu 0)", got, want)
	}
}

// TestRigidBodyRefused: a node that follows twice, or is held as well.
func TestRigidBodyRefused(t *testing.T) {
	m, _ := blockedStrip()
	m.AddBody([3]float64{}, []int32{9})
	if _, err := Assemble(m, 1); err == nil {
		t.Error("a node follows two bodies, want an error")
	}
	m, _ = blockedStrip()
	m.Fixed = append(m.Fixed, Fix{Node: 8, Dof: 0})
	if _, err := Assemble(m, 1); err == nil {
		t.Error("a node follows and is held, want an error")
	}
}

// TestRigidBodyTies: a spring of c on a block in line with the strip takes the
// share c/(c + k) of a force along it, k = E A/L of the strip; and a force on
// the block acts alike whether it is put on a node or on the body at its place.
func TestRigidBodyTies(t *testing.T) {
	const c, force, stiff = 700.0, 3.0, 10000 * 5.0 / 15
	m, ref := blockedStrip()
	at := SurfacePoint{Shell: 7, L: [3]float64{0.5, 0.5, 0}} // the far end's middle is between its nodes 8 and 9
	m.Shells[7].Nodes = [3]int32{8, 9, 7}
	m.Springs = []Spring{{At: at, Dir: [3]float64{1, 0, 0}, K: c}}
	sys, err := Assemble(m, 1)
	if err != nil {
		t.Fatal(err)
	}
	p, err := sys.Prepare(1)
	if err != nil {
		t.Fatal(err)
	}
	solve := func(loads ...PointForce) []float64 {
		f := make([]float64, 6*len(m.Nodes))
		for _, l := range loads {
			sys.AddLoad(f, l)
		}
		p.Solve(f)
		return f
	}
	push := [3]float64{force, 0, 0}
	u, v := solve(PointForce{At: at, F: push}), solve(PointForce{Body: 1, Place: [3]float64{20, 2.5, 0}, F: push})
	if want := force / (c + stiff); math.Abs(u[6*8]/want-1) > 1e-3 {
		t.Errorf("the block moves %.6f mm, want %.6f", u[6*8], want)
	}
	col := sys.Column([]SurfacePoint{at}, [3]float64{1, 0, 0})
	move := 0.0
	for i, d := range col.Dofs {
		move += col.Vals[i] * u[d]
	}
	if math.Abs(move-u[6*8]) > 1e-12 {
		t.Errorf("the place moves %.9f mm by its row, its node %.9f", move, u[6*8])
	}
	for k := range 6 {
		if a, b := u[6*int(ref)+k], v[6*int(ref)+k]; math.Abs(a-b) > 1e-12 {
			t.Errorf("freedom %d: %.3g under a force on the node, %.3g under one on the body", k, a, b)
		}
	}
}

// TestRigidBodySwells: carved wood over a slope swells differently along and across; a block of
// the same wood beside it takes its nodes along, so that nothing is stressed, neither in
// place nor where the fibres turn. A block that keeps its size resists.
func TestRigidBodySwells(t *testing.T) {
	e := [3]float64{0.001, 0.006, 0.011} // along x, y, z
	swollen := func(block [3]float64) *Result {
		m, _ := blockedStrip()
		m.Fixed = nil
		for d := range 6 {
			m.Fixed = append(m.Fixed, Fix{Node: 10, Dof: d}) // the block's own node
		}
		for i := range m.Nodes[:10] {
			n := &m.Nodes[i]
			n.P[2] = n.P[0] * n.P[0] / 80 // to 27 degrees
			n.N = vec3.Scale([3]float64{-n.P[0] / 40, 0, 1}, 1/math.Hypot(1, n.P[0]/40))
		}
		m.Sections[0].Swell = [3]float64{e[1], e[0], e[2]} // L lies along y
		m.Bodies[0].Swell = block
		sys, err := Assemble(m, 1)
		if err != nil {
			t.Fatal(err)
		}
		p, err := sys.Prepare(1)
		if err != nil {
			t.Fatal(err)
		}
		w := sys.Swell(Swell{Outer: 1, Inner: 1, Bodies: 1})
		r := &Result{Plate: sys, Swollen: w, Load: w.Load, U: append([]float64(nil), w.Load...)}
		p.Solve(r.U)
		w.AddGrowth(r.U)
		r.Recover()
		r.CheckSwollen()
		if r.Checks.Energy > 1e-12 {
			t.Errorf("energy and work differ by %.2g", r.Checks.Energy)
		}
		return r
	}
	free, held := swollen(e), swollen([3]float64{})
	if a, b := free.Energy.Total(), held.Energy.Total(); !(a < 1e-20*b) {
		t.Errorf("with a block of the same wood it bears %.3g N·mm, with one that keeps its size %.3g", a, b)
	}
	for i, n := range free.Plate.Model.Nodes[:10] {
		r := vec3.Sub(n.P, [3]float64{30, -4, 7})
		for k := range 3 {
			if got, want := free.U[6*i+k], e[k]*r[k]; math.Abs(got-want) > 1e-12 {
				t.Errorf("node %d moves by %.9f mm along axis %d, want %.9f", i, got, k, want)
			}
		}
	}
}

// TestRigidBodyMass: a block's elements weigh what they weigh without it.
func TestRigidBodyMass(t *testing.T) {
	m, _ := blockedStrip()
	sys, err := Assemble(m, 1)
	if err != nil {
		t.Fatal(err)
	}
	w := sys.Weights()[0]
	if want := 20 * 5 * 1 * 400e-12; math.Abs(w.Mass/want-1) > 1e-12 || math.Abs(w.Centre[0]-10) > 1e-9 {
		t.Errorf("mass %.6g t at x = %.6g mm, want %.6g at 10", w.Mass, w.Centre[0], want)
	}
}
