package eigen

import (
	"math"

	"archload/fem/sparse"

	"gonum.org/v1/gonum/mat"
)

// width is how many vectors a block has.
const width = sparse.Octet

// ritz are the eigenpairs of the projection, the largest theta first.
type ritz struct {
	shift    float64
	theta    []float64
	vectors  *mat.Dense // columns ascending in theta, as the solver gives them
	residual []float64  // |B s|
	below    *[width][width]float64
	rows     int // of the vectors
}

// value returns eigenvalue i, from the lowest.
func (r *ritz) value(i int) float64 { return 1/r.theta[i] - r.shift }

// entry returns entry k of the vector of pair i.
func (r *ritz) entry(k, i int) float64 { return r.vectors.At(k, r.rows-1-i) }

// leastTheta is the theta, beside the largest, that counts as none: an infinite
// eigenvalue, or a place of the basis left empty.
const leastTheta = 1e-13

// rest returns |B s| of pair i.
func (r *ritz) rest(i int) float64 {
	sum := 0.0
	for _, b := range r.coupled(i) {
		sum += b * b
	}
	return math.Sqrt(sum)
}

// coupled returns B s of pair i: its coupling with the next block.
func (r *ritz) coupled(i int) (c [width]float64) {
	for a := range width {
		for k := range width {
			c[a] += r.below[a][k] * r.entry(r.rows-width+k, i)
		}
	}
	return c
}

// cut says where the eigenvalues found are to end: in a gap beyond those wanted.
type cut struct {
	below  int     // number of eigenvalues before the gap
	lo, hi float64 // the two beside it
}
