package element

import (
	"math"
	"testing"

	"archload/fem/vec3"
)

// moving returns the movements of nodes under the rigid motion u + theta x r.
func moving(nodes [][3]float64, u, theta [3]float64) []float64 {
	var out []float64
	for _, p := range nodes {
		v := vec3.Add(u, vec3.Cross(theta, p))
		out = append(out, v[0], v[1], v[2], theta[0], theta[1], theta[2])
	}
	return out
}

// quadratic is uᵀ m u.
func quadratic(m, u []float64) float64 {
	sum := 0.0
	for i, a := range u {
		for j, b := range u {
			sum += a * m[i*len(u)+j] * b
		}
	}
	return sum
}

// The rule integrates the monomials of degree 4 and less over a triangle of area 1:
// a! b! c! 2 / (a+b+c+2)!.
func TestQuarticRule(t *testing.T) {
	factorial := func(n int) float64 { return math.Gamma(float64(n + 1)) }
	for a := range 5 {
		for b := range 5 - a {
			for c := range 5 - a - b {
				got := 0.0
				for _, p := range quartic {
					got += p.weight * math.Pow(p.l[0], float64(a)) * math.Pow(p.l[1], float64(b)) * math.Pow(p.l[2], float64(c))
				}
				want := 2 * factorial(a) * factorial(b) * factorial(c) / factorial(a+b+c+2)
				if math.Abs(got-want) > 1e-14 {
					t.Errorf("degree %d %d %d: %.16g, want %.16g", a, b, c, got, want)
				}
			}
		}
	}
}

// A rigid motion of a triangle has the energy of a flat plate: mass m = rho h A at its
// centre, and about that the second moments of the plate of thickness h, of which that of
// the drilling rotation lacks the share of the thickness (none for a flat plate).
func TestShellMassRigid(t *testing.T) {
	in := bentShell()
	s, err := NewShell(in)
	if err != nil {
		t.Fatal(err)
	}
	const density = 417.0
	var m [324]float64
	s.MassTo(&m, density)
	mass := density * 1e-12 * in.H * s.Area()
	centre := vec3.Scale(vec3.Add(vec3.Add(in.X[0], in.X[1]), in.X[2]), 1.0/3)
	n := s.Frame()[2]
	for _, c := range []struct{ u, theta [3]float64 }{
		{[3]float64{1, 0, 0}, [3]float64{}}, {[3]float64{0.3, -2, 0.7}, [3]float64{}},
		{[3]float64{}, [3]float64{1, 0, 0}}, {[3]float64{}, [3]float64{0, 1, 0}}, {[3]float64{}, [3]float64{0, 0, 1}},
		{[3]float64{5, 1, -3}, [3]float64{0.2, -0.4, 0.9}},
	} {
		// sum over the corners and the centre: a triangle's second moments are those of masses
		// m/12 at the corners and 3m/4 at the centre.
		at := func(p [3]float64) float64 {
			v := vec3.Add(c.u, vec3.Cross(c.theta, p))
			return vec3.Dot(v, v)
		}
		want := mass * (at(in.X[0])/12 + at(in.X[1])/12 + at(in.X[2])/12 + 3*at(centre)/4)
		turn := vec3.Cross(c.theta, n)
		want += mass * in.H * in.H / 12 * vec3.Dot(turn, turn)
		got := quadratic(m[:], moving(in.X[:], c.u, c.theta))
		if math.Abs(got-want) > 1e-12*want {
			t.Errorf("u %v theta %v: twice the energy %.15g, want %.15g", c.u, c.theta, got, want)
		}
	}
}

// bentShell is a triangle anywhere in space.
func bentShell() ShellInput {
	return ShellInput{X: [3][3]float64{{1, 2, 3}, {9, 3, 4.5}, {3, 8, 1}}, H: 2.3, Wood: tw1().Compliance(), Axes: xyzAxes}
}

// A rigid motion of a beam on arms has the energy of a bar: its mass along the axis and,
// about the axis, the section's second moments.
func TestBeamMassRigid(t *testing.T) {
	sec := Rectangle{Width: 8, Height: 12, E: 10000, Gxy: 600, Gxz: 700}
	in := BeamInput{X: [2][3]float64{{0, 0, 0}, {50, 20, 5}}, Up: [3]float64{0, 0, 1}, Section: sec,
		Offset: [2][3]float64{{1, 2, -9}, {0.5, 1, -11}}}
	b, err := NewBeam(in)
	if err != nil {
		t.Fatal(err)
	}
	const mass = 3e-6
	var m [144]float64
	b.MassTo(&m, mass)
	p, q := vec3.Add(in.X[0], in.Offset[0]), vec3.Add(in.X[1], in.Offset[1])
	ax := b.Axes()
	ry, rz := 12.0*12/12, 8.0*8/12
	for _, c := range []struct{ u, theta [3]float64 }{
		{[3]float64{1, 0, 0}, [3]float64{}}, {[3]float64{0.3, -2, 0.7}, [3]float64{}},
		{[3]float64{}, [3]float64{1, 0, 0}}, {[3]float64{}, [3]float64{0, 1, 0}}, {[3]float64{}, [3]float64{0, 0, 1}},
		{[3]float64{5, 1, -3}, [3]float64{0.2, -0.4, 0.9}},
	} {
		v0, v1 := vec3.Add(c.u, vec3.Cross(c.theta, p)), vec3.Add(c.u, vec3.Cross(c.theta, q))
		want := mass / 3 * (vec3.Dot(v0, v0) + vec3.Dot(v0, v1) + vec3.Dot(v1, v1))
		tx, ty, tz := vec3.Dot(c.theta, ax[0]), vec3.Dot(c.theta, ax[1]), vec3.Dot(c.theta, ax[2])
		want += mass * ((ry+rz)*tx*tx + ry*ty*ty + rz*tz*tz)
		got := quadratic(m[:], moving(in.X[:], c.u, c.theta))
		if math.Abs(got-want) > 1e-12*want {
			t.Errorf("u %v theta %v: twice the energy %.15g, want %.15g", c.u, c.theta, got, want)
		}
	}
}
