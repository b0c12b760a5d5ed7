package sparse

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestSquare solves matrices of every order up to some panels, and of several block columns, whose diagonal is large enough
// that no row has to be exchanged, and multiplies back.
func TestSquare(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 11))
	var s Square
	for _, n := range []int{1, 2, 5, 6, 7, 8, 12, 13, 23, 24, 25, 47, 96, 97, 101, 193, 291, 400} {
		m, x := make([]float64, n*n), make([]float64, n)
		for i := range m {
			m[i] = rng.Float64() - 0.5
		}
		s.Reset(n)
		for i := range n {
			m[i*n+i] += 2 * math.Sqrt(float64(n))
			x[i] = rng.Float64()
			s.SetRow(i, m[i*n:(i+1)*n])
		}
		if !s.Factorize() {
			t.Fatalf("order %d: no factor", n)
		}
		b := make([]float64, n)
		for i := range n {
			for j, v := range x {
				b[i] += m[i*n+j] * v
			}
		}
		s.Solve(b)
		for i, v := range x {
			if math.Abs(b[i]-v) > 1e-12 {
				t.Fatalf("order %d: unknown %d is %.15f, want %.15f", n, i, b[i], v)
			}
		}
	}
}

// TestSquareSingular gives no factor where a row is another one again.
func TestSquareSingular(t *testing.T) {
	var s Square
	s.Reset(7)
	for i := range 7 {
		s.SetRow(i, []float64{1, 2, 3, 4, 5, 6, 7})
	}
	if s.Factorize() {
		t.Error("a factor of a matrix of rank 1")
	}
}

// BenchmarkSquare factorises a matrix of the order of a foot's.
func BenchmarkSquare(b *testing.B) {
	const n = 510
	rng := rand.New(rand.NewPCG(7, 11))
	m := make([]float64, n*n)
	for i := range m {
		m[i] = rng.Float64() - 0.5
	}
	for i := range n {
		m[i*n+i] += 50
	}
	var s Square
	for b.Loop() {
		s.Reset(n)
		for i := range n {
			s.SetRow(i, m[i*n:(i+1)*n])
		}
		s.Factorize()
	}
}
