package mesh

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"archload/mesh/plane"
)

// lineNet holds the lines cut at every point where they cross or meet.
type lineNet struct {
	pts   []Point
	rim   []rimPlace // of each point
	lines [][]int32  // points along each line
	snap  float64    // an end that near an edge or a line is moved onto it, mm
	tol   float64    // points nearer than that are one, mm
}

// rimPlace says where on the boundary a point lies.
type rimPlace struct {
	curve int     // 0 outline, 1 and up holes, -1 not on the boundary
	u     float64 // parameter of the curve
}

// nodingRounds bounds the search for crossings: cutting a line at a crossing
// moves it by rounding or by tol, which may rarely make another.
const nodingRounds = 20

// newLineNet cleans, snaps and cuts the lines of a domain.
func newLineNet(d *Domain) (*lineNet, error) {
	lo, hi := d.Outline.Bounds()
	diag := plane.Dist(lo, hi)
	n := &lineNet{snap: min(0.5, diag/400), tol: min(0.02, diag/10000)}
	lines, err := n.clean(d)
	if err != nil {
		return nil, err
	}
	for k := range lines {
		n.lines = append(n.lines, nil)
		if err := n.placeLine(d, lines, k); err != nil {
			return nil, err
		}
	}
	for range nodingRounds {
		cuts := n.findCuts()
		if len(cuts) == 0 {
			return n, nil
		}
		if n.cut(cuts); len(n.pts) > maxLineNodes {
			break
		}
	}
	return nil, &PlaceError{Part: "line", At: n.pts[0], Msg: "the lines cross each other too often or too closely to be meshed"}
}

// clean checks the numbers, drops repeated points and counts.
func (n *lineNet) clean(d *Domain) ([][]Point, error) {
	out := make([][]Point, len(d.Lines))
	total, left := 0, maxLineRims*d.Outline.Length()
	for k, line := range d.Lines {
		if total += len(line); total > maxLinePts {
			return nil, &PlaceError{Part: "line", Index: k, Msg: fmt.Sprintf("want at most %d points on all lines", maxLinePts)}
		}
		for _, p := range line {
			if !p.InReach() {
				return nil, &PlaceError{"line", k, p, fmt.Sprintf("want coordinates within %g mm, found (%g, %g)", float64(plane.MaxCoord), p[0], p[1])}
			}
			if m := len(out[k]); m == 0 || plane.Dist(out[k][m-1], p) > n.tol {
				out[k] = append(out[k], p)
				left -= plane.Dist(out[k][max(m-1, 0)], p)
			}
		}
		if left < 0 {
			return nil, &PlaceError{Part: "line", Index: k, At: line[0], Msg: fmt.Sprintf("want lines of at most %g times the length of the outline together", maxLineRims)}
		}
		if len(out[k]) < 2 {
			return nil, &PlaceError{Part: "line", Index: k, At: firstPoint(line), Msg: fmt.Sprintf("want at least 2 different points, found %d", len(out[k]))}
		}
	}
	return out, nil
}

func firstPoint(pts []Point) (p Point) {
	if len(pts) > 0 {
		p = pts[0]
	}
	return p
}

// placeLine snaps the ends of line k and gives its points numbers.
func (n *lineNet) placeLine(d *Domain, lines [][]Point, k int) error {
	line := lines[k]
	last := len(line) - 1
	closed := plane.Dist(line[0], line[last]) <= n.tol
	for i := range line {
		at := rimPlace{curve: -1}
		if (i == 0 || i == last) && !closed {
			line[i], at = n.snapEnd(d, lines, k, i)
		}
		v := n.point(line[i], at)
		line[i] = n.pts[v]
		n.lines[k] = append(n.lines[k], v)
	}
	n.lines[k] = slices.Compact(n.lines[k])
	if len(n.lines[k]) < 2 {
		return &PlaceError{Part: "line", Index: k, At: line[0], Msg: fmt.Sprintf("is shorter than %.2f mm once its ends are moved onto the edges or lines beside them", 2*n.snap)}
	}
	return nil
}

// point returns the number of the point at p, a known one if it is within tol.
func (n *lineNet) point(p Point, at rimPlace) int32 {
	for i, q := range n.pts {
		if plane.Dist(p, q) <= n.tol {
			return int32(i)
		}
	}
	n.pts = append(n.pts, p)
	n.rim = append(n.rim, at)
	return int32(len(n.pts) - 1)
}

// snapEnd moves end i of line k onto what is near: a known point on the
// boundary, a corner of the boundary, the boundary, an end or vertex of
// another line, or another line.
func (n *lineNet) snapEnd(d *Domain, lines [][]Point, k, i int) (Point, rimPlace) {
	p := lines[k][i]
	for c, curve := range d.curves() {
		if !curve.BoxNear(p, n.snap) {
			continue
		}
		if u, q, dist := curve.Nearest(p); dist <= n.snap {
			return n.onRim(curve, c, u, q)
		}
	}
	return n.ontoLine(lines, k, p), rimPlace{curve: -1}
}

// onRim prefers known points and corners within the snapping distance.
func (n *lineNet) onRim(curve *plane.Curve, c int, u float64, q Point) (Point, rimPlace) {
	for i, at := range n.rim {
		if at.curve == c && plane.Dist(n.pts[i], q) <= n.snap {
			return n.pts[i], at
		}
	}
	for _, x := range curve.Corners() {
		if plane.Dist(x.At, q) <= n.snap {
			return x.At, rimPlace{c, x.U}
		}
	}
	return q, rimPlace{c, curve.Wrap(u)}
}

// ontoLine returns the nearest vertex of the other lines within the snapping
// distance, else the nearest point on them, else p.
func (n *lineNet) ontoLine(lines [][]Point, k int, p Point) Point {
	vertex, onLine := p, p
	dv, dl := math.Inf(1), math.Inf(1)
	for j, other := range lines {
		if j == k {
			continue
		}
		for i, q := range other {
			if d := plane.Dist(p, q); d < dv {
				vertex, dv = q, d
			}
			if i == 0 {
				continue
			}
			if t, d2 := plane.OnChord(other[i-1], q, p); d2 < dl {
				onLine, dl = plane.Lerp(other[i-1], q, t), d2
			}
		}
	}
	if dv <= n.snap {
		return vertex
	}
	if math.Sqrt(dl) <= n.snap {
		return onLine
	}
	return p
}

// lineCut is a point to be put into an edge, at a fraction of its length.
type lineCut struct {
	edge [2]int32
	at   float64
	pt   int32
}

// edges lists the different edges of all lines, lower point first.
func (n *lineNet) edges() [][2]int32 {
	var out [][2]int32
	for _, line := range n.lines {
		for i := range len(line) - 1 {
			out = append(out, ordered(line[i], line[i+1]))
		}
	}
	slices.SortFunc(out, func(a, b [2]int32) int { return slices.Compare(a[:], b[:]) })
	return slices.Compact(out)
}

func ordered(a, b int32) [2]int32 {
	if a > b {
		a, b = b, a
	}
	return [2]int32{a, b}
}

// findCuts lists where edges cross and where points lie on edges.
func (n *lineNet) findCuts() []lineCut {
	edges := n.edges()
	segs := make([][2]Point, len(edges))
	for i, e := range edges {
		segs[i] = [2]Point{n.pts[e[0]], n.pts[e[1]]}
	}
	var cuts []lineCut
	grid := plane.NewGrid(segs)
	for i, e := range edges {
		lo, hi := plane.Bounds(segs[i][:])
		for k := range 2 {
			lo[k], hi[k] = lo[k]-n.tol, hi[k]+n.tol
		}
		done := -1
		grid.Near(lo, hi, func(j int32) {
			if int(j) == done || int(j) == i || len(n.pts) > maxLineNodes {
				return
			}
			done = int(j)
			cuts = n.cutsOf(cuts, e, edges[j])
		})
	}
	slices.SortFunc(cuts, func(a, b lineCut) int {
		return cmp.Or(slices.Compare(a.edge[:], b.edge[:]), cmp.Compare(a.at, b.at), cmp.Compare(a.pt, b.pt))
	})
	return cuts
}

// cutsOf appends the cuts that edge f makes in edge e: its ends if they lie on
// e, else the crossing.
func (n *lineNet) cutsOf(cuts []lineCut, e, f [2]int32) []lineCut {
	a, b := n.pts[e[0]], n.pts[e[1]]
	near := false
	for _, v := range f {
		if v == e[0] || v == e[1] {
			near = true
			continue
		}
		if t, d2 := plane.OnChord(a, b, n.pts[v]); d2 <= n.tol*n.tol {
			cuts = append(cuts, lineCut{e, t, v})
			near = true
		}
	}
	c, d := n.pts[f[0]], n.pts[f[1]]
	if near || !plane.Meet(a, b, c, d) {
		return cuts
	}
	den := (b[0]-a[0])*(d[1]-c[1]) - (b[1]-a[1])*(d[0]-c[0])
	t := ((c[0]-a[0])*(d[1]-c[1]) - (c[1]-a[1])*(d[0]-c[0])) / den
	if !(t >= 0 && t <= 1) {
		t = 0.5 // parallel to rounding: they overlap, and points on edges cut them
	}
	if v := n.point(plane.Lerp(a, b, t), rimPlace{curve: -1}); v != e[0] && v != e[1] {
		cuts = append(cuts, lineCut{e, t, v})
	}
	return cuts
}

// cut puts the points into every line that has the edge.
func (n *lineNet) cut(cuts []lineCut) {
	at := make(map[[2]int32][]int32)
	for _, c := range cuts {
		if !slices.Contains(at[c.edge], c.pt) {
			at[c.edge] = append(at[c.edge], c.pt)
		}
	}
	for k, line := range n.lines {
		out := []int32{line[0]}
		for i := range len(line) - 1 {
			in := slices.Clone(at[ordered(line[i], line[i+1])])
			if line[i] > line[i+1] {
				slices.Reverse(in)
			}
			out = append(append(out, in...), line[i+1])
		}
		n.lines[k] = slices.Compact(out)
	}
}
