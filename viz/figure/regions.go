package figure

import (
	"fmt"
	"math"

	"archload/mesh"
	"archload/viz/canvas"
)

// sheet is the part of a plan that carries values: its triangles without
// those that touch a NaN, and their free edges.
type sheet struct {
	pts    []mesh.Point
	val    []float64  // one per node, the field's unit
	tris   [][3]int32 // anticlockwise, every corner has a value
	blank  [][3]int32 // the others
	border [][2]int32 // directed edges with a triangle on their left only
}

// newSheet takes the values to the nodes and sorts the triangles.
func newSheet(p *mesh.Plan, f Field) (*sheet, error) {
	if err := checkPlan(p, f); err != nil {
		return nil, err
	}
	s := &sheet{pts: p.Points, val: f.Nodal}
	if f.Nodal == nil {
		s.val = NodeMeans(p, f.PerTriangle)
	}
	for _, t := range p.Tris {
		if area(p, t) < 0 {
			t[1], t[2] = t[2], t[1]
		}
		v := s.val[t[0]] + s.val[t[1]] + s.val[t[2]]
		if math.IsNaN(v) || math.IsInf(v, 0) {
			s.blank = append(s.blank, t)
			continue
		}
		s.tris = append(s.tris, t)
	}
	s.border = freeEdges(s.tris)
	return s, nil
}

// checkPlan refuses values that do not belong to the plan.
func checkPlan(p *mesh.Plan, f Field) error {
	switch {
	case p == nil || len(p.Tris) == 0:
		return fmt.Errorf("field %q: want a plan with triangles, found none", f.Name)
	case f.Nodal == nil && f.PerTriangle == nil:
		return fmt.Errorf("field %q: no values", f.Name)
	case f.Nodal != nil && f.PerTriangle != nil:
		return fmt.Errorf("field %q: values both per node and per triangle, want one kind", f.Name)
	case f.Nodal != nil && len(f.Nodal) != len(p.Points):
		return fmt.Errorf("field %q: %d values for %d nodes", f.Name, len(f.Nodal), len(p.Points))
	case f.PerTriangle != nil && len(f.PerTriangle) != len(p.Tris):
		return fmt.Errorf("field %q: %d values for %d triangles", f.Name, len(f.PerTriangle), len(p.Tris))
	}
	for i, t := range p.Tris {
		for _, n := range t {
			if n < 0 || int(n) >= len(p.Points) {
				return fmt.Errorf("triangle %d: node %d of %d", i, n, len(p.Points))
			}
		}
	}
	return nil
}

// freeEdges returns the edges that belong to one triangle only, in the
// order of the triangles, the triangle on their left.
func freeEdges(tris [][3]int32) [][2]int32 {
	seen := make(map[[2]int32]bool, 3*len(tris))
	for _, t := range tris {
		for k := range t {
			seen[[2]int32{t[k], t[(k+1)%3]}] = true
		}
	}
	var free [][2]int32
	for _, t := range tris {
		for k := range t {
			if a, b := t[k], t[(k+1)%3]; !seen[[2]int32{b, a}] {
				free = append(free, [2]int32{a, b})
			}
		}
	}
	return free
}

// knot names a corner of a region: a node (a = b) or the place where a level
// crosses the edge a < b.
type knot struct{ a, b int32 }

// piece is a directed part of a region's edge, the region on its left.
type piece struct {
	from, to knot
	level    bool // along a level, not along the border
}

// above returns the edge of the region where the value is at least level, as
// closed loops with the region on the left, and the level lines inside the
// sheet, open or closed. Values are linear in each triangle, so both are
// exact. A node that has just the level counts as inside.
func (s *sheet) above(level float64) (loops, lines []path) {
	var all []piece
	for _, t := range s.tris {
		if p, ok := s.cut(t, level); ok {
			all = append(all, p)
		}
	}
	n := len(all)
	for _, e := range s.border {
		if p, ok := s.rest(e, level); ok {
			all = append(all, p)
		}
	}
	return s.chains(all, level), s.chains(all[:n], level)
}

// cut returns the level line through a triangle.
func (s *sheet) cut(t [3]int32, level float64) (piece, bool) {
	p := piece{level: true}
	var crossed bool
	for k := range t {
		a, b := t[k], t[(k+1)%3]
		ain, bin := s.val[a] >= level, s.val[b] >= level
		switch {
		case ain && !bin:
			p.from, crossed = edgeKnot(a, b), true
		case !ain && bin:
			p.to, crossed = edgeKnot(a, b), true
		}
	}
	return p, crossed
}

// rest returns the part of a border edge inside the region.
func (s *sheet) rest(e [2]int32, level float64) (piece, bool) {
	a, b := e[0], e[1]
	ain, bin := s.val[a] >= level, s.val[b] >= level
	switch {
	case ain && bin:
		return piece{from: knot{a, a}, to: knot{b, b}}, true
	case ain:
		return piece{from: knot{a, a}, to: edgeKnot(a, b)}, true
	case bin:
		return piece{from: edgeKnot(a, b), to: knot{b, b}}, true
	}
	return piece{}, false
}

func edgeKnot(a, b int32) knot { return knot{min(a, b), max(a, b)} }

// place returns where a knot lies in plan.
func (s *sheet) place(k knot, level float64) mesh.Point {
	p := s.pts[k.a]
	if k.a == k.b {
		return p
	}
	q := s.pts[k.b]
	t := (level - s.val[k.a]) / (s.val[k.b] - s.val[k.a])
	return mesh.Point{p[0] + t*(q[0]-p[0]), p[1] + t*(q[1]-p[1])}
}

// path is a polyline in plan, mm; a closed one does not repeat its start.
type path struct {
	pts    []mesh.Point
	closed bool
}

// chains joins pieces end to end: first those that start where no other
// ends, then the closed ones, in the order of the pieces.
func (s *sheet) chains(all []piece, level float64) []path {
	first := make(map[knot]int32, len(all)) // first unused piece from a knot, plus 1
	next := make([]int32, len(all))
	ends := make(map[knot]bool, len(all))
	for i := len(all) - 1; i >= 0; i-- {
		next[i] = first[all[i].from]
		first[all[i].from] = int32(i) + 1
		ends[all[i].to] = true
	}
	var out []path
	walk := func(start knot) {
		p := path{pts: []mesh.Point{s.place(start, level)}}
		for at := start; first[at] != 0; {
			i := first[at] - 1
			first[at] = next[i]
			if at = all[i].to; at == start {
				p.closed = true
				break
			}
			p.pts = append(p.pts, s.place(at, level))
		}
		if len(p.pts) > 1 {
			out = append(out, p)
		}
	}
	for _, c := range all {
		if !ends[c.from] {
			walk(c.from)
		}
	}
	for _, c := range all {
		for first[c.from] != 0 {
			walk(c.from)
		}
	}
	return out
}

func paths(f canvas.Frame, l []path) [][]canvas.Point {
	out := make([][]canvas.Point, len(l))
	for i, q := range l {
		out[i] = f.All(q.pts)
	}
	return out
}
