package sparse

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestRows compares with plain sums.
func TestRows(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 6))
	const cols = 37
	for kind, kern := range kernelSets() {
		for _, n := range []int{0, 1, 8, 29} {
			a, x := randomVector(rng, 40*cols), randomVector(rng, cols)
			rows, want := make([]int32, n), make([]bool, n)
			for i := range rows {
				rows[i], want[i] = rng.Int32N(40), rng.IntN(4) > 0
			}
			m, y := NewRows(a, cols, rows), make([]float64, n)
			m.kern = kern
			m.MulTo(y, x, want)
			for i, r := range rows {
				v := 0.0
				for j, b := range x {
					v += a[int(r)*cols+j] * b
				}
				if want[i] && math.Abs(y[i]-v) > 1e-13*cols {
					t.Errorf("%s, row %d of %d: %g, want %g", kind, i, n, y[i], v)
				}
			}
		}
	}
}

// TestLower: what Forward and Backward return solves, for every number of rows,
// with and without rows beyond it, and several vectors as one.
func TestLower(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 5))
	const most = 45
	for kind, kern := range kernelSets() {
		l := NewLower(most)
		l.kern = kern
		rows := make([][]float64, most)
		for i := range rows {
			rows[i] = randomVector(rng, i+1)
			rows[i][i] = 3 + math.Abs(rows[i][i])
			l.SetRow(i, rows[i])
		}
		for k := range most + 1 {
			x, b := make([]float64, most), randomVector(rng, most)
			copy(x, b)
			y := append([]float64(nil), b...)
			l.Forward([][]float64{x, y}, k)
			for i := range k {
				v := 0.0
				for j, a := range rows[i] {
					v += a * x[j]
				}
				if math.Abs(v-b[i]) > 1e-12 || x[i] != y[i] {
					t.Errorf("%s, %d rows: row %d of L x is %g, want %g; of two equal vectors %g and %g", kind, k, i, v, b[i], x[i], y[i])
				}
			}
			copy(x, b)
			l.Backward(x, k)
			for j := range k {
				v := 0.0
				for i := j; i < k; i++ {
					v += rows[i][j] * x[i]
				}
				if math.Abs(v-b[j]) > 1e-12 {
					t.Errorf("%s, %d rows: row %d of Lᵀ x is %g, want %g", kind, k, j, v, b[j])
				}
			}
			for i := k; i < most; i++ {
				if x[i] != b[i] {
					t.Errorf("%s, %d rows: value %d beyond them changed", kind, k, i)
				}
			}
		}
	}
}
