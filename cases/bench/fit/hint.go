package fit

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// hint says what would fit instead of a reading that does not: another decimal point, an octave, two digits
// that changed places.
func (t *fitter) hint(a *rest, r *reading) string {
	type place struct {
		y, sd float64
		words string
	}
	var places []place
	m := matcher{readings: t.readings, states: a.states, at: a.at}
	_, own, _ := r.measured()
	put := func(g *guess, words string) {
		y, v := a.expects(g, a.at)
		places = append(places, place{y, math.Sqrt(v + own*own), words})
	}
	if r.kind == tone {
		for k := range a.states[r.setup].tones {
			if f := &a.states[r.setup].tones[k]; !t.heard(a, r.setup, k) {
				put(&f.guess, fmt.Sprintf(" (%s)", f.pattern))
			}
		}
	} else if g := m.guessOf(r); g != nil {
		put(g, "")
	}
	for _, slip := range slips(r.value) {
		for _, p := range places {
			v := slip.value
			if r.logged() {
				v = math.Log(v)
			}
			if math.Abs(v-p.y) < 3*p.sd {
				return fmt.Sprintf("%s, %g %s, would fit the %.4g %s that the wood gives%s", slip.words, slip.value, r.unit, r.unlogged(p.y), r.unit, p.words)
			}
		}
	}
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
	return fmt.Sprintf("the wood gives %.4g %s%s", r.unlogged(best.y), r.unit, best.words)
}

// slip is a way in which a number may have been misread.
type slip struct {
	value float64
	words string
}

// slips lists them, the likeliest first.
func slips(v float64) []slip {
	list := []slip{{10 * v, "ten times as much"}, {v / 10, "a tenth of it"}, {2 * v, "an octave up"}, {v / 2, "an octave down"}, {100 * v, "a hundred times as much"}, {v / 100, "a hundredth of it"}}
	for i := range list { // as it would be written
		list[i].value, _ = strconv.ParseFloat(strconv.FormatFloat(list[i].value, 'g', 10, 64), 64)
	}
	text := strconv.FormatFloat(v, 'f', -1, 64)
	for i := 0; i+1 < len(text); i++ {
		if text[i] == '.' || text[i+1] == '.' || text[i] == text[i+1] {
			continue
		}
		swapped := text[:i] + string(text[i+1]) + string(text[i]) + text[i+2:]
		if x, err := strconv.ParseFloat(swapped, 64); err == nil && !strings.HasPrefix(swapped, "0") {
			list = append(list, slip{x, "two digits changed places"})
		}
	}
	return list
}
