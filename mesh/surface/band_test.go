package surface

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/lapack/lapack64"
)

// TestBandCholesky compares with LAPACK's routine in gonum on random diagonally
// dominant matrices.
func TestBandCholesky(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 4))
	for _, c := range []struct{ n, width int }{{1, 1}, {5, 2}, {40, 1}, {40, 40}, {33, 7}, {100, 31}, {150, 33}, {300, 90}} {
		a := make([]float64, c.n*c.width)
		for i := range a {
			a[i] = rng.Float64() - 0.5
			if i%c.width == 0 {
				a[i] = float64(c.width) + 1
			}
		}
		want := slices.Clone(a)
		_, ok := lapack64.Pbtrf(blas64.SymmetricBand{Uplo: blas.Upper, N: c.n, K: c.width - 1, Data: want, Stride: c.width})
		if !ok || !bandCholesky(c.n, c.width, a) {
			t.Fatalf("%d rows, %d wide: not positive definite", c.n, c.width)
		}
		for i := range a {
			if i/c.width+i%c.width < c.n && !(math.Abs(a[i]-want[i]) <= 1e-13*float64(c.width)) {
				t.Fatalf("%d rows, %d wide: got %g at %d, want %g", c.n, c.width, a[i], i, want[i])
			}
		}
		a[(c.n-1)*c.width] = -1
		if bandCholesky(c.n, c.width, a) {
			t.Errorf("%d rows, %d wide: a negative diagonal passes", c.n, c.width)
		}
	}
}
