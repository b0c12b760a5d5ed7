package sparse

import "slices"

// Among is a copy of a matrix whose blocks between some nodes are summed anew, while all
// others stay.
type Among struct {
	m  *Matrix
	in []bool // of each node
}

// Among copies m and takes the values out of the blocks between the nodes that are in.
func (m *Matrix) Among(in []bool) *Among {
	a := &Among{m: &Matrix{n: m.n, ptr: m.ptr, col: m.col, val: slices.Clone(m.val)}, in: in}
	a.each(func(_, _ int32, blk []float64) { clear(blk) })
	return a
}

// each calls do for the blocks (i, j).
func (a *Among) each(do func(i, j int32, blk []float64)) {
	for i, yes := range a.in {
		if !yes {
			continue
		}
		for b := a.m.ptr[i]; b < a.m.ptr[i+1]; b++ {
			if j := a.m.col[b]; a.in[j] {
				do(int32(i), j, a.m.val[int(b)*blockLen:][:blockLen])
			}
		}
	}
}

// Add is Matrix.Add for these blocks.
func (a *Among) Add(nodes []int32, k []float64) {
	ld := Block * len(nodes)
	for r, u := range nodes {
		for c, v := range nodes {
			if u >= v && a.in[u] && a.in[v] {
				addBlock(a.m.val[a.m.find(u, v)*blockLen:], k[(Block*r)*ld+Block*c:], ld)
			}
		}
	}
}

// Fix is Matrix.Fix for these blocks, the other ones being fixed, and returns the matrix.
func (a *Among) Fix(dofs []int32) *Matrix {
	fixed := a.m.fixedBits(dofs)
	a.each(func(i, j int32, blk []float64) { fixBlock(blk, fixed, i, j) })
	return a.m
}
