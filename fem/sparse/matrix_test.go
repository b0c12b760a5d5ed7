package sparse

import (
	"math/rand/v2"
	"testing"
)

// TestMatrix compares assembly, fixing and product with a dense matrix.
func TestMatrix(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 1))
	elems := [][]int32{{0, 1, 2}, {2, 1, 3}, {3}, {4, 0}, {3, 2}, {5, 5}, {}}
	const n, order = 7, 42 // node 6 is in no element
	m := NewMatrix(n, elems)
	want := make([]float64, order*order)
	for _, el := range elems {
		k := randomElement(rng, len(el))
		m.Add(el, k)
		ld := Block * len(el)
		for i := range ld {
			for j := range ld {
				row, col := Block*int(el[i/Block])+i%Block, Block*int(el[j/Block])+j%Block
				want[row*order+col] += k[i*ld+j]
			}
		}
	}
	if d := apart(m.toDense(), want); d > 1e-15 {
		t.Errorf("assembled matrix is %g off, want 1e-15 (dense assembly)", d)
	}
	if got, wantBlocks := len(m.col), n+6; got != wantBlocks {
		t.Errorf("blocks = %d, want %d (diagonal and six pairs, counted by hand)", got, wantBlocks)
	}
	checkProduct(t, rng, m)
	fixed := []int32{0, 8, 8, 13, 36, 41}
	diag := want[13*order+13]
	m.Fix(fixed)
	got := m.toDense()
	for _, d := range fixed {
		for j := range order {
			if v := got[int(d)*order+j]; (v != 0) != (j == int(d)) {
				t.Errorf("fixed row %d has %g in column %d", d, v, j)
			}
		}
	}
	if v := m.Diagonal(13); v != diag {
		t.Errorf("fixed diagonal = %g, want its own value %g", v, diag)
	}
	if v := m.Diagonal(36); v != 1 {
		t.Errorf("fixed diagonal of an empty node = %g, want 1", v)
	}
	checkProduct(t, rng, m)
	m.Zero()
	if v := largest(m.toDense()); v != 0 {
		t.Errorf("after Zero the largest value is %g", v)
	}
}

func checkProduct(t *testing.T, rng *rand.Rand, m *Matrix) {
	t.Helper()
	d, n := m.toDense(), Block*m.n
	x, got, want := randomVector(rng, n), randomVector(rng, n), make([]float64, n)
	for i := range n {
		for j := range n {
			want[i] += d[i*n+j] * x[j]
		}
	}
	m.MulTo(got, x)
	if e := apart(got, want); e > 1e-14 {
		t.Errorf("product is %g off, want 1e-14 (dense product)", e)
	}
}

// TestMisuse checks that a caller's bug panics instead of giving a number.
func TestMisuse(t *testing.T) {
	m := NewMatrix(3, [][]int32{{0, 1}})
	p, m0 := plate{last: []int32{1}}, identity(1)
	f := mustFactorize(t, identity(3), mustAnalyse(t, identity(3), p), 1, kernels{})
	for name, call := range map[string]func(){
		"node outside":       func() { NewMatrix(2, [][]int32{{0, 2}}) },
		"no such pair":       func() { m.Add([]int32{0, 2}, make([]float64, 144)) },
		"element too short":  func() { m.Add([]int32{0, 1}, make([]float64, 143)) },
		"fix outside":        func() { m.Fix([]int32{18}) },
		"product length":     func() { m.MulTo(make([]float64, 18), make([]float64, 17)) },
		"solve length":       func() { f.Solve(make([]float64, 17)) },
		"solve many length":  func() { f.SolveMany(make([]float64, 18), 2) },
		"column elsewhere":   func() { f.Compliance([]Column{{Dofs: []int32{0}, Vals: []float64{1}}}) },
		"no last nodes":      func() { mustFactorize(t, m0, mustAnalyse(t, m0, plate{}), 1, kernels{}).Compliance(make([]Column, 1)) },
		"column of no value": func() { f.Compliance([]Column{{Dofs: []int32{6}}}) },
	} {
		t.Run(name, func(t *testing.T) {
			defer func() {
				if recover() == nil {
					t.Error("no panic")
				}
			}()
			call()
		})
	}
}

// identity returns the unit matrix of n nodes that do not couple.
func identity(n int) *Matrix {
	m := NewMatrix(n, nil)
	for i := range n {
		for d := range Block {
			m.val[blockLen*i+7*d] = 1
		}
	}
	return m
}
