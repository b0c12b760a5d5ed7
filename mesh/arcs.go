package mesh

import (
	"cmp"
	"math"
	"slices"

	"archload/mesh/plane"
)

// planArc is a stretch of an outline, a hole edge or a line between two nodes
// that must stay: corners, crossings, ends. It has a curve or a path.
type planArc struct {
	part  string // "outline", "hole", "line"
	index int
	ends  [2]int32 // points of the arc set

	curve  *plane.Curve
	u0, u1 float64 // parameters at the ends, u1 > u0

	path []Point   // corners of a line's stretch
	cum  []float64 // length along the path up to each, mm; the parameter

	samples []arcSample
}

// arcSample is a place on an arc.
type arcSample struct {
	u    float64
	p    Point
	s    float64 // length along the arc up to here, mm
	turn float64 // change of direction here, radians
}

// arcRef is an arc as a part of a line.
type arcRef struct {
	arc      int32
	reversed bool
}

// arcSet is all input curves, cut into arcs.
type arcSet struct {
	domain *Domain
	pts    []Point // nodes that must stay
	arcs   []planArc
	rings  [][]int32  // arcs of the outline and of each hole, in order
	lines  [][]arcRef // arcs of each line, in order
}

// bend is the change of direction at which a point of a line stays a node,
// radians.
const bend = 15 * math.Pi / 180

// newArcSet cuts boundary and lines into arcs.
func newArcSet(d *Domain, n *lineNet) *arcSet {
	s := &arcSet{domain: d, pts: slices.Clone(n.pts)}
	for c, curve := range d.curves() {
		s.addRing(n, c, curve)
	}
	s.addLines(n)
	return s
}

// mark is a node on a boundary curve.
type mark struct {
	u  float64
	pt int32
}

// addRing cuts boundary curve c at its corners and at the ends of lines.
func (s *arcSet) addRing(n *lineNet, c int, curve *plane.Curve) {
	var marks []mark
	for i, at := range n.rim {
		if at.curve == c {
			marks = append(marks, mark{at.u, int32(i)})
		}
	}
	for _, x := range curve.Corners() {
		if !slices.ContainsFunc(marks, func(m mark) bool { return m.u == x.U }) {
			marks = append(marks, mark{x.U, s.newPoint(x.At)})
		}
	}
	if len(marks) == 0 {
		marks = append(marks, mark{0, s.newPoint(curve.At(0))})
	}
	slices.SortFunc(marks, func(a, b mark) int { return cmp.Compare(a.u, b.u) })
	part, index := "outline", 0
	if c > 0 {
		part, index = "hole", c-1
	}
	var ring []int32
	for i, m := range marks {
		next := marks[(i+1)%len(marks)]
		if i+1 == len(marks) {
			next.u += curve.Total()
		}
		ring = append(ring, int32(len(s.arcs)))
		s.arcs = append(s.arcs, planArc{part: part, index: index, ends: [2]int32{m.pt, next.pt}, curve: curve, u0: m.u, u1: next.u})
	}
	s.rings = append(s.rings, ring)
}

func (s *arcSet) newPoint(p Point) int32 {
	s.pts = append(s.pts, p)
	return int32(len(s.pts) - 1)
}

// addLines joins the edges of lines to arcs between nodes that must stay;
// stretches that lines share become one arc.
func (s *arcSet) addLines(n *lineNet) {
	stays := n.stays()
	type start struct{ a, b int32 }
	known := make(map[start]arcRef)
	for k, line := range n.lines {
		var refs []arcRef
		for i := 0; i+1 < len(line); {
			j := i + 1
			for !stays[line[j]] {
				j++
			}
			ref, ok := known[start{line[i], line[i+1]}]
			if !ok {
				ref = arcRef{arc: int32(len(s.arcs))}
				s.arcs = append(s.arcs, n.arc(k, line[i:j+1]))
				known[start{line[i], line[i+1]}] = ref
				known[start{line[j], line[j-1]}] = arcRef{ref.arc, true}
			}
			refs = append(refs, ref)
			i = j
		}
		s.lines = append(s.lines, refs)
	}
}

func (n *lineNet) arc(k int, chain []int32) planArc {
	a := planArc{part: "line", index: k, ends: [2]int32{chain[0], chain[len(chain)-1]}}
	for i, v := range chain {
		a.path = append(a.path, n.pts[v])
		if i == 0 {
			a.cum = append(a.cum, 0)
			continue
		}
		a.cum = append(a.cum, a.cum[i-1]+plane.Dist(a.path[i-1], a.path[i]))
	}
	a.u1 = a.cum[len(a.cum)-1]
	return a
}

// stays tells which points remain nodes whatever the mesh size: ends of lines,
// points where other than two edges meet, bends, and points on the boundary.
func (n *lineNet) stays() []bool {
	out := make([]bool, len(n.pts))
	beside := make([][]int32, len(n.pts))
	for _, e := range n.edges() {
		beside[e[0]] = append(beside[e[0]], e[1])
		beside[e[1]] = append(beside[e[1]], e[0])
	}
	for v, b := range beside {
		out[v] = n.rim[v].curve >= 0 || len(b) != 2
		if len(b) == 2 {
			p, q, r := n.pts[b[0]], n.pts[v], n.pts[b[1]]
			out[v] = out[v] || turning(p, q, r) > bend
		}
	}
	for _, line := range n.lines {
		out[line[0]], out[line[len(line)-1]] = true, true
	}
	return out
}

// turning returns the change of direction at q on the way from p to r, radians.
func turning(p, q, r Point) float64 {
	ux, uy, vx, vy := q[0]-p[0], q[1]-p[1], r[0]-q[0], r[1]-q[1]
	return math.Atan2(math.Abs(ux*vy-uy*vx), ux*vx+uy*vy)
}

// at returns the point of the arc at parameter u.
func (a *planArc) at(u float64) Point {
	if a.curve != nil {
		return a.curve.At(u)
	}
	i, _ := slices.BinarySearch(a.cum, u)
	i = min(max(i, 1), len(a.cum)-1)
	return plane.Lerp(a.path[i-1], a.path[i], (u-a.cum[i-1])/(a.cum[i]-a.cum[i-1]))
}

func (a *planArc) boundary() bool { return a.part != "line" }

// length returns the arc's length, mm, once it has samples.
func (a *planArc) length() float64 { return a.samples[len(a.samples)-1].s }

// sample places samples about step apart, mm, and measures length and turning.
func (a *planArc) sample(step float64, pts []Point) {
	n := max(int(math.Ceil((a.u1-a.u0)/step)), 16)
	a.samples = make([]arcSample, n+1)
	for i := range a.samples {
		x := &a.samples[i]
		x.u = a.u0 + (a.u1-a.u0)*float64(i)/float64(n)
		switch i {
		case 0:
			x.p = pts[a.ends[0]]
		case n:
			x.p = pts[a.ends[1]]
		default:
			x.p = a.at(x.u)
		}
		if i > 0 {
			x.s = a.samples[i-1].s + plane.Dist(a.samples[i-1].p, x.p)
		}
	}
	for i := 1; i < n; i++ {
		a.samples[i].turn = turning(a.samples[i-1].p, a.samples[i].p, a.samples[i+1].p)
	}
	a.samples[0].turn, a.samples[n].turn = a.samples[1].turn, a.samples[n-1].turn
}

// curvature returns the curvature at sample i from the turning there, 1/mm.
func (a *planArc) curvature(i int) float64 {
	i = min(max(i, 1), len(a.samples)-2)
	return 2 * a.samples[i].turn / max(a.samples[i+1].s-a.samples[i-1].s, 1e-12)
}

func (a *planArc) name() string {
	e := PlaceError{Part: a.part, Index: a.index}
	return e.part()
}

func (a *planArc) fault(at Point, msg string) error {
	return &PlaceError{Part: a.part, Index: a.index, At: at, Msg: msg}
}
