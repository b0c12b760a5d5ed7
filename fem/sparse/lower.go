package sparse

import (
	"fmt"
	"slices"
)

// Lower is a dense lower triangle with a positive diagonal that grows by rows: the
// Cholesky factor of the active part of a dense matrix. Its rows lie in panels of
// eight, as a front's do, so that the same kernels solve with it. The zero value has
// no room; see NewLower.
type Lower struct {
	kern kernels
	most int
	val  []float64
	inv  []float64 // of the diagonal, 1/value
}

// NewLower returns a triangle with room for so many rows.
func NewLower(most int) *Lower {
	p := panels(most)
	return &Lower{kern: fastKernels(), most: most, val: make([]float64, lowerOff(p)), inv: make([]float64, panelRows*p)}
}

// lowerOff is where panel p begins: panel q is 8 (q+1) columns wide.
func lowerOff(p int) int { return panelRows * panelRows * p * (p + 1) / 2 }

func (l *Lower) panel(p int) []float64 { return l.val[lowerOff(p):lowerOff(p+1)] }

// SetRow writes row i up to its diagonal. It panics if there is no room, or if the
// length is not i+1.
func (l *Lower) SetRow(i int, row []float64) {
	if i >= l.most || len(row) != i+1 {
		panic(fmt.Sprintf("sparse: SetRow: want row %d of %d with %d values, found %d", i, l.most, i+1, len(row)))
	}
	pan := l.panel(i / panelRows)[i%panelRows:]
	for j, v := range row {
		pan[panelRows*j] = v
	}
	l.inv[i] = 1 / row[i]
}

// RowTo copies row i up to its diagonal to dst, of length i+1.
func (l *Lower) RowTo(dst []float64, i int) {
	pan := l.panel(i / panelRows)[i%panelRows:]
	for j := range dst[:i+1] {
		dst[j] = pan[panelRows*j]
	}
}

// Forward replaces the first k values of each vector by the solution with the first
// k rows. It goes through the triangle once for all.
func (l *Lower) Forward(xs [][]float64, k int) {
	var own [panelRows]float64
	for p := range panels(k) {
		pan, at := l.panel(p), panelRows*p
		rows := min(panelRows, k-at)
		inv := (*[panelRows]float64)(l.inv[at:])
		for _, x := range xs {
			copy(own[:], x[at:at+rows])
			l.kern.gemv(own[:], pan[:panelRows*at], x[:at])
			for j := range rows {
				v := own[j] * inv[j]
				col := (*[panelRows]float64)(pan[panelRows*(at+j):])
				for i := j + 1; i < panelRows; i++ {
					own[i] -= col[i] * v
				}
				own[j] = v
			}
			copy(x[at:at+rows], own[:])
		}
	}
}

// Backward replaces the first k values of x by the solution with the transpose of
// the first k rows.
func (l *Lower) Backward(x []float64, k int) {
	for p := panels(k) - 1; p >= 0; p-- {
		pan, at := l.panel(p), panelRows*p
		rows := min(panelRows, k-at)
		var own [panelRows]float64 // rows beyond k count as zero
		for i := rows - 1; i >= 0; i-- {
			v := x[at+i]
			for j := i + 1; j < rows; j++ {
				v -= pan[panelRows*(at+i)+j] * own[j]
			}
			own[i] = v * l.inv[at+i]
		}
		copy(x[at:at+rows], own[:])
		l.kern.gemvt(x[:at], pan[:panelRows*at], own[:])
	}
}

// Rows are some rows of a dense matrix, in panels of eight.
type Rows struct {
	kern kernels
	cols int
	val  []float64
}

// NewRows takes rows of the row-major matrix a with the given number of columns.
func NewRows(a []float64, cols int, rows []int32) *Rows {
	m := &Rows{kern: fastKernels(), cols: cols, val: make([]float64, rectLen(len(rows), cols))}
	for i, r := range rows {
		pan := m.val[i/panelRows*panelRows*cols+i%panelRows:]
		for j, v := range a[int(r)*cols:][:cols] {
			pan[panelRows*j] = v
		}
	}
	return m
}

// MulTo sets y[i] to row i times x where want[i] is true; other values of y are left
// undefined. It panics if x is too short or y is not as long as want.
func (m *Rows) MulTo(y, x []float64, want []bool) {
	var own [panelRows]float64
	for at := 0; at < len(want); at += panelRows {
		end := min(at+panelRows, len(want))
		if !slices.Contains(want[at:end], true) {
			continue
		}
		own = [panelRows]float64{}
		m.kern.gemv(own[:], m.val[at*m.cols:][:panelRows*m.cols], x[:m.cols])
		for i := at; i < end; i++ {
			y[i] = -own[i-at]
		}
	}
}
