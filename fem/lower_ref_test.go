package fem

// lower is a dense lower triangle that grows by rows, solved with by plain loops:
// the factor of the reference walk.
type lower struct{ row [][]float64 }

func newLower(most int) *lower { return &lower{row: make([][]float64, most)} }

// SetRow writes row i up to its diagonal.
func (l *lower) SetRow(i int, row []float64) { l.row[i] = append(l.row[i][:0], row...) }

// RowTo copies row i up to its diagonal.
func (l *lower) RowTo(dst []float64, i int) { copy(dst[:i+1], l.row[i]) }

// Forward solves with the first k rows.
func (l *lower) Forward(xs [][]float64, k int) {
	for _, x := range xs {
		for i := range k {
			for j, v := range l.row[i][:i] {
				x[i] -= v * x[j]
			}
			x[i] /= l.row[i][i]
		}
	}
}

// Backward solves with the transpose of the first k rows.
func (l *lower) Backward(x []float64, k int) {
	for i := k - 1; i >= 0; i-- {
		x[i] /= l.row[i][i]
		for j, v := range l.row[i][:i] {
			x[j] -= v * x[i]
		}
	}
}

// someRows are rows of a dense row-major matrix.
type someRows struct {
	a    []float64
	cols int
	rows []int32
}

// MulTo sets y[i] to row i times x where it is wanted.
func (m *someRows) MulTo(y, x []float64, want []bool) {
	for i, wanted := range want {
		if !wanted {
			continue
		}
		y[i] = 0
		for j, v := range m.a[int(m.rows[i])*m.cols:][:m.cols] {
			y[i] += v * x[j]
		}
	}
}

// at is an entry of the compliance.
func (p *problem) at(i, j int32) float64 { return p.a[int(i)*len(p.b)+int(j)] }
