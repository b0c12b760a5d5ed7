package fit

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// Next is a measurement that would help.
type Next struct {
	Words    string  `json:"words"`
	Constant string  `json:"constant"` // that it narrows most
	From     float64 `json:"from"`     // 1, its standard deviation as a share, now
	To       float64 `json:"to"`       // and then
	gain     float64
}

// mostNext is how many measurements are proposed.
const mostNext = 4

// next weighs what could be measured: the weight, tones of the pieces at hand that nobody heard, and bars cut
// from an offcut, by what each would tell of the constants (the entropy that it takes away).
func (t *fitter) next(a *rest) []Next {
	var list []Next
	add := func(words string, row []float64, sd float64) {
		if n := t.gain(a, row, sd); n.gain > leastGain {
			n.Words = words
			list = append(list, n)
		}
	}
	for _, s := range t.setups {
		st := a.states[s]
		if s.count == 0 || s.bar != nil {
			continue
		}
		for k := range st.tones {
			if f := &st.tones[k]; !t.heard(a, s, k) && k < s.count-1 {
				add(fmt.Sprintf("the %s's tone near %.0f Hz (%s)", s.name, math.Exp(f.y), f.pattern), f.row, 0.005)
			}
		}
	}
	if t.f.Blank != nil && t.f.Blank.Weight == 0 {
		add("the weight of the blank", t.bare(map[int]float64{atDensity: 1}), 0.005)
	}
	for _, b := range t.offcuts() {
		add(b.words, t.bare(b.row), 0.008) // the tone, and the offcut's size
	}
	slices.SortStableFunc(list, func(x, y Next) int { return cmp.Compare(y.gain, x.gain) })
	return list[:min(len(list), mostNext)]
}

// leastGain is the entropy that a measurement must take away to be proposed: a range narrower by a twentieth.
const leastGain = 0.05

// gain is what a measurement would tell; sd is how far it may be off.
func (t *fitter) gain(a *rest, row []float64, sd float64) Next {
	g := guess{row: row}
	_, v := a.expects(&g, a.x)
	after := a.taking(&g, a.x, 0, sd, 1, 0)
	out := Next{gain: 0.5 * math.Log1p(v/(sd*sd))}
	now, then := turned(a.p, len(a.x)), turned(after.p, len(a.x))
	best := 1.0
	for i, k := range woodKeys() {
		if share := math.Sqrt(then[i][i] / now[i][i]); share < best {
			best, out.Constant, out.From, out.To = share, k, math.Sqrt(now[i][i]), math.Sqrt(then[i][i])
		}
	}
	if out.Constant == "" {
		out.gain = 0
	}
	return out
}

// heard says whether a reading is taken for a tone.
func (t *fitter) heard(a *rest, s *setup, k int) bool {
	m := matcher{readings: t.readings}
	return m.taken(a.belief, s, k)
}

// bare is a row of a few numbers.
func (t *fitter) bare(few map[int]float64) []float64 {
	row := make([]float64, len(t.unknowns))
	for i, v := range few {
		row[i] = v
	}
	return row
}

// offcut is a bar that could be cut and tapped: to first order a tone goes by one modulus and the density.
type offcut struct {
	words string
	row   map[int]float64
}

// offcuts lists them by the cut.
func (t *fitter) offcuts() []offcut {
	at := func(key string) int { return slices.Index(woodKeys(), key) }
	across, shear, through := "ER", "GLR", "GLT"
	if t.f.Cut == "flat" {
		across, shear, through = "ET", "GLT", "GLR"
	}
	return []offcut{
		{"a slender bar along the grain, tapped: its bending tone", map[int]float64{at("EL"): 0.5, atDensity: -0.5}},
		{"a slender bar across the grain, tapped: its bending tone", map[int]float64{at(across): 0.5, atDensity: -0.5}},
		{"a thin strip along the grain, tapped: its twisting tone", map[int]float64{at(shear): 0.5, atDensity: -0.5}},
		{"a bar along the grain three times as thick as wide, tapped: its twisting tone", map[int]float64{at(through): 0.45, at(shear): 0.05, atDensity: -0.5}},
		{"a strip across the grain, tapped: its twisting tone", map[int]float64{at(shear): 0.5, atDensity: -0.5}},
		{"a thick bar across the grain, pressed on a short span: rolling shear", map[int]float64{at("GRT"): 0.3, at(across): 0.7}},
	}
}
