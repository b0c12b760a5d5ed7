package fit

import (
	"fmt"
	"math"
)

// hint says what would fit instead of a reading that does not: another decimal point, an octave, two digits
// that changed places.
func (t *fitter) hint(a *rest, r *reading) string {
	places := t.places(a, r)
	if len(places) == 0 {
		return ""
	}
	best := places[0]
	value, _, _ := r.measured()
	for _, p := range places {
		if math.Abs(p.y-value) < math.Abs(best.y-value) {
			best = p
		}
	}
	for _, slip := range r.slips() {
		for _, p := range places {
			v := slip.value
			if r.logged() {
				v = math.Log(v)
			}
			if off := math.Abs(v - p.y); off < 3*p.sd && off < math.Abs(value-best.y) {
				return fmt.Sprintf("%s, %g %s, would fit the %.4g %s that the wood gives%s", slip.words, slip.value, r.unit, r.unlogged(p.y), r.unit, p.words)
			}
		}
	}
	return fmt.Sprintf("the wood gives %.4g %s%s", r.unlogged(best.y), r.unit, best.words)
}

// place is what a reading may have been of, as it is fitted.
type place struct {
	y, sd float64
	words string
}

// places are what a reading may have been of: a tone that nothing else was taken for, or its own.
func (t *fitter) places(a *rest, r *reading) (out []place) {
	m := matcher{readings: t.readings, states: a.states, at: a.at}
	_, own, _ := r.measured()
	put := func(g *guess, words string) {
		y, v := a.expects(g, a.at)
		out = append(out, place{y, math.Sqrt(v + own*own), words})
	}
	if r.kind != tone {
		if g := m.guessOf(r); g != nil {
			put(g, "")
		}
		return out
	}
	for k := range a.states[r.setup].tones {
		if f := &a.states[r.setup].tones[k]; !t.heard(a, r.setup, k) {
			put(&f.guess, fmt.Sprintf(" (%s)", f.pattern))
		}
	}
	return out
}
