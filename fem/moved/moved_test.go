package moved

import (
	"errors"
	"math"
	"testing"

	"archload/fem"
	"archload/fem/contact"
	"archload/fem/vec3"
	"archload/materials"
	"archload/mesh"
)

// strip is a flat strip of isotropic plate along x, bent to a cylinder by a pressure, its ends
// hinged where they stand; everything turned by q.
type strip struct {
	long, wide, thick, e, nu float64
	pressure                 float64
	n                        int
	rise                     float64 // of a sinusoidal arch
	swell                    float64 // strain along it by itself
	q                        [3][3]float64
}

// plain is no turn.
var plain = [3][3]float64{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}

func apply(q [3][3]float64, v [3]float64) [3]float64 {
	return [3]float64{vec3.Dot(q[0], v), vec3.Dot(q[1], v), vec3.Dot(q[2], v)}
}

// problem meshes the strip. The turn q takes axes to axes, so that held freedoms stay freedoms.
func (s *strip) problem(t *testing.T) *Problem {
	t.Helper()
	m := &fem.Model{}
	wood := materials.Orthotropic{EL: s.e, ER: s.e, ET: s.e, GLR: s.e / 2 / (1 + s.nu), GLT: s.e / 2 / (1 + s.nu), GRT: s.e / 2 / (1 + s.nu), NuLR: s.nu, NuLT: s.nu, NuRT: s.nu}
	var axes materials.Axes
	for k := range 3 {
		var e [3]float64
		e[k] = 1
		axes[k] = apply(s.q, e)
	}
	m.Sections = []fem.Section{{Wood: wood.Compliance(), Axes: axes, Swell: [3]float64{s.swell, 0, 0}}}
	for i := range s.n + 1 {
		x := s.long * float64(i) / float64(s.n)
		z := s.rise * math.Sin(math.Pi*x/s.long)
		slope := s.rise * math.Pi / s.long * math.Cos(math.Pi*x/s.long)
		l := math.Hypot(1, slope)
		for j := range 2 {
			node := mesh.Node{P: apply(s.q, [3]float64{x, s.wide * float64(j), z}), H: s.thick}
			if s.rise != 0 {
				node.N = apply(s.q, [3]float64{-slope / l, 0, 1 / l})
			}
			m.Nodes = append(m.Nodes, node)
			held := [6]bool{1: true, 3: true, 5: true}
			if i == 0 || i == s.n {
				held[0], held[2] = true, true
			}
			for d := range 6 {
				var e [3]float64
				e[d%3] = 1
				e = apply(s.q, e)
				for k := range 3 {
					if held[d] && math.Abs(e[k]) > 0.5 {
						m.Fixed = append(m.Fixed, fem.Fix{Node: int32(2*i + j), Dof: d/3*3 + k})
					}
				}
			}
		}
	}
	for i := range s.n {
		a := int32(2 * i)
		m.Shells = append(m.Shells, fem.ShellElem{Nodes: [3]int32{a, a + 2, a + 3}}, fem.ShellElem{Nodes: [3]int32{a, a + 3, a + 1}})
	}
	sys, err := fem.Assemble(m, 1)
	if err != nil {
		t.Fatal(err)
	}
	plate, err := sys.Prepare(1)
	if err != nil {
		t.Fatal(err)
	}
	var loads []fem.PointForce
	down := apply(s.q, [3]float64{0, 0, -1})
	for e := range m.Shells {
		for _, l := range [3][3]float64{{0, 0.5, 0.5}, {0.5, 0, 0.5}, {0.5, 0.5, 0}} {
			at := fem.SurfacePoint{Shell: int32(e), L: l}
			p := apply([3][3]float64{{s.q[0][0], s.q[1][0], s.q[2][0]}, {s.q[0][1], s.q[1][1], s.q[2][1]}, {s.q[0][2], s.q[1][2], s.q[2][2]}}, m.Place(at))
			q := s.pressure
			if s.rise != 0 {
				q *= math.Sin(math.Pi * p[0] / s.long)
			}
			area := s.long / float64(s.n) * s.wide / 2 // in plan
			loads = append(loads, fem.PointForce{At: at, F: vec3.Scale(down, q*area/3)})
		}
	}
	condense := func(p *fem.Prepared) *contact.Condensed { return contact.Condense(p, nil, contact.Slip, loads) }
	p := &Problem{Plate: plate, Cond: condense(plate), Condense: condense, Workers: 1}
	if s.swell != 0 {
		p.Swell = plate.Swell(fem.Swell{Outer: 1, Inner: 1})
	}
	return p
}

// middle is how far the middle goes down.
func (s *strip) middle(r *contact.Result) float64 {
	u := r.U[6*s.n:]
	return -vec3.Dot(apply(s.q, [3]float64{0, 0, 1}), [3]float64{u[0], u[1], u[2]})
}

// stretchedStrip is the sink of the middle of a long plate with hinged ends that cannot draw near,
// bent to a cylinder: S. Timoshenko, S. Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. 1959,
// article 2 (equations from memory, the tension found here by bisection): with u² = S l²/(4 D)
//
//	w = q l⁴/(16 u⁴ D) (cosh(u (1 - 2x/l))/cosh u - 1) + q l² x (l - x)/(8 u² D),
//	S (1 - nu²) l/(E h) = ½ ∫ w'² dx.
func stretchedStrip(s *strip) float64 {
	d := s.e * math.Pow(s.thick, 3) / 12 / (1 - s.nu*s.nu)
	l, q := s.long, s.pressure
	w := func(u, x float64) float64 {
		return q*math.Pow(l, 4)/(16*math.Pow(u, 4)*d)*(math.Cosh(u*(1-2*x/l))/math.Cosh(u)-1) + q*l*l*x*(l-x)/(8*u*u*d)
	}
	stretch := func(u float64) float64 { // ½ ∫ w'²
		const n = 4000
		sum := 0.0
		for i := range n {
			slope := (w(u, l*float64(i+1)/n) - w(u, l*float64(i)/n)) / (l / n)
			sum += slope * slope / 2 * l / n
		}
		return sum
	}
	lo, hi := 1e-2, 30.0
	for range 80 {
		u := (lo + hi) / 2
		if 4*d*u*u/(l*l)*(1-s.nu*s.nu)*l/(s.e*s.thick) < stretch(u) {
			lo = u
		} else {
			hi = u
		}
	}
	return w(lo, l/2)
}

// TestStretchedStrip compares a strip that sinks by twice its thickness with the closed form, in
// three attitudes that must agree.
func TestStretchedStrip(t *testing.T) {
	s := strip{long: 200, wide: 5, thick: 1, e: 10000, nu: 0.3, pressure: 1e-3, n: 64, q: plain}
	p := s.problem(t)
	r, _, err := p.Solve(1)
	if err != nil {
		t.Fatal(err)
	}
	linear := s.middle(p.Cond.RecoverPlate())
	got, want := s.middle(r), stretchedStrip(&s)
	if math.Abs(got/want-1) > 2e-3 || linear < 2*got {
		t.Errorf("middle sinks %.6f mm, want %.6f (linear %.6f)", got, want, linear)
	}
	for _, q := range [][3][3]float64{{{0, 0, 1}, {1, 0, 0}, {0, 1, 0}}, {{0, -1, 0}, {1, 0, 0}, {0, 0, 1}}} {
		turned := s
		turned.q = q
		o, _, err := turned.problem(t).Solve(1)
		if err != nil {
			t.Fatal(err)
		}
		if v := turned.middle(o); math.Abs(v/got-1) > 1e-8 {
			t.Errorf("turned: middle sinks %.10f mm, want %.10f", v, got)
		}
	}
	if c := r.Checks; c.Force > 1e-8 || c.Moment > 1e-8 || c.Energy > 1e-9 {
		t.Errorf("checks %+v", c)
	}
}

// TestPathWork sums the loads' work along the path by Boole's rule: it is what is stored.
func TestPathWork(t *testing.T) {
	s := strip{long: 200, wide: 5, thick: 1, e: 10000, nu: 0.3, pressure: 5e-5, n: 16, q: plain}
	p := s.problem(t)
	const n = 32
	done := make([]float64, n+1) // load times movement at full load
	stored := 0.0
	for k := 1; k <= n; k++ {
		r, _, err := p.Solve(float64(k) / n)
		if err != nil {
			t.Fatal(err)
		}
		for i, f := range r.Load {
			done[k] += f / (float64(k) / n) * r.U[i]
		}
		stored = r.Energy.Total()
	}
	area := 0.0 // ∫ D dt; the work is D(1) - that
	for k := 0; k < n; k += 4 {
		area += 2.0 / 45 / n * (7*done[k] + 32*done[k+1] + 12*done[k+2] + 32*done[k+3] + 7*done[k+4])
	}
	if work := done[n] - area; math.Abs(work/stored-1) > 1e-6 {
		t.Errorf("work along the path %.9g N·mm, stored %.9g", work, stored)
	}
}

// TestGivesWay loads a sinusoidal arch beyond its limit: it is found to give way there. The limit
// is that of Y. C. Fung, A. Kaplan, Buckling of low arches, NACA TN 2840, 1952 (from memory): with
// r² = I/A and a rise of 2 r e, q = 2 r π⁴ E I/L⁴ (e + 2 ((e² - 1)/3)^1.5).
func TestGivesWay(t *testing.T) {
	s := strip{long: 400, wide: 5, thick: 1, e: 10000, nu: 0, n: 64, q: plain}
	rho := s.thick / math.Sqrt(12)
	const e = 1.5
	s.rise = 2 * rho * e
	limit := 2 * rho * math.Pow(math.Pi/s.long, 4) * s.e * math.Pow(s.thick, 3) / 12 * (e + 2*math.Pow((e*e-1)/3, 1.5))
	s.pressure = 1.5 * limit
	p := s.problem(t)
	_, _, err := p.Solve(1)
	var way GivesWayError
	if !errors.As(err, &way) || math.Abs(way.Share*1.5-1) > 0.06 {
		t.Errorf("got %v, want that it gives way at %.4f", err, 1/1.5)
	}
	if _, _, err := p.Solve(0.98 / 1.5); err != nil {
		t.Errorf("at 0.98 of the limit: %v", err)
	}
}

// TestPath follows the arch over its limit point: the limit is the closed form's, and the tangent has one
// negative pivot behind it.
func TestPath(t *testing.T) {
	s := strip{long: 400, wide: 5, thick: 1, e: 10000, nu: 0, n: 64, q: plain}
	rho := s.thick / math.Sqrt(12)
	const e = 1.5
	s.rise = 2 * rho * e
	s.pressure = 2 * rho * math.Pow(math.Pi/s.long, 4) * s.e * math.Pow(s.thick, 3) / 12 * (e + 2*math.Pow((e*e-1)/3, 1.5))
	points, err := s.problem(t).Path(PathOptions{Stop: func(p Point) bool { return p.Share > 1.5 }})
	if err != nil {
		t.Fatal(err)
	}
	limit, at := Limit(points)
	if math.Abs(limit-1) > 0.01 {
		t.Errorf("limit at %.4f of the closed form's", limit)
	}
	if points[0].Negative != 0 || points[at+1].Negative+points[at+2].Negative == 0 {
		t.Errorf("negative pivots before and behind the limit: %d, %d", points[0].Negative, points[at+2].Negative)
	}
}

// swollenArch is the rise that a sinusoidal arch between hinges that cannot give way gains as it swells: with the
// shallow arch's axial force and its bending,
//
//	N = E A (e − π² (a² − a₀²)/(4 L²)),  a (Nc − N) = a₀ Nc,  Nc = π² E I/L².
func swollenArch(s *strip) float64 {
	r := math.Pi / s.long
	critical := r * r * s.thick * s.thick / 12 // strain at Nc
	lo, hi := s.rise, 100*s.rise
	for range 80 {
		a := (lo + hi) / 2
		if n := s.swell - r*r*(a*a-s.rise*s.rise)/4; a*(critical-n) < s.rise*critical {
			lo = a
		} else {
			hi = a
		}
	}
	return lo - s.rise
}

// TestSwollenArch lets an arch swell between its hinges to three times the strain at which it would buckle if it were
// straight: it rises as the closed form says, much less than by linear theory, in attitudes that must agree.
func TestSwollenArch(t *testing.T) {
	s := strip{long: 400, wide: 5, thick: 1, e: 10000, nu: 0, n: 64, q: plain, rise: 0.9}
	s.swell = 3 * math.Pow(math.Pi*s.thick/s.long, 2) / 12
	r, effort, err := s.problem(t).Solve(1)
	if err != nil {
		t.Fatal(err)
	}
	got, want := -s.middle(r), swollenArch(&s)
	if math.Abs(got/want-1) > 2e-3 {
		t.Errorf("rises %.6f mm, want %.6f", got, want)
	}
	if c := r.Checks; c.Force > 1e-8 || c.Moment > 1e-8 || c.Energy > 1e-9 {
		t.Errorf("checks %+v after %+v", c, effort)
	}
	turned := s
	turned.q = [3][3]float64{{0, 0, 1}, {1, 0, 0}, {0, 1, 0}}
	o, _, err := turned.problem(t).Solve(1)
	if err != nil {
		t.Fatal(err)
	}
	if v := -turned.middle(o); math.Abs(v/got-1) > 1e-8 {
		t.Errorf("turned: rises %.10f mm, want %.10f", v, got)
	}
}
