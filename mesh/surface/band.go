package surface

import (
	"math"
	"sync"
)

const (
	bandBlock = 32 // rows eliminated together
	bandFused = 8  // of these subtracted in one pass over a row
)

// bandCholesky replaces the upper half of a symmetric band matrix of n rows by
// its factor U, A = Uᵀ U, and reports whether A is positive definite. Row i holds
// its columns i .. i+width-1; those beyond n are not touched. Two goroutines share
// the rows; every number is computed the same way whoever does it.
//
// gonum's routines do the same and are not used: for 6400 rows of 220 values, an
// arch of usual size, this takes 45 to 57 ms on two cores of an AMD EPYC,
// lapack64.Pbtrf 51 to 76 and mat.BandCholesky, which estimates the condition as
// well, 230 to 480 (go1.26, gonum v0.17). They sum in another order too: seven of
// eight numbers of the factor differ in the last bits, and with them every answer.
func bandCholesky(n, width int, a []float64) bool {
	b := bandMatrix{n: n, width: width, a: a}
	for first := 0; first < n; first += bandBlock {
		end := min(first+bandBlock, n)
		for i := first; i < end; i++ {
			b.subtract(i, first, i)
			if !b.scale(i) {
				return false
			}
		}
		last := min(end+width-1, n)
		var wg sync.WaitGroup
		wg.Go(func() { b.update(end, last, first) })
		b.update(end+1, last, first)
		wg.Wait()
	}
	return true
}

// bandMatrix is a matrix as bandCholesky takes it.
type bandMatrix struct {
	n, width int
	a        []float64
}

// row returns the columns of row i from column c on.
func (b *bandMatrix) row(i, c int) []float64 {
	return b.a[i*b.width+c-i : i*b.width+min(b.width, b.n-i)]
}

// update subtracts a block of finished rows from every second row.
func (b *bandMatrix) update(from, last, first int) {
	for r := from; r < last; r += 2 {
		b.subtract(r, first, min(first+bandBlock, b.n))
	}
}

// subtract takes from row r what the finished rows first..end-1 have in its
// column: row r -= sum over q of U[q][r] U[q][r:].
func (b *bandMatrix) subtract(r, first, end int) {
	q := max(first, r-b.width+1)
	for ; q+bandFused <= end; q += bandFused {
		b.subtractEight(r, q)
	}
	for ; q < end; q++ {
		x := b.row(q, r)
		subtractScaled(b.row(r, r)[:len(x)], x, x[0])
	}
}

// subtractEight does eight finished rows in one pass as far as all reach, and then
// what the later ones have beyond.
func (b *bandMatrix) subtractEight(r, q int) {
	var x [bandFused][]float64
	for k := range x {
		x[k] = b.row(q+k, r)
	}
	y := b.row(r, r)
	common := len(x[0])
	x0, x1, x2, x3 := x[0][:common], x[1][:common], x[2][:common], x[3][:common]
	x4, x5, x6, x7 := x[4][:common], x[5][:common], x[6][:common], x[7][:common]
	v0, v1, v2, v3, v4, v5, v6, v7 := x0[0], x1[0], x2[0], x3[0], x4[0], x5[0], x6[0], x7[0]
	for c := range y[:common] {
		y[c] -= ((v0*x0[c] + v1*x1[c]) + (v2*x2[c] + v3*x3[c])) + ((v4*x4[c] + v5*x5[c]) + (v6*x6[c] + v7*x7[c]))
	}
	for k := range x {
		subtractScaled(y[common:len(x[k])], x[k][common:], x[k][0])
	}
}

func subtractScaled(y, x []float64, v float64) {
	for c, xc := range x {
		y[c] -= v * xc
	}
}

// scale divides row i by the root of its diagonal.
func (b *bandMatrix) scale(i int) bool {
	row := b.row(i, i)
	if !(row[0] > 0) || math.IsInf(row[0], 1) {
		return false
	}
	root := math.Sqrt(row[0])
	for c := range row {
		row[c] /= root
	}
	return true
}
