package delaunay

// place says where a point lies: in triangle tri, on its edge (if edge >= 0),
// or on its corner (if corner >= 0).
type place struct {
	tri          int32
	edge, corner int
}

// locate finds the triangle that holds p, walking from the last insertion. In
// a constrained triangulation such a walk may run in a circle; after as many
// steps as there are triangles it looks at all of them instead.
func (tr *Triangulation) locate(p Point) place {
	t := tr.last
	for range tr.T {
		next := tr.towards(t, p)
		if next == None {
			return tr.placeIn(t, p)
		}
		t = next
	}
	for t := range tr.T {
		if tr.towards(int32(t), p) == None {
			return tr.placeIn(int32(t), p)
		}
	}
	return tr.placeIn(t, p)
}

// towards returns the neighbour of t beyond an edge that has p on its far
// side, or None if t holds p.
func (tr *Triangulation) towards(t int32, p Point) int32 {
	o := &tr.T[t]
	for i := range 3 {
		if o.N[i] != None && Orient(tr.P[o.V[(i+1)%3]], tr.P[o.V[(i+2)%3]], p) < 0 {
			return o.N[i]
		}
	}
	return None
}

func (tr *Triangulation) placeIn(t int32, p Point) place {
	o := &tr.T[t]
	at := place{tri: t, edge: -1, corner: -1}
	for i := range 3 {
		if tr.P[o.V[i]] == p {
			at.corner = i
			return at
		}
		if Orient(tr.P[o.V[(i+1)%3]], tr.P[o.V[(i+2)%3]], p) == 0 {
			at.edge = i
		}
	}
	return at
}

// AddPoint inserts p, which must lie inside the box given to New, and returns
// its vertex; a point that is there already keeps its old vertex. It is meant
// for the time before segments are added.
func (tr *Triangulation) AddPoint(p Point) int32 {
	at := tr.locate(p)
	if at.corner >= 0 {
		return tr.T[at.tri].V[at.corner]
	}
	return tr.insertAt(at, p)
}

// insertAt makes p a vertex at a known place that is not a vertex.
func (tr *Triangulation) insertAt(at place, p Point) int32 {
	v := tr.newVertex(p)
	if at.edge >= 0 && tr.T[at.tri].N[at.edge] != None {
		tr.splitEdge(at.tri, at.edge, v)
	} else {
		tr.splitTri(at.tri, v)
	}
	tr.legalize()
	tr.last = tr.at[v]
	return v
}

func (tr *Triangulation) newVertex(p Point) int32 {
	tr.P = append(tr.P, p)
	tr.at = append(tr.at, None)
	return int32(len(tr.P) - 1)
}

// splitTri replaces t = (a, b, c) by (v, a, b), (v, b, c), (v, c, a) and puts
// the three on the stack.
func (tr *Triangulation) splitTri(t, v int32) {
	o := tr.T[t]
	t1, t2 := int32(len(tr.T)), int32(len(tr.T)+1)
	a, b, c := o.V[0], o.V[1], o.V[2]
	tr.T[t] = Tri{V: [3]int32{v, a, b}, N: [3]int32{o.N[2], t1, t2}, S: [3]int32{o.S[2], None, None}, In: o.In}
	tr.T = append(tr.T,
		Tri{V: [3]int32{v, b, c}, N: [3]int32{None, t2, t}, S: [3]int32{o.S[0], None, None}, In: o.In},
		Tri{V: [3]int32{v, c, a}, N: [3]int32{None, t, t1}, S: [3]int32{o.S[1], None, None}, In: o.In})
	tr.link(t1, o.N[0], t)
	tr.link(t2, o.N[1], t)
	tr.at[v], tr.at[a], tr.at[b], tr.at[c] = t, t, t, t1
	tr.stack = append(tr.stack, t, t1, t2)
}

// splitEdge puts v on the edge opposite corner i of t = (p, a, b), whose
// neighbour is u = (q, b, a), making (v, p, a), (v, b, p), (v, q, b) and
// (v, a, q), and puts the four on the stack. The halves of the edge are no
// segments afterwards.
func (tr *Triangulation) splitEdge(t int32, i int, v int32) {
	u := tr.T[t].N[i]
	j := tr.across(u, t)
	o, n := tr.T[t], tr.T[u]
	i1, i2, j1, j2 := (i+1)%3, (i+2)%3, (j+1)%3, (j+2)%3
	p, a, b, q := o.V[i], o.V[i1], o.V[i2], n.V[j]
	t2, u2 := int32(len(tr.T)), int32(len(tr.T)+1)
	tr.T[t] = Tri{V: [3]int32{v, p, a}, N: [3]int32{o.N[i2], u2, t2}, S: [3]int32{o.S[i2], None, None}, In: o.In}
	tr.T[u] = Tri{V: [3]int32{v, q, b}, N: [3]int32{n.N[j2], t2, u2}, S: [3]int32{n.S[j2], None, None}, In: n.In}
	tr.T = append(tr.T,
		Tri{V: [3]int32{v, b, p}, N: [3]int32{None, t, u}, S: [3]int32{o.S[i1], None, None}, In: o.In},
		Tri{V: [3]int32{v, a, q}, N: [3]int32{None, u, t}, S: [3]int32{n.S[j1], None, None}, In: n.In})
	tr.link(t2, o.N[i1], t)
	tr.link(u2, n.N[j1], u)
	tr.at[v], tr.at[p], tr.at[a], tr.at[b], tr.at[q] = t, t, t, u, u
	tr.stack = append(tr.stack, t, t2, u, u2)
}
