package problem

import (
	"math"

	"archload/cases/verify/reference"
)

// archedPlate is z = 18 cos(pi x/400) cos(pi y/300) mm, 4 mm thick, of the test
// wood with its grain following the surface, clamped.
func archedPlate(d Density) (*panel, error) {
	if d.N%2 > 0 {
		return nil, errOddMesh
	}
	p := newPanel(d, d.N, d.N, func(u, v float64) (x, n [3]float64) {
		px, py := math.Pi/reference.WoodLong, math.Pi/reference.WoodWide
		a, b := reference.WoodLong*(u-0.5), reference.WoodWide*(v-0.5)
		sx, cx := math.Sincos(px * a)
		sy, cy := math.Sincos(py * b)
		return [3]float64{a, b, 18 * cx * cy}, unit([3]float64{18 * px * sx * cy, 18 * py * cx * sy, 1})
	}, makeup{h: 4, wood: reference.TestWood(), pressed: true, density: woodDensity})
	p.hold("xyzXYZ", func(x [3]float64) bool { return math.Abs(x[2]) < 1e-9 })
	return p, p.build()
}

// archUnderPressure carries 1 kPa of its surface, downward.
func archUnderPressure(d Density) (Readings, error) {
	p, err := archedPlate(d)
	if err != nil {
		return nil, err
	}
	p.spread(uniform(0, 0, -1e-3))
	a, err := p.solve()
	if err != nil {
		return nil, err
	}
	c, least := p.centre(), 0.0
	for i := range p.Nodes {
		least = math.Min(least, a.move(i, 2))
	}
	outer, mid, inner := a.stress(c, 1), a.stress(c, 0), a.stress(c, -1)
	return Readings{
		"energy": a.energy(), "centre": -a.move(c, 2), "most": -least,
		"outer along": outer[0], "mid along": mid[0], "inner along": inner[0],
		"outer across": outer[1], "mid across": mid[1], "inner across": inner[1],
	}, nil
}

// archOnFeet carries two feet of 50 N, 10 mm along the grain and 25 mm across,
// 35 mm off the middle.
func archOnFeet(d Density) (Readings, error) {
	p, err := archedPlate(d)
	if err != nil {
		return nil, err
	}
	for _, y := range []float64{-35, 35} {
		p.block([2]float64{-5, y - 12.5}, [2]float64{5, y + 12.5}, 20, 50, [3]float64{0, 0, -50})
	}
	a, err := p.solve()
	if err != nil {
		return nil, err
	}
	e := a.energy()
	return Readings{"energy": e, "foot": 2 * e / 100, "centre": -a.move(p.centre(), 2)}, nil
}
