package etree

import (
	"slices"

	"archload/fem/sparse/dissection"
)

// symbolic works on a graph whose nodes stand in their order of elimination and
// the number of nodes at the end of the order that share the root front. Nodes
// carry their place in the order; all root nodes act as the one node `root`.
type symbolic struct {
	*dissection.Graph
	root int32 // first node of the root front; the number of nodes if none
}

// newSymbolic takes the order of the nodes of g.
func newSymbolic(g *dissection.Graph, order []int32, last int) *symbolic {
	return &symbolic{Graph: g.Permuted(order), root: int32(len(order) - last)}
}

// eliminationTree returns the parent of each place up to and including the root
// front, -1 for none, by the algorithm of Liu (1990) with path compression.
func (s *symbolic) eliminationTree() []int32 {
	m := int(s.root)
	if m < s.Len() {
		m++
	}
	parent, ancestor := make([]int32, m), make([]int32, m)
	for i := range parent {
		parent[i], ancestor[i] = -1, -1
	}
	for k := range int32(s.Len()) {
		j := min(k, s.root)
		for _, i := range s.Neighbours(k) {
			for i < j {
				up := ancestor[i]
				if up == j {
					break
				}
				ancestor[i] = j
				if up < 0 {
					parent[i] = j
					break
				}
				i = up
			}
		}
	}
	return parent
}

// Postorder returns a list of the nodes of a forest, children before parents and
// every subtree in one run; parent[i] > i or -1. Siblings keep their order.
func Postorder(parent []int32) []int32 {
	n := len(parent)
	first, next := make([]int32, n+1), make([]int32, n)
	for i := range first {
		first[i] = -1
	}
	for i := n - 1; i >= 0; i-- { // node n stands for the parent of all roots
		p := parent[i]
		if p < 0 {
			p = int32(n)
		}
		next[i], first[p] = first[p], int32(i)
	}
	list := make([]int32, 0, n)
	for i := first[n]; i >= 0; {
		for first[i] >= 0 { // down to a leaf, cutting the links used
			c := first[i]
			first[i] = -1
			i = c
		}
		list = append(list, i)
		if next[i] >= 0 {
			i = next[i]
			continue
		}
		i = climb(parent, next, i, &list)
	}
	return list
}

// climb appends the finished ancestors of i and returns the next node to visit,
// or -1.
func climb(parent, next []int32, i int32, list *[]int32) int32 {
	for {
		i = parent[i]
		if i < 0 {
			return -1
		}
		*list = append(*list, i)
		if next[i] >= 0 {
			return next[i]
		}
	}
}

// Supernode is a run of columns with the same structure below.
type Supernode struct {
	First, End int32   // places of its columns
	Rows       []int32 // places below the columns that are coupled, any order
	Parent     int32   // supernode or -1
}

// Supernodes returns the supernodes of the matrix on a graph whose nodes are eliminated in
// an order, children before parents, and which node stands at each place: the elimination
// tree is put into postorder, which changes the order. Column j joins the one before when
// their structures agree. The last nodes of the order share the root front, the last
// supernode.
func Supernodes(g *dissection.Graph, order []int32, last int) (nodes []Supernode, at []int32) {
	s := newSymbolic(g, order, last)
	parent := s.renumber()
	n := int32(s.Len())
	b := &builder{symbolic: s, parent: parent}
	b.mark = make([]int32, n)
	for i := range b.mark {
		b.mark[i] = -1
	}
	b.waiting = make([][]int32, len(parent))
	for j := range s.root {
		b.column(j)
	}
	if s.root < n {
		for _, c := range b.waiting[s.root] {
			b.nodes[c].Parent = int32(len(b.nodes))
		}
		b.nodes = append(b.nodes, Supernode{First: s.root, End: n, Parent: -1})
	}
	return b.nodes, s.Node
}

// renumber puts the graph into postorder and returns the renumbered tree.
func (s *symbolic) renumber() []int32 {
	parent := s.eliminationTree()
	list := Postorder(parent)
	newPlace := make([]int32, len(parent))
	for k, i := range list {
		newPlace[i] = int32(k)
	}
	renumbered := make([]int32, len(parent))
	for i, p := range parent {
		if p >= 0 {
			p = newPlace[p]
		}
		renumbered[newPlace[i]] = p
	}
	for i := int32(len(list)); i < int32(s.Len()); i++ {
		list = append(list, i) // the rest of the root front
	}
	s.Graph = s.Permuted(list)
	return renumbered
}

// builder collects supernodes column by column.
type builder struct {
	*symbolic
	parent  []int32
	nodes   []Supernode
	waiting [][]int32 // supernodes whose first row below is the column
	mark    []int32
	rows    []int32 // structure of the present column
}

// column computes the structure of column j: its own entries and those of the
// supernodes that end in it.
func (b *builder) column(j int32) {
	b.rows = b.rows[:0]
	b.mark[j] = j
	b.see(b.Neighbours(j), j)
	for _, c := range b.waiting[j] {
		b.see(b.nodes[c].Rows, j)
	}
	id := int32(len(b.nodes)) - 1
	if j > 0 && b.parent[j-1] == j && len(b.nodes[id].Rows) == len(b.rows)+1 {
		b.nodes[id].End = j + 1
		b.nodes[id].Rows = append(b.nodes[id].Rows[:0], b.rows...)
	} else {
		id++
		b.nodes = append(b.nodes, Supernode{First: j, End: j + 1, Rows: slices.Clone(b.rows), Parent: -1})
	}
	for _, c := range b.waiting[j] {
		if c != id {
			b.nodes[c].Parent = id
		}
	}
	b.waiting[j] = nil
	if p := b.parent[j]; p >= 0 {
		b.waiting[p] = append(b.waiting[p], id)
	}
}

// see adds rows below column j once.
func (b *builder) see(rows []int32, j int32) {
	for _, i := range rows {
		if i > j && b.mark[i] != j {
			b.mark[i] = j
			b.rows = append(b.rows, i)
		}
	}
}
