package sparse

import "math"

// graph is an undirected graph in compressed rows: the neighbours of local node
// i are adj[ptr[i]:ptr[i+1]], itself not included. node gives the global number
// of each local one; xy their plan coordinates, nil when none can be used.
type graph struct {
	ptr, adj []int32
	node     []int32
	xy       [][2]float64
}

func (g *graph) len() int { return len(g.ptr) - 1 }

func (g *graph) neighbours(i int32) []int32 { return g.adj[g.ptr[i]:g.ptr[i+1]] }

// newGraph returns the graph of the blocks of m.
func newGraph(m *Matrix) *graph {
	g := &graph{ptr: make([]int32, m.n+1)}
	for i := range int32(m.n) {
		for _, j := range m.col[m.ptr[i] : m.ptr[i+1]-1] {
			g.ptr[i+1]++
			g.ptr[j+1]++
		}
	}
	for i := range m.n {
		g.ptr[i+1] += g.ptr[i]
	}
	g.adj = make([]int32, g.ptr[m.n])
	next := make([]int32, m.n)
	copy(next, g.ptr)
	for i := range int32(m.n) {
		for _, j := range m.col[m.ptr[i] : m.ptr[i+1]-1] {
			g.adj[next[i]] = j
			g.adj[next[j]] = i
			next[i]++
			next[j]++
		}
	}
	g.node = make([]int32, m.n)
	for i := range g.node {
		g.node[i] = int32(i)
	}
	return g
}

// usable reports whether every coordinate is finite.
func usable(xy [][2]float64) bool {
	for _, p := range xy {
		if s := p[0] + p[1]; math.IsNaN(s) || math.IsInf(s, 0) {
			return false
		}
	}
	return len(xy) > 0
}

// split returns the subgraphs of the nodes with part 0, 1, ... parts-1, keeping
// their order. Nodes with another part are left out.
func (g *graph) split(part []int32, parts int) []*graph {
	local := make([]int32, g.len())
	size := make([]int32, parts)
	edges := make([]int32, parts)
	for i, p := range part {
		if p < 0 || int(p) >= parts {
			continue
		}
		local[i] = size[p]
		size[p]++
		edges[p] += g.ptr[i+1] - g.ptr[i]
	}
	subs := make([]*graph, parts)
	for p := range subs {
		subs[p] = &graph{
			ptr:  make([]int32, 1, size[p]+1),
			adj:  make([]int32, 0, edges[p]),
			node: make([]int32, 0, size[p]),
		}
		if g.xy != nil {
			subs[p].xy = make([][2]float64, 0, size[p])
		}
	}
	for i, p := range part {
		if p >= 0 && int(p) < parts {
			subs[p].take(g, int32(i), part, local)
		}
	}
	return subs
}

// take appends node i of all; neighbours of another part are dropped.
func (g *graph) take(all *graph, i int32, part, local []int32) {
	for _, j := range all.neighbours(i) {
		if part[j] == part[i] {
			g.adj = append(g.adj, local[j])
		}
	}
	g.ptr = append(g.ptr, int32(len(g.adj)))
	g.node = append(g.node, all.node[i])
	if all.xy != nil {
		g.xy = append(g.xy, all.xy[i])
	}
}

// walked returns the graph with its nodes in the order of a walk through the mesh,
// so that neighbours lie close in memory.
func (g *graph) walked() *graph {
	order := make([]int32, 0, g.len())
	seen := make([]bool, g.len())
	for i := range seen {
		if seen[i] {
			continue
		}
		seen[i] = true
		order = append(order, int32(i))
		for h := len(order) - 1; h < len(order); h++ {
			for _, v := range g.neighbours(order[h]) {
				if !seen[v] {
					seen[v] = true
					order = append(order, v)
				}
			}
		}
	}
	w := g.permuted(order)
	if g.xy != nil {
		w.xy = make([][2]float64, g.len())
		for k, i := range order {
			w.xy[k] = g.xy[i]
		}
	}
	return w
}

// permuted returns the graph with its nodes in another order, without coordinates.
func (g *graph) permuted(order []int32) *graph {
	n := g.len()
	place := make([]int32, n)
	for k, i := range order {
		place[i] = int32(k)
	}
	p := &graph{ptr: make([]int32, n+1), adj: make([]int32, len(g.adj)), node: make([]int32, n)}
	at := int32(0)
	for k, i := range order {
		for _, j := range g.neighbours(i) {
			p.adj[at] = place[j]
			at++
		}
		p.ptr[k+1] = at
		p.node[k] = g.node[i]
	}
	return p
}

// components labels the connected components 0, 1, ... and returns their number.
func (g *graph) components() (label []int32, count int) {
	label = make([]int32, g.len())
	for i := range label {
		label[i] = -1
	}
	stack := make([]int32, 0, g.len())
	for i := range label {
		if label[i] >= 0 {
			continue
		}
		label[i] = int32(count)
		stack = append(stack, int32(i))
		for len(stack) > 0 {
			u := stack[len(stack)-1]
			stack = stack[:len(stack)-1]
			for _, v := range g.neighbours(u) {
				if label[v] < 0 {
					label[v] = int32(count)
					stack = append(stack, v)
				}
			}
		}
		count++
	}
	return label, count
}
