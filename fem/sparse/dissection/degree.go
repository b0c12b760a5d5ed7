package dissection

import (
	"cmp"
	"math/bits"
	"slices"
)

// smallGraph is the largest number of nodes minDegree can order: the bits of a
// word.
const smallGraph = 64

// minDegree writes an elimination order of a small graph to out: always the node
// with the fewest neighbours left, which become neighbours of each other; the
// first of equals.
func (g *Graph) minDegree(out []int32) {
	n := g.Len()
	var adj [smallGraph]uint64
	for i := range n {
		for _, j := range g.Neighbours(int32(i)) {
			adj[i] |= 1 << j
		}
	}
	alive := ^uint64(0) >> (smallGraph - n)
	for k := range n {
		best, degree := -1, smallGraph+1
		for w := alive; w != 0; w &= w - 1 {
			i := bits.TrailingZeros64(w)
			if d := bits.OnesCount64(adj[i]); d < degree {
				best, degree = i, d
			}
		}
		out[k] = g.Node[best]
		alive &^= 1 << best
		for w := adj[best]; w != 0; w &= w - 1 {
			i := bits.TrailingZeros64(w)
			adj[i] = (adj[i] | adj[best]) &^ (1<<i | 1<<best)
		}
	}
}

// byDegree writes the nodes to out, those with few neighbours first: the last
// resort for a graph without a good cut, such as a star or a clique.
func (g *Graph) byDegree(out []int32) {
	idx := make([]int32, g.Len())
	for i := range idx {
		idx[i] = int32(i)
	}
	slices.SortStableFunc(idx, func(a, b int32) int {
		return cmp.Compare(len(g.Neighbours(a)), len(g.Neighbours(b)))
	})
	for k, i := range idx {
		out[k] = g.Node[i]
	}
}

// peel writes to out, again and again, the nodes with at most one neighbour left,
// whose elimination joins no others, and returns the remaining graph and the
// remaining part of out. It orders trees completely; plates it leaves alone.
func (g *Graph) peel(out []int32) (*Graph, []int32) {
	degree, part := make([]int32, g.Len()), make([]int32, g.Len())
	var loose []int32
	for i := range degree {
		degree[i] = int32(len(g.Neighbours(int32(i))))
		if degree[i] <= 1 {
			loose = append(loose, int32(i))
			part[i] = 1
		}
	}
	for k := 0; k < len(loose); k++ {
		for _, j := range g.Neighbours(loose[k]) {
			degree[j]--
			if part[j] == 0 && degree[j] <= 1 {
				loose = append(loose, j)
				part[j] = 1
			}
		}
		out[k] = g.Node[loose[k]]
	}
	if len(loose) == 0 {
		return g, out
	}
	return g.split(part, 1)[0], out[len(loose):]
}
