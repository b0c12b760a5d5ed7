package fem

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/blas/gonum"
	"gonum.org/v1/gonum/mat"
)

// grown is the Cholesky factor of the active rows of a compliance, grown a
// row at a time in the order in which pads close, together with the rigid
// motions' forward-solved columns.
type grown struct {
	a    []float64    // n×n, row-major, symmetric
	r    [][6]float64 // rigid motion of each row
	n    int
	rows []int32   // active rows, in factor order
	l    []float64 // row-major lower factor, stride n
	y    [][6]float64
}

func newGrown(a []float64, r [][6]float64) *grown {
	n := len(r)
	return &grown{a: a, r: r, n: n, l: make([]float64, n*n), y: make([][6]float64, 0, n)}
}

// push adds row i. It fails if the compliance is not positive definite there.
func (g *grown) push(i int32) error {
	var blas gonum.Implementation
	k := len(g.rows)
	row := g.l[k*g.n : k*g.n+k+1]
	ai := g.a[int(i)*g.n : int(i+1)*g.n]
	for j, rj := range g.rows {
		lj := g.l[j*g.n : j*g.n+j+1]
		row[j] = (ai[rj] - blas.Ddot(j, row, 1, lj, 1)) / lj[j]
	}
	d := ai[i] - blas.Ddot(k, row, 1, row, 1)
	if !(d > 1e-14*ai[i]) {
		return fmt.Errorf("contact: row %d adds no compliance (pivot %.3g of %.3g mm/N)", i, d, ai[i])
	}
	row[k] = math.Sqrt(d)
	g.rows = append(g.rows, i)
	y := g.r[i]
	for m := range 6 {
		for j := range k {
			y[m] -= row[j] * g.y[j][m]
		}
		y[m] /= row[k]
	}
	g.y = append(g.y, y)
	return nil
}

// drop takes a set of rows out and refactors what came after the first.
func (g *grown) drop(out map[int32]bool) error {
	first := len(g.rows)
	for k, r := range g.rows {
		if out[r] {
			first = k
			break
		}
	}
	tail := append([]int32(nil), g.rows[first:]...)
	g.rows, g.y = g.rows[:first], g.y[:first]
	for _, r := range tail {
		if out[r] {
			continue
		}
		if err := g.push(r); err != nil {
			return err
		}
	}
	return nil
}

// solve returns λ over the active rows and ρ with
//
//	A λ + R ρ = rhs,  Rᵀ λ = f.
//
// errFree is returned if the active rows do not hold the body.
func (g *grown) solve(rhs []float64, f [6]float64) (lambda []float64, rho [6]float64, err error) {
	var blas gonum.Implementation
	k := len(g.rows)
	z := make([]float64, k)
	for i := range z {
		li := g.l[i*g.n : i*g.n+i+1]
		z[i] = (rhs[i] - blas.Ddot(i, li, 1, z, 1)) / li[i]
	}
	if rho, err = g.rigid(z, f); err != nil {
		return nil, rho, err
	}
	for i := range z {
		for m := range 6 {
			z[i] -= g.y[i][m] * rho[m]
		}
	}
	for i := k - 1; i >= 0; i-- {
		li := g.l[i*g.n : i*g.n+i+1]
		z[i] /= li[i]
		blas.Daxpy(i, -z[i], li, 1, z, 1)
	}
	return z, rho, nil
}

// rigid solves (YᵀY) ρ = Yᵀ z − f.
func (g *grown) rigid(z []float64, f [6]float64) (rho [6]float64, err error) {
	s := mat.NewSymDense(6, nil)
	var b [6]float64
	for m := range 6 {
		b[m] = -f[m]
		for i := range z {
			b[m] += g.y[i][m] * z[i]
		}
		for c := m; c < 6; c++ {
			v := 0.0
			for i := range z {
				v += g.y[i][m] * g.y[i][c]
			}
			s.SetSym(m, c, v)
		}
	}
	// Scale to a unit diagonal: translations and rotations differ by mm².
	var d [6]float64
	for m := range 6 {
		d[m] = 1 / math.Sqrt(math.Max(s.At(m, m), math.SmallestNonzeroFloat64))
	}
	for m := range 6 {
		for c := m; c < 6; c++ {
			s.SetSym(m, c, s.At(m, c)*d[m]*d[c])
		}
		b[m] *= d[m]
	}
	var ch mat.Cholesky
	if ok := ch.Factorize(s); !ok || ch.Cond() > 1e13 {
		return rho, errFree
	}
	x := mat.NewVecDense(6, nil)
	if err := ch.SolveVecTo(x, mat.NewVecDense(6, b[:])); err != nil {
		return rho, errFree
	}
	for m := range 6 {
		rho[m] = x.AtVec(m) * d[m]
	}
	return rho, nil
}
