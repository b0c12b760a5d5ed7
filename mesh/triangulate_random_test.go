package mesh

import (
	"math"
	"math/rand/v2"
	"testing"

	"archload/mesh/plane"
)

// TestTriangulateRandomBraces: whatever the braces do, an angle below 25
// degrees occurs only within one mesh size of a place where input lines meet
// below 60 degrees or pass closer than 0.3 of the size.
func TestTriangulateRandomBraces(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	bad, excusedBad := 0, 0
	for n := range 16 {
		d := Domain{Outline: guitarOutline(t), Size: 10}
		if n%2 == 1 {
			d.Holes = []*plane.Curve{fHole(t), fHole(t).Mirrored()}
		}
		for range 4 {
			a, b := 2*math.Pi*r.Float64(), 2*math.Pi*r.Float64()
			d.Lines = append(d.Lines, []Point{{55 * math.Cos(a), 170 * math.Sin(a)}, {55 * math.Cos(b), 170 * math.Sin(b)}})
		}
		p := mustPlan(t, d)
		checkPlanValid(t, &d, p)
		places := excusedPlaces(p, 0.3*d.Size)
		for _, tri := range p.Tris {
			a, b, c := p.Points[tri[0]], p.Points[tri[1]], p.Points[tri[2]]
			if leastAngle(a, b, c) >= 25 {
				continue
			}
			bad++
			for _, q := range places {
				if plane.Dist(q, Point{(a[0] + b[0] + c[0]) / 3, (a[1] + b[1] + c[1]) / 3}) < d.Size {
					excusedBad++
					break
				}
			}
		}
	}
	if bad != excusedBad {
		t.Errorf("%d of %d triangles below 25 degrees are away from sharp corners and narrow gaps, want 0", bad-excusedBad, bad)
	}
	if bad == 0 {
		t.Error("no triangle below 25 degrees: the test has lost its point")
	}
}

// inputEdges lists the edges of a plan that come from input curves.
func inputEdges(p *Plan) [][2]int32 {
	seen := make(map[[2]int32]bool)
	var out [][2]int32
	add := func(a, b int32) {
		if e := ordered(a, b); !seen[e] {
			seen[e] = true
			out = append(out, e)
		}
	}
	for _, loop := range append([][]int32{p.Rim}, p.Holes...) {
		for i, v := range loop {
			add(v, loop[(i+1)%len(loop)])
		}
	}
	for _, line := range p.Lines {
		for i := range len(line) - 1 {
			add(line[i], line[i+1])
		}
	}
	return out
}

// excusedPlaces lists nodes where input edges meet below 60 degrees, and the
// ends of input edges that pass each other closer than gap (and closer than
// their own lengths: others are neighbours along one curve).
func excusedPlaces(p *Plan, gap float64) []Point {
	var out []Point
	edges := inputEdges(p)
	at := func(e [2]int32) (a, b Point) { return p.Points[e[0]], p.Points[e[1]] }
	for i, e := range edges {
		for _, f := range edges[:i] {
			for k := range 4 { // a common node
				v, w := e[k/2], f[k%2]
				if v == w && turning(p.Points[e[1-k/2]], p.Points[v], p.Points[f[1-k%2]]) > 2*math.Pi/3 {
					out = append(out, p.Points[v])
				}
			}
			if e[0] == f[0] || e[0] == f[1] || e[1] == f[0] || e[1] == f[1] {
				continue
			}
			a, b := at(e)
			c, d := at(f)
			if chordGap(a, b, c, d) < min(gap, max(plane.Dist(a, b), plane.Dist(c, d))) {
				out = append(out, a, b, c, d)
			}
		}
	}
	return out
}

// chordGap returns the distance between two straight pieces that do not cross.
func chordGap(a, b, c, d Point) float64 {
	_, g := plane.OnChord(a, b, c)
	for _, x := range [3][3]Point{{a, b, d}, {c, d, a}, {c, d, b}} {
		_, d2 := plane.OnChord(x[0], x[1], x[2])
		g = min(g, d2)
	}
	return math.Sqrt(g)
}
