package delaunay

import "fmt"

// CrossError says that a segment cannot be added because it crosses another.
type CrossError struct {
	New, Old Segment
	At       Point // somewhere on the old one, mm
}

// Error names the curves by the caller's numbers.
func (e *CrossError) Error() string {
	return fmt.Sprintf("segments of curves %d and %d cross near (%.3f, %.3f) mm", e.New.Curve, e.Old.Curve, e.At[0], e.At[1])
}

// AddSegment makes s an edge of the triangulation by flips. Where a vertex
// lies exactly on it, s is cut there. A segment that is there already (of
// another curve) is refused like one that crosses.
func (tr *Triangulation) AddSegment(s Segment) error {
	pa, pb := tr.P[s.A], tr.P[s.B]
	whole := dist(pa, pb)
	a, ta := s.A, s.TA
	for a != s.B {
		b, err := tr.recoverEdge(a, s.B, s)
		if err != nil {
			return err
		}
		tb := s.TB
		if b != s.B {
			tb = s.TA + (s.TB-s.TA)*dist(pa, tr.P[b])/whole
		}
		if err := tr.setSegment(Segment{A: a, B: b, Curve: s.Curve, TA: ta, TB: tb, Boundary: s.Boundary}); err != nil {
			return err
		}
		a, ta = b, tb
	}
	return nil
}

// setSegment marks the existing edge from s.A to s.B.
func (tr *Triangulation) setSegment(s Segment) error {
	t, i := tr.edge(s.A, s.B)
	if t == None {
		return &CrossError{New: s, Old: s, At: tr.P[s.A]}
	}
	if k := tr.T[t].S[i]; k != None {
		return &CrossError{New: s, Old: tr.Segs[k], At: mid(tr.P[s.A], tr.P[s.B])}
	}
	tr.mark(t, i, int32(len(tr.Segs)))
	tr.Segs = append(tr.Segs, s)
	return nil
}

// mark sets the segment number of edge i of t on both sides.
func (tr *Triangulation) mark(t int32, i int, seg int32) {
	tr.T[t].S[i] = seg
	if u := tr.T[t].N[i]; u != None {
		tr.T[u].S[tr.across(u, t)] = seg
	}
}

// edge finds the triangle whose edge runs from a to b, and the edge's number.
func (tr *Triangulation) edge(a, b int32) (tri int32, num int) {
	tri = None
	tr.star(a, func(t int32, k int) bool {
		if tr.T[t].V[(k+1)%3] == b {
			tri, num = t, (k+2)%3
			return false
		}
		return true
	})
	return tri, num
}

// recoverEdge makes an edge from a towards b and returns its far end: b, or
// the first vertex that lies exactly on the way.
func (tr *Triangulation) recoverEdge(a, b int32, s Segment) (int32, error) {
	t, i, end := tr.firstCrossed(a, b)
	if end != None {
		return end, nil
	}
	if t == None {
		return None, &CrossError{New: s, Old: s, At: tr.P[a]}
	}
	crossed, end, err := tr.crossedEdges(t, i, a, b, s)
	if err != nil {
		return None, err
	}
	if err := tr.flipAway(crossed, a, end); err != nil {
		return None, &CrossError{New: s, Old: s, At: tr.P[a]}
	}
	return end, nil
}

// firstCrossed looks round a for the edge that the line to b crosses first
// (triangle and edge number), or for the end of an edge that lies on it.
func (tr *Triangulation) firstCrossed(a, b int32) (tri int32, num int, end int32) {
	tri, end = None, None
	pa, pb := tr.P[a], tr.P[b]
	tr.star(a, func(t int32, k int) bool {
		p, q := tr.T[t].V[(k+1)%3], tr.T[t].V[(k+2)%3]
		if p == b {
			end = b
			return false
		}
		op := Orient(pa, pb, tr.P[p])
		if op == 0 && ahead(pa, pb, tr.P[p]) {
			end = p
			return false
		}
		if op < 0 && Orient(pa, pb, tr.P[q]) > 0 {
			tri, num = t, k
			return false
		}
		return true
	})
	return tri, num, end
}

// ahead tells whether p, on the line ab, lies on b's side of a.
func ahead(a, b, p Point) bool {
	return (b[0]-a[0])*(p[0]-a[0])+(b[1]-a[1])*(p[1]-a[1]) > 0
}

// crossedEdges lists the edges between a and the first vertex on the line to
// b, starting with edge i of t.
func (tr *Triangulation) crossedEdges(t int32, i int, a, b int32, s Segment) ([][2]int32, int32, error) {
	var out [][2]int32
	pa, pb := tr.P[a], tr.P[b]
	for {
		o := &tr.T[t]
		p, q := o.V[(i+1)%3], o.V[(i+2)%3]
		if k := o.S[i]; k != None {
			return nil, None, &CrossError{New: s, Old: tr.Segs[k], At: mid(tr.P[p], tr.P[q])}
		}
		out = append(out, [2]int32{p, q})
		u := o.N[i]
		j := tr.across(u, t)
		r := tr.T[u].V[j]
		side := Orient(pa, pb, tr.P[r])
		if r == b || side == 0 {
			return out, r, nil
		}
		t = u
		if side > 0 { // r replaces q: leave by the edge opposite q
			i = tr.index(u, q)
		} else {
			i = tr.index(u, p)
		}
	}
}

// flipAway flips the crossed edges until the edge ab is there.
func (tr *Triangulation) flipAway(queue [][2]int32, a, b int32) error {
	pa, pb := tr.P[a], tr.P[b]
	budget := 100 + 10*len(queue)*len(queue)
	for head := 0; head < len(queue); head++ {
		if head > budget {
			return fmt.Errorf("edge not recovered in %d flips", head)
		}
		p, q := queue[head][0], queue[head][1]
		t, i := tr.edge(p, q)
		if t == None {
			continue
		}
		u := tr.T[t].N[i]
		r, s := tr.T[t].V[i], tr.T[u].V[tr.across(u, t)]
		if Orient(tr.P[r], tr.P[s], tr.P[p])*Orient(tr.P[r], tr.P[s], tr.P[q]) >= 0 {
			queue = append(queue, queue[head]) // not convex yet
			continue
		}
		tr.flip(t, i)
		if r == a || r == b || s == a || s == b {
			continue
		}
		if Orient(pa, pb, tr.P[r])*Orient(pa, pb, tr.P[s]) < 0 {
			queue = append(queue, [2]int32{r, s})
		}
	}
	return nil
}

// MarkRegions sets In: a triangle belongs to the domain if a path from far
// outside to it crosses an odd number of boundary segments.
func (tr *Triangulation) MarkRegions() {
	seen := make([]bool, len(tr.T))
	ring := []int32{tr.at[0]}
	seen[tr.at[0]] = true
	for in := false; len(ring) > 0; in = !in {
		var beyond []int32
		for len(ring) > 0 {
			t := ring[len(ring)-1]
			ring = ring[:len(ring)-1]
			tr.T[t].In = in
			for i, u := range tr.T[t].N {
				if u == None || seen[u] {
					continue
				}
				if s := tr.T[t].S[i]; s != None && tr.Segs[s].Boundary {
					beyond = append(beyond, u)
					continue
				}
				seen[u] = true
				ring = append(ring, u)
			}
		}
		ring = fresh(beyond, seen)
	}
}

// fresh drops what has been seen and marks the rest as seen.
func fresh(list []int32, seen []bool) []int32 {
	out := list[:0]
	for _, t := range list {
		if !seen[t] {
			seen[t] = true
			out = append(out, t)
		}
	}
	return out
}
