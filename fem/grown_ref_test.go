package fem

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/blas/gonum"
	"gonum.org/v1/gonum/mat"
)

// leastPivot is the smallest part of its own compliance that a row must add.
const leastPivot = 1e-14

// grown is the Cholesky factor of the active rows of a compliance, grown in the
// order in which pads close, together with the forward-solved columns of the
// rigid motions and of the load. A row that comes changes none of those before
// it, so that all of this only grows.
type grown struct {
	a    []float64    // n×n, row-major, symmetric
	r    [][6]float64 // rigid motion of each row
	b    []float64    // movement of each row under the load
	n    int
	rows []int32 // active rows, in factor order
	l    *lower
	y    [7][]float64 // L⁻¹ R and L⁻¹ b, by columns
	yy   [6][6]float64
	buf  [][]float64
}

// loadColumn is the place of L⁻¹ b among the columns.
const loadColumn = 6

// groupRows is how many rows go through the factor together.
const groupRows = 24

func newGrown(a []float64, r [][6]float64, b []float64) *grown {
	n := len(r)
	g := &grown{a: a, r: r, b: b, n: n, l: newLower(n), buf: make([][]float64, groupRows)}
	for m := range g.y {
		g.y[m] = make([]float64, 0, n)
	}
	for i := range g.buf {
		g.buf[i] = make([]float64, n)
	}
	return g
}

// pushMany adds rows in their order. It fails at the first at which the
// compliance is not positive definite.
func (g *grown) pushMany(rows []int32) error {
	for len(rows) > 0 {
		m := min(groupRows, len(rows))
		if err := g.pushGroup(rows[:m]); err != nil {
			return err
		}
		rows = rows[m:]
	}
	return nil
}

// pushGroup borders the factor: the part below the old rows in one pass through
// it, the rest row by row.
func (g *grown) pushGroup(rows []int32) error {
	var bl gonum.Implementation
	k := len(g.rows)
	xs := g.buf[:len(rows)]
	for i, r := range rows {
		ai, x := g.a[int(r)*g.n:int(r+1)*g.n], xs[i]
		for j, c := range g.rows {
			x[j] = ai[c]
		}
		for j, c := range rows[:i+1] {
			x[k+j] = ai[c]
		}
	}
	g.l.Forward(xs, k)
	for i, r := range rows {
		x := xs[i]
		for j, xj := range xs[:i] {
			x[k+j] = (x[k+j] - bl.Ddot(k+j, x, 1, xj, 1)) / xj[k+j]
		}
		own := g.a[int(r)*g.n+int(r)]
		d := x[k+i] - bl.Ddot(k+i, x, 1, x, 1)
		if !(d > leastPivot*own) {
			return fmt.Errorf("contact: row %d adds no compliance (pivot %.3g of %.3g mm/N)", r, d, own)
		}
		x[k+i] = math.Sqrt(d)
		g.l.SetRow(k+i, x[:k+i+1])
		g.rows = append(g.rows, r)
		g.addColumns(r, x[:k+i+1])
	}
	return nil
}

// addColumns continues L⁻¹ R, L⁻¹ b and RᵀL⁻ᵀL⁻¹R by the row whose factor row is
// given.
func (g *grown) addColumns(i int32, row []float64) {
	var bl gonum.Implementation
	k := len(row) - 1
	for m := range g.y {
		v := g.b[i]
		if m < loadColumn {
			v = g.r[i][m]
		}
		g.y[m] = append(g.y[m], (v-bl.Ddot(k, row, 1, g.y[m], 1))/row[k])
	}
	for m := range 6 {
		for c := m; c < 6; c++ {
			g.yy[m][c] += g.y[m][k] * g.y[c][k]
		}
	}
}

// drop takes a set of rows out: few by turning what came after them, many by
// refactoring it.
func (g *grown) drop(out map[int32]bool) error {
	var at []int
	for k, r := range g.rows {
		if out[r] {
			at = append(at, k)
		}
	}
	if len(at) == 0 {
		return nil
	}
	tail := len(g.rows) - at[0]
	if turnCost*len(at)*tail < len(g.rows)*len(g.rows) {
		for _, k := range slices.Backward(at) {
			g.turnOut(k)
		}
		g.sumColumns()
		return nil
	}
	var again []int32
	for _, r := range g.rows[at[0]:] {
		if !out[r] {
			again = append(again, r)
		}
	}
	g.cut(at[0])
	g.sumColumns()
	return g.pushMany(again)
}

// turnCost is what it takes to turn one row out, over refactoring, for each row
// after it over the square of all rows (measured).
const turnCost = 16

// turnOut takes row k out of the factor. The rows after it move up by one and
// stick out beyond the diagonal by one column; plane rotations of neighbouring
// columns, which leave L Lᵀ as it is, take that in (G. H. Golub, C. F. Van Loan,
// Matrix Computations, section on updating Cholesky factors, from memory).
func (g *grown) turnOut(k int) {
	n := len(g.rows)
	cs, sn := make([]float64, n), make([]float64, n)
	for i := k + 1; i < n; i += turnedTogether {
		rows := g.buf[:min(turnedTogether, n-i)]
		for b, row := range rows {
			g.l.RowTo(row[:i+b+1], i+b)
		}
		if len(rows) == turnedTogether {
			rotateFour([turnedTogether][]float64(rows), cs, sn, k, i-1)
		} else {
			for _, row := range rows {
				rotate(row, cs, sn, k, i-1)
			}
		}
		for b, row := range rows {
			c := i + b - 1 // its new diagonal
			rotate(row, cs, sn, i-1, c)
			r := math.Hypot(row[c], row[c+1])
			cs[c], sn[c] = row[c]/r, row[c+1]/r
			row[c] = r
			g.l.SetRow(c, row[:c+1])
		}
	}
	for m := range g.y {
		rotate(g.y[m], cs, sn, k, n-1)
	}
	copy(g.rows[k:], g.rows[k+1:])
	g.cut(n - 1)
}

// turnedTogether is how many rows go through the rotations side by side: each
// step waits for the one before it, but not for those of the other rows.
const turnedTogether = 4

// rotateFour is rotate for four rows.
func rotateFour(x [turnedTogether][]float64, cs, sn []float64, from, end int) {
	if from >= end {
		return
	}
	p, q, r, s := x[0][:end+1], x[1][:end+1], x[2][:end+1], x[3][:end+1]
	a0, a1, a2, a3 := p[from], q[from], r[from], s[from]
	for c := from; c < end; c++ {
		u, v := cs[c], sn[c]
		b0, b1, b2, b3 := p[c+1], q[c+1], r[c+1], s[c+1]
		p[c], q[c], r[c], s[c] = u*a0+v*b0, u*a1+v*b1, u*a2+v*b2, u*a3+v*b3
		a0, a1, a2, a3 = u*b0-v*a0, u*b1-v*a1, u*b2-v*a2, u*b3-v*a3
	}
	p[end], q[end], r[end], s[end] = a0, a1, a2, a3
}

// rotate applies the rotations of columns c and c+1 for c from..end-1.
func rotate(x, cs, sn []float64, from, end int) {
	if from >= end {
		return
	}
	a := x[from]
	for c := from; c < end; c++ {
		b := x[c+1]
		x[c], a = cs[c]*a+sn[c]*b, cs[c]*b-sn[c]*a
	}
	x[end] = a
}

// cut keeps the first rows.
func (g *grown) cut(rows int) {
	g.rows = g.rows[:rows]
	for m := range g.y {
		g.y[m] = g.y[m][:rows]
	}
}

// sumColumns sums RᵀL⁻ᵀL⁻¹R afresh.
func (g *grown) sumColumns() {
	var bl gonum.Implementation
	for m := range 6 {
		for c := m; c < 6; c++ {
			g.yy[m][c] = bl.Ddot(len(g.rows), g.y[m], 1, g.y[c], 1)
		}
	}
}

// solve returns λ over the active rows and ρ with
//
//	A λ + R ρ = rhs,  Rᵀ λ = f.
//
// errFree is returned if the active rows do not hold the body.
func (g *grown) solve(rhs []float64, f [6]float64) (lambda []float64, rho [6]float64, err error) {
	z := append([]float64(nil), rhs...)
	g.l.Forward([][]float64{z}, len(z))
	return g.finish(z, f)
}

// along is solve for the load alone: rhs = -b dt.
func (g *grown) along(dt float64, f [6]float64) (lambda []float64, rho [6]float64, err error) {
	z := make([]float64, len(g.rows))
	for i, v := range g.y[loadColumn] {
		z[i] = -v * dt
	}
	return g.finish(z, f)
}

// finish goes on from z = L⁻¹ rhs.
func (g *grown) finish(z []float64, f [6]float64) (lambda []float64, rho [6]float64, err error) {
	var bl gonum.Implementation
	if rho, err = g.rigid(z, f); err != nil {
		return nil, rho, err
	}
	for m := range 6 {
		bl.Daxpy(len(z), -rho[m], g.y[m], 1, z, 1)
	}
	g.l.Backward(z, len(z))
	return z, rho, nil
}

// rigid solves (YᵀY) ρ = Yᵀ z − f.
func (g *grown) rigid(z []float64, f [6]float64) (rho [6]float64, err error) {
	var bl gonum.Implementation
	s := mat.NewSymDense(6, nil)
	var b [6]float64
	// Scaled to a unit diagonal: translations and rotations differ by mm².
	var d [6]float64
	for m := range 6 {
		d[m] = 1 / math.Sqrt(math.Max(g.yy[m][m], math.SmallestNonzeroFloat64))
	}
	for m := range 6 {
		b[m] = (bl.Ddot(len(z), g.y[m], 1, z, 1) - f[m]) * d[m]
		for c := m; c < 6; c++ {
			s.SetSym(m, c, g.yy[m][c]*d[m]*d[c])
		}
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

// ofGrown makes a walk use the factor that grows, as the reference.
func ofGrown(p *problem) carrying {
	rows := make([]int32, p.pads)
	for i := range rows {
		rows[i] = p.normal(i)
	}
	return &grownRows{newGrown(p.a, p.r, p.b), p, &someRows{p.a, len(p.b), rows}}
}

// grownRows is grown as a walk uses it.
type grownRows struct {
	*grown
	p       *problem
	normals *someRows // of the compliance, one for each pad
}

func (g *grownRows) held() []int32 { return g.rows }

func (g *grownRows) push(rows []int32) error { return g.pushMany(rows) }

func (g *grownRows) answer(q question, w []float64, open []bool) (all []float64, rho [6]float64, err error) {
	v := q.v
	if v == nil {
		for _, b := range g.b {
			v = append(v, b*q.dt)
		}
	}
	rhs := make([]float64, len(g.rows))
	for k, i := range g.rows {
		rhs[k] = -v[i]
	}
	lambda, rho, err := g.solve(rhs, q.f)
	if err != nil {
		return nil, rho, err
	}
	all = make([]float64, g.n)
	for k, j := range g.rows {
		all[j] = lambda[k]
	}
	g.normals.MulTo(w, all, open)
	for i := range w {
		if !open[i] {
			w[i] = 0
			continue
		}
		j := g.p.normal(i)
		w[i] += v[j]
		for m := range 6 {
			w[i] += g.r[j][m] * rho[m]
		}
	}
	return all, rho, nil
}
