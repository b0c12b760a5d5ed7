package dissection

import "math"

// Graph is an undirected graph in compressed rows: the neighbours of local node
// i are adj[ptr[i]:ptr[i+1]], itself not included. Node gives the global number
// of each local one; xy their plan coordinates, nil when none can be used.
type Graph struct {
	ptr, adj []int32
	Node     []int32
	xy       [][2]float64
}

// Len returns the number of nodes.
func (g *Graph) Len() int { return len(g.ptr) - 1 }

// Neighbours returns the nodes that share an edge with node i; they are not to be
// changed.
func (g *Graph) Neighbours(i int32) []int32 { return g.adj[g.ptr[i]:g.ptr[i+1]] }

// NewGraph returns the graph of a symmetric pattern of n rows: the lower triangle
// by rows, the columns of row i being col[ptr[i]:ptr[i+1]], the diagonal last.
func NewGraph(n int, ptr, col []int32) *Graph {
	g := &Graph{ptr: make([]int32, n+1)}
	for i := range int32(n) {
		for _, j := range col[ptr[i] : ptr[i+1]-1] {
			g.ptr[i+1]++
			g.ptr[j+1]++
		}
	}
	for i := range n {
		g.ptr[i+1] += g.ptr[i]
	}
	g.adj = make([]int32, g.ptr[n])
	next := make([]int32, n)
	copy(next, g.ptr)
	for i := range int32(n) {
		for _, j := range col[ptr[i] : ptr[i+1]-1] {
			g.adj[next[i]] = j
			g.adj[next[j]] = i
			next[i]++
			next[j]++
		}
	}
	g.Node = make([]int32, n)
	for i := range g.Node {
		g.Node[i] = int32(i)
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
func (g *Graph) split(part []int32, parts int) []*Graph {
	local := make([]int32, g.Len())
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
	subs := make([]*Graph, parts)
	for p := range subs {
		subs[p] = &Graph{
			ptr:  make([]int32, 1, size[p]+1),
			adj:  make([]int32, 0, edges[p]),
			Node: make([]int32, 0, size[p]),
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
func (g *Graph) take(all *Graph, i int32, part, local []int32) {
	for _, j := range all.Neighbours(i) {
		if part[j] == part[i] {
			g.adj = append(g.adj, local[j])
		}
	}
	g.ptr = append(g.ptr, int32(len(g.adj)))
	g.Node = append(g.Node, all.Node[i])
	if all.xy != nil {
		g.xy = append(g.xy, all.xy[i])
	}
}

// walked returns the graph with its nodes in the order of a walk through the mesh,
// so that neighbours lie close in memory.
func (g *Graph) walked() *Graph {
	order := make([]int32, 0, g.Len())
	seen := make([]bool, g.Len())
	for i := range seen {
		if seen[i] {
			continue
		}
		seen[i] = true
		order = append(order, int32(i))
		for h := len(order) - 1; h < len(order); h++ {
			for _, v := range g.Neighbours(order[h]) {
				if !seen[v] {
					seen[v] = true
					order = append(order, v)
				}
			}
		}
	}
	w := g.Permuted(order)
	if g.xy != nil {
		w.xy = make([][2]float64, g.Len())
		for k, i := range order {
			w.xy[k] = g.xy[i]
		}
	}
	return w
}

// Permuted returns the graph with its nodes in another order, without coordinates.
func (g *Graph) Permuted(order []int32) *Graph {
	n := g.Len()
	place := make([]int32, n)
	for k, i := range order {
		place[i] = int32(k)
	}
	p := &Graph{ptr: make([]int32, n+1), adj: make([]int32, len(g.adj)), Node: make([]int32, n)}
	at := int32(0)
	for k, i := range order {
		for _, j := range g.Neighbours(i) {
			p.adj[at] = place[j]
			at++
		}
		p.ptr[k+1] = at
		p.Node[k] = g.Node[i]
	}
	return p
}

// components labels the connected components 0, 1, ... and returns their number.
func (g *Graph) components() (label []int32, count int) {
	label = make([]int32, g.Len())
	for i := range label {
		label[i] = -1
	}
	stack := make([]int32, 0, g.Len())
	for i := range label {
		if label[i] >= 0 {
			continue
		}
		label[i] = int32(count)
		stack = append(stack, int32(i))
		for len(stack) > 0 {
			u := stack[len(stack)-1]
			stack = stack[:len(stack)-1]
			for _, v := range g.Neighbours(u) {
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
