package surface

import (
	"math"
	"math/rand/v2"
	"testing"

	"archload/mesh/plane"
)

// TestSystem holds the solution of a system to its normal equations, summed entry by entry. The
// grid's splines fill no whole number of blocks.
func TestSystem(t *testing.T) {
	const lambda = 0.3
	g := gridOver(plane.Point{0, 0}, plane.Point{22, 30}, 2)
	s, err := newSystem(g)
	if err != nil {
		t.Fatal(err)
	}
	rng := rand.New(rand.NewPCG(5, 8))
	n := g.count()
	a, b := make([]float64, n*n), make([]float64, n)
	for range 4 * n {
		st := g.valueAt(plane.Point{22 * rng.Float64(), 30 * rng.Float64()})
		z, w := rng.NormFloat64(), 1+rng.Float64()
		s.addRow(&st, z, w)
		for i, v := range st.w {
			p := st.first + g.offset(i)
			b[p] += w * w * v * z
			for k, u := range st.w {
				a[p*n+st.first+g.offset(k)] += w * w * v * u
			}
		}
	}
	for j := range g.ny {
		for i := range g.nx {
			m, first := positive(rng), g.index(i, j)
			s.addRough(first, &m)
			for p := range 16 {
				for q := range 16 {
					a[(first+g.offset(p))*n+first+g.offset(q)] += lambda * m[p][q]
				}
			}
		}
	}
	f, ok := s.factor(lambda, factor{})
	if !ok {
		t.Fatal("not positive definite")
	}
	c := f.solve(s.rhs)
	for p := range n {
		r, size := -b[p], math.Abs(b[p])
		for q := range n {
			r += a[p*n+q] * c[q]
			size += math.Abs(a[p*n+q] * c[q])
		}
		if math.Abs(r) > 1e-12*size {
			t.Fatalf("spline %d: residual %.3g of %.3g", p, r, size)
		}
	}
	if empty := s.empty(); empty.rhs[s.unknown[n/2]] != 0 || &empty.rough[0] != &s.rough[0] {
		t.Error("the system without data keeps some, or has a roughness of its own")
	}
}

// positive is a positive definite form of the splines of a cell.
func positive(rng *rand.Rand) (m [16][16]float64) {
	for range 20 {
		var v [16]float64
		for i := range v {
			v[i] = rng.NormFloat64()
		}
		for i := range v {
			for k := range v {
				m[i][k] += v[i] * v[k]
			}
		}
	}
	return m
}
