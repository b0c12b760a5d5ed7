package delaunay

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"
)

// checkStructure tests neighbours, segments, orientation and that the
// triangles fill the helper box.
func checkStructure(t *testing.T, tr *Triangulation) {
	t.Helper()
	area := 0.0
	for i := range tr.T {
		o := &tr.T[i]
		a, b, c := tr.corners(int32(i))
		if Orient(a, b, c) <= 0 {
			t.Fatalf("triangle %d %v is not anticlockwise", i, o.V)
		}
		area += ((b[0]-a[0])*(c[1]-a[1]) - (b[1]-a[1])*(c[0]-a[0])) / 2
		for k, u := range o.N {
			if u == None {
				continue
			}
			j := tr.across(u, int32(i))
			n := &tr.T[u]
			if n.N[j] != int32(i) || n.V[(j+1)%3] != o.V[(k+2)%3] || n.V[(j+2)%3] != o.V[(k+1)%3] || n.S[j] != o.S[k] {
				t.Fatalf("triangles %d %v and %d %v do not share edge %d", i, *o, u, *n, k)
			}
		}
	}
	side := tr.P[1][0] - tr.P[0][0]
	if math.Abs(area-side*side) > 1e-9*side*side {
		t.Errorf("area of all triangles = %g mm², want %g (the box)", area, side*side)
	}
	for v := range tr.P {
		if tr.T[tr.at[v]].V[tr.index(tr.at[v], int32(v))] != int32(v) {
			t.Fatalf("triangle %d kept for vertex %d does not have it", tr.at[v], v)
		}
	}
}

// notDelaunay counts unconstrained edges that are not locally Delaunay.
func notDelaunay(tr *Triangulation) int {
	bad := 0
	for i := range tr.T {
		o := &tr.T[i]
		for k, u := range o.N {
			if u == None || o.S[k] != None {
				continue
			}
			a, b, c := tr.corners(int32(i))
			if InCircle(a, b, c, tr.P[tr.T[u].V[tr.across(u, int32(i))]]) > 0 {
				bad++
			}
		}
	}
	return bad
}

func TestDelaunayOfRandomAndGridPoints(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	tr := New(Point{0, 0}, Point{40, 40})
	for range 600 {
		tr.AddPoint(Point{40 * r.Float64(), 40 * r.Float64()})
	}
	for i := range 20 * 20 {
		tr.AddPoint(Point{float64(2 * (i % 20)), float64(2 * (i / 20))})
	}
	checkStructure(t, tr)
	if got := notDelaunay(tr); got != 0 {
		t.Errorf("%d edges are not Delaunay, want 0", got)
	}
	if got, want := len(tr.T), 2*len(tr.P)-6; got != want {
		t.Errorf("%d triangles for %d points, want %d (Euler, 4 hull corners)", got, len(tr.P), want)
	}
	n := len(tr.P)
	if v := tr.AddPoint(Point{4, 6}); tr.P[v] != (Point{4, 6}) || len(tr.P) != n {
		t.Errorf("a point that is there already became vertex %d of %d, want the old one", v, len(tr.P))
	}
}

func TestAddSegmentRecoversEdges(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	tr := New(Point{0, 0}, Point{100, 100})
	var ring []int32
	for i := range 40 { // a star-shaped ring with long and short rays
		a, l := 2*math.Pi*float64(i)/40, 10+35*float64(i%2)
		ring = append(ring, tr.AddPoint(Point{50 + l*math.Cos(a), 50 + l*math.Sin(a)}))
	}
	for range 500 {
		tr.AddPoint(Point{100 * r.Float64(), 100 * r.Float64()})
	}
	for i, v := range ring {
		if err := tr.AddSegment(Segment{A: v, B: ring[(i+1)%len(ring)], Curve: int32(i), TB: 1, Boundary: true}); err != nil {
			t.Fatal(err)
		}
	}
	tr.Legalize()
	checkStructure(t, tr)
	if got := notDelaunay(tr); got != 0 {
		t.Errorf("%d free edges are not Delaunay, want 0", got)
	}
	tr.MarkRegions()
	in := 0.0
	for i := range tr.T {
		if a, b, c := tr.corners(int32(i)); tr.T[i].In {
			in += ((b[0]-a[0])*(c[1]-a[1]) - (b[1]-a[1])*(c[0]-a[0])) / 2
		}
	}
	want := 40 * 0.5 * 10 * 45 * math.Sin(2*math.Pi/40)
	if math.Abs(in-want) > 1e-9*want {
		t.Errorf("area inside the star = %g mm², want %g (40 triangles of sides 10 and 45)", in, want)
	}
}

func TestAddSegmentThroughVerticesAndAcross(t *testing.T) {
	tr := New(Point{0, 0}, Point{10, 10})
	var v [5]int32
	for i := range v {
		v[i] = tr.AddPoint(Point{float64(2 * i), 5})
	}
	lo, hi := tr.AddPoint(Point{3, 0}), tr.AddPoint(Point{3, 10})
	if err := tr.AddSegment(Segment{A: v[0], B: v[4], Curve: 7, TA: 1, TB: 3}); err != nil {
		t.Fatal(err)
	}
	if len(tr.Segs) != 4 || tr.Segs[1].TA != 1.5 || tr.Segs[1].TB != 2 {
		t.Errorf("segments %+v, want 4 pieces, the second from parameter 1.5 to 2", tr.Segs)
	}
	err := tr.AddSegment(Segment{A: lo, B: hi, Curve: 8})
	var cross *CrossError
	if !errors.As(err, &cross) || cross.Old.Curve != 7 || cross.New.Curve != 8 || cross.At != (Point{3, 5}) {
		t.Errorf("crossing segment: error %v, want a crossing of curves 8 and 7 at (3, 5)", err)
	}
}

// TestRefineFollowsCurve refines a square with a hole bounded by a circle that
// starts as a square of four chords.
func TestRefineFollowsCurve(t *testing.T) {
	at := func(u float64) Point { return Point{20 * math.Cos(u), 20 * math.Sin(u)} }
	tr := New(Point{-50, -50}, Point{50, 50})
	var ring, box []int32
	for i := range 4 {
		ring = append(ring, tr.AddPoint(at(float64(i)*math.Pi/2)))
	}
	for _, p := range []Point{{-50, -50}, {50, -50}, {50, 50}, {-50, 50}} {
		box = append(box, tr.AddPoint(p))
	}
	for i := range 4 {
		for c, list := range [][]int32{ring, box} {
			s := Segment{A: list[i], B: list[(i+1)%4], Curve: int32(c), TA: float64(i) * math.Pi / 2, TB: float64(i+1) * math.Pi / 2, Boundary: true}
			if err := tr.AddSegment(s); err != nil {
				t.Fatal(err)
			}
		}
	}
	tr.MarkRegions()
	done := tr.Refine(Rules{
		Size: func(Point) float64 { return 4 },
		Split: func(s Segment, u float64) Point {
			if s.Curve == 0 {
				return at(u)
			}
			return mid(tr.P[s.A], tr.P[s.B])
		},
		MaxPoints: 5000,
	})
	if !done {
		t.Fatal("refinement stopped at 5000 points, want fewer than 1000")
	}
	tr.Smooth(func(Point) float64 { return 4 })
	checkStructure(t, tr)
	in := 0.0
	for i := range tr.T {
		if a, b, c := tr.corners(int32(i)); tr.T[i].In {
			in += ((b[0]-a[0])*(c[1]-a[1]) - (b[1]-a[1])*(c[0]-a[0])) / 2
		}
	}
	want := 1e4 - math.Pi*400
	if math.Abs(in-want) > 0.01*math.Pi*400 {
		t.Errorf("area = %.1f mm², want %.1f within 1 %% of the circle's", in, want)
	}
	for _, s := range tr.Segs {
		if s.Curve == 0 && math.Abs(math.Hypot(tr.P[s.A][0], tr.P[s.A][1])-20) > 1e-12 {
			t.Errorf("vertex %v of the circle has radius %g mm, want 20", tr.P[s.A], math.Hypot(tr.P[s.A][0], tr.P[s.A][1]))
		}
	}
}
