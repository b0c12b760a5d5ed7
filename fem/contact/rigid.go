package contact

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/mat"
)

// ErrMechanism says that the closed pads do not hold the body: with them alone it
// is a mechanism.
var ErrMechanism = errors.New("contact: the closed pads do not hold the body")

// rigid solves a 6×6 system of the body's movement, G being symmetric. ErrMechanism is
// returned if it is not positive definite to about 13 digits.
func rigid(g *[6][6]float64, b [6]float64) (rho [6]float64, err error) {
	// Scaled to a unit diagonal: translations and rotations differ by mm².
	var d [6]float64
	for m := range 6 {
		d[m] = 1 / math.Sqrt(math.Max(g[m][m], math.SmallestNonzeroFloat64))
	}
	l, det := root6(g, d)
	// With a unit diagonal the least eigenvalue is above 0.4 times the determinant
	// and the greatest below 6: only a small one asks for the condition itself.
	if !(det > 0) || det < 1e-10 && condition(g, d) > 1e13 {
		return rho, ErrMechanism
	}
	for m := range 6 {
		rho[m] = b[m] * d[m]
		for k := range m {
			rho[m] -= l[m][k] * rho[k]
		}
		rho[m] /= l[m][m]
	}
	for m := 5; m >= 0; m-- {
		for k := m + 1; k < 6; k++ {
			rho[m] -= l[k][m] * rho[k]
		}
		rho[m] /= l[m][m]
	}
	for m := range rho {
		rho[m] *= d[m]
	}
	return rho, nil
}

// root6 is the Cholesky factor of the scaled matrix and its determinant, which is not
// above zero if there is none.
func root6(g *[6][6]float64, d [6]float64) (l [6][6]float64, det float64) {
	det = 1
	for m := range 6 {
		for c := range m + 1 {
			v := g[m][c] * d[m] * d[c]
			for k := range c {
				v -= l[m][k] * l[c][k]
			}
			if c < m {
				l[m][c] = v / l[c][c]
				continue
			}
			if !(v > 0) {
				return l, 0
			}
			det *= v
			l[m][m] = math.Sqrt(v)
		}
	}
	return l, det
}

// condition is the condition number of the scaled matrix, estimated.
func condition(g *[6][6]float64, d [6]float64) float64 {
	s := mat.NewSymDense(6, nil)
	for m := range 6 {
		for c := m; c < 6; c++ {
			s.SetSym(m, c, g[m][c]*d[m]*d[c])
		}
	}
	var ch mat.Cholesky
	if !ch.Factorize(s) {
		return math.Inf(1)
	}
	return ch.Cond()
}
