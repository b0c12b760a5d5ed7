package contact

import (
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"
)

// pivot makes the set of closed pads agree with where the path goes next: a
// pad that carries nothing and would pull opens; a pad that touches and would
// overlap closes. Many change at once at first; after a few rounds one at a
// time, lowest number first, which ends for certain without grip (K. G.
// Murty's least-index rule; from memory).
//
// In grip a pad can be at odds with itself: free it would overlap, stuck its
// neighbours' drag would pull it off. Such a pad bears and slides: its normal
// row closes, its tangential rows stay free until it next opens.
func (w *tracer) pivot(d direction) (*rates, error) {
	var opened []int // by the last change
	for round := 0; round <= w.p.mostRounds(); round++ {
		if err := w.fadeReleased(); err != nil {
			return nil, err
		}
		r, err := w.ratesOf(d)
		if errors.Is(err, ErrMechanism) && len(opened) > 0 {
			round = max(round, blockRounds+1)
			if opened, err = w.holdBody(opened, err); err == nil {
				continue
			}
		}
		if err != nil {
			return nil, err
		}
		opens, closes := w.violations(r)
		if len(opens)+len(closes) == 0 {
			return r, nil
		}
		if round > blockRounds || w.cycles(opens) || w.cycles(closes) {
			opens, closes = leastIndex(opens, closes)
		}
		opened = opens
		if err := w.changeSet(opens, closes); err != nil {
			return nil, err
		}
	}
	return nil, fmt.Errorf("contact: the active set does not settle at %.3f of the load", w.load)
}

// cycles says whether one of the pads has let go here more than once.
func (w *tracer) cycles(pads []int) bool {
	for _, i := range pads {
		if w.releases[i] > 1 {
			return true
		}
	}
	return false
}

// blockRounds is how often many pads may change at once: mostly two are enough, and
// a set that is not found by then goes in circles.
const blockRounds = 12

// holdBody mends a change that let the body go: all but the first pad that opened
// close again, or, if it was one alone, the touching pad on which the body then
// comes down. free is returned if there is none.
func (w *tracer) holdBody(opened []int, free error) ([]int, error) {
	on := opened[1:]
	if len(on) == 0 {
		on = w.landsOn(opened[0])
	}
	if len(on) == 0 {
		return opened, free
	}
	return opened[:1], w.changeSet(nil, on)
}

// violations lists the pads at the edge of closing or opening whose next movement
// breaks the contact conditions.
func (w *tracer) violations(r *rates) (opens, closes []int) {
	tiny := w.p.relativeZero()
	for k, j := range w.active.rows {
		if r.lambda[k] < -tiny*w.force && w.lambda[j] <= tiny*w.force && w.p.isNormal(j) {
			opens = append(opens, w.p.padOf(j))
		}
	}
	for i := range w.p.pads {
		if !w.closed[i] && w.gap[i] <= tiny*w.length && r.w[i] < -tiny*w.length {
			closes = append(closes, i)
		}
	}
	return opens, closes
}

func leastIndex(opens, closes []int) ([]int, []int) {
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

func (w *tracer) changeSet(opens, closes []int) error {
	w.lastRates = nil
	if len(opens) > 0 {
		for _, i := range opens {
			w.gap[i] = 0
			w.releases[i]++
			w.slides[i] = false
			w.record(i, false)
			if w.hasDrag(i) && !w.fades[i] {
				w.pending = append(w.pending, int32(i))
			}
		}
		if err := w.openPads(opens); err != nil {
			return err
		}
	}
	w.noteClosed(closes)
	return w.closePads(closes)
}

// landsOn finds the touching pad on which the body comes down when pad j has let
// go and the rest no longer hold it: it turns about them, lifting off j.
func (w *tracer) landsOn(j int) []int {
	n := len(w.active.rows)
	scale := [6]float64{}
	for _, i := range w.active.rows {
		for m, v := range w.p.r[i] {
			scale[m] = math.Max(scale[m], math.Abs(v))
		}
	}
	a := mat.NewDense(n, 6, nil)
	for k, i := range w.active.rows {
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
		if i != j && !w.closed[i] && w.gap[i] <= w.p.relativeZero()*w.length && sign*turn(i) < least {
			best, least = i, sign*turn(i)
		}
	}
	if best < 0 {
		return nil
	}
	return []int{best}
}

// mostRounds is where pivoting counts as lost. In the random problems of the tests
// it took at most 19 rounds, less than 3 a pad, and one or none nine times in ten.
func (p *lcp) mostRounds() int { return blockRounds + 8*p.pads }
