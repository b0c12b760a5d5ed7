package delaunay

// SplitSegment puts p, a point on or near segment k (t is its parameter on the
// curve), on the segment: both halves become segments. A point that is not on
// the chord may lie in either of the two triangles beside it, so that an edge
// of the domain can follow a curve. If p lies elsewhere, the middle of the
// chord is taken; if even rounding that moves it out of both triangles, the
// segment stays and the result is None.
func (tr *Triangulation) SplitSegment(k int32, p Point, t float64) int32 {
	s := tr.Segs[k]
	for _, p := range [2]Point{p, mid(tr.P[s.A], tr.P[s.B])} {
		tri, i := tr.edge(s.A, s.B)
		if tri == None {
			return None
		}
		switch side := Orient(tr.P[s.A], tr.P[s.B], p); {
		case side == 0 && strictlyBetween(tr.P[s.A], tr.P[s.B], p):
			return tr.splitOn(k, tri, i, p, t)
		case side > 0 && tr.strictlyIn(tri, p):
			return tr.splitBeside(k, tri, i, p, t)
		case side < 0:
			u := tr.T[tri].N[i]
			if u != None && tr.strictlyIn(u, p) {
				return tr.splitBeside(k, u, tr.across(u, tri), p, t)
			}
		}
	}
	return None
}

func strictlyBetween(a, b, p Point) bool { return ahead(a, b, p) && ahead(b, a, p) }

// strictlyIn tells whether p lies inside triangle t, not on its edges.
func (tr *Triangulation) strictlyIn(t int32, p Point) bool {
	a, b, c := tr.corners(t)
	return Orient(a, b, p) > 0 && Orient(b, c, p) > 0 && Orient(c, a, p) > 0
}

// splitOn splits edge i of t, which is segment k, by a point exactly on it.
func (tr *Triangulation) splitOn(k, t int32, i int, p Point, par float64) int32 {
	tr.mark(t, i, None)
	v := tr.newVertex(p)
	tr.splitEdge(t, i, v)
	tr.halve(k, v, par)
	tr.legalize()
	tr.last = tr.at[v]
	return v
}

// splitBeside splits segment k, edge i of t, by a point inside t. The sliver
// between the old chord and the new ones changes sides with it.
func (tr *Triangulation) splitBeside(k, t int32, i int, p Point, par float64) int32 {
	other := tr.T[tr.T[t].N[i]].In
	tr.mark(t, i, None)
	v := tr.newVertex(p)
	tr.splitTri(t, v)
	sliver, _ := tr.edge(tr.Segs[k].A, tr.Segs[k].B)
	if tr.T[sliver].V[0] != v {
		sliver, _ = tr.edge(tr.Segs[k].B, tr.Segs[k].A)
	}
	tr.T[sliver].In = other
	tr.halve(k, v, par)
	tr.legalize()
	tr.last = tr.at[v]
	return v
}

// halve replaces segment k by two that meet at v; both edges exist.
func (tr *Triangulation) halve(k, v int32, par float64) {
	s := tr.Segs[k]
	first, second := s, s
	first.B, first.TB = v, par
	second.A, second.TA = v, par
	tr.Segs[k] = first
	tr.Segs = append(tr.Segs, second)
	t, i := tr.edge(first.A, v)
	tr.mark(t, i, k)
	t, i = tr.edge(v, second.B)
	tr.mark(t, i, int32(len(tr.Segs)-1))
}
