package contact

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/blas/gonum"

	"archload/fem/sparse"
)

// mostReleased is how many rows let go are carried along before the factor is built
// anew without them.
const mostReleased = 36

// The sides of the factor, in their order: the six rigid motions, the load, then
// one for each released row.
const (
	loadSide      = 6
	firstReleased = 7
)

// activeSet is the set of rows that carry force: the factor of their compliance, in the order
// in which pads close. A row let go stays in the factor; a force of its own, one
// more unknown beside the rigid motion, takes off what it would carry.
type activeSet struct {
	p         *lcp
	order     sparse.ActiveOrder
	c         *sparse.ActiveCholesky
	rows      []int32 // active
	factored  []int32 // rows in the factor, in its order
	released  []int32 // rows in the factor that are not active
	sides     []*sparse.Side
	gram      [][]float64 // products of the sides' parts within the factor
	coef      []float64
	movements []float64
}

// newActiveSet begins with no row; order is a guess at the order in which rows will be
// taken, and so many of them are likely to be.
func newActiveSet(p *lcp, order []int32, likely int) *activeSet {
	h := &activeSet{p: p, c: p.idle.Get().(*sparse.ActiveCholesky)}
	h.arrange(order, likely)
	h.reset()
	return h
}

// free leaves the memory of the factor to the next one.
func (h *activeSet) free() { h.p.idle.Put(h.c) }

func (h *activeSet) reset() {
	h.c.Reset(h.p.a, h.order, h.p.workers)
	h.rows, h.factored, h.released = nil, nil, nil
	h.movements = make([]float64, h.c.Places())
	v := make([]float64, len(h.p.b))
	h.sides = nil
	for m := range loadSide {
		for i := range v {
			v[i] = h.p.r[i][m]
		}
		h.sides = append(h.sides, h.c.AddSide(v))
	}
	h.sides = append(h.sides, h.c.AddSide(h.p.b))
	h.sum()
}

// sum sums the products of the sides afresh.
func (h *activeSet) sum() {
	h.gram = nil
	for i := range h.sides {
		h.addGram(i)
	}
}

// addGram adds the products of side i with those before it.
func (h *activeSet) addGram(i int) {
	var bl gonum.Implementation
	n := h.c.Len()
	h.gram = append(h.gram, make([]float64, firstReleased+mostReleased))
	for j := range i + 1 {
		v := bl.Ddot(n, h.sides[i].Y, 1, h.sides[j].Y, 1)
		h.gram[i][j], h.gram[j][i] = v, v
	}
}

// add makes rows active, in their order. It fails at the first at which the
// compliance is not positive definite.
func (h *activeSet) add(rows []int32) error {
	for _, r := range rows {
		if i := slices.Index(h.released, r); i >= 0 {
			h.readmit(i)
			h.rows = append(h.rows, r)
			continue
		}
		if err := h.factorRow(r); err != nil {
			return err
		}
		h.rows = append(h.rows, r)
	}
	return nil
}

// factorRow takes a row into the factor.
func (h *activeSet) factorRow(r int32) error {
	if err := h.c.Take(r); err != nil {
		return fmt.Errorf("contact: %w", err)
	}
	k := len(h.factored)
	h.factored = append(h.factored, r)
	var y [firstReleased + mostReleased]float64
	for i, s := range h.sides {
		y[i] = s.Y[k]
		for j, v := range y[:i+1] {
			h.gram[i][j] += y[i] * v
			h.gram[j][i] = h.gram[i][j]
		}
	}
	return nil
}

// readmit makes released row i active again.
func (h *activeSet) readmit(i int) {
	s := firstReleased + i
	h.c.DropSide(h.sides[s])
	h.released = slices.Delete(h.released, i, i+1)
	h.sides = slices.Delete(h.sides, s, s+1)
	h.gram = slices.Delete(h.gram, s, s+1)
	for _, g := range h.gram {
		copy(g[s:], g[s+1:])
	}
}

// remove lets a set of rows go: those just taken leave the factor, others become
// released, too many cost a new factor.
func (h *activeSet) remove(out map[int32]bool) error {
	h.rows = slices.DeleteFunc(slices.Clone(h.rows), func(r int32) bool { return out[r] }) // the path keeps what was
	keep := h.c.Len()
	for keep > 0 && h.c.InBatch(keep-1) {
		keep--
	}
	for keep < len(h.factored) && !out[h.factored[keep]] {
		keep++
	}
	more := 0
	for _, r := range h.factored[:keep] {
		if out[r] && !slices.Contains(h.released, r) {
			more++
		}
	}
	if len(h.released)+more > mostReleased {
		return h.renew()
	}
	if err := h.cut(keep, out); err != nil {
		return err
	}
	for _, r := range h.factored[:keep] {
		if out[r] && !slices.Contains(h.released, r) {
			h.release(r)
		}
	}
	return nil
}

// renew makes the factor anew of the active rows; they come first, the others as
// before.
func (h *activeSet) renew() error {
	rows := h.rows
	in := make([]bool, len(h.p.b))
	for _, r := range rows {
		in[r] = true
	}
	order := slices.Clone(rows)
	for _, r := range h.order.Rows {
		if !in[r] {
			order = append(order, r)
		}
	}
	h.arrange(order, len(order))
	h.reset()
	return h.add(rows)
}

// arrange puts the normal rows, and those of the guides, in front: of these it must be seen how they move
// while they are not active.
func (h *activeSet) arrange(order []int32, likely int) {
	h.order = sparse.ActiveOrder{Rows: make([]int32, 0, len(order))}
	front := func(r int32) bool { return h.p.isNormal(r) || int(r) >= h.p.pads*h.p.per }
	for _, r := range order {
		if front(r) {
			h.order.Rows = append(h.order.Rows, r)
		}
	}
	h.order.Follow = len(h.order.Rows)
	for i, r := range order {
		if !front(r) {
			h.order.Rows = append(h.order.Rows, r)
		}
		if i < likely {
			h.order.Likely = len(h.order.Rows)
		}
	}
}

// cut takes the rows of the set out of the factor that come after its first rows.
func (h *activeSet) cut(keep int, out map[int32]bool) error {
	if keep == len(h.factored) {
		return nil
	}
	rest := slices.Clone(h.factored[keep:])
	h.c.Cut(keep)
	h.factored = h.factored[:keep]
	h.sum()
	for _, r := range rest {
		if !out[r] {
			if err := h.factorRow(r); err != nil {
				return err
			}
		}
	}
	return nil
}

// release carries a row of the factor along that is no longer active.
func (h *activeSet) release(r int32) {
	v := make([]float64, len(h.p.b))
	v[r] = 1
	h.released = append(h.released, r)
	h.sides = append(h.sides, h.c.AddSide(v))
	h.addGram(len(h.sides) - 1)
}

// solve finds the forces of all rows and the body's motion with
//
//	A λ + R ρ = −v on the active rows,  Rᵀ λ = f,
//
// v being the movement of every row without them; nil stands for that under a
// share dt of the load. It writes the movement of the open pads' normal rows into w.
func (h *activeSet) solve(q equations, w []float64, open []bool) (all []float64, rho [6]float64, err error) {
	s, with := h.sides[loadSide], make([]float64, len(h.sides))
	dt := q.dt
	if q.v == nil {
		for m, g := range h.gram {
			with[m] = dt * g[loadSide]
		}
	} else {
		var bl gonum.Implementation
		dt = 1
		s = h.c.Forward(q.v)
		for m, o := range h.sides {
			with[m] = bl.Ddot(len(s.Y), s.Y, 1, o.Y, 1)
		}
	}
	t, err := h.solveMotion(with, q.f)
	if err != nil {
		return nil, rho, err
	}
	h.movement(s, dt, t, w, open)
	all = make([]float64, len(h.p.b))
	x := make([]float64, len(h.rows))
	h.c.Back([][]float64{x}, h.rows, [][]float64{h.rightSide(s, dt, t)})
	for k, r := range h.rows {
		all[r] = x[k]
	}
	return all, t.rho, nil
}

// rightSide is what Back makes the forces of.
func (h *activeSet) rightSide(s *sparse.Side, dt float64, t motion) []float64 {
	var bl gonum.Implementation
	z := make([]float64, h.c.Len())
	bl.Daxpy(len(z), -dt, s.Y, 1, z, 1)
	for m, v := range t.rho {
		bl.Daxpy(len(z), -v, h.sides[m].Y, 1, z, 1)
	}
	for i, v := range t.nu {
		bl.Daxpy(len(z), -v, h.sides[firstReleased+i].Y, 1, z, 1)
	}
	return z
}

// movement writes the movement of the open pads' normal rows.
func (h *activeSet) movement(s *sparse.Side, dt float64, t motion, w []float64, open []bool) {
	sides := append(slices.Clone(h.sides[:loadSide]), s)
	h.coef = append(append(append(h.coef[:0], t.rho[:]...), dt), t.nu...)
	sides = append(sides, h.sides[firstReleased:]...)
	h.c.Rest(h.movements, sides, h.coef)
	for i := range w {
		w[i] = 0
		if open[i] {
			w[i] = h.movements[h.c.Place(h.p.normal(i))]
		}
	}
	for i, r := range h.released {
		if h.p.isNormal(r) && open[h.p.padOf(r)] {
			w[h.p.padOf(r)] = -t.nu[i]
		}
	}
}

// newActiveSet begins with no active row. Unless told otherwise, pads are expected
// to close in the order of their gaps.
func (w *tracer) newActiveSet() *activeSet {
	p := w.p
	pads, likely := make([]int32, p.pads), p.pads
	for i := range pads {
		pads[i] = int32(i)
	}
	slices.SortStableFunc(pads, func(i, j int32) int { return cmp.Compare(w.gap[i], w.gap[j]) })
	if len(p.order) == p.pads {
		pads, likely = p.order, cmp.Or(p.likely, p.pads)
	}
	var order []int32
	for i := p.pads * p.per; i < len(p.b); i++ {
		order = append(order, int32(i))
	}
	for _, i := range pads {
		for a := range p.per {
			order = append(order, i*int32(p.per)+int32(a))
		}
	}
	return newActiveSet(p, order, len(order)-(p.pads-likely)*p.per)
}

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
	x, ok := h.byReleased(with)
	if !ok {
		return t, ErrMechanism
	}
	for i := range q {
		for m := range 6 {
			v := h.gram[firstReleased+i][m]
			b[m] -= v * x[i][6]
			for c := range 6 {
				g[m][c] -= v * x[i][c]
			}
		}
	}
	if t.rho, err = rigid(&g, b); err != nil {
		return t, err
	}
	for i := range q {
		v := x[i][6]
		for m, r := range t.rho {
			v -= x[i][m] * r
		}
		t.nu = append(t.nu, v)
	}
	return t, nil
}

// byReleased solves, with the products of the released rows' sides, for those with the six rigid
// motions and for the side whose products are given.
func (h *activeSet) byReleased(with []float64) (x [][7]float64, ok bool) {
	q := len(h.released)
	l, ok := h.releasedRoot()
	if !ok {
		return nil, false
	}
	x = make([][7]float64, q)
	for i := range q {
		copy(x[i][:6], h.gram[firstReleased+i][:6])
		x[i][6] = -with[firstReleased+i]
		for k, a := range l[i*q : i*q+i] {
			subtract7(&x[i], a, &x[k])
		}
		divide7(&x[i], l[i*q+i])
	}
	for i := q - 1; i >= 0; i-- {
		divide7(&x[i], l[i*q+i])
		for k, a := range l[i*q : i*q+i] {
			subtract7(&x[k], a, &x[i])
		}
	}
	return x, true
}

// releasedRoot is the Cholesky factor of the products of the released rows' sides, row by row; ok is
// false if there is none.
func (h *activeSet) releasedRoot() (l []float64, ok bool) {
	q := len(h.released)
	l = make([]float64, q*q)
	for i := range q {
		g, row := h.gram[firstReleased+i], l[i*q:(i+1)*q]
		for j := range i + 1 {
			v, other := g[firstReleased+j], l[j*q:(j+1)*q]
			for k, a := range row[:j] {
				v -= a * other[k]
			}
			switch {
			case j < i:
				row[j] = v / other[j]
			case v > 0:
				row[i] = math.Sqrt(v)
			default:
				return nil, false
			}
		}
	}
	return l, true
}

func subtract7(x *[7]float64, a float64, y *[7]float64) {
	for m, v := range y {
		x[m] -= a * v
	}
}

func divide7(x *[7]float64, by float64) {
	for m := range x {
		x[m] /= by
	}
}
