package fit

import (
	"math"
	"strconv"
)

// slip is a way in which a number may have been misread.
type slip struct {
	value float64
	words string
}

// slips lists them, the likeliest first.
func (r *reading) slips() []slip {
	v := r.value
	list := []slip{{10 * v, "ten times as much"}, {v / 10, "a tenth of it"}}
	if r.unit == "Hz" {
		list = append(list, slip{2 * v, "an octave up"}, slip{v / 2, "an octave down"})
	}
	list = append(list, []slip{{100 * v, "a hundred times as much"}, {v / 100, "a hundredth of it"},
		{1000 * v, "a thousand times as much"}, {v / 1000, "a thousandth of it"}}...)
	for i := range list { // as it would be written
		list[i].value, _ = strconv.ParseFloat(strconv.FormatFloat(list[i].value, 'g', 10, 64), 64)
	}
	text := strconv.FormatFloat(v, 'f', -1, 64)
	for i := 0; i+1 < len(text); i++ {
		if text[i] == '.' || text[i+1] == '.' || text[i] == text[i+1] {
			continue
		}
		swapped := text[:i] + string(text[i+1]) + string(text[i]) + text[i+2:]
		if x, err := strconv.ParseFloat(swapped, 64); err == nil && x > 0 {
			list = append(list, slip{x, "two digits changed places"})
		}
	}
	return list
}

// elsewhere is the share of slips that are of none of the kinds of slips: half of those of ears and needles, and hardly any of a
// scale's, which shows its digits.
func (k kind) elsewhere() float64 {
	if k == weight {
		return 0.001
	}
	return 0.5
}

// slipped is by how much the readings that a way leaves out speak for or against it: a slip is of one of the kinds of slips, each
// as likely as the others and of any number that was not read otherwise, or lies anywhere, as slipCost has it.
func (m *matcher) slipped(b *belief) float64 {
	cost := 0.0
	for i, k := range b.took {
		r := &m.readings[i]
		if k != leftOut || r.value <= 0 {
			continue
		}
		_, own, unit := r.measured()
		places := m.places(b, r)
		kinds := r.slips()
		sum := 0.0
		for _, g := range places {
			y, variance := b.expects(g, m.at)
			variance += own*own + m.slack*m.slack
			for _, s := range kinds {
				off := s.value - y
				if r.logged() {
					off = math.Log(s.value) - y
				}
				sum += unit * math.Exp(-off*off/(2*variance)) / math.Sqrt(2*math.Pi*variance)
			}
		}
		anywhere := 0.5 // within a factor of e either way
		other := r.kind.elsewhere()
		cost -= 2 * math.Log(other+(1-other)*sum/float64(max(1, len(kinds)*len(places)))/anywhere)
	}
	return cost
}

// places are the numbers of the model that a reading which was left out may have been meant for.
func (m *matcher) places(b *belief, r *reading) []*guess {
	if r.kind != tone {
		if g := m.guessOf(r); g != nil {
			return []*guess{g}
		}
		return nil
	}
	var list []*guess
	st := m.states[r.setup]
	for k := range st.tones {
		if !m.taken(b, r.setup, k) {
			list = append(list, &st.tones[k].guess)
		}
	}
	return list
}
