package fem

import (
	"cmp"
	"fmt"
	"slices"

	"gonum.org/v1/gonum/blas/gonum"

	"archload/fem/sparse"
)

// mostLoose is how many rows let go are carried along before the factor is built
// anew without them.
const mostLoose = 36

// The sides of the factor, in their order: the six rigid motions, the load, then
// one for each loose row.
const (
	loadSide   = 6
	firstLoose = 7
)

// held are the rows that carry force: the factor of their compliance, in the order
// in which pads close. A row let go stays in the factor; a force of its own, one
// more unknown beside the rigid motion, takes off what it would carry.
type held struct {
	p     *problem
	order []int32
	c     *sparse.Chosen
	rows  []int32 // that carry
	taken []int32 // rows in the factor, in its order
	loose []int32 // rows in the factor that do not carry
	sides []*sparse.Side
	gram  [][]float64 // products of the sides' parts within the factor
	coef  []float64
	moved []float64
}

// newHeld begins with no row; order is a guess at the order in which rows will be
// taken.
func newHeld(p *problem, order []int32) *held {
	h := &held{p: p, order: order}
	h.reset()
	return h
}

func (h *held) reset() {
	h.c = sparse.NewChosen(h.p.a, h.order, h.p.workers)
	h.rows, h.taken, h.loose = nil, nil, nil
	h.moved = make([]float64, h.c.Places())
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
func (h *held) sum() {
	h.gram = nil
	for i := range h.sides {
		h.addGram(i)
	}
}

// addGram adds the products of side i with those before it.
func (h *held) addGram(i int) {
	var bl gonum.Implementation
	n := h.c.Len()
	h.gram = append(h.gram, make([]float64, firstLoose+mostLoose))
	for j := range i + 1 {
		v := bl.Ddot(n, h.sides[i].Y, 1, h.sides[j].Y, 1)
		h.gram[i][j], h.gram[j][i] = v, v
	}
}

// push lets rows carry, in their order. It fails at the first at which the
// compliance is not positive definite.
func (h *held) push(rows []int32) error {
	for _, r := range rows {
		if i := slices.Index(h.loose, r); i >= 0 {
			h.tighten(i)
			h.rows = append(h.rows, r)
			continue
		}
		if err := h.take(r); err != nil {
			return err
		}
		h.rows = append(h.rows, r)
	}
	return nil
}

// take takes a row into the factor.
func (h *held) take(r int32) error {
	if err := h.c.Take(r); err != nil {
		return fmt.Errorf("contact: %w", err)
	}
	k := len(h.taken)
	h.taken = append(h.taken, r)
	var y [firstLoose + mostLoose]float64
	for i, s := range h.sides {
		y[i] = s.Y[k]
		for j, v := range y[:i+1] {
			h.gram[i][j] += y[i] * v
			h.gram[j][i] = h.gram[i][j]
		}
	}
	return nil
}

// tighten lets loose row i carry again.
func (h *held) tighten(i int) {
	s := firstLoose + i
	h.c.DropSide(h.sides[s])
	h.loose = slices.Delete(h.loose, i, i+1)
	h.sides = slices.Delete(h.sides, s, s+1)
	h.gram = slices.Delete(h.gram, s, s+1)
	for _, g := range h.gram {
		copy(g[s:], g[s+1:])
	}
}

// drop lets a set of rows go: those just taken leave the factor, others become
// loose, too many cost a new factor.
func (h *held) drop(out map[int32]bool) error {
	h.rows = slices.DeleteFunc(h.rows, func(r int32) bool { return out[r] })
	keep := h.c.Len()
	for keep > 0 && h.c.InBatch(keep-1) {
		keep--
	}
	for keep < len(h.taken) && !out[h.taken[keep]] {
		keep++
	}
	loose := 0
	for _, r := range h.taken[:keep] {
		if out[r] && !slices.Contains(h.loose, r) {
			loose++
		}
	}
	if len(h.loose)+loose > mostLoose {
		return h.renew()
	}
	if err := h.cut(keep, out); err != nil {
		return err
	}
	for _, r := range h.taken[:keep] {
		if out[r] && !slices.Contains(h.loose, r) {
			h.loosen(r)
		}
	}
	return nil
}

// renew makes the factor anew of the rows that carry; they come first, the others as
// before.
func (h *held) renew() error {
	rows := h.rows
	in := make([]bool, len(h.p.b))
	for _, r := range rows {
		in[r] = true
	}
	order := slices.Clone(rows)
	for _, r := range h.order {
		if !in[r] {
			order = append(order, r)
		}
	}
	h.order = order
	h.reset()
	return h.push(rows)
}

// cut takes the rows of the set out of the factor that come after its first rows.
func (h *held) cut(keep int, out map[int32]bool) error {
	if keep == len(h.taken) {
		return nil
	}
	rest := slices.Clone(h.taken[keep:])
	h.c.Cut(keep)
	h.taken = h.taken[:keep]
	h.sum()
	for _, r := range rest {
		if !out[r] {
			if err := h.take(r); err != nil {
				return err
			}
		}
	}
	return nil
}

// loosen carries a row of the factor along that does not carry.
func (h *held) loosen(r int32) {
	v := make([]float64, len(h.p.b))
	v[r] = 1
	h.loose = append(h.loose, r)
	h.sides = append(h.sides, h.c.AddSide(v))
	h.addGram(len(h.sides) - 1)
}

// answer finds the forces of all rows and the body's motion with
//
//	A λ + R ρ = −v on the rows that carry,  Rᵀ λ = f,
//
// v being the movement of every row without them; nil stands for that under a
// share dt of the load. It writes the movement of the open pads' normal rows into w.
func (h *held) answer(q question, w []float64, open []bool) (all []float64, rho [6]float64, err error) {
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
	t, err := h.turned(with, q.f)
	if err != nil {
		return nil, rho, err
	}
	h.movement(s, dt, t, w, open)
	all = make([]float64, len(h.p.b))
	x := make([]float64, h.c.Places())
	h.c.Back([][]float64{x}, [][]float64{h.before(s, dt, t)})
	for _, r := range h.rows {
		all[r] = x[h.c.Place(r)]
	}
	return all, t.rho, nil
}

// before is what Back makes the forces of.
func (h *held) before(s *sparse.Side, dt float64, t turning) []float64 {
	var bl gonum.Implementation
	z := make([]float64, h.c.Len())
	bl.Daxpy(len(z), -dt, s.Y, 1, z, 1)
	for m, v := range t.rho {
		bl.Daxpy(len(z), -v, h.sides[m].Y, 1, z, 1)
	}
	for i, v := range t.nu {
		bl.Daxpy(len(z), -v, h.sides[firstLoose+i].Y, 1, z, 1)
	}
	return z
}

// movement writes the movement of the open pads' normal rows.
func (h *held) movement(s *sparse.Side, dt float64, t turning, w []float64, open []bool) {
	sides := append(slices.Clone(h.sides[:loadSide]), s)
	h.coef = append(append(append(h.coef[:0], t.rho[:]...), dt), t.nu...)
	sides = append(sides, h.sides[firstLoose:]...)
	h.c.Rest(h.moved, sides, h.coef)
	for i := range w {
		w[i] = 0
		if open[i] {
			w[i] = h.moved[h.c.Place(h.p.normal(i))]
		}
	}
	for i, r := range h.loose {
		if h.p.isNormal(r) && open[h.p.padOf(r)] {
			w[h.p.padOf(r)] = -t.nu[i]
		}
	}
}

// newHeld begins with no row that carries. Unless told otherwise, pads are expected
// to close in the order of their gaps.
func (w *walk) newHeld() *held {
	p := w.p
	pads := make([]int32, p.pads)
	for i := range pads {
		pads[i] = int32(i)
	}
	slices.SortStableFunc(pads, func(i, j int32) int { return cmp.Compare(w.w[i], w.w[j]) })
	if len(p.order) == p.pads {
		pads = p.order
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
	return newHeld(p, order)
}
