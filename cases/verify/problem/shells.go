package problem

import (
	"math"

	"archload/cases/verify/reference"
	"archload/fem/vec3"
)

// cylinder maps the unit square on a cylinder about y: angle from the crown
// along u, length along v.
func cylinder(r, angle, long float64) sheet {
	return func(u, v float64) (x, n [3]float64) {
		s, c := math.Sincos(angle * u)
		return [3]float64{r * s, long * v, r * c}, [3]float64{s, 0, c}
	}
}

// scordelisLo is one quarter of a barrel roof: R 25, L 50, half-angle 40
// degrees, t 0.25, E 4.32e8, nu 0, 90 per area downward, ends held in their
// plane.
func scordelisLo(d Density) (Readings, error) {
	p := newPanel(d, d.N, d.N, cylinder(25, 40*degree, 25), makeup{h: 0.25, wood: reference.Isotropic(4.32e8, 0)})
	p.hold("xz", On(1, 0))
	p.hold("yXZ", On(1, 25))
	p.hold("xYZ", On(0, 0))
	if err := p.build(); err != nil {
		return nil, err
	}
	p.spread(uniform(0, 0, -90))
	a, err := p.solve()
	if err != nil {
		return nil, err
	}
	s, c := math.Sincos(40 * degree)
	return Readings{"sink": -a.move(p.near(25*s, 25, 25*c), 2)}, nil
}

// pinchedCylinder is one eighth of a cylinder between stiff diaphragms, R 300,
// L 600, t 3, E 3e6, nu 0.3, pinched by a pair of unit forces.
func pinchedCylinder(d Density) (Readings, error) {
	p := newPanel(d, d.N, d.N, cylinder(300, 90*degree, 300), makeup{h: 3, wood: reference.Isotropic(3e6, 0.3)})
	p.hold("xz", On(1, 300))
	p.hold("yXZ", On(1, 0))
	p.hold("xYZ", On(0, 0))
	p.hold("zXY", On(2, 0))
	if err := p.build(); err != nil {
		return nil, err
	}
	crown := p.near(0, 0, 300)
	p.force(crown, 2, -0.25)
	a, err := p.solve()
	if err != nil {
		return nil, err
	}
	return Readings{"sink": -a.move(crown, 2)}, nil
}

// hemisphere is one quadrant of a hemisphere with an 18-degree hole, R 10,
// t 0.04, E 6.825e7, nu 0.3, pulled and pinched by forces of 2 on its equator.
func hemisphere(d Density) (Readings, error) {
	p := newPanel(d, d.N, d.N, func(u, v float64) (x, n [3]float64) {
		sl, cl := math.Sincos(math.Pi / 2 * u)
		sb, cb := math.Sincos(72 * degree * v)
		n = [3]float64{cl * cb, sl * cb, sb}
		return vec3.Scale(n, 10), n
	}, makeup{h: 0.04, wood: reference.Isotropic(6.825e7, 0.3)})
	pulled, pinched := p.near(10, 0, 0), p.near(0, 10, 0)
	p.hold("xYZ", On(0, 0))
	p.hold("yXZ", On(1, 0))
	p.hold("z", func(x [3]float64) bool { return x[0] == p.Nodes[pulled].P[0] && x[2] == p.Nodes[pulled].P[2] })
	if err := p.build(); err != nil {
		return nil, err
	}
	p.force(pulled, 0, 1)
	p.force(pinched, 1, -1)
	a, err := p.solve()
	if err != nil {
		return nil, err
	}
	return Readings{"out": a.move(pulled, 0), "in": -a.move(pinched, 1)}, nil
}

// twistedBeam is a cantilever of length 12, width 1.1, t 0.32, E 29e6, nu 0.22,
// twisted by 90 degrees, under a unit load at the middle of its tip; n divisions
// along it and a quarter of that across.
func twistedBeam(d Density) (Readings, error) {
	p := newPanel(d, d.N, d.N/4, func(u, v float64) (x, n [3]float64) {
		w, rate := 1.1*(v-0.5), math.Pi/2/12
		s, c := math.Sincos(math.Pi / 2 * u)
		n = vec3.Cross([3]float64{1, -w * rate * s, w * rate * c}, [3]float64{0, c, s})
		return [3]float64{12 * u, w * c, w * s}, unit(n)
	}, makeup{h: 0.32, wood: reference.Isotropic(29e6, 0.22)})
	p.hold("xyzXYZ", On(0, 0))
	if err := p.build(); err != nil {
		return nil, err
	}
	tip := p.near(12, 0, 0)
	out := Readings{}
	for name, axis := range map[string]int{"along y": 1, "along z": 2} {
		clear(p.load)
		p.force(tip, axis, 1)
		a, err := p.solve()
		if err != nil {
			return nil, err
		}
		out[name] = a.move(tip, axis)
	}
	return out, nil
}

// curvedBeam is a quarter circle from radius 4.12 to 4.32, t 0.1, E 1e7,
// nu 0.25, held at one end, with a unit load spread over the other; n divisions
// along it and a sixteenth of that across.
func curvedBeam(d Density) (Readings, error) {
	p := newPanel(d, d.N, max(1, d.N/16), func(u, v float64) (x, n [3]float64) {
		s, c := math.Sincos(math.Pi / 2 * u)
		r := 4.32 - 0.2*v
		return [3]float64{r * c, r * s, 0}, n
	}, makeup{h: 0.1, wood: reference.Isotropic(1e7, 0.25)})
	p.hold("xyzXYZ", On(1, 0))
	if err := p.build(); err != nil {
		return nil, err
	}
	out := Readings{}
	tip := On(0, 0)
	for name, axis := range map[string]int{"in its plane": 1, "out of its plane": 2} {
		clear(p.load)
		p.edges(tip, func(i, j int32, _ float64) {
			share := vec3.Norm(vec3.Sub(p.Nodes[j].P, p.Nodes[i].P)) / 0.2 / 2
			p.force(int(i), axis, share)
			p.force(int(j), axis, share)
		})
		a, err := p.solve()
		if err != nil {
			return nil, err
		}
		out[name] = a.move(p.near(0, 4.22, 0), axis)
	}
	return out, nil
}

// hypar is the whole saddle z = x² - y² over the unit square, clamped along
// x = -0.5, E 2e11, nu 0.3, under its own weight of 8000 t per area.
func hypar(d Density, t float64) (*solved, error) {
	p := newPanel(d, d.N, d.N, func(u, v float64) (x, n [3]float64) {
		a, b := u-0.5, v-0.5
		return [3]float64{a, b, a*a - b*b}, unit([3]float64{-2 * a, 2 * b, 1})
	}, makeup{h: t, wood: reference.Isotropic(2e11, 0.3)})
	p.hold("xyzXYZ", On(0, -0.5))
	if err := p.build(); err != nil {
		return nil, err
	}
	p.spread(uniform(0, 0, -8000*t))
	return p.solve()
}

// clampedHypar reads the saddle of thickness 0.01.
func clampedHypar(d Density) (Readings, error) {
	a, err := hypar(d, 0.01)
	if err != nil {
		return nil, err
	}
	tip := a.near(0.5, 0, 0.25)
	if d.N%2 > 0 {
		return nil, errOddMesh
	}
	return Readings{"energy": a.energy(), "sink": -a.move(tip, 2)}, nil
}

// inextensional is one eighth of a cylinder with free ends, R 1, L 1, E 1e9,
// nu 0, under the pressure cos 2 theta; it returns the radial movement at 0.
func inextensional(d Density, t float64) (float64, error) {
	p := newPanel(d, d.N, d.N, cylinder(1, 90*degree, 0.5), makeup{h: t, wood: reference.Isotropic(1e9, 0)})
	p.hold("yXZ", On(1, 0))
	p.hold("xYZ", On(0, 0))
	p.hold("zXY", On(2, 0))
	if err := p.build(); err != nil {
		return 0, err
	}
	p.spread(func(x [3]float64) [3]float64 {
		a := math.Atan2(x[0], x[2])
		return vec3.Scale([3]float64{math.Sin(a), 0, math.Cos(a)}, math.Cos(2*a))
	})
	a, err := p.solve()
	if err != nil {
		return 0, err
	}
	return a.move(p.near(0, 0, 1), 2), nil
}

// ringMove is the answer of ring theory, p R⁴/(9 D) with D = E t³/12.
func ringMove(t float64) float64 { return 12 / (9 * 1e9 * t * t * t) }

// bentCylinder reads the cylinder at three thicknesses, over ring theory.
func bentCylinder(d Density) (Readings, error) {
	out := Readings{}
	for name, t := range map[string]float64{"1/10": 0.1, "1/100": 0.01, "1/1000": 0.001} {
		w, err := inextensional(d, t)
		if err != nil {
			return nil, err
		}
		out[name] = w / ringMove(t)
	}
	return out, nil
}

// thinHypar reads the saddle of thickness 0.001, where a triangle that locked
// would show it.
func thinHypar(d Density) (Readings, error) {
	a, err := hypar(d, 0.001)
	if err != nil {
		return nil, err
	}
	return Readings{"energy": a.energy()}, nil
}

// paperHypar reads the saddle of thickness 0.0001, beyond the range in which the
// element is good: flat triangles on a warped surface lock there.
func paperHypar(d Density) (Readings, error) {
	a, err := hypar(d, 0.0001)
	if err != nil {
		return nil, err
	}
	return Readings{"energy": a.energy()}, nil
}
