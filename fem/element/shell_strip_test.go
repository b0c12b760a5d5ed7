package element

import (
	"math"
	"testing"

	"archload/fem/vec3"
	"archload/materials"
)

// TestShellInclinedStrip: a strip 200 x 20 x 5 mm cut at an angle to the grain
// (in the LT plane) or, across the grain, to the rings (in the RT plane), pulled
// and bent at its ends. Extension and curvature follow from the 3D compliance:
// 1/E(a) = c⁴/E1 + s⁴/E3 + s²c² (1/G13 - 2 nu13/E1). Source: closed form of the
// turned compliance, any text on anisotropic elasticity; exact for pure states.
func TestShellInclinedStrip(t *testing.T) {
	wood := tw1()
	for _, along := range []bool{true, false} {
		e1, g13, nu13 := wood.EL, wood.GLT, wood.NuLT
		if !along {
			e1, g13, nu13 = wood.ER, wood.GRT, wood.NuRT
		}
		for _, deg := range []float64{5, 10, 15, 20} {
			sn, cs := math.Sincos(deg * math.Pi / 180)
			flex := cs*cs*cs*cs/e1 + sn*sn*sn*sn/wood.ET + sn*sn*cs*cs*(1/g13-2*nu13/e1)
			s := strip(t, wood, sn, cs, along)
			sigma, moment := 1.0, 1.0 // MPa; N mm/mm
			u := s.solve(t, s.pull(sigma), s.rigid(), nil)
			b := s.solve(t, s.bend(moment), s.rigid(), nil)
			for e := range s.sh {
				v, w := s.local(e, u), s.local(e, b)
				fr := s.sh[e].Frame()
				within(t, "strip strain", along2(fr, s.sh[e].Strains(&v).Membrane), flex*sigma, 1e-8)
				within(t, "strip curvature", along2(fr, s.sh[e].Strains(&w).Curvature), 12*flex*moment/(125), 1e-8)
			}
			checkStripStress(t, s, b, sn, cs, along, 6*moment/25)
		}
	}
}

// checkStripStress compares the face stress of the bent strip in wood axes with
// sigma turned by hand: the rolling shear RT (or LT) is sigma s c.
func checkStripStress(t *testing.T, s *shellMesh, u []float64, sn, cs float64, along bool, sigma float64) {
	t.Helper()
	v := s.local(3, u)
	got := s.sh[3].Stress(&v, 1)
	want := [6]float64{sigma * cs * cs, 0, sigma * sn * sn, 0, -sigma * sn * cs, 0}
	if !along {
		want = [6]float64{0, sigma * cs * cs, sigma * sn * sn, -sigma * sn * cs, 0, 0}
	}
	for i := range got {
		if math.Abs(got[i]-want[i]) > 1e-8*sigma {
			t.Errorf("face stress %d: got %.8g MPa, want %.8g MPa", i, got[i], want[i])
		}
	}
}

// along2 returns the strain along global x from xx, yy, xy of a facet frame
// whose normal is z.
func along2(frame [3][3]float64, e [3]float64) float64 {
	c, s := frame[0][0], frame[1][0]
	return c*c*e[0] + s*s*e[1] + c*s*e[2]
}

// strip returns the distorted strip, its long axis along x, with L (or R)
// turned out of it about y.
func strip(t *testing.T, wood materials.Orthotropic, sn, cs float64, along bool) *shellMesh {
	s := surfaceMesh(16, 2, 0.22, func(u, v float64) (x, n [3]float64) {
		return [3]float64{200 * u, 20 * v, 0}, n
	})
	s.h, s.wood = 5, wood
	a, b := [3]float64{cs, 0, sn}, [3]float64{-sn, 0, cs}
	s.axes = materials.Axes{a, {0, 1, 0}, b}
	if !along {
		s.axes = materials.Axes{{0, -1, 0}, a, b}
	}
	s.build(t)
	return s
}

// rigid holds the six rigid motions, statically determinate.
func (s *shellMesh) rigid() map[int]float64 {
	return map[int]float64{0: 0, 1: 0, 2: 0, 3: 0, 4: 0, 5: 0}
}

// ends calls f for each edge at x = 0 and x = 200, nodes i, j anticlockwise.
func (s *shellMesh) ends(f func(i, j int, sign float64)) {
	for _, t := range s.tris {
		for k := range 3 {
			i, j := t[k], t[(k+1)%3]
			for _, end := range [2]float64{0, 200} {
				if s.x[i][0] == end && s.x[j][0] == end {
					f(i, j, end/100-1)
				}
			}
		}
	}
}

// pull returns the forces of a uniform end traction sigma, MPa. The drilling
// moments +-alpha_b sigma h L²/12 belong to it: the membrane's mean strain
// counts the bow that drilling rotations give an edge.
func (s *shellMesh) pull(sigma float64) []float64 {
	f := make([]float64, s.dofs())
	s.ends(func(i, j int, sign float64) {
		l := vec3.Norm(vec3.Sub(s.x[j], s.x[i]))
		f[6*i] += sign * sigma * s.h * l / 2
		f[6*j] += sign * sigma * s.h * l / 2
		m := andesAlpha * sigma * s.h * l * l / 12
		f[6*j+5] += m
		f[6*i+5] -= m
	})
	return f
}

// bend returns the forces of a uniform end moment m, N mm/mm.
func (s *shellMesh) bend(m float64) []float64 {
	f := make([]float64, s.dofs())
	s.ends(func(i, j int, sign float64) {
		l := vec3.Norm(vec3.Sub(s.x[j], s.x[i]))
		f[6*i+4] += sign * m * l / 2
		f[6*j+4] += sign * m * l / 2
	})
	return f
}
