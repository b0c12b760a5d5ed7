package plane

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
)

func TestCurvePolygonStaysPolygon(t *testing.T) {
	c := mustCurve(t, []Point{{0, 0}, {0, 30}, {40, 30}, {40, 0}}, allCorners(4)) // clockwise
	if got := c.Area(); math.Abs(got-1200) > 1e-9 {
		t.Errorf("area = %g mm², want 1200 (40 x 30)", got)
	}
	if got := c.Length(); math.Abs(got-140) > 1e-9 {
		t.Errorf("length = %g mm, want 140", got)
	}
	if got := c.Polyline(0.01); len(got) != 4 || ringArea(got) < 0 {
		t.Errorf("polyline %v, want the 4 corners anticlockwise", got)
	}
	lo, hi := c.Bounds()
	if lo != (Point{0, 0}) || hi != (Point{40, 30}) {
		t.Errorf("bounds %v %v, want (0, 0) and (40, 30)", lo, hi)
	}
}

// TestCurveConverges checks the order of the spline on an ellipse: twice the
// points, about a sixteenth of the error.
func TestCurveConverges(t *testing.T) {
	worst := func(n int) (area, dist float64) {
		var pts []Point
		for i := range n {
			a := 2 * math.Pi * float64(i) / float64(n)
			pts = append(pts, Point{200 * math.Cos(a), 150 * math.Sin(a)})
		}
		c := mustCurve(t, pts, nil)
		for i := range 2000 {
			a := 2 * math.Pi * float64(i) / 2000
			dist = max(dist, c.Distance(Point{200 * math.Cos(a), 150 * math.Sin(a)}))
		}
		return math.Abs(c.Area() - math.Pi*200*150), dist
	}
	a1, d1 := worst(24)
	a2, d2 := worst(48)
	if d2 > 0.01 || d1/d2 < 12 {
		t.Errorf("distance of the ellipse from the spline: %g then %g mm, want below 0.01 and a ratio of about 16", d1, d2)
	}
	if a1/a2 < 12 {
		t.Errorf("area error %g then %g mm², want a ratio of about 16", a1, a2)
	}
}

// TestCurveSmoothBetweenCorners: slope and second derivative are continuous at
// every given point that is no corner, and not at corners.
func TestCurveSmoothBetweenCorners(t *testing.T) {
	pts := []Point{{0, 0}, {50, -10}, {100, 0}, {110, 60}, {70, 95}, {30, 95}, {-10, 60}}
	for _, corner := range [][]bool{nil, {true, false, true, false, false, false, false}, {false, false, false, true, false, false, false}} {
		c := mustCurve(t, pts, corner)
		for i := range c.cubic {
			prev := (i + len(pts) - 1) % len(pts)
			d0, dd0 := c.cubic[prev].slopes(c.knot[prev+1] - c.knot[prev])
			d1, dd1 := c.cubic[i].slopes(0)
			jump, bend := Dist(d0, d1), Dist(dd0, dd1)
			if c.corner[i] && jump < 0.05 {
				t.Errorf("corner %d: slopes %v and %v, want a jump", i, d0, d1)
			}
			if !c.corner[i] && (jump > 1e-12 || bend > 1e-12) {
				t.Errorf("point %d: slope jumps by %g, second derivative by %g 1/mm, want 0", i, jump, bend)
			}
			if got := c.At(c.knot[i]); Dist(got, pts[i]) > 1e-12 {
				t.Errorf("curve passes %v, want point %v", got, pts[i])
			}
		}
	}
}

func TestCurveClosingPointAndDirection(t *testing.T) {
	pts := polar(Point{5, 5}, 24, func(float64) float64 { return 30 })
	want := mustCurve(t, pts, nil)
	closed := append(append([]Point{}, pts...), Point{pts[0][0] + 1e-4, pts[0][1]})
	if got := mustCurve(t, closed, nil); got.Area() != want.Area() || len(got.pts) != len(pts) {
		t.Errorf("with a closing point: area %g, %d points, want %g, %d", got.Area(), len(got.pts), want.Area(), len(pts))
	}
	var back []Point
	for i := range pts {
		back = append(back, pts[len(pts)-1-i])
	}
	if got := mustCurve(t, back, nil); math.Abs(got.Area()-want.Area()) > 1e-9 {
		t.Errorf("clockwise points: area %g mm², want %g", got.Area(), want.Area())
	}
	if m := want.Mirrored(); math.Abs(m.Area()-want.Area()) > 1e-9 || !m.Contains(Point{-20, 5}) || m.Contains(Point{30, 5}) {
		t.Errorf("mirrored: area %g mm², want %g on the other side", m.Area(), want.Area())
	}
}

// TestCurveTurnsAgainstItsPoints: the polygon through these points runs
// clockwise, the spline through them anticlockwise.
func TestCurveTurnsAgainstItsPoints(t *testing.T) {
	pts := []Point{{37, 21}, {38, 15}, {0, 9}, {3, 14}, {23, 4}}
	for range 2 {
		c := mustCurve(t, pts, nil)
		if ringArea(c.pts) > 0 || c.Area() < 100 || ringArea(c.flat) < 100 {
			t.Errorf("area %g mm², of the polyline %g, of the points %g: want the first two above 100, the last below 0", c.Area(), ringArea(c.flat), ringArea(c.pts))
		}
		slices.Reverse(pts)
	}
}

func TestCurvePolylineKeepsTolerance(t *testing.T) {
	c := mustCurve(t, polar(Point{80, 0}, 24, waisted), nil)
	for _, tol := range []float64{0.5, 0.05, 0.005} {
		line := c.Polyline(tol)
		worst := 0.0
		for _, p := range c.flat {
			best := math.Inf(1)
			for i, q := range line {
				_, d2 := OnChord(q, line[(i+1)%len(line)], p)
				best = min(best, d2)
			}
			worst = max(worst, math.Sqrt(best))
		}
		if worst > tol {
			t.Errorf("tolerance %g mm: the curve is %g mm from its polyline", tol, worst)
		}
	}
	if a, b := len(c.Polyline(0.5)), len(c.Polyline(0.005)); b < 2*a {
		t.Errorf("%d points at 0.5 mm, %d at 0.005 mm: want many more", a, b)
	}
}

func TestCurveQueriesAgainstBruteForce(t *testing.T) {
	c := mustCurve(t, polar(Point{}, 28, waisted), nil)
	fine := c.Polyline(1e-5)
	r := rand.New(rand.NewPCG(7, 8))
	for range 300 {
		p := Point{500 * (r.Float64() - 0.5), 600 * (r.Float64() - 0.5)}
		want, turns := math.Inf(1), 0.0
		for i, q := range fine {
			s := fine[(i+1)%len(fine)]
			_, d2 := OnChord(q, s, p)
			want = min(want, math.Sqrt(d2))
			turns += math.Atan2(Cross(p, q, s), (q[0]-p[0])*(s[0]-p[0])+(q[1]-p[1])*(s[1]-p[1]))
		}
		if got := c.Distance(p); math.Abs(got-want) > 2e-5 {
			t.Errorf("distance of %v = %g mm, want %g", p, got, want)
		}
		if _, q, _ := c.Nearest(p); math.Abs(Dist(p, q)-want) > 2e-5 {
			t.Errorf("nearest point of %v is %g mm away, want %g", p, Dist(p, q), want)
		}
		if got, want := c.Contains(p), turns > math.Pi; got != want {
			t.Errorf("contains %v = %t, want %t (winding number)", p, got, want)
		}
	}
	lo, hi := c.Bounds()
	wantLo, wantHi := Bounds(fine)
	if Dist(lo, wantLo) > 1e-4 || Dist(hi, wantHi) > 1e-4 {
		t.Errorf("bounds %v %v, want %v %v", lo, hi, wantLo, wantHi)
	}
}

func TestCurveRefuses(t *testing.T) {
	sq := []Point{{0, 0}, {10, 0}, {10, 10}, {0, 10}}
	all := []bool{true, true, true, true}
	for _, c := range []struct {
		name   string
		pts    []Point
		corner []bool
		want   string
	}{
		{"none", nil, nil, "at least 3"},
		{"two", sq[:2], nil, "at least 3"},
		{"two and a closing point", []Point{{0, 0}, {5, 5}, {0, 0}}, nil, "at least 3"},
		{"repeated", []Point{{0, 0}, {10, 0}, {10, 0}, {0, 10}}, nil, "point 3 at (10, 0) mm: repeats"},
		{"closed twice", []Point{{0, 0}, {10, 0}, {0, 10}, {0, 0}, {0, 0}}, nil, "point 4 at (0, 0) mm: repeats the first"},
		{"not a number", []Point{{0, 0}, {math.NaN(), 0}, {10, 10}}, nil, "point 2"},
		{"infinite", []Point{{0, 0}, {10, math.Inf(-1)}, {10, 10}}, nil, "point 2"},
		{"huge", []Point{{0, 0}, {1e9, 0}, {10, 10}}, nil, "within 100000 mm"},
		{"one line", []Point{{0, 0}, {5, 5}, {9, 9}, {2, 2}}, nil, "one line"},
		{"crossing", []Point{{0, 0}, {10, 10}, {10, 0}, {0, 10}}, all, "crosses"},
		{"spike", []Point{{0, 0}, {10, 0}, {10, 10}, {5, 5}, {10, 10}, {0, 10}}, []bool{true, true, true, true, true, true}, "crosses"},
		{"running back", []Point{{0, 0}, {10, 0}, {20, 0}, {15, 0}, {15, 10}, {0, 10}}, []bool{true, true, true, true, true, true}, "crosses"},
		{"marks", sq, []bool{true}, "corner mark"},
	} {
		_, err := NewCurve(c.pts, c.corner)
		var ce *CurveError
		if !errors.As(err, &ce) || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %q, want a CurveError with %q", c.name, err, c.want)
		}
	}
	pts := append(append([]Point{}, sq...), Point{1e-9, 1e-9}) // closing point, all corners
	if _, err := NewCurve(pts, []bool{true, true, true, true, true}); err != nil {
		t.Errorf("square with a closing point: %v", err)
	}
}

// FuzzCurve reads coordinates of a tenth of a millimetre and corner marks; a
// curve that is accepted must keep what Curve promises.
func FuzzCurve(f *testing.F) {
	f.Add([]byte{0, 0, 0, 0, 1, 0, 100, 0, 0, 100, 100, 1, 0, 0, 90})
	f.Add([]byte{10, 0, 10, 0, 0, 10, 1, 10, 0, 0, 11, 1, 10, 2, 10, 0, 0, 13, 0, 10, 0})
	f.Fuzz(func(t *testing.T, data []byte) {
		var pts []Point
		var corner []bool
		for ; len(data) >= 5 && len(pts) < 300; data = data[5:] {
			x, y := int16(uint16(data[0])<<8|uint16(data[1])), int16(uint16(data[2])<<8|uint16(data[3]))
			pts = append(pts, Point{float64(x) / 10, float64(y) / 10})
			corner = append(corner, data[4]&1 == 1)
		}
		c, err := NewCurve(pts, corner)
		if err != nil {
			var ce *CurveError
			if !errors.As(err, &ce) {
				t.Fatalf("error %v, want a CurveError", err)
			}
			return
		}
		checkCurve(t, c)
	})
}

func checkCurve(t *testing.T, c *Curve) {
	t.Helper()
	lo, hi := c.Bounds()
	size := Dist(lo, hi)
	flat := c.Polyline(0)
	if a, b := c.Area(), ringArea(flat); !(a > 0) || math.Abs(a-b) > 1e-5*size*c.Length() {
		t.Fatalf("area %g mm², of the polyline %g", a, b)
	}
	for i := 0; i < len(flat); i += 1 + len(flat)/50 {
		p := flat[i]
		if d := c.Distance(p); !(d < 1e-6*size) {
			t.Fatalf("point %v of the curve is %g mm from it", p, d)
		}
		if p[0] < lo[0]-1e-6*size || p[0] > hi[0]+1e-6*size || p[1] < lo[1]-1e-6*size || p[1] > hi[1]+1e-6*size {
			t.Fatalf("point %v of the curve is outside its bounds %v %v", p, lo, hi)
		}
	}
	if c.Contains(Point{hi[0] + size, lo[1]}) {
		t.Fatal("contains a point far away")
	}
	if m := c.Mirrored(); math.Abs(m.Area()-c.Area()) > 1e-6*size*size {
		t.Fatalf("mirrored area %g mm², want %g", m.Area(), c.Area())
	}
}
