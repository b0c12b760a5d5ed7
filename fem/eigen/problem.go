package eigen

import (
	"cmp"

	"archload/fem/sparse"
)

// Problem is K x = lambda M x. K and M have one pattern; both are symmetric and positive
// semidefinite, with no null vector in common.
type Problem struct {
	K, M  *sparse.Matrix   // with the fixed freedoms taken out by Fix
	Fixed []int32          // these freedoms, 6 node + 0..5
	Plan  *sparse.Analysis // of that pattern
}

// Options steers Lowest; the zero value asks for the lowest of a definite K.
type Options struct {
	Count     int     // eigenvalues wanted; 0 means 1. A few more may come back, up to a gap
	Tolerance float64 // of the residual, relative, 1; 0 means 1e-9
	// Free is the number of zero eigenvalues that K has, the rigid motions; 0: K is
	// definite. They are found like the others and come back first.
	Free int
	// Scale is a guess at the lowest other eigenvalue where Free is not 0; a wrong one costs
	// a factorisation. 0 means 1.
	Scale   float64
	Workers int // goroutines; 0 means 1
}

func (o Options) tolerance() float64 { return cmp.Or(o.Tolerance, 1e-9) }

// Modes are the lowest eigenvalues of a problem, ascending and complete.
type Modes struct {
	Values    []float64
	Vectors   [][]float64 // xᵀ M x = 1
	Residuals []float64   // eta: the relative error bound of lambda + Shift, 1
	Proof     Proof
	Shift     float64 // s: K + s M was factorised
	Blocks    int     // steps of eight vectors
	Restarts  int
	Rounds    int // searches that went on because the count was higher than the number found
}

// Proof is the count of the eigenvalues below a bound.
type Proof struct {
	Bound  float64 // mu
	Count  int     // eigenvalues below it; as many as were found
	Growth float64 // of the factor of K - mu M, 1: a definite matrix
	// Noise is the estimated shift by rounding of the eigenvalues beside the bound, over
	// their distance from it, 1.
	Noise float64
}
