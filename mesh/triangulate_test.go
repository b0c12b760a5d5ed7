package mesh

import (
	"math"
	"reflect"
	"testing"

	"archload/mesh/plane"
)

// checkPlanValid tests everything a plan promises except shapes of triangles.
func checkPlanValid(t *testing.T, d *Domain, p *Plan) {
	t.Helper()
	edges := planEdges(t, p)
	if len(p.Holes) != len(d.Holes) || len(p.Lines) != len(d.Lines) {
		t.Fatalf("%d holes and %d lines, want %d and %d", len(p.Holes), len(p.Lines), len(d.Holes), len(d.Lines))
	}
	if got, want := len(p.Points)-len(edges)+len(p.Tris), 1-len(d.Holes); got != want {
		t.Fatalf("nodes - edges + triangles = %d, want %d (Euler, %d holes)", got, want, len(d.Holes))
	}
	area, free := 0.0, 0
	for i, loop := range append([][]int32{p.Rim}, p.Holes...) {
		ring := loopPoints(p, loop)
		a := ringArea(ring)
		if a <= 0 {
			t.Fatalf("loop %d has area %g mm², want it anticlockwise", i, a)
		}
		if i > 0 {
			a = -a
		}
		area += a
		free += len(loop)
		for k, v := range loop {
			if n := edges[ordered(v, loop[(k+1)%len(loop)])]; n != 1 {
				t.Fatalf("loop %d, edge %d has %d triangles, want 1", i, k, n)
			}
		}
	}
	for _, n := range edges {
		if n == 1 {
			free--
		}
	}
	if free != 0 {
		t.Fatalf("%d edges more on the loops than edges with one triangle", free)
	}
	if q := p.Quality(); math.Abs(q.Area-area) > 1e-9*area {
		t.Fatalf("area of the triangles %g mm², between the loops %g", q.Area, area)
	}
	for k, line := range p.Lines {
		for i := range len(line) - 1 {
			if n := edges[ordered(line[i], line[i+1])]; n != 2 {
				t.Fatalf("line %d, edge %d has %d triangles, want 2", k, i, n)
			}
		}
	}
	checkNoHangingNodes(t, p, edges)
}

// planEdges counts the triangles at each edge and checks their direction.
func planEdges(t *testing.T, p *Plan) map[[2]int32]int {
	t.Helper()
	edges := make(map[[2]int32]int)
	used := make([]bool, len(p.Points))
	for i, tri := range p.Tris {
		if a := plane.Cross(p.Points[tri[0]], p.Points[tri[1]], p.Points[tri[2]]); a <= 0 {
			t.Fatalf("triangle %d has area %g mm², want it anticlockwise", i, a/2)
		}
		for k := range 3 {
			used[tri[k]] = true
			edges[ordered(tri[k], tri[(k+1)%3])]++
		}
	}
	for v, u := range used {
		if !u {
			t.Fatalf("node %d belongs to no triangle", v)
		}
	}
	for e, n := range edges {
		if n > 2 {
			t.Fatalf("edge %v has %d triangles", e, n)
		}
	}
	return edges
}

// ringArea is the area inside a closed polygon, mm², anticlockwise positive.
func ringArea(ring []Point) (a float64) {
	for k, q := range ring {
		a += plane.Cross(ring[0], q, ring[(k+1)%len(ring)]) / 2
	}
	return a
}

func loopPoints(p *Plan, loop []int32) []Point {
	var out []Point
	for _, v := range loop {
		out = append(out, p.Points[v])
	}
	return out
}

// checkNoHangingNodes looks for nodes on edges of which they are no end.
func checkNoHangingNodes(t *testing.T, p *Plan, edges map[[2]int32]int) {
	t.Helper()
	var ends [][2]int32
	var segs [][2]Point
	for e := range edges {
		ends = append(ends, e)
		segs = append(segs, [2]Point{p.Points[e[0]], p.Points[e[1]]})
	}
	grid := plane.NewGrid(segs)
	for v, q := range p.Points {
		grid.Near(q, q, func(s int32) {
			if ends[s][0] == int32(v) || ends[s][1] == int32(v) {
				return
			}
			if _, d2 := plane.OnChord(segs[s][0], segs[s][1], q); d2 < 1e-18 {
				t.Fatalf("node %d lies on the edge %v", v, ends[s])
			}
		})
	}
}

func TestTriangulateCases(t *testing.T) {
	for _, c := range planCases() {
		t.Run(c.name, func(t *testing.T) {
			d := c.domain(t)
			p := mustPlan(t, d)
			checkPlanValid(t, &d, p)
			checkOnCurves(t, &d, p)
			q := p.Quality()
			t.Logf("%d nodes, %d triangles, least angle %.1f degrees, edges %.2f to %.2f mm", q.Nodes, q.Triangles, q.MinAngle, q.ShortestEdge, q.LongestEdge)
			if q.MinAngle < 28 {
				t.Errorf("least angle %.2f degrees at %.1f, want 28 (measured: 32)", q.MinAngle, q.WorstAt)
			}
			if q.Nodes < c.nodes[0] || q.Nodes > c.nodes[1] {
				t.Errorf("%d nodes, want %d to %d", q.Nodes, c.nodes[0], c.nodes[1])
			}
		})
	}
}

// checkOnCurves: nodes of loops lie on the true curves, the loops enclose the
// curves' areas within the chords' error, and the chains of lines run from end
// to end.
func checkOnCurves(t *testing.T, d *Domain, p *Plan) {
	t.Helper()
	for i, c := range d.curves() {
		loop := p.Rim
		if i > 0 {
			loop = p.Holes[i-1]
		}
		ring, longest := loopPoints(p, loop), 0.0
		for k, q := range ring {
			if dist := c.Distance(q); dist > 1e-9 {
				t.Errorf("node at %v is %g mm from curve %d, want it on the curve", q, dist, i)
			}
			longest = max(longest, plane.Dist(q, ring[(k+1)%len(ring)]))
		}
		// A chord of length l cuts off l³ kappa / 12; with kappa l at most 0.8
		// that is below l² / 15 for each, l length / 15 for all.
		if got, want := ringArea(ring), c.Area(); math.Abs(got-want) > longest*c.Length()/15 || math.Abs(got-want) > 0.03*want {
			t.Errorf("loop %d has area %g mm², the curve %g", i, got, want)
		}
	}
	for k, line := range d.Lines {
		chain := p.Lines[k]
		first, last := p.Points[chain[0]], p.Points[chain[len(chain)-1]]
		if plane.Dist(first, line[0]) > 0.5 || plane.Dist(last, line[len(line)-1]) > 0.5 {
			t.Errorf("line %d runs from %v to %v, want %v to %v", k, first, last, line[0], line[len(line)-1])
		}
		want, got := 0.0, 0.0
		for i := range len(line) - 1 {
			want += plane.Dist(line[i], line[i+1])
		}
		for i := range len(chain) - 1 {
			got += plane.Dist(p.Points[chain[i]], p.Points[chain[i+1]])
		}
		if math.Abs(got-want) > 1+1e-3*want {
			t.Errorf("line %d is %g mm long, want %g", k, got, want)
		}
	}
}

func TestTriangulateIsDeterministic(t *testing.T) {
	d := courseDomain(t)
	first := mustPlan(t, d)
	results := make(chan *Plan)
	for range 2 {
		go func() {
			p, _ := Triangulate(d)
			results <- p
		}()
	}
	for range 2 {
		if p := <-results; !reflect.DeepEqual(p, first) {
			t.Error("two runs on the same domain differ")
		}
	}
}

// TestTriangulateSizes compares edge lengths with those asked for.
func TestTriangulateSizes(t *testing.T) {
	d := courseDomain(t)
	p := mustPlan(t, d)
	mean := func(pick func(a, b Point) bool) float64 {
		sum, n := 0.0, 0
		for _, tri := range p.Tris {
			for i := range 3 {
				if a, b := p.Points[tri[i]], p.Points[tri[(i+1)%3]]; pick(a, b) {
					sum, n = sum+plane.Dist(a, b), n+1
				}
			}
		}
		return sum / float64(n)
	}
	loopMean := func(loop []int32, pick func(Point) bool) float64 {
		sum, n := 0.0, 0
		for k, v := range loop {
			if a, b := p.Points[v], p.Points[loop[(k+1)%len(loop)]]; pick(a) && pick(b) {
				sum, n = sum+plane.Dist(a, b), n+1
			}
		}
		return sum / float64(n)
	}
	within := func(c Point, r float64) func(Point) bool {
		return func(q Point) bool { return plane.Dist(c, q) < r }
	}
	chain := func(line []int32) float64 { // its upper part, far from the bridge
		return loopMean(line, func(q Point) bool { return q[1] > 80 && q[1] < 165 })
	}
	for _, c := range []struct {
		name          string
		got, lo, hi   float64 // mm
		wantedBecause string
	}{
		{"bridge zone", mean(func(a, b Point) bool { return math.Abs(a[0]) < 60 && math.Abs(a[1]) < 8 && math.Abs(b[1]) < 8 }), 2.6, 3.3, "fine zone of 3 mm"},
		{"belly", mean(func(a, b Point) bool { return plane.Dist(a, Point{0, 110}) < 15 }), 5.2, 6.3, "size 6 mm, 36 mm from the bars of 5 mm"},
		{"recurve", mean(func(a, b Point) bool { x := d.Outline.Distance(a); return x > 13 && x < 23 && a[1] < -100 }), 4.3, 5.1, "0.1/0.022 = 4.5 mm at the middle"},
		{"upper eye", loopMean(p.Holes[0], within(Point{68, 53}, 5.5)), 1.4, 2.1, "0.4 of the radius of 4.75 mm"},
		{"slot", loopMean(p.Holes[0], within(Point{80, 0}, 15)), 2.3, 3.2, "3 mm along hole edges"},
		{"bars", chain(p.Lines[0]), 4.2, 5.2, "5 mm along lines"},
	} {
		if !(c.got >= c.lo && c.got <= c.hi) {
			t.Errorf("%s: mean edge %.2f mm, want %.1f to %.1f (%s)", c.name, c.got, c.lo, c.hi, c.wantedBecause)
		}
	}
}

// TestTriangulateScale: edges follow Scale, so that successive refinements
// quarter the triangles.
func TestTriangulateScale(t *testing.T) {
	var counts [3]float64
	for i := range counts {
		d := courseDomain(t)
		d.Scale = math.Pow(0.5, float64(i)) * 1.5
		counts[i] = float64(len(mustPlan(t, d).Tris))
	}
	for i := range 2 {
		if r := counts[i+1] / counts[i]; r < 3.6 || r > 4.2 {
			t.Errorf("half the scale gives %.2f times the triangles, want about 4", r)
		}
	}
}

// TestTriangulateSharpCorners: where input lines meet below 60 degrees or pass
// close, only a few triangles may be below 25 degrees, and those lie there.
func TestTriangulateSharpCorners(t *testing.T) {
	wall := func(deg float64) [][]Point {
		return [][]Point{{{-100, -200}, {100, -200 + 200*math.Tan(deg*math.Pi/180)}}}
	}
	rise := func(deg float64) [][]Point {
		y := 100 * math.Tan(deg*math.Pi/360)
		return [][]Point{{{-100, -y}, {100, y}}, {{-100, y}, {100, -y}}}
	}
	for _, c := range []struct {
		name  string
		lines [][]Point
		at    Point
		most  int // triangles below 25 degrees
	}{
		{"meets the wall at 30 degrees", wall(30), Point{-100, -200}, 0},
		{"meets the wall at 12 degrees", wall(12), Point{-100, -200}, 8},
		{"meets the wall at 5 degrees", wall(5), Point{-100, -200}, 8},
		{"crossing at 45 degrees", rise(45), Point{}, 0},
		{"crossing at 20 degrees", rise(20), Point{}, 4},
		{"crossing at 8 degrees", rise(8), Point{}, 16},
		{"ends 0.8 mm from the wall", [][]Point{{{-100, -199.2}, {100, 100}}}, Point{-100, -200}, 2},
		{"ends 2.5 mm from the wall", [][]Point{{{-100, -197.5}, {100, 100}}}, Point{-100, -200}, 0},
		{"two lines 2 mm apart", [][]Point{{{-100, 0}, {100, 0}}, {{-100, 2}, {100, 2}}}, Point{}, 0},
		{"six lines through a point", [][]Point{{{-100, 0}, {100, 0}}, {{-86, 50}, {86, -50}}, {{-86, -50}, {86, 50}}, {{-50, -86}, {50, 86}}, {{-50, 86}, {50, -86}}, {{0, -86}, {0, 86}}}, Point{}, 0},
	} {
		d := Domain{Outline: rectangleCurve(t), Lines: c.lines}
		p := mustPlan(t, d)
		checkPlanValid(t, &d, p)
		if q := p.Quality(); q.Below25 > c.most {
			t.Errorf("%s: %d triangles below 25 degrees, want at most %d", c.name, q.Below25, c.most)
		}
		for _, tri := range p.Tris {
			a, b, e := p.Points[tri[0]], p.Points[tri[1]], p.Points[tri[2]]
			if leastAngle(a, b, e) < 25 && plane.Dist(a, c.at) > 30 {
				t.Errorf("%s: an angle of %.1f degrees at %.1f, away from the corner", c.name, leastAngle(a, b, e), a)
			}
		}
	}
}

// TestTriangulateJoinsLines: ends are moved onto edges and lines beside them,
// crossings become common nodes, shared stretches common edges.
func TestTriangulateJoinsLines(t *testing.T) {
	d := Domain{Outline: rectangleCurve(t), Lines: [][]Point{
		{{-150.4, 0}, {149.7, 0}},                     // a bit out, a bit in
		{{0, 0.3}, {20, 90}, {60, 120}},               // ends on the first
		{{-50, -60}, {-50, 60}},                       // crosses it
		{{-20, 0}, {80, 0}},                           // runs along it
		{{60, -60}, {120, -60}, {90, -20}, {60, -60}}, // a closed triangle
	}}
	p := mustPlan(t, d)
	checkPlanValid(t, &d, p)
	has := func(list []int32, q Point) bool {
		for _, v := range list {
			if plane.Dist(p.Points[v], q) < 1e-9 {
				return true
			}
		}
		return false
	}
	for _, c := range []struct {
		list []int32
		name string
		at   Point
	}{
		{p.Lines[0], "first line", Point{-150, 0}}, {p.Rim, "rim", Point{-150, 0}},
		{p.Lines[0], "first line", Point{150, 0}}, {p.Rim, "rim", Point{150, 0}},
		{p.Lines[0], "first line", Point{0, 0}}, {p.Lines[1], "second line", Point{0, 0}},
		{p.Lines[0], "first line", Point{-50, 0}}, {p.Lines[2], "third line", Point{-50, 0}},
		{p.Lines[0], "first line", Point{-20, 0}}, {p.Lines[0], "first line", Point{80, 0}},
		{p.Lines[1], "second line", Point{20, 90}},
	} {
		if !has(c.list, c.at) {
			t.Errorf("%s has no node at %v", c.name, c.at)
		}
	}
	first := make(map[int32]bool)
	for _, v := range p.Lines[0] {
		first[v] = true
	}
	for _, v := range p.Lines[3] {
		if !first[v] {
			t.Errorf("node %v of the fourth line is not on the first, along which it runs", p.Points[v])
		}
	}
	if loop := p.Lines[4]; loop[0] != loop[len(loop)-1] {
		t.Errorf("the closed line ends at node %d, want its first, %d", loop[len(loop)-1], loop[0])
	}
}

func BenchmarkTriangulate(b *testing.B) {
	for _, c := range planCases() {
		d := c.domain(b)
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				mustPlan(b, d)
			}
		})
	}
}

func BenchmarkLocator(b *testing.B) {
	l := NewLocator(mustPlan(b, courseDomain(b)))
	i := 0.0
	for b.Loop() {
		l.Find(Point{150 * math.Sin(i), 200 * math.Cos(1.3*i)})
		i++
	}
}

func BenchmarkCurveDistance(b *testing.B) {
	c := guitarOutline(b)
	i := 0.0
	for b.Loop() {
		c.Distance(Point{150 * math.Sin(i), 200 * math.Cos(1.3*i)})
		i++
	}
}
