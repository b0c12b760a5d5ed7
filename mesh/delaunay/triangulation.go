package delaunay

import (
	"math"
	"runtime"
	"slices"

	"archload/fem/parallel"
)

// None marks a missing neighbour or segment.
const None int32 = -1

// supers is the number of helper vertices: the corners of a box far around the
// input, indices 0 to 3.
const supers = 4

// Tri is one triangle. Edge i lies opposite corner i and runs from V[i+1] to
// V[i+2], indices modulo 3.
type Tri struct {
	V  [3]int32 // corners, anticlockwise
	N  [3]int32 // neighbour across edge i, or None
	S  [3]int32 // segment that edge i is, or None
	In bool     // part of the domain (after MarkRegions)
}

// Segment is an edge that must stay: a piece of an input curve.
type Segment struct {
	A, B     int32   // end vertices
	Curve    int32   // the caller's number of the curve
	TA, TB   float64 // the curve's parameter at A and B
	Boundary bool    // separates inside from outside
}

// Triangulation is a constrained Delaunay triangulation that can grow.
// Vertices 0 to 3 are helpers far outside.
type Triangulation struct {
	P    []Point
	T    []Tri
	Segs []Segment
	at   []int32 // a triangle at each vertex
	last int32   // where the last insertion ended: the next walk starts here

	stack []int32 // work space of legalize
}

// New returns a triangulation of a box far around the rectangle lo, hi, ready
// for points inside that rectangle.
func New(lo, hi Point) *Triangulation {
	span := max(hi[0]-lo[0], hi[1]-lo[1])
	cx, cy, r := (lo[0]+hi[0])/2, (lo[1]+hi[1])/2, 8*span+1
	t := &Triangulation{
		P: []Point{{cx - r, cy - r}, {cx + r, cy - r}, {cx + r, cy + r}, {cx - r, cy + r}},
		T: []Tri{
			{V: [3]int32{0, 1, 2}, N: [3]int32{None, 1, None}, S: [3]int32{None, None, None}},
			{V: [3]int32{0, 2, 3}, N: [3]int32{None, None, 0}, S: [3]int32{None, None, None}},
		},
		at: []int32{0, 0, 0, 1},
	}
	return t
}

// index returns the corner number of vertex v in triangle t.
func (tr *Triangulation) index(t, v int32) int {
	switch v {
	case tr.T[t].V[0]:
		return 0
	case tr.T[t].V[1]:
		return 1
	}
	return 2
}

// across returns the edge number by which triangle u sees triangle t.
func (tr *Triangulation) across(u, t int32) int {
	switch t {
	case tr.T[u].N[0]:
		return 0
	case tr.T[u].N[1]:
		return 1
	}
	return 2
}

// link makes u the neighbour of t across its first edge, both ways; u may be
// None. old is the triangle that u had there.
func (tr *Triangulation) link(t, u, old int32) {
	tr.T[t].N[0] = u
	if u != None {
		tr.T[u].N[tr.across(u, old)] = t
	}
}

// flip turns the edge opposite corner i of t. With t = (p, a, b) and the
// neighbour u = (q, b, a) it leaves t = (p, a, q) and u = (p, q, b).
func (tr *Triangulation) flip(t int32, i int) {
	u := tr.T[t].N[i]
	j := tr.across(u, t)
	o, n := tr.T[t], tr.T[u]
	i1, i2, j1, j2 := (i+1)%3, (i+2)%3, (j+1)%3, (j+2)%3
	p, a, b, q := o.V[i], o.V[i1], o.V[i2], n.V[j]
	tr.T[t] = Tri{V: [3]int32{p, a, q}, N: [3]int32{n.N[j1], u, o.N[i2]}, S: [3]int32{n.S[j1], None, o.S[i2]}, In: o.In}
	tr.T[u] = Tri{V: [3]int32{p, q, b}, N: [3]int32{n.N[j2], o.N[i1], t}, S: [3]int32{n.S[j2], o.S[i1], None}, In: n.In}
	if w := n.N[j1]; w != None {
		tr.T[w].N[tr.across(w, u)] = t
	}
	if w := o.N[i1]; w != None {
		tr.T[w].N[tr.across(w, t)] = u
	}
	tr.at[p], tr.at[a], tr.at[q], tr.at[b] = t, t, t, u
}

// legalize restores the Delaunay property around vertex v, corner 0 of every
// triangle on the stack.
func (tr *Triangulation) legalize() {
	for len(tr.stack) > 0 {
		t := tr.stack[len(tr.stack)-1]
		tr.stack = tr.stack[:len(tr.stack)-1]
		o := &tr.T[t]
		u := o.N[0]
		if u == None || o.S[0] != None {
			continue
		}
		q := tr.T[u].V[tr.across(u, t)]
		if InCircle(tr.P[o.V[0]], tr.P[o.V[1]], tr.P[o.V[2]], tr.P[q]) > 0 {
			tr.flip(t, 0)
			tr.stack = append(tr.stack, t, u)
		}
	}
}

// Legalize flips every unconstrained edge that is not locally Delaunay until
// none is left. With exact predicates that ends; the bound is a guard. A triangle
// that was legal in the beginning needs no look: one that changes is looked at with
// its neighbours before the next of the list.
func (tr *Triangulation) Legalize() {
	work := tr.illegal()
	for budget := 1000 * len(tr.T); len(work) > 0 && budget > 0; budget-- {
		t := work[len(work)-1]
		work = work[:len(work)-1]
		if u := tr.flipOne(t); u != None {
			work = append(work, t, u)
		}
	}
}

// flipOne flips the first edge of t that is not locally Delaunay and returns
// the neighbour concerned, or None if all are.
func (tr *Triangulation) flipOne(t int32) int32 {
	for i := range 3 {
		if u := tr.T[t].N[i]; tr.isIllegal(t, i) {
			tr.flip(t, i)
			return u
		}
	}
	return None
}

// isIllegal says whether edge i of t may be flipped and is not locally Delaunay.
func (tr *Triangulation) isIllegal(t int32, i int) bool {
	o := &tr.T[t]
	u := o.N[i]
	if u == None || o.S[i] != None {
		return false
	}
	q := tr.T[u].V[tr.across(u, t)]
	return InCircle(tr.P[o.V[0]], tr.P[o.V[1]], tr.P[o.V[2]], tr.P[q]) > 0
}

// illegal lists the triangles with an edge that is not locally Delaunay, rising.
func (tr *Triangulation) illegal() []int32 {
	const some = 1024
	found := make([][]int32, (len(tr.T)+some-1)/some)
	parallel.Chunks(runtime.GOMAXPROCS(0), len(tr.T), some, func(from, to int) {
		var list []int32
		for t := int32(from); t < int32(to); t++ {
			for i, u := range tr.T[t].N {
				if u > t && tr.isIllegal(t, i) {
					list = append(list, t, u)
				}
			}
		}
		found[from/some] = list
	})
	list := slices.Concat(found...)
	slices.Sort(list)
	return slices.Compact(list)
}

// star calls f for every triangle round vertex v, anticlockwise, with the
// corner number of v in it, until f returns false.
func (tr *Triangulation) star(v int32, f func(t int32, k int) bool) {
	t0 := tr.at[v]
	for t := t0; ; {
		k := tr.index(t, v)
		if !f(t, k) {
			return
		}
		t = tr.T[t].N[(k+1)%3]
		if t == t0 || t == None {
			return
		}
	}
}

// corners returns the three corner points of t.
func (tr *Triangulation) corners(t int32) (a, b, c Point) {
	v := &tr.T[t].V
	return tr.P[v[0]], tr.P[v[1]], tr.P[v[2]]
}

func dist(a, b Point) float64 { return math.Hypot(a[0]-b[0], a[1]-b[1]) }

func mid(a, b Point) Point { return Point{(a[0] + b[0]) / 2, (a[1] + b[1]) / 2} }
