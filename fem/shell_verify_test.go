package fem

import (
	"math"
	"testing"
)

// published is one shell problem with a known answer.
type published struct {
	name   string
	run    func(t testing.TB, n int, shake float64) float64 // answer with n divisions
	want   float64
	tol16  [2]float64 // bar at 16 divisions: regular, distorted
	tol32  float64
	source string
}

var degree = math.Pi / 180

// TestShellPublished runs the shell problems at 16 and 32 divisions, on halved
// squares and on distorted meshes (inner nodes moved by up to 0.22 of the
// spacing, diagonals at random).
func TestShellPublished(t *testing.T) {
	for _, p := range publishedProblems() {
		t.Run(p.name, func(t *testing.T) {
			t.Parallel()
			for k, shake := range [2]float64{0, 0.22} {
				for _, n := range [2]int{16, 32} {
					got := p.run(t, n, shake)
					tol := p.tol16[k]
					if n == 32 {
						tol = p.tol32
					}
					t.Logf("%d divisions, shake %g: %.6g, error %+.2f %%", n, shake, got, 100*(got/p.want-1))
					within(t, p.name+" ("+p.source+")", got, p.want, tol)
				}
			}
		})
	}
}

func publishedProblems() []published {
	two := [2]float64{0.02, 0.02}
	return []published{
		{"Scordelis-Lo roof", scordelis, 0.3020, two, 0.01,
			"Scordelis, Lo 1964; shear-deformable reference by a p-version shell"},
		{"Cook's panel", cook, 23.9677, two, 0.01, "Cook 1974; converged plane stress"},
		{"twisted beam, load across", twisted(2), 5.424535e-3, two, 0.01, "Zupan, Saje, FEAD 40 (2004) 1445"},
		{"twisted beam, load along", twisted(1), 1.753248e-3, two, 0.01, "Zupan, Saje, FEAD 40 (2004) 1445"},
		{"hemisphere, 18 degree hole", hemisphere, 0.09363, [2]float64{0.02, 0.03}, 0.01,
			"MacNeal, Harder 1985; shear-deformable reference by a p-version shell"},
		{"pinched cylinder", pinched, 1.8248e-5, [2]float64{0.05, 0.05}, 0.02,
			"Lindberg et al. 1969, thin-shell series"},
		{"clamped square plate", clampedPlate, 1.26532e-3, two, 0.01,
			"Timoshenko, Woinowsky-Krieger table 35; Ritz 0.00126532 q a4/D"},
		{"Razzaque's skew plate", skewPlate, 7.936e-3, two, 0.01,
			"Razzaque, IJNME 6 (1973) 333; p-version shell at t/L 1e-3"},
		{"supported wood plate", navierPlate, 4.289817, two, 0.01,
			"Navier series of the shear-deformable orthotropic plate, k = 5/6"},
		{"arched wood plate, energy", archedPlate, 1.779854, two, 0.01, "p-version shell, order 8"},
		{"arched wood plate on two feet, energy", footedPlate, 16.937, [2]float64{0.05, 0.07}, 0.02,
			"p-version shell, within 0.1 %"},
		{"inextensional cylinder 1/1000", inextensional, 1.333333, two, 0.01, "ring theory, p0 R4/(9 D)"},
	}
}

// cylinderAt maps the unit square on a cylinder about y: angle from the crown.
func cylinderAt(r, angle, length float64) func(u, v float64) (x, n [3]float64) {
	return func(u, v float64) (x, n [3]float64) {
		s, c := math.Sincos(angle * u)
		return [3]float64{r * s, length * v, r * c}, [3]float64{s, 0, c}
	}
}

func at(axis int, value float64) func(x [3]float64) bool {
	return func(x [3]float64) bool { return math.Abs(x[axis]-value) < 1e-9*(1+math.Abs(value)) }
}

func everywhere([3]float64) bool { return true }

// scordelis returns the sink of the free edge's middle; one quarter.
func scordelis(t testing.TB, n int, shake float64) float64 {
	s := surfaceMesh(n, n, shake, cylinderAt(25, 40*degree, 25))
	s.h, s.wood = 0.25, isotropic(4.32e8, 0)
	s.build(t)
	f, held := make([]float64, s.dofs()), map[int]float64{}
	s.spread(f, func([3]float64) [3]float64 { return [3]float64{0, 0, -90} })
	s.hold(held, "xz", at(1, 0))
	s.hold(held, "yXZ", at(1, 25))
	s.hold(held, "xYZ", at(0, 0))
	u := s.solve(t, f, held, nil)
	sn, cs := math.Sincos(40 * degree)
	return -u[6*s.near([3]float64{25 * sn, 25, 25 * cs})+2]
}

// cook returns the rise of the free edge's middle of Cook's tapered panel.
func cook(t testing.TB, n int, shake float64) float64 {
	s := surfaceMesh(n, n, shake, func(u, v float64) (x, nrm [3]float64) {
		return [3]float64{48 * u, 44*u + v*(44-28*u), 0}, nrm
	})
	s.h, s.wood = 1, isotropic(1, 1.0/3)
	s.build(t)
	f, held := make([]float64, s.dofs()), map[int]float64{}
	for j := range n {
		a, b := j*(n+1)+n, (j+1)*(n+1)+n
		f[6*a+1] += 0.5 / float64(n)
		f[6*b+1] += 0.5 / float64(n)
	}
	s.hold(held, "zXY", everywhere)
	s.hold(held, "xy", at(0, 0))
	return s.solve(t, f, held, nil)[6*s.near([3]float64{48, 52, 0})+1]
}

// twisted returns the tip's movement along axis under a unit load along it; n
// divisions along the beam, a quarter of that across.
func twisted(axis int) func(t testing.TB, n int, shake float64) float64 {
	return func(t testing.TB, n int, shake float64) float64 {
		s := surfaceMesh(n, n/4, shake, func(u, v float64) (x, nrm [3]float64) {
			w, rate := 1.1*(v-0.5), math.Pi/2/12
			sn, cs := math.Sincos(math.Pi / 2 * u)
			nrm = cross3([3]float64{1, -w * rate * sn, w * rate * cs}, [3]float64{0, cs, sn})
			return [3]float64{12 * u, w * cs, w * sn}, scale3(nrm, 1/norm3(nrm))
		})
		s.h, s.wood = 0.32, isotropic(29e6, 0.22)
		s.build(t)
		f, held := make([]float64, s.dofs()), map[int]float64{}
		tip := s.near([3]float64{12, 0, 0})
		f[6*tip+axis] = 1
		s.hold(held, "xyzXYZ", at(0, 0))
		return s.solve(t, f, held, nil)[6*tip+axis]
	}
}

// hemisphere returns the radial movement under the outward load; one quadrant.
func hemisphere(t testing.TB, n int, shake float64) float64 {
	s := surfaceMesh(n, n, shake, func(u, v float64) (x, nrm [3]float64) {
		sl, cl := math.Sincos(math.Pi / 2 * u)
		sb, cb := math.Sincos(72 * degree * v)
		nrm = [3]float64{cl * cb, sl * cb, sb}
		return scale3(nrm, 10), nrm
	})
	s.h, s.wood = 0.04, isotropic(6.825e7, 0.3)
	s.build(t)
	f, held := make([]float64, s.dofs()), map[int]float64{}
	a, b := s.near([3]float64{10, 0, 0}), s.near([3]float64{0, 10, 0})
	f[6*a], f[6*b+1] = 1, -1
	s.hold(held, "xYZ", at(0, 0))
	s.hold(held, "yXZ", at(1, 0))
	held[6*a+2] = 0
	return s.solve(t, f, held, nil)[6*a]
}

// pinched returns the movement under the load; one eighth.
func pinched(t testing.TB, n int, shake float64) float64 {
	s := surfaceMesh(n, n, shake, cylinderAt(300, 90*degree, 300))
	s.h, s.wood = 3, isotropic(3e6, 0.3)
	s.build(t)
	f, held := make([]float64, s.dofs()), map[int]float64{}
	a := s.near([3]float64{0, 0, 300})
	f[6*a+2] = -0.25
	s.hold(held, "xz", at(1, 300))
	s.hold(held, "yXZ", at(1, 0))
	s.hold(held, "xYZ", at(0, 0))
	s.hold(held, "zXY", func(x [3]float64) bool { return x[2] < 1e-9 })
	return -s.solve(t, f, held, nil)[6*a+2]
}

// flatSheet returns a flat mesh a x b on z = 0.
func flatSheet(n int, shake, a, b float64) *shellMesh {
	return surfaceMesh(n, n, shake, func(u, v float64) (x, nrm [3]float64) {
		return [3]float64{a * u, b * v, 0}, nrm
	})
}

func rim(a, b float64) func(x [3]float64) bool {
	return func(x [3]float64) bool {
		return x[0] < 1e-9 || x[1] < 1e-9 || x[0] > a-1e-9 || x[1] > b-1e-9
	}
}

// clampedPlate returns w D/(q a4) in the centre, t/L = 1e-3, whole plate.
func clampedPlate(t testing.TB, n int, shake float64) float64 {
	s := flatSheet(n, shake, 1000, 1000)
	s.h, s.wood = 1, isotropic(12*(1-0.09), 0.3) // D = 1
	s.build(t)
	f, held := make([]float64, s.dofs()), map[int]float64{}
	s.spread(f, func([3]float64) [3]float64 { return [3]float64{0, 0, 1e-12} })
	s.hold(held, "xyZ", everywhere)
	s.hold(held, "zXY", rim(1000, 1000))
	return s.solve(t, f, held, nil)[6*(len(s.x)/2)+2]
}

// skewPlate returns w D/(q L4) in the centre of Razzaque's rhombus, 60 degrees,
// two opposite sides simply supported, t/L = 1e-3, nu 0.31.
func skewPlate(t testing.TB, n int, shake float64) float64 {
	sn, cs := math.Sincos(60 * degree)
	s := surfaceMesh(n, n, shake, func(u, v float64) (x, nrm [3]float64) {
		return [3]float64{1000 * (u + cs*v), 1000 * sn * v, 0}, nrm
	})
	s.h, s.wood = 1, isotropic(12*(1-0.31*0.31), 0.31)
	s.build(t)
	f, held := make([]float64, s.dofs()), map[int]float64{}
	s.spread(f, func([3]float64) [3]float64 { return [3]float64{0, 0, 1e-12} })
	s.hold(held, "xyZ", everywhere)
	s.hold(held, "z", func(x [3]float64) bool { return x[1] < 1e-9 || x[1] > 1000*sn-1e-9 })
	return s.solve(t, f, held, nil)[6*(len(s.x)/2)+2]
}

// navierPlate returns the centre's deflection, mm, of a simply supported wood
// plate 400 x 300 x 4 mm under 1 kPa (the tangential rotation held, as in the
// series).
func navierPlate(t testing.TB, n int, shake float64) float64 {
	s := flatSheet(n, shake, 400, 300)
	s.h, s.wood = 4, tw1()
	s.build(t)
	f, held := make([]float64, s.dofs()), map[int]float64{}
	s.spread(f, func([3]float64) [3]float64 { return [3]float64{0, 0, 1e-3} })
	s.hold(held, "xyZ", everywhere)
	s.hold(held, "z", rim(400, 300))
	s.hold(held, "X", func(x [3]float64) bool { return x[0] < 1e-9 || x[0] > 400-1e-9 })
	s.hold(held, "Y", func(x [3]float64) bool { return x[1] < 1e-9 || x[1] > 300-1e-9 })
	return s.solve(t, f, held, nil)[6*(len(s.x)/2)+2]
}

// archedSheet is the clamped arched wood plate z = 18 cos(pi x/400)
// cos(pi y/300) mm, 4 mm thick, its grain following the surface.
func archedSheet(t testing.TB, n int, shake float64) (s *shellMesh, held map[int]float64) {
	s = surfaceMesh(n, n, shake, func(u, v float64) (x, nrm [3]float64) {
		px, py := math.Pi/400, math.Pi/300
		xx, yy := 400*(u-0.5), 300*(v-0.5)
		sx, cx := math.Sincos(px * xx)
		sy, cy := math.Sincos(py * yy)
		nrm = [3]float64{18 * px * sx * cy, 18 * py * cx * sy, 1}
		return [3]float64{xx, yy, 18 * cx * cy}, scale3(nrm, 1/norm3(nrm))
	})
	s.h, s.wood, s.pressed = 4, tw1(), true
	s.build(t)
	held = map[int]float64{}
	s.hold(held, "xyzXYZ", func(x [3]float64) bool { return math.Abs(x[2]) < 1e-9 })
	return s, held
}

// archedPlate returns the strain energy, N mm, under 1 kPa per surface, downward.
func archedPlate(t testing.TB, n int, shake float64) float64 {
	s, held := archedSheet(t, n, shake)
	f := make([]float64, s.dofs())
	s.spread(f, func([3]float64) [3]float64 { return [3]float64{0, 0, -1e-3} })
	return s.energy(s.solve(t, f, held, nil))
}

// footedPlate returns the strain energy, N mm, under two feet of 50 N, spread
// over 10 x 25 mm in plan, 35 mm off the middle; 20 x 50 points a foot.
func footedPlate(t testing.TB, n int, shake float64) float64 {
	s, held := archedSheet(t, n, shake)
	f := make([]float64, s.dofs())
	for i := range 20 {
		for j := range 50 {
			x, y := (float64(i)-9.5)/2, 35+(float64(j)-24.5)/2
			s.press(f, x, y, 0.05)
			s.press(f, x, -y, 0.05)
		}
	}
	return s.energy(s.solve(t, f, held, nil))
}

// press adds a downward point force, N, at a place in plan.
func (s *shellMesh) press(f []float64, x, y, force float64) {
	for e, tr := range s.tris {
		a, b, c := s.x[tr[0]], s.x[tr[1]], s.x[tr[2]]
		det := (b[0]-a[0])*(c[1]-a[1]) - (c[0]-a[0])*(b[1]-a[1])
		l1 := ((x-a[0])*(c[1]-a[1]) - (c[0]-a[0])*(y-a[1])) / det
		l2 := ((b[0]-a[0])*(y-a[1]) - (x-a[0])*(b[1]-a[1])) / det
		if min(l1, l2, 1-l1-l2) < -1e-12 {
			continue
		}
		for i, v := range s.sh[e].RowsAt([3]float64{1 - l1 - l2, l1, l2}, 0)[2] {
			f[6*tr[i/6]+i%6] -= force * v
		}
		return
	}
}

// inextensional returns the radial movement at angle 0 of a free cylinder,
// R = L = 1, t = 1/1000, nu 0, E 1e9, under the pressure cos 2 theta; one eighth.
func inextensional(t testing.TB, n int, shake float64) float64 {
	s := surfaceMesh(n, n, shake, cylinderAt(1, 90*degree, 0.5))
	s.h, s.wood = 1e-3, isotropic(1e9, 0)
	s.build(t)
	f, held := make([]float64, s.dofs()), map[int]float64{}
	s.spread(f, func(x [3]float64) [3]float64 {
		a := math.Atan2(x[0], x[2])
		return scale3([3]float64{math.Sin(a), 0, math.Cos(a)}, math.Cos(2*a))
	})
	s.hold(held, "yXZ", at(1, 0))
	s.hold(held, "xYZ", at(0, 0))
	s.hold(held, "zXY", func(x [3]float64) bool { return x[2] < 1e-9 })
	return s.solve(t, f, held, nil)[6*s.near([3]float64{0, 0, 1})+2]
}
