package sparse

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// TestCompliance compares with full solves.
func TestCompliance(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 8))
	for kind, kern := range kernelSets() {
		p := hexPlate(250, rng, func(x, y float64) bool { return x > 100 && y*y < 900 }).withWall(3).bridge(50)
		m := p.matrix(rng)
		f := mustFactorize(t, m, mustAnalyse(t, m, p), 2, kern)
		for _, n := range []int{0, 1, 5, 6, 24, 61} {
			cols := randomColumns(rng, p.last, n)
			got := f.Compliance(cols)
			want := fullCompliance(f, m.n, cols)
			if len(got) != n*n {
				t.Fatalf("%d values for %d columns", len(got), n)
			}
			if n > 0 {
				if d := apart(got, want); !(d <= 1e-12) {
					t.Errorf("%s, %d columns: %g off the full solves, want 1e-12", kind, n, d)
				}
			}
			for i := range n {
				for j := range n {
					if got[i*n+j] != got[j*n+i] {
						t.Fatalf("not symmetric at %d, %d", i, j)
					}
				}
			}
		}
	}
}

// TestComplianceHeld: columns that touch nothing, as those on rigid ground, have no compliance.
func TestComplianceHeld(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 10))
	p := hexPlate(100, rng, nil).withWall(3).bridge(50)
	m := p.matrix(rng)
	f := mustFactorize(t, m, mustAnalyse(t, m, p), 2, fastKernels())
	const n = 2*blockCols + 3
	cols := make([]Column, n)
	for i, v := range f.Compliance(cols) {
		if v != 0 {
			t.Fatalf("value %d is %g, want 0", i, v)
		}
	}
	cols[blockCols+1] = Column{Dofs: []int32{Block*p.last[0] + 2}, Vals: []float64{1}}
	got := f.Compliance(cols)
	for i, v := range got {
		if (v > 0) != (i == (n+1)*(blockCols+1)) {
			t.Fatalf("value %d is %g, want one on the diagonal alone", i, v)
		}
	}
}

// randomColumns makes sparse vectors on the given nodes, one empty and one with a
// repeated degree of freedom.
func randomColumns(rng *rand.Rand, nodes []int32, n int) []Column {
	cols := make([]Column, n)
	for i := range cols {
		for range rng.IntN(19) * min(i, 1) {
			cols[i].Dofs = append(cols[i].Dofs, Block*nodes[rng.IntN(len(nodes))]+rng.Int32N(Block))
			cols[i].Vals = append(cols[i].Vals, rng.NormFloat64())
		}
	}
	if n > 2 {
		cols[2].Dofs = append(cols[2].Dofs, cols[1].Dofs...)
		cols[2].Dofs = append(cols[2].Dofs, cols[1].Dofs...)
		cols[2].Vals = append(append(cols[2].Vals, cols[1].Vals...), cols[1].Vals...)
	}
	return cols
}

// fullCompliance solves for every column with the whole factor.
func fullCompliance(f *Factor, nodes int, cols []Column) []float64 {
	n := len(cols)
	c := make([]float64, n*n)
	for j, col := range cols {
		x := make([]float64, Block*nodes)
		for k, d := range col.Dofs {
			x[d] += col.Vals[k]
		}
		f.Solve(x)
		for i, other := range cols {
			for k, d := range other.Dofs {
				c[i*n+j] += other.Vals[k] * x[d]
			}
		}
	}
	return c
}

// TestReach: the compliance from the flexibility of the last nodes is that from the
// factor, to rounding and by any number of workers to the bit.
func TestReach(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 9))
	for kind, kern := range kernelSets() {
		p := hexPlate(250, rng, func(x, y float64) bool { return x > 100 && y*y < 900 }).withWall(3).bridge(50)
		m := p.matrix(rng)
		f, g := mustFactorize(t, m, mustAnalyse(t, m, p), 2, kern), mustFactorize(t, m, mustAnalyse(t, m, p), 1, kern)
		two, one := f.Reach(), g.Reach()
		for _, n := range []int{0, 1, 5, 6, 24, 25, 61} {
			cols := randomColumns(rng, p.last, n)
			got, want := two.Compliance(cols), f.Compliance(cols)
			if n > 0 {
				if d := apart(got, want); !(d <= 1e-12) {
					t.Errorf("%s, %d columns: %g off the factor's, want 1e-12", kind, n, d)
				}
			}
			if !slices.Equal(one.Compliance(cols), got) {
				t.Errorf("%s, %d columns: two workers give other bits than one", kind, n)
			}
			for i := range n {
				for j := range n {
					if got[i*n+j] != got[j*n+i] {
						t.Fatalf("not symmetric at %d, %d", i, j)
					}
				}
			}
		}
	}
}
