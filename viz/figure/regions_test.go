package figure

import (
	"math"
	"testing"

	"archload/mesh"
)

// loopsArea is the signed area inside closed paths, mm².
func loopsArea(t *testing.T, loops []path) float64 {
	t.Helper()
	a := 0.0
	for _, l := range loops {
		if !l.closed {
			t.Errorf("a loop of %d points is open", len(l.pts))
		}
		for i, p := range l.pts {
			q := l.pts[(i+1)%len(l.pts)]
			a += 0.5 * (p[0]*q[1] - q[0]*p[1])
		}
	}
	return a
}

func sheetOf(t *testing.T, p *mesh.Plan, f Field) *sheet {
	t.Helper()
	s, err := newSheet(p, f)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func planArea(p *mesh.Plan, keep func([3]int32) bool) float64 {
	sum := 0.0
	for _, t := range p.Tris {
		if keep(t) {
			sum += math.Abs(area(p, t))
		}
	}
	return sum
}

// clipped is the area of a triangle where a linear function is at least
// level, by splitting at the odd corner: a² law of similar triangles.
func clipped(p *mesh.Plan, v []float64, t [3]int32, level float64) float64 {
	whole := math.Abs(area(p, t))
	var in, out []float64
	for _, n := range t {
		if v[n] >= level {
			in = append(in, v[n])
		} else {
			out = append(out, v[n])
		}
	}
	switch len(in) {
	case 0:
		return 0
	case 1:
		return whole * (in[0] - level) / (in[0] - out[0]) * (in[0] - level) / (in[0] - out[1])
	case 2:
		return whole * (1 - (level-out[0])/(in[0]-out[0])*(level-out[0])/(in[1]-out[0]))
	}
	return whole
}

// TestRegionAreas compares the area of each region with the sum over its
// triangles, and the loops' orientation with their sign.
func TestRegionAreas(t *testing.T) {
	p := guitarPlan(16)
	for name, f := range map[string]func(mesh.Point) float64{
		"sink": demoSink, "stress": demoStress, "x": func(q mesh.Point) float64 { return q[0] },
		"steps": func(q mesh.Point) float64 { return math.Round(q[1] / 40) }, // whole areas exactly on a level
	} {
		v := nodal(p, f)
		s := sheetOf(t, p, Field{Nodal: v})
		for _, level := range []float64{math.Inf(-1), -2, -1, 0, 0.05, 0.2, 1, 3, 1e9} {
			want := 0.0
			for _, tri := range p.Tris {
				want += clipped(p, v, tri, level)
			}
			loops, _ := s.above(level)
			if got := loopsArea(t, loops); math.Abs(got-want) > 1e-6*(1+want) {
				t.Errorf("%s: area above %g = %g mm², want %g", name, level, got, want)
			}
		}
	}
}

// TestLinesLieOnLevel checks every point of the level lines of v = x.
func TestLinesLieOnLevel(t *testing.T) {
	p := guitarPlan(12)
	s := sheetOf(t, p, Field{Nodal: nodal(p, func(q mesh.Point) float64 { return q[0] })})
	_, lines := s.above(33)
	if len(lines) != 1 || lines[0].closed {
		t.Fatalf("%d lines, want 1 open line across the plate", len(lines))
	}
	length := 0.0
	for i, q := range lines[0].pts {
		if math.Abs(q[0]-33) > 1e-9 {
			t.Errorf("point %d of the line at x = %g mm, want 33", i, q[0])
		}
		if i > 0 {
			length += math.Abs(q[1] - lines[0].pts[i-1][1])
		}
	}
	if reach := math.Abs(lines[0].pts[0][1] - lines[0].pts[len(lines[0].pts)-1][1]); math.Abs(length-reach) > 1e-9 {
		t.Errorf("length %g mm, want the straight %g mm", length, reach)
	}
}

func TestBlankTriangles(t *testing.T) {
	p := guitarPlan(10)
	v := nodal(p, demoSink)
	for i, q := range p.Points {
		if q[1] > 120 {
			v[i] = math.NaN()
		}
	}
	s := sheetOf(t, p, Field{Nodal: v})
	if len(s.blank) == 0 || len(s.blank)+len(s.tris) != len(p.Tris) {
		t.Fatalf("%d blank and %d valued triangles of %d", len(s.blank), len(s.tris), len(p.Tris))
	}
	loops, _ := s.above(math.Inf(-1))
	want := planArea(p, func(tri [3]int32) bool { return !math.IsNaN(v[tri[0]] + v[tri[1]] + v[tri[2]]) })
	if got := loopsArea(t, loops); math.Abs(got-want) > 1e-6*want {
		t.Errorf("area with values = %g mm², want %g", got, want)
	}
}

// TestClockwiseTriangles checks that a plan turned inside out draws the same.
func TestClockwiseTriangles(t *testing.T) {
	p := guitarPlan(6)
	q := &mesh.Plan{Points: p.Points}
	for _, tri := range p.Tris {
		q.Tris = append(q.Tris, [3]int32{tri[0], tri[2], tri[1]})
	}
	f := Field{Nodal: nodal(p, demoSink)}
	a, _ := sheetOf(t, p, f).above(0.1)
	b, _ := sheetOf(t, q, f).above(0.1)
	if got, want := loopsArea(t, b), loopsArea(t, a); math.Abs(got-want) > 1e-9*want {
		t.Errorf("area of a clockwise plan = %g mm², want %g", got, want)
	}
}

func TestNodeMeans(t *testing.T) {
	p := &mesh.Plan{ // triangles of 2 and 1 mm² that share nodes 1 and 2
		Points: []mesh.Point{{0, 0}, {2, 0}, {0, 2}, {2, 1}, {9, 9}},
		Tris:   [][3]int32{{0, 1, 2}, {1, 3, 2}},
	}
	got := NodeMeans(p, []float64{6, 3})
	for n, want := range []float64{6, 5, 5, 3} { // (2·6 + 1·3)/3 = 5
		if math.Abs(got[n]-want) > 1e-12 {
			t.Errorf("mean at node %d = %g, want %g", n, got[n], want)
		}
	}
	if !math.IsNaN(got[4]) {
		t.Errorf("mean at a node without triangles = %g, want NaN", got[4])
	}
	if got := NodeMeans(p, []float64{math.NaN(), 3}); got[1] != 3 || got[0] != 3 || !math.IsNaN(got[4]) {
		t.Errorf("means beside a missing value = %v, want 3 at node 1, carried on to node 0, and NaN at node 4", got)
	}
}
