package problem

import (
	"fmt"
	"math"

	"archload/cases/verify/reference"
	"archload/fem/vec3"
	"archload/materials"
)

// rotations turns the test wood's compliance in its LR plane and reads the
// modulus along the new first axis, MPa, and it reads a strength criterion.
func rotations() (Readings, error) {
	out := Readings{}
	c := reference.TestWood().Compliance()
	for _, deg := range []float64{5, 10, 15, 30, 45} {
		s, co := math.Sincos(deg * degree)
		out[fmt.Sprintf("E %g", deg)] = 1 / c.Turned(materials.Axes{{co, s, 0}, {-s, co, 0}, {0, 0, 1}})[0][0]
	}
	st := materials.Strength{MOR: 65, CompressionL: 35.7, TensionPerp: 2.6, CompressionPerp: 3, ShearL: 6.7}.Limits()
	out["Hoffman"], out["Hoffman factor"] = materials.Hoffman([3]float64{20, -1.5, 3}, st)
	return out, nil
}

// carvedStrip is a strip 200 x 20 x 5 mm whose grain (or, across the grain,
// whose rings) leaves its plane at 15 degrees, pulled with 1 MPa and bent with
// 1 N mm/mm at its ends: the strain and the curvature over those of the off-axis
// formula.
func carvedStrip(d Density) (Readings, error) {
	out := Readings{}
	for _, c := range []struct {
		name  string
		along bool
	}{{"grain", true}, {"rings", false}} {
		a, err := stripOf(d, c.along, true)
		if err != nil {
			return nil, err
		}
		b, err := stripOf(d, c.along, false)
		if err != nil {
			return nil, err
		}
		flex := offAxis(c.along)
		out[c.name+" pulled"] = a.move(a.near(200, 10, 0), 0) / (200 * flex)
		// Held at x = 0, w at the end is kappa l²/2 of pure bending; the sign
		// is that of the moment about y.
		out[c.name+" bent"] = math.Abs(b.move(b.near(200, 10, 0), 4)) / (200 * 12 * flex / 125)
	}
	return out, nil
}

// stripAngle is how far the grain leaves the strip's plane.
const stripAngle = 15 * degree

// offAxis is 1/E at the angle: c⁴/E1 + s⁴/E3 + s²c² (1/G13 - 2 nu13/E1).
func offAxis(along bool) float64 {
	w := reference.TestWood()
	e1, g, nu := w.EL, w.GLT, w.NuLT
	if !along {
		e1, g, nu = w.ER, w.GRT, w.NuRT
	}
	s, c := math.Sincos(stripAngle)
	return c*c*c*c/e1 + s*s*s*s/w.ET + s*s*c*c*(1/g-2*nu/e1)
}

// stripOf solves the strip, held at the corner (0, 0) without constraint.
func stripOf(d Density, along, pulled bool) (*solved, error) {
	s, c := math.Sincos(stripAngle)
	a, b := [3]float64{c, 0, s}, [3]float64{-s, 0, c}
	axes := materials.Axes{a, {0, 1, 0}, b}
	if !along {
		axes = materials.Axes{{0, -1, 0}, a, b}
	}
	p := newPanel(d, d.N, max(2, d.N/4), flat(200, 20), makeup{h: 5, wood: reference.TestWood(), axes: axes})
	p.hold("xyzXYZ", func(x [3]float64) bool { return x[0] < 1e-9 && x[1] < 1e-9 })
	if err := p.build(); err != nil {
		return nil, err
	}
	for _, end := range []float64{0, 200} {
		sign := end/100 - 1
		if pulled {
			p.pull(On(0, end), func(_, out [3]float64) [3]float64 { return out })
			continue
		}
		p.edges(On(0, end), func(i, j int32, _ float64) {
			m := sign * vec3.Norm(vec3.Sub(p.Nodes[j].P, p.Nodes[i].P)) / 2
			p.force(int(i), 4, m)
			p.force(int(j), 4, m)
		})
	}
	return p.solve()
}
