package surface

import (
	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/lapack/lapack64"
)

// bandSystem is a penalised least-squares problem for the coefficients of a
// spline: minimise Σ wᵢ² (rowᵢ·c − zᵢ)² + λ cᵀ R c. Both matrices are
// symmetric with the band of the spline's overlap; the upper half is stored
// by rows, as LAPACK wants it.
type bandSystem struct {
	grid
	width int       // stored entries of a row: reach + 1
	data  []float64 // Σ w² row rowᵀ
	rough []float64 // R
	rhs   []float64 // Σ w² z row
}

func newBandSystem(g grid) *bandSystem {
	w := g.reach() + 1
	n := g.count()
	return &bandSystem{grid: g, width: w, data: make([]float64, n*w), rough: make([]float64, n*w), rhs: make([]float64, n)}
}

// addRow adds one observation z of the functional st with weight w.
func (s *bandSystem) addRow(st *stencil, z, w float64) {
	w2 := w * w
	for a, va := range st.w {
		ia := s.offset(a)
		row := s.data[(st.first+ia)*s.width:]
		s.rhs[st.first+ia] += w2 * va * z
		for b, vb := range st.w {
			if d := s.offset(b) - ia; d >= 0 {
				row[d] += w2 * va * vb
			}
		}
	}
}

// addRough adds the quadratic form m of the 16 splines of the cell whose
// first spline is first, to R.
func (s *bandSystem) addRough(first int, m *[16][16]float64) {
	for a := range 16 {
		ia := s.offset(a)
		row := s.rough[(first+ia)*s.width:]
		for b := range 16 {
			if d := s.offset(b) - ia; d >= 0 {
				row[d] += m[a][b]
			}
		}
	}
}

// bandFactor is the Cholesky factor of a bandSystem for one λ.
type bandFactor struct {
	n int
	u blas64.TriangularBand
}

// factor factorises the matrix for the weight lambda of R; ok is false if it
// is not positive definite in floating point. work has the length of data and
// belongs to the factor from then on.
func (s *bandSystem) factor(lambda float64, work []float64) (f bandFactor, ok bool) {
	for i, v := range s.data {
		work[i] = v + lambda*s.rough[i]
	}
	n := s.count()
	ok = bandCholesky(n, s.width, work)
	u := blas64.TriangularBand{Uplo: blas.Upper, Diag: blas.NonUnit, N: n, K: s.width - 1, Data: work, Stride: s.width}
	return bandFactor{n, u}, ok
}

// solve returns the coefficients for the right-hand side rhs, which it keeps.
func (f bandFactor) solve(rhs []float64) []float64 {
	coef := append([]float64(nil), rhs...)
	lapack64.Pbtrs(f.u, blas64.General{Rows: f.n, Cols: 1, Data: coef, Stride: 1})
	return coef
}
