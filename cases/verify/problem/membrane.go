package problem

import (
	"math"

	"archload/cases/verify/reference"
	"archload/fem/vec3"
)

// cook is Cook's tapered panel, t 1, E 1, nu 1/3, held on the left, with a unit
// shear force on the right.
func cook(d Density) (Readings, error) {
	p := newPanel(d, d.N, d.N, func(u, v float64) (x, n [3]float64) {
		return [3]float64{48 * u, 44*u + v*(44-28*u), 0}, n
	}, makeup{h: 1, wood: reference.Isotropic(1, 1.0/3)})
	p.hold("zXY", everywhere)
	p.hold("xy", On(0, 0))
	if err := p.build(); err != nil {
		return nil, err
	}
	p.pull(On(0, 48), func(_, _ [3]float64) [3]float64 { return [3]float64{0, 1.0 / 16, 0} })
	a, err := p.solve()
	if err != nil {
		return nil, err
	}
	return Readings{"rise": a.move(p.near(48, 52, 0), 1)}, nil
}

// ellipticMembrane is NAFEMS LE1: a quarter of the ring between the ellipses
// (2, 1) and (3.25, 2.75) m, t 0.1 m, E 210 GPa, nu 0.3, 10 MPa outward on the
// outer edge; in m and MPa. The rows are closer together toward the inner edge.
func ellipticMembrane(d Density) (Readings, error) {
	p := newPanel(d, d.N, d.N, func(u, v float64) (x, n [3]float64) {
		s, c := math.Sincos(math.Pi / 2 * v)
		u *= 0.4 + 0.6*u
		return [3]float64{(2 + 1.25*u) * c, (1 + 1.75*u) * s, 0}, n
	}, makeup{h: 0.1, wood: reference.Isotropic(210e3, 0.3)})
	p.hold("zXY", everywhere)
	p.hold("yZ", On(1, 0))
	p.hold("xZ", func(x [3]float64) bool { return math.Abs(x[0]) < 1e-9 })
	if err := p.build(); err != nil {
		return nil, err
	}
	p.pull(func(x [3]float64) bool {
		return math.Abs(x[0]*x[0]/(3.25*3.25)+x[1]*x[1]/(2.75*2.75)-1) < 1e-9
	}, func(_, out [3]float64) [3]float64 { return vec3.Scale(out, 10) })
	a, err := p.solve()
	if err != nil {
		return nil, err
	}
	return Readings{"stress": a.symmetricStress(0)}, nil
}

// symmetricStress recovers the stress yy at a node on the axis of symmetry
// y = 0: the fit is even in y.
func (a *solved) symmetricStress(node int) float64 {
	values := func(e int, v *[18]float64) []float64 { return []float64{a.sys.Shells[e].Stress(v, 0)[1]} }
	return a.read(node, func(x, y float64) []float64 { return []float64{1, x, x * x, x * x * x, y * y, x * y * y} }, values)[0]
}

// cylinderPatch is NAFEMS LE2: 30 degrees of a cylinder, R 1 m, length 0.5 m,
// t 0.01 m, E 210 GPa, nu 0.3, one straight edge built in, the curved edges on
// planes of symmetry. It reads the hoop stress of the outer surface in the
// middle under (1) an edge moment of 1 kN m/m and (2) a pressure of 0.6 MPa
// with 60 MPa on the other straight edge; in m and MPa.
func cylinderPatch(d Density) (Readings, error) {
	p := newPanel(d, d.N, d.N, cylinder(1, 30*degree, 0.5), makeup{h: 0.01, wood: reference.Isotropic(210e3, 0.3), pressed: true})
	p.hold("xyzXYZ", On(0, 0))
	p.hold("yXZ", On(1, 0))
	p.hold("yXZ", On(1, 0.5))
	if err := p.build(); err != nil {
		return nil, err
	}
	s, c := math.Sincos(30 * degree)
	middle := p.near(math.Sin(15*degree), 0.25, math.Cos(15*degree))
	out := Readings{}
	for _, name := range []string{"moment", "pressure"} {
		clear(p.load)
		p.edges(On(0, s), func(i, j int32, h float64) {
			half := vec3.Norm(vec3.Sub(p.Nodes[j].P, p.Nodes[i].P)) / 2
			for _, n := range []int{int(i), int(j)} {
				if name == "moment" {
					p.force(n, 4, 1e-3*half) // MN, tension outside
					continue
				}
				p.force(n, 0, 60*h*half*c)
				p.force(n, 2, -60*h*half*s)
			}
		})
		if name == "pressure" {
			p.spread(func(x [3]float64) [3]float64 { return vec3.Scale(unit([3]float64{x[0], 0, x[2]}), 0.6) })
		}
		a, err := p.solve()
		if err != nil {
			return nil, err
		}
		out[name] = a.stress(middle, 1)[0]
	}
	return out, nil
}
