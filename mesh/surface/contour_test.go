package surface

import (
	"math"
	"testing"

	"archload/mesh/plane"
)

// ball is the upper half of a sphere of radius r about the origin, lowered.
type ball struct{ r, down float64 }

func (b ball) At(p plane.Point) Jet {
	z := math.Sqrt(b.r*b.r - p[0]*p[0] - p[1]*p[1])
	z3 := z * z * z
	return Jet{
		z - b.down, -p[0] / z, -p[1] / z,
		-(b.r*b.r - p[1]*p[1]) / z3, -p[0] * p[1] / z3, -(b.r*b.r - p[0]*p[0]) / z3,
	}
}

// slope is a plane.
type slope struct{ z, zx, zy float64 }

func (s slope) At(p plane.Point) Jet {
	return Jet{Z: s.z + s.zx*p[0] + s.zy*p[1], Zx: s.zx, Zy: s.zy}
}

func TestContoursOfABall(t *testing.T) {
	const r = 300.0
	square := rectangle(400, 400)
	lines, err := Contours(ball{r, 250}, square, []float64{20, 30, 40, 60}, ContourOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if len(lines) != 3 {
		t.Fatalf("%d lines, want 3 closed circles; none at 60 mm, above the top", len(lines))
	}
	for _, l := range lines {
		z := l.Height + 250
		want := math.Sqrt(r*r - z*z) // mm, radius of the circle
		length := 0.0
		for i, p := range l.Points {
			if got := math.Hypot(p[0], p[1]); math.Abs(got-want) > 0.01 {
				t.Fatalf("height %g mm: point %v at radius %.4f, want %.4f", l.Height, p, got, want)
			}
			length += plane.Dist(p, l.Points[(i+1)%len(l.Points)])
		}
		if !l.closed() || math.Abs(length/(2*math.Pi*want)-1) > 0.01 {
			t.Errorf("height %g mm: closed %v, length %.1f, want a whole circle of %.1f", l.Height, l.closed(), length, 2*math.Pi*want)
		}
		if got := length / float64(len(l.Points)); math.Abs(got-5) > 0.2 {
			t.Errorf("height %g mm: spacing %.2f mm, want 5", l.Height, got)
		}
	}
}

func TestContoursAreCutAtTheOutline(t *testing.T) {
	lines, err := Contours(slope{10, 0.1, 0}, rectangle(200, 100), []float64{12}, ContourOptions{Round: 0.1})
	if err != nil {
		t.Fatal(err)
	}
	if len(lines) != 1 || lines[0].closed() {
		t.Fatalf("%d lines, want one open line", len(lines))
	}
	for _, p := range lines[0].Points {
		if p[0] != 20 || math.Abs(p[1]) > 50 {
			t.Errorf("point %v, want x = 20 and |y| at most 50 (10 + 0.1 x = 12)", p)
		}
	}
}

func TestEdgeProfiles(t *testing.T) {
	spots, err := EdgeProfiles(slope{0, 0, 0.5}, rectangle(200, 100), 4, []float64{10, 20}, ContourOptions{Round: 0.1})
	if err != nil {
		t.Fatal(err)
	}
	// Four lines over 600 mm of outline from the corner (−100, −50): at 0,
	// 150 (bottom side, x = 50), 300 (corner (100, 50)) and 450 (top, x = −50).
	if len(spots) != 8 {
		t.Fatalf("%d spots, want 8", len(spots))
	}
	for k, want := range map[int]ContourLine{
		2: {ID: "p2.1", Height: -20, Points: []plane.Point{{50, -40}}},
		7: {ID: "p4.2", Height: 15, Points: []plane.Point{{-50, 30}}},
	} {
		got := spots[k]
		if got.ID != want.ID || got.Height != want.Height || got.Points[0] != want.Points[0] {
			t.Errorf("spot %d = %v, want %v", k, got, want)
		}
	}
}

func TestNearestPointOfTheOutline(t *testing.T) {
	pts := guitarShape{}.Polyline(0.01)
	rim := newRimLine(pts)
	for _, p := range []plane.Point{{10, 5}, {120, 110}, {-300, 20}, {150, -60}, {0, 309}, {-128, 117}} {
		want := math.Inf(1)
		for i := range pts {
			a, b := rim.edge(i)
			u := ((p[0]-a[0])*(b[0]-a[0]) + (p[1]-a[1])*(b[1]-a[1])) / math.Pow(plane.Dist(a, b), 2)
			u = min(max(u, 0), 1)
			want = min(want, plane.Dist(p, plane.Point{a[0] + u*(b[0]-a[0]), a[1] + u*(b[1]-a[1])}))
		}
		f := rim.nearest(p)
		if math.Abs(f.dist-want) > 1e-9 || math.Abs(plane.Dist(p, f.at)-want) > 1e-9 {
			t.Errorf("distance of %v = %.9f mm, want %.9f (all edges tried)", p, f.dist, want)
		}
		const step = 1e-3 // mm
		on := rim.nearest(plane.Point{p[0] + step*f.inward[0], p[1] + step*f.inward[1]})
		if got := on.signed() - f.signed(); math.Abs(got-step) > 1e-6 {
			t.Errorf("signed distance at %v grows by %.6f over a step of %.6f along its gradient", p, got, step)
		}
	}
}
