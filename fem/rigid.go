package fem

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// motion is how the body and the released rows move.
type motion struct {
	rho [6]float64
	nu  []float64 // of each released row
}

// solveMotion finds the movement of body and released rows for a side y of the factor whose
// products with the other sides are given:
//
//	(YᵀY) (ρ, ν) = −Yᵀy − (f, 0).
//
// ErrMechanism is returned if the active rows do not hold the body.
func (h *activeSet) solveMotion(with []float64, f [6]float64) (t motion, err error) {
	q := len(h.released)
	var g [6][6]float64
	var b [6]float64
	for m := range 6 {
		b[m] = -with[m] - f[m]
		copy(g[m][:], h.gram[m][:6])
	}
	if q == 0 {
		t.rho, err = rigid(&g, b)
		return t, err
	}
	ee, re := mat.NewSymDense(q, nil), mat.NewDense(q, 7, nil)
	for i := range q {
		for j := i; j < q; j++ {
			ee.SetSym(i, j, h.gram[firstReleased+i][firstReleased+j])
		}
		for m := range 6 {
			re.Set(i, m, h.gram[firstReleased+i][m])
		}
		re.Set(i, 6, -with[firstReleased+i])
	}
	var ch mat.Cholesky
	var x mat.Dense
	if !ch.Factorize(ee) {
		return t, ErrMechanism
	}
	if err := ch.SolveTo(&x, re); err != nil {
		return t, ErrMechanism
	}
	for i := range q {
		for m := range 6 {
			v := re.At(i, m)
			b[m] -= v * x.At(i, 6)
			for c := range 6 {
				g[m][c] -= v * x.At(i, c)
			}
		}
	}
	if t.rho, err = rigid(&g, b); err != nil {
		return t, err
	}
	for i := range q {
		v := x.At(i, 6)
		for m, r := range t.rho {
			v -= x.At(i, m) * r
		}
		t.nu = append(t.nu, v)
	}
	return t, nil
}

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
