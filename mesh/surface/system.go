package surface

import (
	"runtime"

	"archload/fem/sparse"
)

// system is a penalised least-squares problem for the coefficients of a spline: minimise
// Σ wᵢ² (rowᵢ·c − zᵢ)² + λ cᵀ R c. Of both matrices, which are symmetric, each unknown keeps the
// halfReach values with the splines that overlap it and come at or after it (see halfAt).
type system struct {
	grid
	*blocks
	half  [16][16]int
	data  []float64 // Σ w² row rowᵀ
	rough []float64 // R
	rhs   []float64 // Σ w² z row
}

func newSystem(g grid) (*system, error) {
	b, err := newBlocks(g)
	if err != nil {
		return nil, err
	}
	s := &system{grid: g, blocks: b, half: halves(), rough: make([]float64, halfReach*b.total())}
	return s.empty(), nil
}

// empty is the system with the same roughness, which the two share, and no data.
func (s *system) empty() *system {
	q := *s
	q.data, q.rhs = make([]float64, halfReach*s.total()), make([]float64, s.total())
	fills := make([]bool, s.total())
	for i := range fills {
		fills[i] = true
	}
	for _, u := range s.unknown {
		fills[u] = false
	}
	for u, fill := range fills {
		if fill {
			q.data[halfReach*u] = 1
		}
	}
	return &q
}

// unknowns are those of the sixteen splines of a cell whose first is given.
func (s *system) unknowns(first int) (u [16]int) {
	for k := range u {
		u[k] = s.unknown[first+s.offset(k)]
	}
	return u
}

// addRow adds one observation z of the functional st with weight w.
func (s *system) addRow(st *stencil, z, w float64) {
	w2, u := w*w, s.unknowns(st.first)
	for a, va := range st.w {
		v := w2 * va
		s.rhs[u[a]] += v * z
		row := s.data[halfReach*u[a]:][:halfReach]
		for b := a; b < 16; b++ {
			row[s.half[a][b]] += v * st.w[b]
		}
	}
}

// addRough adds the quadratic form m of the 16 splines of the cell whose first spline is first,
// of which the upper half is read, to R.
func (s *system) addRough(first int, m *[16][16]float64) {
	u := s.unknowns(first)
	for a := range 16 {
		row := s.rough[halfReach*u[a]:][:halfReach]
		for b := a; b < 16; b++ {
			row[s.half[a][b]] += m[a][b]
		}
	}
}

// factor is the Cholesky factor of a system for one λ.
type factor struct {
	*blocks
	m *sparse.Matrix
	l *sparse.Factor // nil: not yet factorised
}

// factor factorises the matrix for the weight lambda of R, in the memory of old, which is void
// then, if it is not the zero value; ok is false if the matrix is not positive definite in
// floating point.
func (s *system) factor(lambda float64, old factor) (f factor, ok bool) {
	f = old
	if f.m == nil {
		f.blocks, f.m = s.blocks, s.pattern.Like()
	}
	s.fill(f.m, s.data, s.rough, lambda)
	var err error
	if f.l == nil {
		f.l, err = sparse.Factorize(f.m, s.analysis, workers())
	} else {
		err = f.l.Refactor(f.m)
	}
	return f, err == nil
}

// solve returns the coefficients for the right-hand side rhs, which it keeps.
func (f factor) solve(rhs []float64) []float64 {
	x := append([]float64(nil), rhs...)
	f.l.Solve(x)
	coef := make([]float64, len(f.unknown))
	for i, u := range f.unknown {
		coef[i] = x[u]
	}
	return coef
}

// workers is how many goroutines share the work; no result depends on it.
func workers() int { return runtime.GOMAXPROCS(0) }
