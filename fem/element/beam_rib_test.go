package element

import "testing"

// ribbed is a plate with one rib along a row of nodes.
type ribbed struct {
	*shellMesh
	ribs  []Beam
	pairs [][2]int
}

// eulerRib is the 6 x 12 mm test rib, E 10 GPa, without shear strain and torsion.
type eulerRib struct{ Rectangle }

func (eulerRib) Rigidity() Rigidity {
	return Rigidity{EA: 72e4, GAy: 1e12, GAz: 1e12, EIy: 864e4, EIz: 216e4}
}

// addRib glues the rib, its axis off mm above the mid-surface, along the nodes.
func addRib(t *testing.T, s *shellMesh, nodes []int, off float64) *ribbed {
	t.Helper()
	r := &ribbed{shellMesh: s}
	s.kink = map[int]bool{}
	for _, n := range nodes {
		s.kink[n] = true
	}
	s.build(t)
	for i, n := range nodes[1:] {
		p := [2]int{nodes[i], n}
		b, err := NewBeam(BeamInput{
			X:      [2][3]float64{s.x[p[0]], s.x[p[1]]},
			Offset: [2][3]float64{{0, 0, off}, {0, 0, off}},
			Up:     [3]float64{0, 0, 1}, Section: eulerRib{spruceRib()},
		})
		if err != nil {
			t.Fatal(err)
		}
		r.ribs, r.pairs = append(r.ribs, b), append(r.pairs, p)
	}
	return r
}

func (r *ribbed) solve(t *testing.T, f []float64, held map[int]float64) []float64 {
	t.Helper()
	return r.shellMesh.solve(t, f, held, func(put func(i, j int, v float64)) {
		var k [144]float64
		for b := range r.ribs {
			r.ribs[b].StiffnessTo(&k)
			scatter(k[:], r.pairs[b][:], put)
		}
	})
}

func (r *ribbed) ribForces(e int, u []float64) BeamForces {
	var v [12]float64
	copy(v[:6], u[6*r.pairs[e][0]:])
	copy(v[6:], u[6*r.pairs[e][1]:])
	return r.ribs[e].Forces(&v)
}

// tee returns the T strip of 250 mm: plate 60 x 4 mm, E 10 GPa, nu 0, without
// shear strain, rib under its middle.
func tee(t *testing.T, n int) *ribbed {
	s := surfaceMesh(2, n, 0, func(u, v float64) (x, nrm [3]float64) {
		return [3]float64{250 * v, 60 * (0.5 - u), 0}, nrm
	})
	s.h, s.wood = 4, isotropic(1e4, 0)
	s.wood.GLR, s.wood.GLT, s.wood.GRT = 1e6, 1e6, 1e6
	var nodes []int
	for i := range n + 1 {
		nodes = append(nodes, 3*i+1)
	}
	return addRib(t, s, nodes, -8)
}

// TestRibMoment: the T strip under a constant moment, its end sections kept
// plane, is exact on any mesh. Source: parallel axes, E I = 47.286154 N m².
func TestRibMoment(t *testing.T) {
	const m, l = 1000.0, 250.0 // N mm, mm
	ea, eb := 1e4*240.0, 1e4*72.0
	zbar := 8 * eb / (ea + eb)
	ei := 1e4*320 + ea*zbar*zbar + 864e4 + eb*(8-zbar)*(8-zbar)
	within(t, "E I", ei, 47.286154e6, 1e-7)
	kappa := m / ei
	for _, n := range []int{1, 3, 8} {
		r := tee(t, n)
		held := map[int]float64{}
		r.hold(held, "y", everywhere)
		r.hold(held, "xyzXYZ", at(0, 0))
		for i, x := range r.x {
			if x[0] == l {
				held[6*i], held[6*i+4] = kappa*zbar*l, kappa*l
			}
		}
		u := r.solve(t, make([]float64, r.dofs()), held)
		within(t, "tip", -u[6*(3*n+1)+2], kappa*l*l/2, 1e-8)
		v := r.local(0, u)
		within(t, "plate strain", along2(r.sh[0].Frame(), r.sh[0].Strains(&v).Membrane), kappa*zbar, 1e-8)
		f := r.ribForces(0, u)
		within(t, "rib force", f.N, eb*kappa*(zbar-8), 1e-8)
		within(t, "rib moment", f.My[1], 864e4*kappa, 1e-8)
	}
}
