package mesh

import (
	"math"
	"math/rand/v2"
	"testing"

	"archload/mesh/plane"
)

func mustPlan(tb testing.TB, d Domain) *Plan {
	tb.Helper()
	p, err := Triangulate(d)
	if err != nil {
		tb.Fatal(err)
	}
	return p
}

func TestLocator(t *testing.T) {
	d := holedDomain(t)
	d.Size = 15
	p := mustPlan(t, d)
	l := NewLocator(p)
	r := rand.New(rand.NewPCG(9, 10))
	outside := 0
	for range 2000 {
		q := Point{480 * (r.Float64() - 0.5), 600 * (r.Float64() - 0.5)}
		tri, bary, in := l.Find(q)
		sum, at := 0.0, Point{}
		for i, v := range p.Tris[tri] {
			if bary[i] < 0 {
				t.Fatalf("coordinates %v at %v, want none below 0", bary, q)
			}
			sum += bary[i]
			at[0] += bary[i] * p.Points[v][0]
			at[1] += bary[i] * p.Points[v][1]
		}
		if math.Abs(sum-1) > 1e-12 {
			t.Fatalf("coordinates %v at %v sum to %g, want 1", bary, q, sum)
		}
		want, wantIn := bruteNearest(p, q)
		if got := plane.Dist(at, q); math.Abs(got-want) > 1e-9 || in != wantIn {
			t.Fatalf("%v: place found is %g mm away, inside %t; want %g mm, %t", q, got, in, want, wantIn)
		}
		if !in {
			outside++
		}
	}
	if outside < 300 {
		t.Errorf("only %d of 2000 places outside: the test has lost its point", outside)
	}
}

// bruteNearest returns the distance of q from the plan and whether it is in a
// triangle.
func bruteNearest(p *Plan, q Point) (float64, bool) {
	best := math.Inf(1)
	for _, t := range p.Tris {
		x := [3]Point{p.Points[t[0]], p.Points[t[1]], p.Points[t[2]]}
		in := true
		for i := range 3 {
			_, d2 := plane.OnChord(x[i], x[(i+1)%3], q)
			best = min(best, d2)
			in = in && plane.Cross(x[i], x[(i+1)%3], q) >= 0
		}
		if in {
			return 0, true
		}
	}
	return math.Sqrt(best), false
}

func TestLocatorAtNodesAndNonsense(t *testing.T) {
	p := mustPlan(t, Domain{Outline: rectangleCurve(t), Size: 40})
	l := NewLocator(p)
	for i, q := range p.Points {
		tri, bary, in := l.Find(q)
		if !in {
			t.Errorf("node %d at %v counts as outside", i, q)
		}
		for k, v := range p.Tris[tri] {
			if want := map[bool]float64{true: 1}[int(v) == i]; math.Abs(bary[k]-want) > 1e-9 {
				t.Errorf("node %d: coordinate of node %d = %g, want %g", i, v, bary[k], want)
			}
		}
	}
	if _, _, in := l.Find(Point{math.NaN(), 0}); in {
		t.Error("NaN counts as inside")
	}
	if tri, _, in := l.Find(Point{1e12, -1e12}); in || tri < 0 {
		t.Errorf("far away: triangle %d, inside %t, want a nearest triangle and false", tri, in)
	}
	if tri, _, in := NewLocator(&Plan{}).Find(Point{}); tri != -1 || in {
		t.Errorf("empty plan: triangle %d, inside %t, want -1, false", tri, in)
	}
}

func TestQualityByHand(t *testing.T) {
	p := &Plan{Points: []Point{{0, 0}, {4, 0}, {4, 3}, {0, 40}}, Tris: [][3]int32{{0, 1, 2}, {0, 2, 3}}}
	q := p.Quality()
	thin := math.Atan2(4, 37)
	for _, c := range []struct {
		name      string
		got, want float64
		source    string
	}{
		{"least angle", q.MinAngle, thin * 180 / math.Pi, "at (0, 40), between (0, -40) and (4, -37): atan(4/37)"},
		{"area", q.Area, 6 + 80, "4 x 3 / 2 + 40 x 4 / 2"},
		{"shortest edge", q.ShortestEdge, 3, "from (4, 0) to (4, 3)"},
		{"longest edge", q.LongestEdge, 40, "from (0, 0) to (0, 40)"},
		{"below 15 degrees", float64(q.Below15), 1, "the thin one"},
		{"share below 25 degrees", q.ShareBelow25, 0.5, "the other has atan(3/4) = 36.9"},
	} {
		if math.Abs(c.got-c.want) > 1e-12*c.want {
			t.Errorf("%s = %g, want %g (%s)", c.name, c.got, c.want, c.source)
		}
	}
}
