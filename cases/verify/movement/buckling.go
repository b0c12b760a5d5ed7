package movement

import (
	"math"
	"strconv"

	"archload/cases/verify/problem"
	"archload/cases/verify/reference"
	"archload/fem/buckling"
	"archload/fem/vec3"
	"archload/fem/vibration"
	"archload/materials"
	"archload/mesh"
)

// factors are the lowest factors of a sheet under uniform stress, of which movements of the unmoved
// sheet are known, read as 1, 2, ... times unit.
func (s *sheet) factors(move func(x [3]float64) [3]float64, count int, unit float64) (problem.Readings, error) {
	if err := s.build(); err != nil {
		return nil, err
	}
	u := make([]float64, 6*len(s.Nodes))
	for i := range s.Nodes {
		d := move(s.Nodes[i].P)
		copy(u[6*i:], d[:])
	}
	m, err := buckling.Find(buckling.Input{Input: vibration.Input{Plate: s.sys, Workers: 1}, U: u}, count)
	if err != nil {
		return nil, err
	}
	out := problem.Readings{}
	for i, f := range m.Factors {
		out[strconv.Itoa(i+1)] = f * unit
	}
	return out, nil
}

// compressed is a rectangular plate a x b with edges that stay straight in its plane, under membrane
// forces nx and ny, N/mm, positive in compression; clamped or supported. The factors are times unit.
type compressed struct {
	a, b    float64
	clamped bool
	of      makeup
	nx, ny  float64
	unit    float64
}

func (c compressed) solve(n int) (problem.Readings, error) {
	s := newSheet(n, n, flat(c.a, c.b), c.of)
	// Freedoms in the plane stay out: stress is even before and after.
	s.hold("xyZ", func([3]float64) bool { return true })
	for _, e := range []struct {
		axis  int
		value float64
		along string
	}{{0, 0, "X"}, {0, c.a, "X"}, {1, 0, "Y"}, {1, c.b, "Y"}} {
		s.hold("z"+e.along, problem.On(e.axis, e.value))
		if c.clamped {
			s.hold("XY", problem.On(e.axis, e.value))
		}
	}
	w := c.of.wood
	ex := (w.NuLR*c.ny - c.nx) / (w.EL * c.of.h)
	ey := (w.NuLR*c.nx/w.EL - c.ny/w.ER) / c.of.h
	return s.factors(func(x [3]float64) [3]float64 { return [3]float64{ex * x[0], ey * x[1], 0} }, 3, c.unit)
}

// square is a thin isotropic square plate, pressed by 1 along x and by ny across; its factors
// are k in N = k π² D/b².
func square(clamped bool, ny float64) problem.Problem {
	const b, h, e, nu = 1000, 1, 1000, 0.3
	d := e * h * h * h / (12 * (1 - nu*nu))
	return meshed([]int{8, 16, 32, 64}, compressed{a: b, b: b, clamped: clamped, of: makeup{h, reference.Isotropic(e, nu)}, nx: 1, ny: ny,
		unit: b * b / (math.Pi * math.Pi * d)}.solve)
}

// wooden is the plate of the test wood, 4 mm; its factors are in N/m.
func wooden(clamped bool, nx, ny float64) problem.Problem {
	return meshed([]int{8, 16, 32, 64}, compressed{a: reference.WoodLong, b: reference.WoodWide, clamped: clamped,
		of: makeup{4, thinWood()}, nx: nx, ny: ny, unit: 1000}.solve)
}

func thinWood() materials.Orthotropic { return reference.RigidInShear(reference.TestWood()) }

// squeezedCylinder is a quarter of half a cylinder, R = L = 100, t = 1, E = 1, nu 0.3, pressed along
// its axis; its ends keep round and are free to turn and to move along. By symmetry half waves along
// come in odd numbers, waves around in even ones. The factors are the stress.
func squeezedCylinder(n int) (problem.Readings, error) {
	const r, long, nu = 100, 100, 0.3
	s := newSheet(2*n, n, cylinder(r, 0, math.Pi/2, long/2), makeup{1, reference.Isotropic(1, nu)})
	s.hold("xz", problem.On(1, 0))
	s.hold("yXZ", problem.On(1, long/2))
	s.hold("xYZ", problem.On(0, 0))
	s.hold("zXY", func(x [3]float64) bool { return math.Abs(x[2]) < 1e-9*r })
	return s.factors(func(x [3]float64) [3]float64 { return [3]float64{nu * x[0], long/2 - x[1], nu * x[2]} }, 2, 1)
}

// pressedSphere is an eighth of a sphere, R = 100, t = 1, nu 0.3, under pressure from outside. The
// factors are p/(E (t/R)²).
func pressedSphere(n int) (problem.Readings, error) {
	const r, h, nu = 100.0, 1.0, 0.3
	s := octant(3*n, r, makeup{h, reference.Isotropic(1, nu)})
	s.hold("xYZ", problem.On(0, 0))
	s.hold("yXZ", problem.On(1, 0))
	s.hold("zXY", problem.On(2, 0))
	unit := 2 * h / ((1 - nu) * r) / (h * h / (r * r)) // of a strain of 1
	return s.factors(func(x [3]float64) [3]float64 { return [3]float64{-x[0], -x[1], -x[2]} }, 1, unit)
}

// octant meshes an eighth of a sphere: the face of an octahedron in n² triangles, blown up.
func octant(n int, r float64, of makeup) *sheet {
	s := newSheet(1, 1, flat(1, 1), of)
	s.Nodes, s.Shells = nil, nil
	at := func(i, j int) int32 { return int32(j*(n+1) - j*(j-1)/2 + i) }
	for j := range n + 1 {
		for i := range n + 1 - j {
			x := [3]float64{float64(i), float64(j), float64(n - i - j)}
			normal := vec3.Scale(x, 1/vec3.Norm(x))
			s.Nodes = append(s.Nodes, mesh.Node{P: vec3.Scale(normal, r), N: normal, H: of.h})
		}
	}
	for j := range n {
		for i := range n - j {
			s.add([3]int32{at(i, j), at(i+1, j), at(i, j+1)})
			if i+j+1 < n {
				s.add([3]int32{at(i+1, j), at(i+1, j+1), at(i, j+1)})
			}
		}
	}
	return s
}
