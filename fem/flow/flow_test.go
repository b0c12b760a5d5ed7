package flow

import (
	"errors"
	"math"
	"testing"

	"archload/fem"
	"archload/fem/contact"
	"archload/fem/element"
	"archload/materials"
	"archload/mesh"
)

// flowStrip is a strip along x, bent to the height z over the plan, with pinned
// ends: length, width and thickness mm, n × m halved rectangles, a downward
// load (N) on the line x = load.
type flowStrip struct {
	length, width, thick float64
	n, m                 int
	rise                 float64 // of its parabolic arch, mm
	load, force          float64
}

func (s flowStrip) height(x float64) float64 { return s.rise * (1 - 4*x*x/(s.length*s.length)) }

// solve returns the strip's result. The wood is isotropic without lateral
// contraction, so that a strip is a beam.
func (s flowStrip) solve(t *testing.T) *contact.Result {
	t.Helper()
	m := &fem.Model{Sections: []fem.Section{{Wood: isotropicWood(10000, 0).Compliance(), Axes: materials.GlobalAxes()}}}
	uv, tris := halvedRectangles(s.n, s.m)
	for _, p := range uv {
		x, y := (p[0]-0.5)*s.length, (p[1]-0.5)*s.width
		slope := -8 * s.rise * x / (s.length * s.length)
		w := math.Hypot(1, slope)
		m.Nodes = append(m.Nodes, mesh.Node{P: [3]float64{x, y, s.height(x)}, N: [3]float64{-slope / w, 0, 1 / w}, H: s.thick})
		if p[0] == 0 || p[0] == 1 {
			for d := range 3 {
				m.Fixed = append(m.Fixed, fem.Fix{Node: int32(len(m.Nodes) - 1), Dof: d})
			}
		}
	}
	for _, c := range tris {
		m.Shells = append(m.Shells, fem.ShellElem{Nodes: [3]int32{int32(c[0]), int32(c[1]), int32(c[2])}})
	}
	sys, err := fem.Assemble(m, 1)
	if err != nil {
		t.Fatal(err)
	}
	p, err := sys.Prepare(1)
	if err != nil {
		t.Fatal(err)
	}
	return contact.Condense(p, nil, contact.Slip, s.lineLoad(m)).RecoverPlate()
}

// lineLoad spreads the force over the width at x = load, which must be a line
// of nodes: half at the end nodes of what the others take.
func (s flowStrip) lineLoad(m *fem.Model) []fem.PointForce {
	var out []fem.PointForce
	done := map[int32]bool{}
	for i, e := range m.Shells {
		for k, n := range e.Nodes {
			p := m.Nodes[n].P
			if done[n] || math.Abs(p[0]-s.load) > 1e-9 {
				continue
			}
			done[n] = true
			f := fem.PointForce{At: fem.SurfacePoint{Shell: int32(i)}, F: [3]float64{0, 0, -s.force / float64(s.m)}}
			f.At.L[k] = 1
			if math.Abs(math.Abs(p[1])-s.width/2) < 1e-9 {
				f.F[2] /= 2
			}
			out = append(out, f)
		}
	}
	return out
}

// TestFlowStrips: in a strip on pinned ends at one height all force runs
// straight to them, the lever law's share to each, R = P a/L, through every
// section R/b for each millimetre of width. It does so whether shear carries
// it (flat) or the slope of the thrust as well (arch): the vertical force does
// not change between load and support. Source: statics of a beam and of an
// arch with hinges at one height; a width from load and ends, where the
// elements' own pattern has died out.
func TestFlowStrips(t *testing.T) {
	for _, c := range []struct {
		name  string
		s     flowStrip
		share float64 // of a triangle's flow that may be off
		stray float64 // of a line across, mm: 2 % of the width
	}{
		{"flat", flowStrip{length: 200, width: 20, thick: 4, n: 80, m: 8, load: 40, force: 60}, 0.01, 0.4},
		{"arch", flowStrip{length: 200, width: 20, thick: 4, n: 80, m: 8, load: 40, force: 60, rise: 30}, 0.01, 0.4},
	} {
		r := c.s.solve(t)
		f, err := New(&r.Result, 1)
		if err != nil {
			t.Fatal(err)
		}
		right := c.s.force * (0.5 + c.s.load/c.s.length)
		if f.Divergence > 1e-8 || f.Correction > 0.05 {
			t.Errorf("%s: divergence %.2g, changed by %.2g, want <= 1e-8 and 0.05", c.name, f.Divergence, f.Correction)
		}
		worst := 0.0
		for i, q := range f.Plate {
			x := centreX(&r.Result, f.Shells[i])
			want := right / c.s.width
			if x < c.s.load {
				want = (right - c.s.force) / c.s.width
			}
			if math.Abs(x-c.s.load) > c.s.width && math.Abs(x) < c.s.length/2-c.s.width {
				worst = math.Max(worst, math.Hypot(q[0]-want, q[1])/math.Abs(want))
			}
		}
		if worst > c.share {
			t.Errorf("%s: a triangle's flow is off the lever law by %.2g of it, want <= %g", c.name, worst, c.share)
		}
		c.s.checkStraight(t, c.name, f, c.stray)
	}
}

func centreX(r *fem.Result, shell int32) float64 {
	x := 0.0
	for _, n := range r.Plate.Model.Shells[shell].Nodes {
		x += r.Plate.Model.Nodes[n].P[0] / 3
	}
	return x
}

// checkStraight wants lines of force that keep their y, the lever law's share
// of them ending at the right.
func (s flowStrip) checkStraight(t *testing.T, name string, f *Flow, stray float64) {
	t.Helper()
	share := 0.5 + s.load/s.length
	lines, err := f.Lines(20)
	if err != nil {
		t.Fatal(err)
	}
	right, worst := 0, 0.0
	for _, l := range lines {
		b := l.Points[len(l.Points)-1]
		if b[0] > 0 {
			right++
		}
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, p := range l.Points {
			if math.Abs(p[0]-s.load) > s.width && math.Abs(p[0]) < s.length/2-s.width {
				lo, hi = math.Min(lo, p[1]), math.Max(hi, p[1])
			}
		}
		worst = math.Max(worst, hi-lo)
		if math.Abs(math.Abs(b[0])-100) > 1e-9 || l.Inside {
			t.Errorf("%s: a line ends at x = %.3f, want an end of the strip", name, b[0])
		}
		if math.Abs(l.Force-3) > 1e-9 {
			t.Errorf("%s: a line carries %.12g N, want 60/20", name, l.Force)
		}
	}
	if worst > stray {
		t.Errorf("%s: a line strays by %.3f mm from its way along the strip, want <= %g", name, worst, stray)
	}
	if len(lines) != 20 || right != int(math.Round(20*share)) {
		t.Errorf("%s: %d lines, %d to the right, want 20 and %.0f (lever law)", name, len(lines), right, 20*share)
	}
}

// TestFlowOfNothing: a load that pulls up has no flow from foot to rim.
func TestFlowOfNothing(t *testing.T) {
	s := flowStrip{length: 100, width: 20, thick: 4, n: 10, m: 2, load: 0, force: -5}
	if _, err := New(&s.solve(t).Result, 1); !errors.Is(err, ErrNoLoad) {
		t.Errorf("flow of a lifting load: error %v, want ErrNoLoad", err)
	}
}

// TestVerticalFlow checks the way to the plan on a slope by hand: a facet that
// rises 3 in 4 along x carries N = 10 N/mm along its slope: 10·3/5 = 6 N/mm of
// its width go up, and a millimetre of width is a millimetre in plan. A shear
// force of 5 N/mm square to it has 5·4/5 = 4 N/mm upward.
func TestVerticalFlow(t *testing.T) {
	s, err := element.NewShell(element.ShellInput{X: [3][3]float64{{0, 0, 0}, {4, 0, 3}, {0, 5, 0}}, H: 1,
		Wood: isotropicWood(1000, 0.3).Compliance(), Axes: materials.Axes{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		r    element.Resultants
		want [2]float64
	}{
		{element.Resultants{N: [3]float64{10, 0, 0}}, [2]float64{6, 0}},
		{element.Resultants{N: [3]float64{0, 10, 0}}, [2]float64{0, 0}},
		// Shear N_xy = 10 through a cut along the slope pulls up the slope with
		// 10 for each mm of slope, 6 upward, 7.5 for each mm in plan.
		{element.Resultants{N: [3]float64{0, 0, 10}}, [2]float64{0, 7.5}},
		{element.Resultants{Q: [2]float64{5, 0}}, [2]float64{4, 0}},
		// Through a cut along the slope, 5 N for each mm of slope are 5·5/4 for
		// each in plan, of which 4/5 upward.
		{element.Resultants{Q: [2]float64{0, 5}}, [2]float64{0, 5}},
	} {
		got := verticalFlow(&s, s.Frame(), c.r)
		if math.Hypot(got[0]-c.want[0], got[1]-c.want[1]) > 1e-12 {
			t.Errorf("flow of %+v = %v, want %v N/mm", c.r, got, c.want)
		}
	}
}

// isotropicWood has the same modulus along every axis.
func isotropicWood(e, nu float64) materials.Orthotropic {
	g := e / (2 * (1 + nu))
	return materials.Orthotropic{EL: e, ER: e, ET: e, GLR: g, GLT: g, GRT: g, NuLR: nu, NuLT: nu, NuRT: nu}
}

// halvedRectangles divides the unit square into n × m rectangles of two triangles.
func halvedRectangles(n, m int) (uv [][2]float64, tris [][3]int) {
	for j := range m + 1 {
		for i := range n + 1 {
			uv = append(uv, [2]float64{float64(i) / float64(n), float64(j) / float64(m)})
		}
	}
	for j := range m {
		for i := range n {
			a := j*(n+1) + i
			b, c, d := a+1, a+n+2, a+n+1
			tris = append(tris, [3]int{a, b, c}, [3]int{a, c, d})
		}
	}
	return uv, tris
}
