package problem

import (
	"math"

	"archload/cases/verify/reference"
	"archload/materials"
)

// flat maps the unit square on the rectangle a x b.
func flat(a, b float64) sheet {
	return func(u, v float64) (x, n [3]float64) { return [3]float64{a * u, b * v, 0}, n }
}

// edge names the four edges of a rectangle.
func edge(a, b float64) (x0, x1, y0, y1 place) {
	return On(0, 0), On(0, a), On(1, 0), On(1, b)
}

// supports says how the edges of a rectangular plate are held.
type supports struct{ x, y byte } // 'c' clamped, 's' simply supported, 'f' free; across x = const and y = const

// plate is a rectangular plate in bending alone: no freedom in its plane.
func plate(d Density, a, b float64, s supports, of makeup) (*panel, error) {
	if d.N%2 > 0 {
		return nil, errOddMesh
	}
	p := newPanel(d, d.N, d.N, flat(a, b), of)
	p.hold("xyZ", everywhere)
	x0, x1, y0, y1 := edge(a, b)
	for _, e := range []struct {
		at    place
		held  byte
		twist string // the rotation of the edge's tangent
	}{{x0, s.x, "X"}, {x1, s.x, "X"}, {y0, s.y, "Y"}, {y1, s.y, "Y"}} {
		switch e.held {
		case 'c':
			p.hold("zXY", e.at)
		case 's':
			p.hold("z"+e.twist, e.at)
		}
	}
	return p, p.build()
}

// centre is the middle node of an n x n mesh.
func (p *panel) centre() int { return len(p.Nodes) / 2 }

// pressed solves a plate under a unit pressure (times q) or, with force, a
// force at its centre.
func pressed(d Density, a, b float64, s supports, of makeup, q, force float64) (*solved, error) {
	p, err := plate(d, a, b, s, of)
	if err != nil {
		return nil, err
	}
	p.spread(uniform(0, 0, -q))
	p.force(p.centre(), 2, -force)
	return p.solve()
}

// squarePlate is a thin reference.Isotropic plate (t/a 1/1000, nu 0.3): w D/(q a⁴),
// w D/(P a²), M/(q a²).
func squarePlate(s supports) func(d Density) (Readings, error) {
	return func(d Density) (Readings, error) {
		even, err := pressed(d, 1000, 1000, s, unitPlate(1, 0.3), 1e-12, 0)
		if err != nil {
			return nil, err
		}
		point, err := pressed(d, 1000, 1000, s, unitPlate(1, 0.3), 0, 1e-6)
		if err != nil {
			return nil, err
		}
		c := even.centre()
		m := even.moments(c)
		return Readings{
			"sink": -even.move(c, 2), "point": -point.move(c, 2),
			"Mx": -m[0] * 1e6, "My": -m[1] * 1e6,
		}, nil
	}
}

// longPlate is a thin reference.Isotropic plate of sides a and 5 a.
func longPlate(s supports) func(d Density) (Readings, error) {
	return func(d Density) (Readings, error) {
		even, err := pressed(d, 1000, 5000, s, unitPlate(1, 0.3), 1e-12, 0)
		if err != nil {
			return nil, err
		}
		return Readings{"sink": -even.move(even.centre(), 2)}, nil
	}
}

// skewPlate is a rhombus of side 1000, acute angle 60 degrees, two opposite
// sides supported, two free, t 1, nu 0.31, under a uniform load.
func skewPlate(d Density) (Readings, error) {
	s, c := math.Sincos(60 * degree)
	p := newPanel(d, d.N, d.N, func(u, v float64) (x, n [3]float64) {
		return [3]float64{1000 * (u + c*v), 1000 * s * v, 0}, n
	}, unitPlate(1, 0.31))
	p.hold("xyZ", everywhere)
	p.hold("z", func(x [3]float64) bool { return x[1] < 1e-9 || x[1] > 1000*s-1e-9 })
	if err := p.build(); err != nil {
		return nil, err
	}
	p.spread(uniform(0, 0, -1e-12))
	a, err := p.solve()
	if err != nil {
		return nil, err
	}
	m := a.moments(p.centre())
	return Readings{"sink": -a.move(p.centre(), 2), "M": -m[1] * 1e6}, nil
}

// unitPlate is the makeup of an isotropic plate of thickness h whose bending
// stiffness D = E h³/(12 (1 - nu²)) is 1.
func unitPlate(h, nu float64) makeup {
	return makeup{h: h, wood: reference.Isotropic(12*(1-nu*nu)/(h*h*h), nu)}
}

// woodPlate is a flat plate of the test wood under 1 kPa or 100 N in the middle.
func woodPlate(h float64, s supports, w materials.Orthotropic) func(d Density) (Readings, error) {
	return func(d Density) (Readings, error) {
		of := makeup{h: h, wood: w}
		even, err := pressed(d, reference.WoodLong, reference.WoodWide, s, of, 1e-3, 0)
		if err != nil {
			return nil, err
		}
		point, err := pressed(d, reference.WoodLong, reference.WoodWide, s, of, 0, 100)
		if err != nil {
			return nil, err
		}
		c := even.centre()
		m, st := even.moments(c), even.stress(c, -1)
		return Readings{
			"sink": -even.move(c, 2), "point": -point.move(c, 2), "energy": even.energy(),
			"Mx": -m[0], "My": -m[1], "along": st[0], "across": st[1],
		}, nil
	}
}

// laminate is the square orthotropic plate E1/E2 = 25, G12 = G13 = E2/2,
// G23 = E2/5, nu12 = 0.25: 100 w E2 h³/(q a⁴) for a/h.
func laminate(slender float64) func(d Density) (Readings, error) {
	return func(d Density) (Readings, error) {
		const a, e2 = 100.0, 1000.0
		w := materials.Orthotropic{EL: 25 * e2, ER: e2, ET: e2, GLR: e2 / 2, GLT: e2 / 2, GRT: e2 / 5,
			NuLR: 0.25, NuLT: 0.25, NuRT: 0.25}
		h := a / slender
		even, err := pressed(d, a, a, supports{'s', 's'}, makeup{h: h, wood: w}, 1, 0)
		if err != nil {
			return nil, err
		}
		return Readings{"sink": -even.move(even.centre(), 2) * 100 * e2 * h * h * h / (a * a * a * a)}, nil
	}
}
