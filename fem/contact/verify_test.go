package contact

import (
	"errors"
	"math"
	"testing"

	"archload/fem/element"
	"archload/fem/sparse"
)

// springy is a plate that is nothing but one spring under each pad: pads in
// plan, their compliance (mm/N) and the body that stands on them.
type springy struct {
	at   [][2]float64 // mm
	give []float64    // mm/N
	body *Body
}

// stand puts the body on the springs in slip; every pad hangs on the nearest
// node of the body.
func (s springy) stand(t *testing.T) *Problem {
	t.Helper()
	n := len(s.at)
	c := &Condensed{hold: Slip, idle: factors(), cols: make([]sparse.Column, n), loadAt: make([]float64, n), c: make([]float64, n*n)}
	for i, p := range s.at {
		best := 0
		for k, q := range s.body.Nodes {
			if math.Abs(q[0]-p[0]) < math.Abs(s.body.Nodes[best][0]-p[0]) {
				best = k
			}
		}
		c.pads = append(c.pads, Pad{Node: int32(best), At: [3]float64{p[0], p[1], 0},
			Dir: [3][3]float64{{0, 0, 1}, {1, 0, 0}, {0, 1, 0}}})
		c.c[i*n+i] = s.give[i]
	}
	st, err := c.Problem(s.body)
	if err != nil {
		t.Fatal(err)
	}
	return st
}

// straightBody is a straight beam along x through the given places, guided
// across, along and about the upright; with plane, about its own axis too.
func straightBody(xs []float64, sec element.Rectangle, plane bool) *Body {
	b := &Body{}
	for i, x := range xs {
		b.Nodes = append(b.Nodes, [3]float64{x, 0, 0})
		if i > 0 {
			b.Beams = append(b.Beams, BodyBeam{Nodes: [2]int32{int32(i - 1), int32(i)}, Up: [3]float64{0, 0, 1}, Section: sec})
		}
	}
	b.Guides = []Guide{{Dir: [3]float64{1, 0, 0}}, {Dir: [3]float64{0, 1, 0}}, {Dir: [3]float64{0, 0, 1}, Turn: true}}
	if plane {
		b.Guides = append(b.Guides, Guide{Dir: [3]float64{1, 0, 0}, Turn: true})
	}
	// The first node stands for the rigid motion: guides hang on another one.
	mid := int32(len(xs) / 2)
	for i := range b.Guides {
		b.Guides[i].Node, b.Guides[i].At = mid, b.Nodes[mid]
	}
	return b
}

// down is a downward force on the node nearest to x, carried at (x, y).
func (b *Body) down(x, y, force float64) BodyLoad {
	best := 0
	for k, q := range b.Nodes {
		if math.Abs(q[0]-x) < math.Abs(b.Nodes[best][0]-x) {
			best = k
		}
	}
	return BodyLoad{Node: int32(best), At: [3]float64{x, y, 0}, F: [3]float64{0, 0, -force}}
}

// followed solves for the given gaps and loads.
func followed(t *testing.T, s *Problem, gap []float64, loads []BodyLoad) *State {
	t.Helper()
	st, err := s.Follow(LoadCase{Gap: gap, Loads: loads})
	if err != nil {
		t.Fatal(err)
	}
	return st
}

// TestTwoFeet loads a stiff bar on two equal feet 100 mm apart at a distance e
// from the middle: P (1/2 ± e/s) by statics; beyond the feet it tips.
func TestTwoFeet(t *testing.T) {
	const apart, load = 100.0, 80.0 // mm, N
	b := straightBody([]float64{-60, -50, 0, 50, 60}, element.Rectangle{Width: 13, Height: 30, E: 1e5, Gxy: 1e5, Gxz: 1e5}, true)
	s := springy{at: [][2]float64{{-50, 0}, {50, 0}}, give: []float64{0.01, 0.01}, body: b}.stand(t)
	for _, e := range []float64{-49.9, -20, 0, 12.5, 49.9} {
		st := followed(t, s, []float64{0, 0}, []BodyLoad{b.down(e, 0, load)})
		for k, side := range []float64{-1, 1} {
			want := load * (0.5 + side*e/apart)
			if got := st.Lambda[k]; math.Abs(got-want) > 1e-9*load {
				t.Errorf("load at %g: foot %d carries %.12f N, want %.12f (statics)", e, k, got, want)
			}
		}
	}
	for _, e := range []float64{-50.1, 60} {
		if _, err := s.Follow(LoadCase{Gap: []float64{0, 0}, Loads: []BodyLoad{b.down(e, 0, load)}}); !errors.Is(err, ErrOverturns) {
			t.Errorf("load at %g mm, feet at ±50: error %v, want that the bridge tips", e, err)
		}
	}
}

// TestTipsForeAndAft stands a foot with a front and a back edge: inside them
// the pads share the load by statics, outside the bridge tips.
func TestTipsForeAndAft(t *testing.T) {
	b := straightBody([]float64{-50, 0, 50}, element.Rectangle{Width: 13, Height: 30, E: 1e5, Gxy: 1e5, Gxz: 1e5}, false)
	four := springy{at: [][2]float64{{-50, -6}, {-50, 6}, {50, -6}, {50, 6}}, give: []float64{0.01, 0.01, 0.01, 0.01}, body: b}.stand(t)
	for _, c := range []struct {
		y    float64 // mm
		tips bool
	}{{-6.1, true}, {-5.9, false}, {0, false}, {5.9, false}, {6.1, true}} {
		st, err := four.Follow(LoadCase{Gap: make([]float64, 4), Loads: []BodyLoad{b.down(0, c.y, 80)}})
		if tips := errors.Is(err, ErrOverturns); tips != c.tips {
			t.Errorf("load at y = %g mm, edges at ±6: error %v, want tipping %v", c.y, err, c.tips)
			continue
		}
		if c.tips {
			continue
		}
		front := st.Lambda[1] + st.Lambda[3]
		if want := 80 * (0.5 + c.y/12); math.Abs(front-want) > 1e-9*80 {
			t.Errorf("load at y = %g mm: front edge carries %.12f N, want %.12f (statics)", c.y, front, want)
		}
	}
}

// TestRestOnUnevenFoot lays the slack body down by hand. On a foot that is
// even but out of level the body tilts until all pads touch. With one corner
// short by d it stands on the other three, or, if the load lies toward the
// short corner, on the diagonal and that corner, the opposite one lifted by d.
func TestRestOnUnevenFoot(t *testing.T) {
	const d = 0.2 // mm
	at := [][2]float64{{-50, -6}, {-50, 6}, {50, -6}, {50, 6}}
	level := make([]float64, 4)
	for i, p := range at {
		level[i] = 0.3 + 1e-3*p[0] - 4e-3*p[1]
	}
	b := straightBody([]float64{-50, 0, 50}, element.Rectangle{Width: 13, Height: 30, E: 1e5, Gxy: 1e5, Gxz: 1e5}, false)
	s := springy{at: at, give: []float64{0.01, 0.01, 0.01, 0.01}, body: b}.stand(t)
	for _, c := range []struct {
		name string
		gap  []float64 // mm
		load [2]float64
		want []float64 // gaps once the slack body lies, mm
	}{
		{"out of level", level, [2]float64{10, 1}, []float64{0, 0, 0, 0}},
		{"one corner short, load away from it", []float64{0, 0, 0, d}, [2]float64{-10, -1}, []float64{0, 0, 0, d}},
		{"one corner short, load toward it", []float64{0, 0, 0, d}, [2]float64{10, 1}, []float64{d, 0, 0, 0}},
		{"all short by the same", []float64{d, d, d, d}, [2]float64{0, 0}, []float64{0, 0, 0, 0}},
	} {
		p := s.lcp(LoadCase{Gap: c.gap, Loads: []BodyLoad{b.down(c.load[0], c.load[1], 80)}})
		rest, err := p.slackRest()
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		for i, want := range c.want {
			if got := p.slackGap(i, rest); math.Abs(got-want) > 1e-12 {
				t.Errorf("%s: gap of pad %d at rest %.15f mm, want %.15f", c.name, i, got, want)
			}
		}
	}
	p := s.lcp(LoadCase{Gap: level, Loads: []BodyLoad{b.down(0, 0, 80)}})
	rest, err := p.slackRest()
	if err != nil {
		t.Fatal(err)
	}
	// The body's first node lies at x = -50: gap there 0.25 mm; the tilt closes
	// the slopes 1e-3 (about y) and -4e-3 (about x).
	for k, want := range [6]float64{0, 0, -0.25, 4e-3, 1e-3, 0} {
		if math.Abs(rest[k]-want) > 1e-12 {
			t.Errorf("out of level: rest %d = %.15f, want %.15f", k, rest[k], want)
		}
	}
}
