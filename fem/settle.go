package fem

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// settle makes the set of closed pads agree with where the path goes next: a
// pad that carries nothing and would pull opens; a pad that touches and would
// overlap closes. Many change at once at first; after a few rounds one at a
// time, lowest number first, which ends for certain without grip (K. G.
// Murty's least-index rule; from memory).
//
// In grip a pad can be at odds with itself: free it would overlap, stuck its
// neighbours' drag would pull it off. Such a pad bears and slides: its normal
// row closes, its tangential rows stay free until it next opens.
func (w *walk) settle(d direction) (*rates, error) {
	var opened []int // by the last change
	for round := 0; round <= manyRounds+8*w.p.pads; round++ {
		if err := w.letGo(); err != nil {
			return nil, err
		}
		r, err := w.ratesOf(d)
		if errors.Is(err, errFree) && len(opened) > 0 {
			round = max(round, manyRounds+1)
			if opened, err = w.catch(opened, err); err == nil {
				continue
			}
		}
		if err != nil {
			return nil, err
		}
		opens, closes := w.wrong(r)
		if len(opens)+len(closes) == 0 {
			return r, nil
		}
		if round > manyRounds || w.restless(opens) || w.restless(closes) {
			opens, closes = firstOnly(opens, closes)
		}
		opened = opens
		if err := w.change(opens, closes); err != nil {
			return nil, err
		}
	}
	return nil, fmt.Errorf("contact: the set of closed points does not settle at %.3f of the load", w.t)
}

// ratesOf are the rates, those at hand if no pad has come or gone since.
func (w *walk) ratesOf(d direction) (*rates, error) {
	if w.last != nil && w.lastID == d.id && w.lastDt == d.dt {
		return w.last, nil
	}
	r, err := w.rates(d)
	w.last, w.lastID, w.lastDt = r, d.id, d.dt
	return r, err
}

// restless says whether one of the pads has let go here more than once.
func (w *walk) restless(pads []int) bool {
	for _, i := range pads {
		if w.let[i] > 1 {
			return true
		}
	}
	return false
}

// manyRounds is how often many pads may change at once.
const manyRounds = 12

// catch mends a change that let the body go: all but the first pad that opened
// close again, or, if it was one alone, the touching pad on which the body then
// comes down. free is returned if there is none.
func (w *walk) catch(opened []int, free error) ([]int, error) {
	on := opened[1:]
	if len(on) == 0 {
		on = w.lands(opened[0])
	}
	if len(on) == 0 {
		return opened, free
	}
	return opened[:1], w.change(nil, on)
}

// wrong lists the pads at the edge of closing or opening whose next movement
// breaks the contact conditions.
func (w *walk) wrong(r *rates) (opens, closes []int) {
	tiny := w.p.nothing()
	for k, j := range w.g.rows {
		if !w.p.isNormal(j) || w.lambda[j] > tiny*w.force {
			continue
		}
		if r.lambda[k] < -tiny*w.force {
			opens = append(opens, w.p.padOf(j))
		}
	}
	for i := range w.p.pads {
		if !w.closed[i] && w.w[i] <= tiny*w.length && r.w[i] < -tiny*w.length {
			closes = append(closes, i)
		}
	}
	return opens, closes
}

func firstOnly(opens, closes []int) ([]int, []int) {
	lo, lc := -1, -1
	for _, i := range opens {
		if lo < 0 || i < lo {
			lo = i
		}
	}
	for _, i := range closes {
		if lc < 0 || i < lc {
			lc = i
		}
	}
	if lo >= 0 && (lc < 0 || lo < lc) {
		return []int{lo}, nil
	}
	return nil, []int{lc}
}

func (w *walk) change(opens, closes []int) error {
	w.last = nil
	if len(opens) > 0 {
		for _, i := range opens {
			w.w[i] = 0
			w.let[i]++
			w.slides[i] = false
			w.record(i, false)
			if w.hasLeft(i) && !w.fading[i] {
				w.pending = append(w.pending, int32(i))
			}
		}
		if err := w.open(opens); err != nil {
			return err
		}
	}
	w.landed(closes)
	return w.close(closes)
}

// landed notes that pads close.
func (w *walk) landed(pads []int) {
	for _, i := range pads {
		w.lambda[w.p.normal(i)] = 0
		w.w[i] = 0
		w.slides[i] = w.let[i] >= 2
		w.fading[i] = w.fading[i] && w.slides[i] // one that sticks keeps what it has
		w.stick(i)
		w.record(i, true)
		w.closed[i] = true
	}
}

// record notes an event, or strikes out its opposite at the same load.
func (w *walk) record(i int, closes bool) {
	st := w.state
	for k := len(st.Events) - 1; k >= 0 && st.Events[k].Load == w.t; k-- {
		if st.Events[k].Pad == int32(i) && st.Events[k].Closes != closes {
			st.Events = slices.Delete(st.Events, k, k+1)
			return
		}
	}
	st.Events = append(st.Events, Event{Load: w.t, Pad: int32(i), Closes: closes})
}

// stick notes the tangential place of a pad that closes.
func (w *walk) stick(i int) {
	for a := 1; a < w.p.per; a++ {
		j := int32(i*w.p.per + a)
		w.offset[j] = w.p.movement(j, w.t, w.lambda, w.rho)
	}
}

func (w *walk) hasLeft(i int) bool {
	for a := 1; a < w.p.per; a++ {
		if w.lambda[i*w.p.per+a] != 0 {
			return true
		}
	}
	return false
}

// letGo fades out the tangential forces that opened pads still carry, at
// constant load, following what else opens or closes on the way. The energy
// that goes is counted in Lost.
func (w *walk) letGo() error {
	for len(w.pending) > 0 {
		if w.stages++; w.stages > 20*w.p.pads {
			return fmt.Errorf("contact: points let go without end at %.3f of the load", w.t)
		}
		d := w.fadeOut()
		if len(d.fade) == 0 {
			return nil
		}
		if err := w.advance(d); err != nil {
			return err
		}
		for _, j := range d.fade {
			if w.fades(d, j) {
				w.fading[w.p.padOf(j)] = false
				w.lambda[j] = 0
			}
		}
	}
	return nil
}

// fadeOut makes a stage of the drags on the pads that are pending.
func (w *walk) fadeOut() direction {
	d := direction{id: w.stages}
	for _, i := range w.pending {
		for a := 1; a < w.p.per; a++ {
			j := i*int32(w.p.per) + int32(a)
			if w.stuck(j) || w.lambda[j] == 0 {
				continue
			}
			w.fading[i] = true
			w.stage[j] = d.id
			d.fade = append(d.fade, j)
			d.rate = append(d.rate, -w.lambda[j])
		}
	}
	w.pending = nil
	return d
}

// fades says whether a row still fades in the stage d: not if its pad closed
// again and sticks, nor if it then let go anew, which is a stage of its own.
func (w *walk) fades(d direction, row int32) bool {
	return !w.stuck(row) && w.stage[row] == d.id
}

// stuck says whether a tangential row's pad is closed and does not slide.
func (w *walk) stuck(row int32) bool {
	i := w.p.padOf(row)
	return w.closed[i] && !w.slides[i]
}

// lands finds the touching pad on which the body comes down when pad j has let
// go and the rest no longer hold it: it turns about them, lifting off j.
func (w *walk) lands(j int) []int {
	n := len(w.g.rows)
	scale := [6]float64{}
	for _, i := range w.g.rows {
		for m, v := range w.p.r[i] {
			scale[m] = math.Max(scale[m], math.Abs(v))
		}
	}
	a := mat.NewDense(n, 6, nil)
	for k, i := range w.g.rows {
		for m, v := range w.p.r[i] {
			a.Set(k, m, v/math.Max(scale[m], 1e-300))
		}
	}
	var svd mat.SVD
	if !svd.Factorize(a, mat.SVDFullV) {
		return nil
	}
	var v mat.Dense
	svd.VTo(&v)
	turn := func(i int) float64 {
		sum := 0.0
		for m, c := range w.p.r[w.p.normal(i)] {
			sum += c / math.Max(scale[m], 1e-300) * v.At(m, 5)
		}
		return sum
	}
	sign := 1.0
	if turn(j) < 0 {
		sign = -1
	}
	best, least := -1, -1e-9
	for i := range w.p.pads {
		if i != j && !w.closed[i] && w.w[i] <= w.p.nothing()*w.length && sign*turn(i) < least {
			best, least = i, sign*turn(i)
		}
	}
	if best < 0 {
		return nil
	}
	return []int{best}
}

// nothing is the relative size of a force or gap that counts as none.
func (p *problem) nothing() float64 { return cmp.Or(p.tiny, 1e-11) }
