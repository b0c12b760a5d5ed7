package etree

import (
	"cmp"
	"slices"
)

// Cost estimates the time of one front with k pivot and r other rows (in
// degrees of freedom), in units of one 8 x 6 x 1 tile step of the kernel. The
// terms: update of the r x r triangle to depth k, solution of the r x k panel,
// factorisation of the k x k triangle; a fixed price for each tile; the addition
// of the update to the parent; a fixed price for the front. The prices were
// fitted to runs on plate meshes; they steer speed, never the result.
func Cost(k, r float64) float64 {
	const (
		tile     = 48   // values: 8 rows of a node's columns
		perTile  = 6    // loads, stores and loop of a tile
		perValue = 0.35 // to add one value of the update to the parent
		perFront = 500  // bookkeeping
	)
	updTiles := r * (r + 16) / (2 * tile)
	solTiles := r * k / tile
	pivTiles := k * (k + 16) / (2 * tile)
	return updTiles*(k+perTile) + solTiles*(k/2+2*perTile) + pivTiles*(k/3+3*perTile) +
		perValue*r*r/2 + perFront
}

// merger joins supernodes with their parents where that saves time.
type merger struct {
	nodes    []Supernode
	width    float64   // of a node
	cols     []int32   // columns of each merged supernode
	children [][]int32 // present children
	into     []int32   // supernode it was merged into, or -1
}

// Merge merges children into parents as long as the time model gains; a node has width
// degrees of freedom. The root front (when root >= 0) takes nobody in. It returns, for each
// supernode, the one that now holds its columns.
func Merge(nodes []Supernode, root, width int) []int32 {
	m := &merger{nodes: nodes, width: float64(width)}
	m.cols = make([]int32, len(nodes))
	m.into = make([]int32, len(nodes))
	m.children = make([][]int32, len(nodes))
	for s, sn := range nodes {
		m.cols[s] = sn.End - sn.First
		m.into[s] = -1
		if sn.Parent >= 0 {
			m.children[sn.Parent] = append(m.children[sn.Parent], int32(s))
		}
	}
	for s := range nodes {
		if s != root {
			m.absorb(int32(s))
		}
	}
	holder := make([]int32, len(nodes))
	for s := len(nodes) - 1; s >= 0; s-- {
		holder[s] = int32(s)
		if m.into[s] >= 0 {
			holder[s] = holder[m.into[s]]
		}
	}
	return holder
}

// absorb merges children of s, those with the largest structure first, and then
// the children they leave behind.
func (m *merger) absorb(s int32) {
	todo := m.children[s]
	var kept []int32
	for len(todo) > 0 {
		slices.SortStableFunc(todo, func(a, b int32) int {
			return cmp.Compare(len(m.nodes[b].Rows), len(m.nodes[a].Rows))
		})
		var left []int32
		for _, c := range todo {
			if m.gain(c, s) > 0 {
				m.cols[s] += m.cols[c]
				m.into[c] = s
				left = append(left, m.children[c]...)
				m.children[c] = nil
			} else {
				kept = append(kept, c)
			}
		}
		todo = left
	}
	m.children[s] = kept
}

// gain is the time saved by merging child c into s.
func (m *merger) gain(c, s int32) float64 {
	kc, ks := m.width*float64(m.cols[c]), m.width*float64(m.cols[s])
	rc, rs := m.width*float64(len(m.nodes[c].Rows)), m.width*float64(len(m.nodes[s].Rows))
	return Cost(kc, rc) + Cost(ks, rs) - Cost(kc+ks, rs)
}
