package element

import (
	"math"

	"archload/fem/vec3"
)

// projected returns the part of v that is square to the unit vector n.
func projected(v, n [3]float64) [3]float64 { return vec3.Sub(v, vec3.Scale(n, vec3.Dot(v, n))) }

// axpy adds c·x to dst.
func axpy(dst *[18]float64, c float64, x *[18]float64) {
	for i, v := range x {
		dst[i] += c * v
	}
}

// form returns the value of the linear form row at u.
func form(row, u *[18]float64) float64 {
	var v float64
	for i, r := range row {
		v += r * u[i]
	}
	return v
}

// invertSPD replaces the symmetric positive definite n x n matrix a (row-major)
// by its inverse, symmetric to the last bit. It reports false if a pivot is not
// positive, that is, if a is not positive definite. Gauss-Jordan elimination
// without exchanges, which is stable for such matrices.
func invertSPD(a []float64, n int) bool {
	for p := range n {
		pivot := a[n*p+p]
		if !(pivot > 0) || math.IsInf(pivot, 1) {
			return false
		}
		a[n*p+p] = 1
		for j := range n {
			a[n*p+j] /= pivot
		}
		for i := range n {
			if i != p {
				eliminate(a, n, i, p)
			}
		}
	}
	for i := range n {
		for j := range i {
			m := (a[n*i+j] + a[n*j+i]) / 2
			a[n*i+j], a[n*j+i] = m, m
		}
	}
	return true
}

// eliminate clears column p of row i with row p in an in-place inversion.
func eliminate(a []float64, n, i, p int) {
	c := a[n*i+p]
	a[n*i+p] = 0
	for j := range n {
		a[n*i+j] -= c * a[n*p+j]
	}
}

// invert3 returns the inverse of a 3x3 matrix; the caller knows it is regular.
func invert3(m [3][3]float64) [3][3]float64 {
	c0, c1, c2 := vec3.Cross(m[1], m[2]), vec3.Cross(m[2], m[0]), vec3.Cross(m[0], m[1])
	d := vec3.Dot(m[0], c0)
	var r [3][3]float64
	for i := range 3 {
		r[i] = [3]float64{c0[i] / d, c1[i] / d, c2[i] / d}
	}
	return r
}
