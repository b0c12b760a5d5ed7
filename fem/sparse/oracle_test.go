package sparse

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// toDense returns the full symmetric matrix, row-major.
func (m *Matrix) toDense() []float64 {
	n := Block * m.n
	d := make([]float64, n*n)
	for i := range m.n {
		for b := m.ptr[i]; b < m.ptr[i+1]; b++ {
			for r := range Block {
				for c := range Block {
					row, col := Block*i+r, Block*int(m.col[b])+c
					v := m.val[int(b)*blockLen+Block*r+c]
					d[row*n+col], d[col*n+row] = v, v
				}
			}
		}
	}
	return d
}

// denseSolve solves a x = b by plain Cholesky, the oracle of the solver; a is
// destroyed.
func denseSolve(t *testing.T, a, b []float64) []float64 {
	t.Helper()
	n := len(b)
	x := append([]float64(nil), b...)
	for j := range n {
		for l := range j {
			a[j*n+j] -= a[j*n+l] * a[j*n+l]
		}
		if !(a[j*n+j] > 0) {
			t.Fatalf("oracle: pivot %d is %g", j, a[j*n+j])
		}
		a[j*n+j] = math.Sqrt(a[j*n+j])
		for i := j + 1; i < n; i++ {
			for l := range j {
				a[i*n+j] -= a[i*n+l] * a[j*n+l]
			}
			a[i*n+j] /= a[j*n+j]
		}
	}
	for i := range n {
		for l := range i {
			x[i] -= a[i*n+l] * x[l]
		}
		x[i] /= a[i*n+i]
	}
	for i := n - 1; i >= 0; i-- {
		for r := i + 1; r < n; r++ {
			x[i] -= a[r*n+i] * x[r]
		}
		x[i] /= a[i*n+i]
	}
	return x
}

// residual returns max|b - m x| / (|m| max|x| + max|b|), |m| the row sum norm.
func residual(m *Matrix, x, b []float64) float64 {
	n := Block * m.n
	y, rows := make([]float64, n), make([]float64, n)
	m.MulTo(y, x)
	for i := range m.n {
		for at := m.ptr[i]; at < m.ptr[i+1]; at++ {
			for q, v := range m.val[int(at)*blockLen:][:blockLen] {
				row, col := Block*i+q/Block, Block*int(m.col[at])+q%Block
				rows[row] += math.Abs(v)
				if int(m.col[at]) != i {
					rows[col] += math.Abs(v)
				}
			}
		}
	}
	for i := range y {
		y[i] -= b[i]
	}
	return largest(y) / (largest(rows)*largest(x) + largest(b))
}

func largest(x []float64) float64 {
	v := 0.0
	for _, a := range x {
		v = max(v, math.Abs(a))
		if math.IsNaN(a) {
			return math.NaN()
		}
	}
	return v
}

// apart returns max|x - y| / max|y|.
func apart(x, y []float64) float64 {
	d := make([]float64, len(x))
	for i := range x {
		d[i] = x[i] - y[i]
	}
	if largest(d) == 0 {
		return 0
	}
	return largest(d) / largest(y)
}

func randomVector(rng *rand.Rand, n int) []float64 {
	x := make([]float64, n)
	for i := range x {
		x[i] = rng.NormFloat64()
	}
	return x
}

// randomElement returns BᵀB with a random square B.
func randomElement(rng *rand.Rand, nodes int) []float64 {
	n := Block * nodes
	b, k := randomVector(rng, n*n), make([]float64, n*n)
	for l := range n {
		row := b[l*n : l*n+n]
		for i, v := range row {
			for j, w := range row {
				k[i*n+j] += v * w
			}
		}
	}
	return k
}

// kernelSets returns the portable kernels and those of this processor, if other.
func kernelSets() map[string]kernels {
	sets := map[string]kernels{"portable": {}}
	if fast := fastKernels(); fast.AVX2 {
		sets["avx2"] = fast
	}
	return sets
}

func mustAnalyse(t *testing.T, m *Matrix, p plate) *Analysis {
	t.Helper()
	a, err := Analyse(m, p.xy, p.last)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// values are those of all fronts.
func (f *Factor) values() []float64 { return slices.Concat(f.parts...) }

func mustFactorize(t *testing.T, m *Matrix, a *Analysis, workers int, kern kernels) *Factor {
	t.Helper()
	f, err := newFactor(a, workers, kern).first(m)
	if err != nil {
		t.Fatal(err)
	}
	return f
}
