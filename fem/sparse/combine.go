package sparse

import "slices"

// Like returns a zero matrix with the pattern of m, which the two share.
func (m *Matrix) Like() *Matrix {
	return &Matrix{n: m.n, ptr: m.ptr, col: m.col, val: make([]float64, len(m.val))}
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
