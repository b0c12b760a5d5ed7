package contact

import (
	"cmp"
	"sync"

	"gonum.org/v1/gonum/blas/gonum"

	"archload/fem/sparse"
)

// lcp is the mixed linear complementarity problem of one load case: the letters of
// equations (1) to (4) in the package's comment.
type lcp struct {
	a    []float64    // A of (1), mm/N, row-major
	r    [][6]float64 // R of (2), mm per mm and rad
	b    []float64    // movement of each row at full load with all λ zero, mm
	f    [6]float64   // resultant of the body's loads about its first node
	held [6]float64   // the same of loads that act before the path begins
	self float64      // work coefficient of the loads, N·mm
	gap  []float64    // of each pad, mm
	pads int
	per  int

	order   []int32 // in which pads are likely to close, or nil
	likely  int     // of these, how many are to close at all; 0: any may
	workers int
	idle    *sync.Pool // of the memory of factors

	tolerance float64      // relative size of nothing, 1
	snap      float64      // gaps at rest below this count as none, mm
	history   bool         // the whole path
	plane     [][3]float64 // vertical movement of each pad by ρz, ρrx, ρry
	down      [3]float64   // the load that presses the slack body down: Fz, Mx, My
	nz        []float64    // vertical part of each pad's normal
}

func (p *lcp) normal(i int) int32 { return int32(i * p.per) }

// isNormal is asked of every row of every stretch; a division by a constant is no division.
func (p *lcp) isNormal(row int32) bool {
	if p.per == 3 {
		return int(row) < 3*p.pads && row%3 == 0
	}
	return int(row) < p.pads*p.per && int(row)%p.per == 0
}

func (p *lcp) padOf(row int32) int { return int(row) / p.per }

// movement is b t + A λ + R ρ of a row, mm: (2) without the gap.
func (p *lcp) movement(row int32, t float64, lambda []float64, rho [6]float64) float64 {
	var bl gonum.Implementation
	n := len(p.b)
	v := p.b[row]*t + bl.Ddot(n, p.a[int(row)*n:(int(row)+1)*n], 1, lambda, 1)
	for m := range 6 {
		v += p.r[row][m] * rho[m]
	}
	return v
}

// relativeZero is the relative size of a force or gap that counts as none.
func (p *lcp) relativeZero() float64 { return cmp.Or(p.tolerance, 1e-11) }

// factors keeps factors of active sets for the memory they have.
func factors() *sync.Pool { return &sync.Pool{New: func() any { return &sparse.ActiveCholesky{} }} }
