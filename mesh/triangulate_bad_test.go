package mesh

import (
	"errors"
	"math"
	"strings"
	"testing"

	"archload/mesh/plane"
)

// badDomain is a domain that must be refused, with the error wanted.
type badDomain struct {
	name   string
	d      Domain
	part   string
	index  int
	want   string
	at     Point
	within float64 // mm, of At; 0 means At is not compared
}

func badDomains(t *testing.T) []badDomain {
	sq := rectangleCurve(t)
	line := func(pts ...Point) Domain { return Domain{Outline: sq, Lines: [][]Point{{{-50, 0}, {50, 0}}, pts}} }
	holes := func(h ...*plane.Curve) Domain { return Domain{Outline: sq, Holes: h} }
	eye := circleCurve(t, Point{0, 100}, 20)
	return []badDomain{
		{"no outline", Domain{}, "outline", 0, "missing", Point{}, 0},
		{"no hole", holes(eye, nil), "hole", 1, "missing", Point{}, 0},
		{"hole outside", holes(circleCurve(t, Point{300, 0}, 20)), "hole", 0, "crosses the outline, by 170.00 mm", Point{320, 0}, 1},
		{"hole across the edge", holes(eye, circleCurve(t, Point{145, 0}, 20)), "hole", 1, "crosses the outline, by 15.00 mm", Point{165, 0}, 1},
		{"hole touching the edge", holes(polygonCurve(t, Point{100, 0}, Point{150, 10}, Point{100, 20})), "hole", 0, "touches the outline", Point{150, 10}, 1},
		{"hole round the plate", holes(circleCurve(t, Point{0, 0}, 400)), "hole", 0, "crosses the outline", Point{}, 0},
		{"outline corner in a hole", Domain{Outline: polygonCurve(t, Point{-150, -200}, Point{0, 0}, Point{150, -200}, Point{0, 200}),
			Holes: []*plane.Curve{circleCurve(t, Point{0, 10}, 25)}}, "hole", 0, "crosses the outline", Point{}, 0},
		{"holes overlap", holes(eye, circleCurve(t, Point{30, 100}, 20)), "hole", 1, "overlaps hole 1, by 10", Point{15, 100}, 6},
		{"hole in a hole", holes(eye, circleCurve(t, Point{0, 100}, 5)), "hole", 1, "overlaps hole 1", Point{0, 100}, 6},
		{"same hole twice", holes(eye, eye), "hole", 1, "hole 1", Point{0, 100}, 21},
		{"line of one point", line(Point{1, 1}), "line", 1, "at least 2", Point{1, 1}, 1e-9},
		{"line without points", line(), "line", 1, "at least 2", Point{}, 0},
		{"line of one place", line(Point{1, 1}, Point{1, 1}), "line", 1, "at least 2", Point{1, 1}, 1e-9},
		{"line with NaN", line(Point{1, 1}, Point{math.NaN(), 1}), "line", 1, "want coordinates", Point{}, 0},
		{"line end outside", line(Point{0, 50}, Point{153.25, 50}), "line", 1, "leaves the plate by 3.25 mm", Point{153, 50}, 1},
		{"line wholly outside", line(Point{200, 50}, Point{300, 50}), "line", 1, "leaves the plate by 150.00 mm", Point{300, 50}, 1},
		{"line bulges out", line(Point{0, 50}, Point{160, 80}, Point{0, 90}), "line", 1, "leaves the plate by", Point{160, 80}, 1},
		{"line along the edge", line(Point{-50, 200}, Point{50, 200}), "line", 1, "touches the edge", Point{}, 0},
		{"line touches the edge", line(Point{-50, 100}, Point{0, 200}, Point{50, 100}), "line", 1, "touches the edge", Point{}, 0},
		{"line ends in a hole", Domain{Outline: sq, Holes: []*plane.Curve{eye}, Lines: [][]Point{{{0, 0}, {0, 85}}}}, "line", 0, "enters hole 1 by 5.0", Point{0, 85}, 0.5},
		{"line through a hole", Domain{Outline: sq, Holes: []*plane.Curve{eye}, Lines: [][]Point{{{-90, 100}, {90, 100}}}}, "line", 0, "enters hole 1 by 20.0", Point{0, 100}, 1},
		{"line too short", line(Point{10, 0.3}, Point{10, -0.3}), "line", 1, "shorter than", Point{10, 0}, 1},
		{"size below 0", Domain{Outline: sq, Size: -1}, "size", 0, "above 0", Point{}, 0},
		{"size NaN", Domain{Outline: sq, Size: math.NaN()}, "size", 0, "above 0", Point{}, 0},
		{"scale infinite", Domain{Outline: sq, Scale: math.Inf(1)}, "size", 0, "above 0", Point{}, 0},
		{"size tiny", Domain{Outline: sq, Size: 0.01}, "size", 0, "larger edges", Point{}, 0},
		{"scale tiny", Domain{Outline: sq, Scale: 1e-9}, "size", 0, "larger edges", Point{}, 0},
		{"fine zone tiny", Domain{Outline: sq, Fine: []Fine{{Along: []Point{{0, 0}}, Radius: 90, Size: 0.1}}}, "size", 0, "larger edges", Point{}, 0},
		{"fine zone of size 0", Domain{Outline: sq, Fine: []Fine{{Along: []Point{{0, 0}}, Radius: 5}}}, "size", 0, "fine zone", Point{}, 0},
		{"fine zone nowhere", Domain{Outline: sq, Fine: []Fine{{Radius: 5, Size: 3}}}, "size", 0, "fine zone", Point{}, 0},
		{"fine zone at NaN", Domain{Outline: sq, Fine: []Fine{{Along: []Point{{math.NaN(), 0}}, Radius: 5, Size: 3}}}, "size", 0, "fine zone", Point{}, 0},
	}
}

func TestTriangulateRefuses(t *testing.T) {
	for _, c := range badDomains(t) {
		t.Run(c.name, func(t *testing.T) {
			_, err := Triangulate(c.d)
			var pe *PlaceError
			if !errors.As(err, &pe) {
				t.Fatalf("error %v, want a PlaceError", err)
			}
			if pe.Part != c.part || pe.Index != c.index || !strings.Contains(pe.Msg, c.want) {
				t.Errorf("error %q (part %s, index %d), want %q (%s, %d)", err, pe.Part, pe.Index, c.want, c.part, c.index)
			}
			if c.within > 0 && !(plane.Dist(pe.At, c.at) <= c.within) {
				t.Errorf("error %q is at %v, want %v", err, pe.At, c.at)
			}
		})
	}
}

func TestPlaceErrorReads(t *testing.T) {
	for _, c := range []struct {
		err  PlaceError
		want string
	}{
		{PlaceError{"hole", 1, Point{1, 2}, "touches the outline"}, "hole 2, near (1.00, 2.00) mm: touches the outline"},
		{PlaceError{"outline", 0, Point{1, 2}, "missing"}, "outline, near (1.00, 2.00) mm: missing"},
		{PlaceError{"size", 0, Point{}, "too small"}, "mesh size: too small"},
	} {
		if got := c.err.Error(); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}

// TestTriangulateManyLines: a line that crosses itself often is meshed while that can be
// done, and refused by its number of crossings or by its length when it cannot.
func TestTriangulateManyLines(t *testing.T) {
	for _, c := range []struct {
		corners int
		want    string // of the error; "" for a plan
	}{
		{20, ""},
		{370, "cross each other too often"},
		{400, "want lines of at most 50 times the length of the outline together"},
	} {
		var scribble []Point
		for i := range c.corners {
			a := 2.4 * float64(i)
			scribble = append(scribble, Point{(60 + 0.2*float64(i)) * math.Cos(a), (60 + 0.2*float64(i)) * math.Sin(a)})
		}
		d := Domain{Outline: rectangleCurve(t), Lines: [][]Point{scribble}}
		p, err := Triangulate(d)
		var pe *PlaceError
		switch {
		case c.want == "" && err != nil, c.want != "" && (!errors.As(err, &pe) || !strings.Contains(err.Error(), c.want)):
			t.Errorf("%d corners: error %v, want %q", c.corners, err, c.want)
		case err == nil:
			checkPlanValid(t, &d, p)
		}
	}
}
