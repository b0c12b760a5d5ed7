package sparse

import (
	"slices"

	"archload/fem/pages"
	"archload/fem/sparse/team"
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
// blocks, column at most row, and fills its 36 values, row-major, which are zero before. Some
// workers share the rows.
func (m *Matrix) SetBlocks(workers int, of func(row, col int32, values []float64)) {
	const some = 64
	team.New(workers).Each((m.n+some-1)/some, func(g int) {
		for i := some * g; i < min(some*(g+1), m.n); i++ {
			for b := m.ptr[i]; b < m.ptr[i+1]; b++ {
				values := m.val[int(b)*blockLen:][:blockLen]
				clear(values)
				of(int32(i), m.col[b], values)
			}
		}
	})
}
