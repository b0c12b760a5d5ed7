package sparse

import (
	"fmt"
	"slices"

	"archload/fem/pages"
	"archload/fem/sparse/panel"
)

// Block is the number of degrees of freedom of a node: ux uy uz rx ry rz.
const Block = panel.Block

// Matrix is a symmetric sparse matrix of 6 x 6 blocks, one block row per node.
// Only the lower block triangle is kept, row by row; the diagonal block is the
// last of its row and kept whole. The pattern is fixed by NewMatrix; values
// are summed by Add. A Matrix may be read by many goroutines, but written by
// one alone, or by several in rows of their own (AddRows).
type Matrix struct {
	n   int       // nodes
	ptr []int32   // first block of each block row, len n+1
	col []int32   // block column of each block, ascending in a row
	val []float64 // 36 per block, row-major
}

// NewMatrix returns a zero matrix of n nodes in which every pair of nodes of an
// element couples; every node also has a diagonal block. It panics if an element
// names a node outside 0..n-1.
func NewMatrix(n int, elems [][]int32) *Matrix {
	start := make([]int32, n+1)
	for e, el := range elems {
		for i, u := range el {
			if u < 0 || int(u) >= n {
				panic(fmt.Sprintf("sparse: NewMatrix: element %d names node %d of %d", e, u, n))
			}
			for _, v := range el[:i] {
				start[max(u, v)+1]++
			}
		}
	}
	for i := range n {
		start[i+1] += start[i]
	}
	m := &Matrix{n: n}
	m.gather(elems, start)
	return m
}

// gather fills the pattern; start[i] is where row i begins in a list of all
// pairs, repeated pairs included.
func (m *Matrix) gather(elems [][]int32, start []int32) {
	pairs := make([]int32, start[m.n])
	next := slices.Clone(start)
	for _, el := range elems {
		for i, u := range el {
			for _, v := range el[:i] {
				r := max(u, v)
				pairs[next[r]] = min(u, v)
				next[r]++
			}
		}
	}
	m.ptr = make([]int32, m.n+1)
	m.col = make([]int32, 0, len(pairs)/2+m.n)
	for i := range m.n {
		row := pairs[start[i]:start[i+1]]
		slices.Sort(row)
		m.col = append(m.col, slices.Compact(row)...)
		if n := len(m.col); n == int(m.ptr[i]) || m.col[n-1] != int32(i) { // else an element names the node twice
			m.col = append(m.col, int32(i))
		}
		m.ptr[i+1] = int32(len(m.col))
	}
	m.val = make([]float64, blockLen*len(m.col))
	pages.Wide(m.val)
}

// Nodes returns the number of nodes; the matrix has 6 rows for each.
func (m *Matrix) Nodes() int { return m.n }

// Zero sets all values to zero and keeps the pattern.
func (m *Matrix) Zero() { clear(m.val) }

// find returns the index of block (i, j), j <= i, or -1.
func (m *Matrix) find(i, j int32) int {
	lo := int(m.ptr[i])
	for b := int(m.ptr[i+1]) - 1; b >= lo; b-- {
		if m.col[b] == j {
			return b
		}
	}
	return -1
}

// Couples says whether the pattern has a block for two nodes.
func (m *Matrix) Couples(i, j int32) bool { return m.find(max(i, j), min(i, j)) >= 0 }

// Add sums the element matrix k into m. k is symmetric, row-major, of order
// 6 len(nodes); of the two blocks of a pair of nodes only one is read, so both
// triangles must be filled. It panics if k has the wrong length or a pair of
// nodes is not in the pattern.
func (m *Matrix) Add(nodes []int32, k []float64) { m.AddRows(nodes, k, nil, 0) }

// AddRows is Add for the block rows of the nodes whose owner is the given one alone, so that
// several goroutines may each sum elements into rows of their own. Without owners it is Add.
func (m *Matrix) AddRows(nodes []int32, k []float64, owners []int32, owner int32) {
	ld := Block * len(nodes)
	if len(k) != ld*ld {
		panic(fmt.Sprintf("sparse: Add: %d nodes want %d values, found %d", len(nodes), ld*ld, len(k)))
	}
	for a, u := range nodes {
		if owners != nil && owners[u] != owner {
			continue
		}
		for b, v := range nodes {
			if u < v {
				continue
			}
			at := m.find(u, v)
			if at < 0 {
				panic(fmt.Sprintf("sparse: Add: nodes %d and %d do not couple", u, v))
			}
			addBlock(m.val[at*blockLen:], k[(Block*a)*ld+Block*b:], ld)
		}
	}
}

// addBlock adds the 6 x 6 block at src, row stride ld, to the block dst.
func addBlock(dst, src []float64, ld int) {
	for r := range Block {
		d, s := (*[Block]float64)(dst[r*Block:]), (*[Block]float64)(src[r*ld:])
		d[0] += s[0]
		d[1] += s[1]
		d[2] += s[2]
		d[3] += s[3]
		d[4] += s[4]
		d[5] += s[5]
	}
}

// Fix makes the given degrees of freedom (6 node + 0..5) fixed: row and column
// become zero but for the diagonal, which keeps its own positive value, or takes
// the largest of its node, or else 1; so the scale of the matrix stays. The
// caller sets the right-hand side to zero there. Repeats are harmless; it panics
// for an index outside the matrix.
func (m *Matrix) Fix(dofs []int32) {
	if len(dofs) == 0 {
		return
	}
	fixed := m.fixedBits(dofs)
	for i := range int32(m.n) {
		for b := m.ptr[i]; b < m.ptr[i+1]; b++ {
			fixBlock(m.val[int(b)*blockLen:][:blockLen], fixed, i, m.col[b])
		}
	}
}

// fixedBits has bit d set where degree of freedom d of a node is fixed.
func (m *Matrix) fixedBits(dofs []int32) []uint8 {
	fixed := make([]uint8, m.n)
	for _, d := range dofs {
		fixed[d/Block] |= 1 << (d % Block)
	}
	return fixed
}

// fixBlock fixes what is fixed in block (i, j).
func fixBlock(blk []float64, fixed []uint8, i, j int32) {
	switch {
	case fixed[i]|fixed[j] == 0:
	case j == i:
		fixDiagonal(blk, fixed[i])
	default:
		clearFixed(blk, fixed[i], fixed[j])
	}
}

// clearFixed zeroes the rows and columns of blk whose bits are set.
func clearFixed(blk []float64, rows, cols uint8) {
	for r := range Block {
		for c := range Block {
			if rows>>r&1 == 1 || cols>>c&1 == 1 {
				blk[r*Block+c] = 0
			}
		}
	}
}

// fixDiagonal clears the fixed rows and columns of a diagonal block and puts a
// positive number on their diagonal.
func fixDiagonal(blk []float64, fixed uint8) {
	var diag [Block]float64
	largest := 0.0
	for d := range Block {
		diag[d] = blk[d*Block+d]
		largest = max(largest, diag[d])
	}
	if !(largest > 0) {
		largest = 1
	}
	clearFixed(blk, fixed, fixed)
	for d := range Block {
		if fixed>>d&1 == 0 {
			continue
		}
		if !(diag[d] > 0) {
			diag[d] = largest
		}
		blk[d*Block+d] = diag[d]
	}
}

// Diagonal returns the value on the diagonal at degree of freedom dof.
func (m *Matrix) Diagonal(dof int) float64 {
	i, d := dof/Block, dof%Block
	return m.val[(int(m.ptr[i+1])-1)*blockLen+d*Block+d]
}

// MulTo sets y = m x. x and y have 6 values for each node and do not overlap; it
// panics if their lengths are wrong.
func (m *Matrix) MulTo(y, x []float64) {
	if len(x) != Block*m.n || len(y) != Block*m.n {
		panic("sparse: MulTo: length mismatch")
	}
	clear(y)
	for i := range m.n {
		xi, yi := x[Block*i:][:Block], y[Block*i:][:Block]
		last := int(m.ptr[i+1]) - 1
		for b := int(m.ptr[i]); b < last; b++ {
			j := Block * int(m.col[b])
			mulBlock(m.val[b*blockLen:][:blockLen], yi, xi, y[j:][:Block], x[j:][:Block])
		}
		mulDiagonal(m.val[last*blockLen:][:blockLen], yi, xi)
	}
}

// mulBlock adds blk xj to yi and its transpose times xi to yj.
func mulBlock(blk, yi, xi, yj, xj []float64) {
	for r := range Block {
		row := blk[r*Block:][:Block]
		s, t := 0.0, xi[r]
		for c, v := range row {
			s += v * xj[c]
			yj[c] += v * t
		}
		yi[r] += s
	}
}

// mulDiagonal adds blk x to y; of blk the lower triangle is read, as the
// factorisation does.
func mulDiagonal(blk, y, x []float64) {
	for r := range Block {
		for c := range r {
			v := blk[r*Block+c]
			y[r] += v * x[c]
			y[c] += v * x[r]
		}
		y[r] += blk[r*Block+r] * x[r]
	}
}
