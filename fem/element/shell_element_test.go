package element

import (
	"math"
	"testing"

	"archload/fem/vec3"
	"archload/materials"

	"gonum.org/v1/gonum/mat"
)

// oneShell returns a single skew triangle of leg l in a general attitude.
func oneShell(t testing.TB, w materials.Orthotropic, l, h float64, normals bool) Shell {
	t.Helper()
	q := rotation(0.4, -0.3, 0.8)
	in := ShellInput{H: h, Wood: w.Compliance(), Axes: materials.Axes(rotation(0.2, 0.5, 0.3))}
	for i, p := range [3][3]float64{{0, 0, 0}, {l, 0.1 * l, 0}, {0.3 * l, 0.8 * l, 0}} {
		in.X[i] = turn(q, p)
		if normals {
			n := [3]float64{0.2 * float64(i-1), 0.3 - 0.2*float64(i*i), 1}
			in.N[i] = turn(q, vec3.Scale(n, 1/vec3.Norm(n)))
		}
	}
	s, err := NewShell(in)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func eigenvalues(t *testing.T, k *mat.SymDense) []float64 {
	t.Helper()
	var e mat.EigenSym
	if !e.Factorize(k, false) {
		t.Fatal("eigenvalues do not converge")
	}
	return e.Values(nil)
}

func stiffnessOf(s *Shell) *mat.SymDense {
	var k [324]float64
	s.StiffnessTo(&k)
	return mat.NewSymDense(18, append([]float64(nil), k[:]...))
}

func TestShellStiffnessSymmetric(t *testing.T) {
	s := oneShell(t, tw1(), 6, 4, true)
	var k [324]float64
	s.StiffnessTo(&k)
	for i := range 18 {
		for j := range i {
			if k[18*i+j] != k[18*j+i] {
				t.Errorf("K[%d][%d] = %g, K[%d][%d] = %g, want the same bits", i, j, k[18*i+j], j, i, k[18*j+i])
			}
		}
	}
}

// TestShellSpectrum: six rigid modes, and no soft seventh. In thin triangles
// the seventh is the twist row's; it must reach a tenth of the smallest
// eigenvalue of the curvature part. (In thick ones the seventh is a drilling mode
// of the membrane, of other dimension, and far from the largest by nature.)
func TestShellSpectrum(t *testing.T) {
	for _, c := range []struct {
		name    string
		wood    materials.Orthotropic
		l, h    float64
		normals bool
		soft    float64 // least 7th eigenvalue over the largest
	}{
		{"isotropic thick", isotropic(10000, 0.3), 6, 4, false, 1e-4},
		{"isotropic", isotropic(10000, 0.3), 6, 0.3, false, 0},
		{"isotropic thin", isotropic(10000, 0.3), 6, 0.03, false, 0},
		{"carved wood thick, curved", tw1(), 6, 4, true, 1e-6},
		{"carved wood", tw1(), 6, 0.3, false, 0},
		{"carved wood, curved", tw1(), 6, 0.3, true, 0},
		{"carved wood thin, curved", tw1(), 6, 0.03, true, 0},
	} {
		s := oneShell(t, c.wood, c.l, c.h, c.normals)
		v := eigenvalues(t, stiffnessOf(&s))
		for i := range 6 {
			if math.Abs(v[i]) > 1e-10*v[17] {
				t.Errorf("%s: eigenvalue %d is %.3g of the largest, want 0 within 1e-10", c.name, i+1, v[i]/v[17])
			}
		}
		want := c.soft * v[17]
		if want == 0 {
			want = 0.1 * smallestBending(t, &s)
		}
		if v[6] < want {
			t.Errorf("%s: 7th eigenvalue %.4g, want at least %.4g", c.name, v[6], want)
		}
	}
}

// smallestBending returns the smallest non-zero eigenvalue of the curvature part.
func smallestBending(t *testing.T, s *Shell) float64 {
	b := *s
	b.stretch, b.drill, b.twist = [5][5]float64{}, [3][3]float64{}, 0
	v := eigenvalues(t, stiffnessOf(&b))
	return v[15] // three curvatures: the three largest
}

// TestShellRigidPatch: six zero modes of a distorted curved patch of carved wood.
func TestShellRigidPatch(t *testing.T) {
	s := surfaceMesh(4, 3, 0.22, func(u, v float64) (x, n [3]float64) {
		x = [3]float64{40 * u, 30 * v, 5 * u * v}
		n = [3]float64{-0.2 * v, 0.1 * u, 1}
		return x, vec3.Scale(n, 1/vec3.Norm(n))
	})
	s.h, s.wood = 4, tw1()
	s.build(t)
	v := eigenvalues(t, s.dense())
	for i := range 6 {
		if math.Abs(v[i]) > 1e-10*v[len(v)-1] {
			t.Errorf("eigenvalue %d is %.3g of the largest, want 0 within 1e-10", i+1, v[i]/v[len(v)-1])
		}
	}
	if v[6] < 1e-7*v[len(v)-1] {
		t.Errorf("7th eigenvalue is %.3g of the largest: a spurious mode", v[6]/v[len(v)-1])
	}
}

// TestShellEnergySum: the three energies sum to 1/2 u^T K u.
func TestShellEnergySum(t *testing.T) {
	s := oneShell(t, tw1(), 6, 4, true)
	var u [18]float64
	d := dice(3)
	for i := range u {
		u[i] = d.next()
	}
	k := stiffnessOf(&s)
	v := mat.NewVecDense(18, u[:])
	m, b, q := s.Energy(&u)
	within(t, "energy", m+b+q, 0.5*mat.Inner(v, k, v), 1e-12)
}

// TestShellInPlaneBending: a rectangle of two triangles that takes the exact
// displacements of pure in-plane bending, u = -k x y, v = k x²/2 + nu k y²/2,
// theta = k x, stores the exact energy E I k² L/2, along and across the grain.
// Source: Felippa, CMAME 192 (2003), the property that defines beta0.
func TestShellInPlaneBending(t *testing.T) {
	const b, k = 10.0, 1e-3 // mm, 1/mm
	for _, aspect := range []float64{0.25, 0.5, 1, 2, 4} {
		for _, across := range []bool{false, true} {
			l := b * aspect
			s := surfaceMesh(1, 1, 0, func(u, v float64) (x, n [3]float64) {
				return [3]float64{l * (u - 0.5), b * (v - 0.5), 0}, n
			})
			s.h, s.wood = 1, tw1()
			e, nu := s.wood.EL, s.wood.NuLR
			if across {
				s.axes = materials.Axes{{0, 1, 0}, {-1, 0, 0}, {0, 0, 1}}
				e, nu = s.wood.ER, s.wood.NuLR*s.wood.ER/s.wood.EL
			}
			s.build(t)
			u := make([]float64, s.dofs())
			for i, p := range s.x {
				u[6*i] = -k * p[0] * p[1]
				u[6*i+1] = k * (p[0]*p[0] + nu*p[1]*p[1]) / 2
				u[6*i+5] = k * p[0]
			}
			within(t, "energy", s.energy(u), e*b*b*b/12*k*k*l/2, 1e-10)
		}
	}
}
