package mesh

import (
	"cmp"
	"fmt"
	"slices"

	"archload/mesh/delaunay"
)

// plan takes the triangles of the domain out of the triangulation, numbers
// their nodes and follows the arcs through them.
func (s *arcSet) plan(tr *delaunay.Triangulation) (p *Plan, chains [][]int32, err error) {
	p = &Plan{}
	node := make([]int32, len(tr.P))
	for _, t := range tr.T {
		if t.In {
			for _, v := range t.V {
				node[v] = 1
			}
		}
	}
	for v, used := range node {
		if node[v] = delaunay.None; used == 1 {
			node[v] = int32(len(p.Points))
			p.Points = append(p.Points, tr.P[v])
		}
	}
	for _, t := range tr.T {
		if t.In {
			p.Tris = append(p.Tris, [3]int32{node[t.V[0]], node[t.V[1]], node[t.V[2]]})
		}
	}
	if len(p.Tris) > maxTriangles {
		return nil, nil, &PlaceError{Part: "size", Msg: fmt.Sprintf("makes %d triangles, more than %d: want a larger size", len(p.Tris), maxTriangles)}
	}
	chains, err = s.chains(tr, node)
	return p, chains, err
}

// chains returns the nodes along each arc, its last one left out.
func (s *arcSet) chains(tr *delaunay.Triangulation, node []int32) ([][]int32, error) {
	pieces := make([][]delaunay.Segment, len(s.arcs))
	for _, g := range tr.Segs {
		pieces[g.Curve] = append(pieces[g.Curve], g)
	}
	out := make([][]int32, len(s.arcs))
	for i, list := range pieces {
		slices.SortFunc(list, func(a, b delaunay.Segment) int { return cmp.Compare(a.TA, b.TA) })
		for k, g := range list {
			if node[g.A] == delaunay.None || node[g.B] == delaunay.None || k > 0 && list[k-1].B != g.A {
				return nil, s.arcs[i].fault(Point(tr.P[g.A]), "lies too close to another curve to be meshed")
			}
			out[i] = append(out[i], node[g.A])
		}
		out[i] = append(out[i], node[list[len(list)-1].B])
	}
	return out, nil
}

// assemble joins chains of arcs to loops and lines.
func (s *arcSet) assemble(p *Plan, chains [][]int32) {
	for i, ring := range s.rings {
		var loop []int32
		for _, a := range ring {
			loop = append(loop, chains[a][:len(chains[a])-1]...)
		}
		if i == 0 {
			p.Rim = loop
		} else {
			p.Holes = append(p.Holes, loop)
		}
	}
	for _, refs := range s.lines {
		var line []int32
		for _, r := range refs {
			c := slices.Clone(chains[r.arc])
			if r.reversed {
				slices.Reverse(c)
			}
			if len(line) > 0 {
				c = c[1:]
			}
			line = append(line, c...)
		}
		p.Lines = append(p.Lines, line)
	}
}

// checkPlan makes sure that the plan is one piece with the right number of
// holes (Euler: nodes - edges + triangles = 1 - holes), whose free edges are
// those of rim and holes. Curves closer together than their chords can break
// that.
func (s *arcSet) checkPlan(p *Plan) error {
	edges := countEdges(p)
	free := len(p.Rim)
	for i, loop := range append([][]int32{p.Rim}, p.Holes...) {
		for k, v := range loop {
			if edges.count(v, loop[(k+1)%len(loop)]) != 1 {
				return s.arcs[s.rings[i][0]].fault(p.Points[v], "lies too close to another curve to be meshed")
			}
		}
		if i > 0 {
			free += len(loop)
		}
	}
	for k, line := range p.Lines {
		for i := range len(line) - 1 {
			if edges.count(line[i], line[i+1]) != 2 {
				return &PlaceError{Part: "line", Index: k, At: p.Points[line[i]], Msg: "lies too close to an edge of the plate to be meshed"}
			}
		}
	}
	open := 2*edges.distinct - 3*len(p.Tris) // edges with one triangle
	if open != free || len(p.Points)-edges.distinct+len(p.Tris) != 1-len(p.Holes) {
		return &PlaceError{Part: "outline", At: p.Points[p.Rim[0]], Msg: "outline and holes lie too close together to be meshed"}
	}
	return nil
}

// edgeCount knows how many triangles share each edge of a plan.
type edgeCount struct {
	start    []int32 // of each node's edges to nodes of higher numbers, once for each triangle
	to       []int32
	distinct int // edges
}

func countEdges(p *Plan) *edgeCount {
	e := &edgeCount{start: make([]int32, len(p.Points)+1), to: make([]int32, 3*len(p.Tris))}
	each := func(f func(a, b int32)) {
		for _, t := range p.Tris {
			for i, a := range t {
				b := t[(i+1)%3]
				f(min(a, b), max(a, b))
			}
		}
	}
	each(func(a, _ int32) { e.start[a+1]++ })
	for i := range p.Points {
		e.start[i+1] += e.start[i]
	}
	next := slices.Clone(e.start)
	each(func(a, b int32) {
		if !slices.Contains(e.to[e.start[a]:next[a]], b) {
			e.distinct++
		}
		e.to[next[a]] = b
		next[a]++
	})
	return e
}

// count is how many triangles have the edge from a to b.
func (e *edgeCount) count(a, b int32) (n int) {
	a, b = min(a, b), max(a, b)
	for _, v := range e.to[e.start[a]:e.start[a+1]] {
		if v == b {
			n++
		}
	}
	return n
}
