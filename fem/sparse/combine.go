package sparse

import (
	"slices"

	"archload/fem/pages"
)

// Like returns a zero matrix with the pattern of m, which the two share.
func (m *Matrix) Like() *Matrix {
	q := &Matrix{n: m.n, ptr: m.ptr, col: m.col, val: make([]float64, len(m.val))}
	pages.Wide(q.val)
	return q
}

// SamePattern reports whether two matrices have the same nodes and blocks.
func (m *Matrix) SamePattern(o *Matrix) bool {
	return m.n == o.n && slices.Equal(m.ptr, o.ptr) && slices.Equal(m.col, o.col)
}

// SetSum sets m to alpha x + beta y, all three of one pattern. It panics if they are
// not.
func (m *Matrix) SetSum(alpha float64, x *Matrix, beta float64, y *Matrix) {
	if !m.SamePattern(x) || !m.SamePattern(y) {
		panic("sparse: SetSum: want matrices of one pattern")
	}
	for i, v := range x.val {
		m.val[i] = alpha*v + beta*y.val[i]
	}
}

// SetBlocks sets the values of every block that is kept: of is told its row and column of
// blocks, column at most row, and fills its 36 values, row-major, which are zero before.
func (m *Matrix) SetBlocks(of func(row, col int32, values []float64)) {
	clear(m.val)
	for i := range m.n {
		for b := m.ptr[i]; b < m.ptr[i+1]; b++ {
			of(int32(i), m.col[b], m.val[int(b)*blockLen:][:blockLen])
		}
	}
}
