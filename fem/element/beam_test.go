package element

import (
	"errors"
	"math"
	"testing"

	"archload/fem/vec3"

	"gonum.org/v1/gonum/mat"
)

func spruceRib() Rectangle { return Rectangle{Width: 6, Height: 12, E: 10000, Gxy: 610, Gxz: 640} }

// chain returns n beams in a row over length l, turned by q, on arms a.
func chain(t *testing.T, n int, l float64, a [3]float64) ([]Beam, []([3]float64)) {
	t.Helper()
	q := rotation(0.7, 0.4, -1.2)
	x := make([][3]float64, n+1)
	for i := range x {
		x[i] = vec3.Sub(turn(q, [3]float64{l * float64(i) / float64(n), 0, 0}), turn(q, a))
	}
	beams := make([]Beam, n)
	arm := turn(q, a)
	for i := range beams {
		b, err := NewBeam(BeamInput{
			X: [2][3]float64{x[i], x[i+1]}, Offset: [2][3]float64{arm, arm},
			Up: turn(q, [3]float64{0.3, 0, 1}), Section: spruceRib(),
		})
		if err != nil {
			t.Fatal(err)
		}
		beams[i] = b
	}
	return beams, x
}

// solveChain holds the first node, loads the last one with a force and a moment
// (beam axes, acting on the axis), and returns all displacements.
func solveChain(t *testing.T, beams []Beam, arm, force, moment [3]float64) []float64 {
	t.Helper()
	n := 6 * (len(beams) + 1)
	k := mat.NewSymDense(n, nil)
	var ke [144]float64
	for i := range beams {
		beams[i].StiffnessTo(&ke)
		scatter(ke[:], []int{i, i + 1}, func(a, b int, v float64) { k.SetSym(a, b, k.At(a, b)+v) })
	}
	for i := range 6 {
		for j := range n {
			k.SetSym(i, j, 0)
		}
		k.SetSym(i, i, 1)
	}
	f := mat.NewVecDense(n, nil)
	m := vec3.Add(moment, vec3.Cross(arm, force))
	for d := range 3 {
		for e := range 3 {
			f.SetVec(n-6+d, f.AtVec(n-6+d)+beams[0].axes[e][d]*force[e])
			f.SetVec(n-3+d, f.AtVec(n-3+d)+beams[0].axes[e][d]*m[e])
		}
	}
	var c mat.Cholesky
	if !c.Factorize(k) {
		t.Fatal("beam stiffness is not positive definite")
	}
	x := mat.NewVecDense(n, nil)
	if err := c.SolveVecTo(x, f); err != nil {
		if !errors.As(err, new(mat.Condition)) { // a large condition number alone is no fault
			t.Fatal(err)
		}
	}
	return x.RawVector().Data
}

// TestBeamCantilever: a cantilever is exact at its nodes for any number of
// elements, in any attitude, on rigid arms. Source: Timoshenko beam theory,
// tip F L³/(3 E I) + F L/(k G A), slope F L²/(2 E I), and so on.
func TestBeamCantilever(t *testing.T) {
	const l = 90.0
	arm := [3]float64{0, 2, -8}
	r := spruceRib().Rigidity()
	for _, c := range []struct {
		name          string
		force, moment [3]float64 // N, N mm
		want          [6]float64 // of the axis, beam axes: mm, rad
	}{
		{"pull", [3]float64{5, 0, 0}, [3]float64{}, [6]float64{5 * l / r.EA}},
		{"side load", [3]float64{0, 5, 0}, [3]float64{},
			[6]float64{1: 5*l*l*l/(3*r.EIz) + 5*l/r.GAy, 5: 5 * l * l / (2 * r.EIz)}},
		{"lift", [3]float64{0, 0, 5}, [3]float64{},
			[6]float64{2: 5*l*l*l/(3*r.EIy) + 5*l/r.GAz, 4: -5 * l * l / (2 * r.EIy)}},
		{"torque", [3]float64{}, [3]float64{7, 0, 0}, [6]float64{3: 7 * l / r.GJ}},
		{"bending moment", [3]float64{}, [3]float64{0, 70, 0},
			[6]float64{2: -70 * l * l / (2 * r.EIy), 4: 70 * l / r.EIy}},
	} {
		for _, n := range []int{1, 2, 7} {
			beams, _ := chain(t, n, l, arm)
			u := solveChain(t, beams, arm, c.force, c.moment)
			got := axisMotion(&beams[0], u[6*n:], arm)
			for i := range got {
				if math.Abs(got[i]-c.want[i]) > 1e-8*math.Abs(c.want[i])+1e-11 {
					t.Errorf("%s, %d elements: motion %d = %.10g, want %.10g", c.name, n, i, got[i], c.want[i])
				}
			}
		}
	}
}

// axisMotion returns displacement and rotation of the axis in beam axes.
func axisMotion(b *Beam, u []float64, arm [3]float64) (m [6]float64) {
	for k := range 3 {
		m[k] = vec3.Dot(b.axes[k], [3]float64{u[0], u[1], u[2]})
		m[3+k] = vec3.Dot(b.axes[k], [3]float64{u[3], u[4], u[5]})
	}
	lever := vec3.Cross([3]float64{m[3], m[4], m[5]}, arm)
	for k := range 3 {
		m[k] += lever[k]
	}
	return m
}

// TestBeamForces: section forces of a cantilever follow from statics, and the
// energy is half the load's work.
func TestBeamForces(t *testing.T) {
	const l = 90.0
	arm := [3]float64{0, 0, -8}
	beams, _ := chain(t, 3, l, arm)
	u := solveChain(t, beams, arm, [3]float64{11, 3, 5}, [3]float64{7, 0, 0})
	var v [12]float64
	copy(v[:], u[6:18]) // middle element, from 30 to 60
	f := beams[1].Forces(&v)
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"N", f.N, 11}, {"Vy", f.Vy, 3}, {"Vz", f.Vz, 5}, {"T", f.T, 7},
		{"My first", f.My[0], -5 * 60}, {"My middle", f.My[1], -5 * 45}, {"My second", f.My[2], -5 * 30},
		{"Mz first", f.Mz[0], 3 * 60}, {"Mz second", f.Mz[2], 3 * 30},
	} {
		within(t, c.name, c.got, c.want, 1e-8)
	}
	var sum float64
	for i := range beams {
		copy(v[:], u[6*i:])
		sum += beams[i].Energy(&v)
	}
	m := axisMotion(&beams[0], u[18:], arm)
	within(t, "energy", sum, (11*m[0]+3*m[1]+5*m[2]+7*m[3])/2, 1e-9)
}

// TestBeamSpectrum: symmetric, six rigid modes, the rest elastic.
func TestBeamSpectrum(t *testing.T) {
	beams, _ := chain(t, 1, 6, [3]float64{1, 2, -8})
	var k [144]float64
	beams[0].StiffnessTo(&k)
	for i := range 12 {
		for j := range i {
			if k[12*i+j] != k[12*j+i] {
				t.Errorf("K[%d][%d] = %g, K[%d][%d] = %g, want the same bits", i, j, k[12*i+j], j, i, k[12*j+i])
			}
		}
	}
	v := eigenvalues(t, mat.NewSymDense(12, k[:]))
	if math.Abs(v[5]) > 1e-10*v[11] || v[6] < 1e-6*v[11] {
		t.Errorf("eigenvalues 6 and 7 of 12 are %.3g and %.3g of the largest, want 0 and not 0", v[5]/v[11], v[6]/v[11])
	}
}

// TestRectTorsion: St Venant torsion of rectangles.
func TestRectTorsion(t *testing.T) {
	for _, c := range []struct {
		name      string
		got, want float64
		tol       float64
	}{
		{"square, J/a4 (0.1406, Timoshenko and Goodier)", rectTorsion(3, 3) / 81, 0.140577, 1e-5},
		{"2:1, J/(a b3) (0.229, Timoshenko and Goodier)", rectTorsion(4, 2) / 32, 0.228682, 1e-5},
		{"equal moduli", Rectangle{4, 2, 1, 7, 7}.TorsionRigidity(), 7 * rectTorsion(4, 2), 1e-12},
		{"flat strip, Gxy b h3/3", Rectangle{4000, 2, 1, 5, 50}.TorsionRigidity(), 5 * 4000 * 8 / 3.0, 2e-3},
		{"upright strip, Gxz h b3/3", Rectangle{2, 4000, 1, 5, 50}.TorsionRigidity(), 50 * 4000 * 8 / 3.0, 2e-3},
	} {
		within(t, c.name, c.got, c.want, c.tol)
	}
}

func TestBeamRefuses(t *testing.T) {
	good := BeamInput{X: [2][3]float64{{}, {5, 0, 0}}, Up: [3]float64{0, 0, 1}, Section: spruceRib()}
	for _, c := range []struct {
		name  string
		spoil func(in *BeamInput)
	}{
		{"no length", func(in *BeamInput) { in.X[1] = in.X[0] }},
		{"up along the axis", func(in *BeamInput) { in.Up = [3]float64{2, 0, 0} }},
		{"up zero", func(in *BeamInput) { in.Up = [3]float64{} }},
		{"no width", func(in *BeamInput) { in.Section = Rectangle{Height: 12, E: 1, Gxy: 1, Gxz: 1} }},
		{"modulus not a number", func(in *BeamInput) { in.Section = Rectangle{Width: 6, Height: 12, E: 1, Gxy: 1, Gxz: math.NaN()} }},
	} {
		in := good
		c.spoil(&in)
		if _, err := NewBeam(in); err == nil {
			t.Errorf("%s: want an error, found none", c.name)
		}
	}
	if _, err := NewBeam(good); err != nil {
		t.Error(err)
	}
}

// TestRectangleOutline: width, area and second moment read from the corners are
// those that the section tells.
func TestRectangleOutline(t *testing.T) {
	r := spruceRib()
	within(t, "width", Width(r), r.Width, 1e-15)
	ring := r.Outline()
	area, iy := 0.0, 0.0
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		c := p[0]*q[1] - q[0]*p[1]
		area += c / 2
		iy += c * (p[1]*p[1] + p[1]*q[1] + q[1]*q[1]) / 12
	}
	within(t, "area", area, r.Area(), 1e-14)
	within(t, "second moment", iy, r.Iy(), 1e-14)
}
