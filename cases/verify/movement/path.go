package movement

import (
	"math"

	"archload/cases/verify/problem"
	"archload/cases/verify/reference"
	"archload/fem"
	"archload/fem/contact"
	"archload/fem/moved"
)

// loaded is a sheet under dead loads, ready to be followed.
func (s *sheet) loaded(loads []fem.PointForce) (*moved.Problem, error) {
	plate, err := s.sys.Prepare(1)
	if err != nil {
		return nil, err
	}
	condense := func(p *fem.Prepared) *contact.Condensed { return contact.Condense(p, nil, contact.Slip, loads) }
	return &moved.Problem{Plate: plate, Cond: condense(plate), Condense: condense, Workers: 1}, nil
}

// corner is a node as a place.
func (s *sheet) corner(node int) fem.SurfacePoint {
	for e := range s.Shells {
		for k, n := range s.Shells[e].Nodes {
			if int(n) == node {
				at := fem.SurfacePoint{Shell: int32(e)}
				at.L[k] = 1
				return at
			}
		}
	}
	panic("movement: a node without a triangle")
}

// spread is a load per area in plan, N/mm², on the mid-surface.
func (s *sheet) spread(load func(x [3]float64) [3]float64) []fem.PointForce {
	var out []fem.PointForce
	for e := range s.Shells {
		area := s.sys.Shells[e].Area() * math.Abs(s.sys.Shells[e].Frame()[2][2])
		for _, l := range [3][3]float64{{0, 0.5, 0.5}, {0.5, 0, 0.5}, {0.5, 0.5, 0}} {
			at := fem.SurfacePoint{Shell: int32(e), L: l}
			f := load(s.Model.Place(at))
			for k := range f {
				f[k] *= area / 3
			}
			out = append(out, fem.PointForce{At: at, F: f})
		}
	}
	return out
}

// arch is a pinned sinusoidal strip of rise 2 rho rise under a load of its own shape, told in
// 2 rho π⁴ EI/L⁴; read is the limit load of the symmetric path.
func arch(rise float64) func(n int) (problem.Readings, error) {
	return func(n int) (problem.Readings, error) {
		const long, wide, h, e = 400.0, 5.0, 1.0, 10000.0
		rho := h / math.Sqrt(12)
		at := func(u, v float64) (x, normal [3]float64) {
			height, slope := 2*rho*rise*math.Sin(math.Pi*u/2), rho*rise*math.Pi/(long/2)*math.Cos(math.Pi*u/2)
			l := math.Hypot(1, slope)
			return [3]float64{long / 2 * u, wide * v, height}, [3]float64{-slope / l, 0, 1 / l}
		}
		s := newSheet(n, 1, at, makeup{h, reference.Isotropic(e, 0)}) // one half: symmetric
		s.hold("yXZ", func([3]float64) bool { return true })
		s.hold("xz", problem.On(0, 0))
		s.hold("xY", problem.On(0, long/2))
		if err := s.build(); err != nil {
			return nil, err
		}
		unit := 2 * rho * math.Pow(math.Pi/long, 4) * e * h * h * h / 12
		p, err := s.loaded(s.spread(func(x [3]float64) [3]float64 {
			return [3]float64{0, 0, -unit * math.Sin(math.Pi*x[0]/long)}
		}))
		if err != nil {
			return nil, err
		}
		limit, err := limitOf(p, 2*rise*rise*rise)
		return problem.Readings{"limit": limit}, err
	}
}

// limitOf follows a path until the load falls, at the latest to a share.
func limitOf(p *moved.Problem, most float64) (float64, error) {
	fallen := 0.0
	points, err := p.Path(moved.PathOptions{Stop: func(q moved.Point) bool {
		fallen = max(fallen, q.Share)
		return q.Share > most || q.Negative > 0 && q.Share < 0.97*fallen
	}})
	if err != nil {
		return 0, err
	}
	limit, _ := moved.Limit(points)
	return limit, nil
}

// hingedRoof is a quarter of a cylindrical roof, R 2540, 508 long, 0.1 rad to either side, h thick, E
// 3102.75, nu 0.3, its straight edges hinged, its curved ones free, under a force at the crown. Read are
// the greatest force before it snaps through, N, and the crown's sink under 1405.8 N, mm.
func hingedRoof(h float64) func(n int) (problem.Readings, error) {
	return func(n int) (problem.Readings, error) {
		const r, half, angle = 2540.0, 254.0, 0.1
		s := newSheet(n, n, cylinder(r, 0, angle, half), makeup{h, reference.Isotropic(3102.75, 0.3)})
		s.hold("xyz", func(x [3]float64) bool { return math.Abs(x[0]-r*math.Sin(angle)) < 1e-6*r })
		s.hold("xYZ", problem.On(0, 0))
		s.hold("yXZ", problem.On(1, 0))
		if err := s.build(); err != nil {
			return nil, err
		}
		crown := s.near([3]float64{0, 0, r})
		p, err := s.loaded([]fem.PointForce{{At: s.corner(crown), F: [3]float64{0, 0, -1000.0 / 4}}})
		if err != nil {
			return nil, err
		}
		before, _, err := p.Solve(1.4058)
		if err != nil {
			return nil, err
		}
		points, err := p.Path(moved.PathOptions{First: 0.05, Stop: func(q moved.Point) bool { return -q.U[6*crown+2] > 2*h && q.Negative > 0 || q.Share > 4 }})
		if err != nil {
			return nil, err
		}
		limit, _ := moved.Limit(points)
		return problem.Readings{"limit": 1000 * limit, "sink half way": -before.U[6*crown+2]}, nil
	}
}

// bentStrip is a cantilever strip, L 10, 1 wide, 0.1 thick, E 1.2e6, nu 0, under a force of 4 at its
// end, which keeps its direction: P L²/(E I) = 4. Read are the end's movements over the length.
func bentStrip(n int) (problem.Readings, error) {
	s := newSheet(n, 1, flat(10, 1), makeup{0.1, reference.Isotropic(1.2e6, 0)})
	s.hold("xyzXYZ", problem.On(0, 0))
	s.hold("yXZ", func([3]float64) bool { return true })
	if err := s.build(); err != nil {
		return nil, err
	}
	ends := [2]int{s.near([3]float64{10, 0, 0}), s.near([3]float64{10, 1, 0})}
	var loads []fem.PointForce
	for _, end := range ends {
		loads = append(loads, fem.PointForce{At: s.corner(end), F: [3]float64{0, 0, 2}})
	}
	p, err := s.loaded(loads)
	if err != nil {
		return nil, err
	}
	points, err := p.Path(moved.PathOptions{First: 0.02})
	if err != nil {
		return nil, err
	}
	u := points[len(points)-1].U
	return problem.Readings{"up": u[6*ends[0]+2] / 10, "back": -u[6*ends[0]] / 10}, nil
}
