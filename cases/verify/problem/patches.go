package problem

import (
	"errors"
	"math"

	"archload/cases/verify/reference"
	"archload/fem/vec3"
	"archload/materials"

	"gonum.org/v1/gonum/mat"
)

// patchQuads are the five quadrilaterals of the patch of R. H. MacNeal and
// R. L. Harder, each halved; the first four nodes are the corners.
func patchPanel(w materials.Orthotropic, axes materials.Axes) *panel {
	p := &panel{}
	at := [][2]float64{{0, 0}, {0.24, 0}, {0.24, 0.12}, {0, 0.12}, {0.04, 0.02}, {0.18, 0.03}, {0.16, 0.08}, {0.08, 0.08}}
	quads := [][4]int32{{4, 5, 6, 7}, {0, 1, 5, 4}, {1, 2, 6, 5}, {2, 3, 7, 6}, {3, 0, 4, 7}}
	for _, q := range at {
		p.Nodes = append(p.Nodes, node(q[0], q[1], 0.001))
	}
	var tris [][3]int32
	for _, q := range quads {
		tris = append(tris, [3]int32{q[0], q[1], q[2]}, [3]int32{q[0], q[2], q[3]})
	}
	p.make(tris, makeup{wood: w, axes: axes})
	return p
}

// patchFields are the displacements of constant strain, 1e-3 (x + y/2,
// y + x/2), and of constant curvature, w = 1e-3 (x² + xy + y²)/2.
func patchField(bent bool, x, y float64) [6]float64 {
	const c = 1e-3
	if bent {
		return [6]float64{0, 0, c * (x*x + x*y + y*y) / 2, c * (y + x/2), -c * (x + y/2), 0}
	}
	return [6]float64{c * (x + y/2), c * (y + x/2), 0, 0, 0, 0}
}

// patches holds the corners of the patch to a field of constant strain or
// curvature, solves for the inner nodes, and reads stresses, moments and the
// greatest relative error of any element.
func patches() (Readings, error) {
	out := Readings{"error": 0, "wood error": 0}
	iso := patchPanel(reference.Isotropic(1e6, 0.25), materials.Axes{})
	for _, c := range []struct {
		name string
		p    *panel
		w    materials.Orthotropic
		turn float64
	}{
		{"error", iso, reference.Isotropic(1e6, 0.25), 0},
		{"wood error", woodPatch(0), reference.TestWood(), 0},
		{"wood error", woodPatch(30), reference.TestWood(), 30},
		{"wood error", woodPatch(90), reference.TestWood(), 90},
	} {
		for _, bent := range []bool{false, true} {
			a, err := c.p.solvePatch(bent)
			if err != nil {
				return nil, err
			}
			out[c.name] = max(out[c.name], a.patchError(c.w, c.turn, bent))
			if c.p == iso {
				out.patchReadings(a, bent)
			}
		}
	}
	return out, nil
}

func woodPatch(deg float64) *panel {
	s, c := math.Sincos(deg * degree)
	return patchPanel(reference.TestWood(), materials.Axes{{c, s, 0}, {-s, c, 0}, {0, 0, 1}})
}

// patchReadings reads the isotropic patch.
func (out Readings) patchReadings(a *solved, bent bool) {
	v := a.of(0)
	r := a.sys.Shells[0].Resultants(&v)
	s := a.sys.Shells[0].Stress(&v, 1)
	if bent {
		m := inGlobal(a.sys.Shells[0].Frame(), r.M)
		out["Mx"], out["My"], out["Mxy"] = m[0], m[1], m[2]
		return
	}
	out["sigma"], out["tau"] = s[0], s[5]
}

// solvePatch solves for the four inner nodes with a dense matrix.
func (p *panel) solvePatch(bent bool) (*solved, error) {
	if err := p.build(); err != nil {
		return nil, err
	}
	k := p.dense()
	u := make([]float64, 6*len(p.Nodes))
	for i := range 4 {
		f := patchField(bent, p.Nodes[i].P[0], p.Nodes[i].P[1])
		copy(u[6*i:], f[:])
	}
	const held, free = 24, 24
	var rhs, x mat.VecDense
	rhs.MulVec(k.Slice(held, held+free, 0, held), mat.NewVecDense(held, u[:held]))
	rhs.ScaleVec(-1, &rhs)
	var lu mat.LU
	lu.Factorize(k.Slice(held, held+free, held, held+free))
	var bad mat.Condition
	if err := lu.SolveVecTo(&x, false, &rhs); err != nil && !errors.As(err, &bad) {
		return nil, err
	}
	copy(u[held:], x.RawVector().Data)
	return &solved{panel: p, u: u}, nil
}

// dense sums the stiffness of all shells.
func (p *panel) dense() *mat.Dense {
	n := 6 * len(p.Nodes)
	k := mat.NewDense(n, n, nil)
	var ke [324]float64
	for e := range p.Shells {
		p.sys.Shells[e].StiffnessTo(&ke)
		for i := range 18 {
			for j := range 18 {
				r, c := 6*int(p.Shells[e].Nodes[i/6])+i%6, 6*int(p.Shells[e].Nodes[j/6])+j%6
				k.Set(r, c, k.At(r, c)+ke[18*i+j])
			}
		}
	}
	return k
}

// patchError is the largest error of N or M in any element over the largest
// exact value: the plane-stress matrix turned by hand times the strain.
func (a *solved) patchError(w materials.Orthotropic, turn float64, bent bool) (worst float64) {
	h := a.Nodes[0].H
	want := planeStress(w, turn, [3]float64{1e-3, 1e-3, 1e-3})
	size := 0.0
	for _, v := range want {
		size = max(size, math.Abs(v))
	}
	for e := range a.Shells {
		v := a.of(e)
		r := a.sys.Shells[e].Resultants(&v)
		got, scale := r.N, h
		if bent {
			// Positive moments put the upper face in tension: minus w,xx.
			got, scale = vec3.Scale(r.M, -1), h*h*h/12
		}
		got = inGlobal(a.sys.Shells[e].Frame(), got)
		for k := range got {
			worst = max(worst, math.Abs(got[k]/scale-want[k])/size)
		}
	}
	return worst
}

// planeStress is Q(turn) eps with Q of the grain's axes, MPa: E1/(1 - nu12 nu21)
// and so on, strains and stresses turned by hand.
func planeStress(w materials.Orthotropic, turn float64, eps [3]float64) [3]float64 {
	s, c := math.Sincos(turn * degree)
	e1 := c*c*eps[0] + s*s*eps[1] + s*c*eps[2]
	e2 := s*s*eps[0] + c*c*eps[1] - s*c*eps[2]
	g := 2*s*c*(eps[1]-eps[0]) + (c*c-s*s)*eps[2]
	q := 1 - w.NuLR*w.NuLR*w.ER/w.EL
	s1, s2, t := (w.EL*e1+w.NuLR*w.ER*e2)/q, (w.NuLR*w.ER*e1+w.ER*e2)/q, w.GLR*g
	return [3]float64{c*c*s1 + s*s*s2 - 2*s*c*t, s*s*s1 + c*c*s2 + 2*s*c*t, s*c*(s1-s2) + (c*c-s*s)*t}
}

// inGlobal turns xx, yy, xy of a facet frame that lies in the xy plane.
func inGlobal(frame [3][3]float64, v [3]float64) [3]float64 {
	c, s := frame[0][0], frame[0][1]
	return [3]float64{c*c*v[0] + s*s*v[1] - 2*s*c*v[2], s*s*v[0] + c*c*v[1] + 2*s*c*v[2], s*c*(v[0]-v[1]) + (c*c-s*s)*v[2]}
}

// shellLaw bends one triangle of the test wood, 4 mm thick, to the curvatures
// w = x²/2, y²/2 and xy, and reads its moments, N mm: M = -D kappa.
func shellLaw() (Readings, error) {
	p := &panel{}
	p.Nodes = append(p.Nodes, node(0, 0, 4), node(6, 1, 4), node(2, 5, 4))
	p.make([][3]int32{{0, 1, 2}}, makeup{wood: reference.TestWood()})
	if err := p.build(); err != nil {
		return nil, err
	}
	bend := func(field func(x, y float64) (w, wx, wy float64)) [3]float64 {
		var v [18]float64
		for i, n := range p.Nodes {
			w, wx, wy := field(n.P[0], n.P[1])
			v[6*i+2], v[6*i+3], v[6*i+4] = w, wy, -wx
		}
		return vec3.Scale(inGlobal(p.sys.Shells[0].Frame(), p.sys.Shells[0].Resultants(&v).M), -1)
	}
	along := bend(func(x, _ float64) (w, wx, wy float64) { return x * x / 2, x, 0 })
	across := bend(func(_, y float64) (w, wx, wy float64) { return y * y / 2, 0, y })
	twist := bend(func(x, y float64) (w, wx, wy float64) { return x * y, y, x })
	return Readings{"D11": along[0], "D12": along[1], "D21": across[0], "D22": across[1], "D66": twist[2] / 2}, nil
}
