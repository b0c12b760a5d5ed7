package fem

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/gonum"
	lapack "gonum.org/v1/gonum/lapack/gonum"
	"gonum.org/v1/gonum/mat"
)

// leastPivot is the smallest part of its own compliance that a row must add.
const leastPivot = 1e-14

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
	var bl gonum.Implementation
	k := len(g.rows)
	row := g.l[k*g.n : k*g.n+k+1]
	ai := g.a[int(i)*g.n : int(i+1)*g.n]
	for j, rj := range g.rows {
		lj := g.l[j*g.n : j*g.n+j+1]
		row[j] = (ai[rj] - bl.Ddot(j, row, 1, lj, 1)) / lj[j]
	}
	d := ai[i] - bl.Ddot(k, row, 1, row, 1)
	if !(d > leastPivot*ai[i]) {
		return fmt.Errorf("contact: row %d adds no compliance (pivot %.3g of %.3g mm/N)", i, d, ai[i])
	}
	row[k] = math.Sqrt(d)
	g.rows = append(g.rows, i)
	g.y = append(g.y, g.rigidRow(i, row))
	return nil
}

// blockRows is from how many rows on pushMany is quicker than push.
const blockRows = 48

// pushMany adds rows in their order. Many at once go through blocked routines;
// if those meet a row that adds no compliance, the rows go in one by one, so
// that the message names it.
func (g *grown) pushMany(rows []int32) error {
	if len(rows) >= blockRows && g.pushBlock(rows) {
		return nil
	}
	for _, r := range rows {
		if err := g.push(r); err != nil {
			return err
		}
	}
	return nil
}

// pushBlock borders the factor by a block: with A21 and A22 the new rows,
// L21 = A21 L11⁻ᵀ and L22 L22ᵀ = A22 − L21 L21ᵀ.
func (g *grown) pushBlock(rows []int32) bool {
	var bl gonum.Implementation
	var la lapack.Implementation
	k, m := len(g.rows), len(rows)
	all := slices.Concat(g.rows, rows)
	for i, r := range rows {
		ai := g.a[int(r)*g.n : int(r+1)*g.n]
		li := g.l[(k+i)*g.n:]
		for j, c := range all[:k+i+1] {
			li[j] = ai[c]
		}
	}
	low := g.l[k*g.n:]
	if k > 0 {
		bl.Dtrsm(blas.Right, blas.Lower, blas.Trans, blas.NonUnit, m, k, 1, g.l, g.n, low, g.n)
		bl.Dsyrk(blas.Lower, blas.NoTrans, m, k, -1, low, g.n, 1, low[k:], g.n)
	}
	if !la.Dpotrf(blas.Lower, m, low[k:], g.n) {
		return false
	}
	for i, r := range rows {
		if d := g.l[(k+i)*g.n+k+i]; d*d <= leastPivot*g.a[int(r)*g.n+int(r)] {
			return false
		}
	}
	for i, r := range rows {
		g.rows = append(g.rows, r)
		g.y = append(g.y, g.rigidRow(r, g.l[(k+i)*g.n:(k+i)*g.n+k+i+1]))
	}
	return true
}

// rigidRow continues L⁻¹ R by the row whose factor row is given.
func (g *grown) rigidRow(i int32, row []float64) [6]float64 {
	k := len(row) - 1
	y := g.r[i]
	for j, l := range row[:k] {
		yj := &g.y[j]
		for m := range y {
			y[m] -= l * yj[m]
		}
	}
	for m := range y {
		y[m] /= row[k]
	}
	return y
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
	var tail []int32
	for _, r := range g.rows[first:] {
		if !out[r] {
			tail = append(tail, r)
		}
	}
	g.rows, g.y = g.rows[:first], g.y[:first]
	return g.pushMany(tail)
}

// solve returns λ over the active rows and ρ with
//
//	A λ + R ρ = rhs,  Rᵀ λ = f.
//
// errFree is returned if the active rows do not hold the body.
func (g *grown) solve(rhs []float64, f [6]float64) (lambda []float64, rho [6]float64, err error) {
	var bl gonum.Implementation
	k := len(g.rows)
	z := make([]float64, k)
	for i := range z {
		li := g.l[i*g.n : i*g.n+i+1]
		z[i] = (rhs[i] - bl.Ddot(i, li, 1, z, 1)) / li[i]
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
		bl.Daxpy(i, -z[i], li, 1, z, 1)
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
