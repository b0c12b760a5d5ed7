package fit

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"archload/materials"
)

// otherwise widens what is held of the unknowns by the other ways to take the readings that are told (doubts), each by how likely
// it is beside the best: what is told is the best one's mean, about which they scatter.
func (a *rest) otherwise() {
	n := len(a.x)
	total := 1.0
	var shares []float64
	for _, b := range a.others {
		w := 0.0
		if !slices.Equal(b.took, a.took) && b.cost < a.cost+nearlyAsLikely {
			w = math.Exp((a.cost - b.cost) / 2)
		}
		shares = append(shares, w)
		total += w
	}
	list := slices.Clone(a.others)
	for _, r := range a.rivals {
		if r.cost > a.cost+2*nearlyAsLikely {
			continue
		}
		w := math.Exp((a.cost - r.cost) / 2)
		list, shares = append(list, r.belief), append(shares, w)
		total += w
	}
	for k, b := range list {
		for i := range n {
			for j := range n {
				a.p[n*i+j] += shares[k] / total * (b.x[i] - a.x[i]) * (b.x[j] - a.x[j])
			}
		}
	}
}

// nearlyAsLikely is how much more another way of taking the readings may cost to be told: e² times less likely.
const nearlyAsLikely = 4

// doubts tells of other ways to take the readings that are nearly as likely.
func (t *fitter) doubts(r *Report, a *rest) {
	for _, o := range a.rivals {
		if o.cost > a.cost+2*nearlyAsLikely {
			continue
		}
		r.Doubt = append(r.Doubt, fmt.Sprintf("these tones are nearly as likely those of%s MPa instead: say of one which way it swings (pattern)", t.moduliOf(o)))
	}
	for _, b := range a.others {
		if b.cost > a.cost+nearlyAsLikely || slices.Equal(b.took, a.took) || len(r.Doubt) == 3 {
			continue
		}
		i := 0
		for b.took[i] == a.took[i] {
			i++ // they differ somewhere
		}
		if words := fmt.Sprintf("nearly as likely: %s %s", t.readings[i].words, t.asOther(a, b, i)); !slices.Contains(r.Doubt, words) {
			r.Doubt = append(r.Doubt, words)
		}
	}
}

// moduliOf names the moduli of a way to take the readings that lie in the piece's plane.
func (t *fitter) moduliOf(o *rest) string {
	w := wood(&t.f.Card, o.x)
	of := map[string]float64{"EL": w.EL, "ER": w.ER, "GLR": w.GLR}
	if t.f.Cut == "flat" {
		of = map[string]float64{"EL": w.EL, "ET": w.ET, "GLT": w.GLT}
	}
	words := ""
	for _, k := range woodKeys() {
		if v, ok := of[k]; ok {
			words += fmt.Sprintf(" %s %.4g,", k, v)
		}
	}
	return strings.TrimSuffix(words, ",")
}

// asOther says what another way takes reading i for.
func (t *fitter) asOther(a *rest, b *belief, i int) string {
	if b.took[i] == leftOut {
		return "is a slip"
	}
	if t.readings[i].kind != tone {
		return "is right"
	}
	f := &a.states[t.readings[i].setup].tones[b.took[i]]
	return fmt.Sprintf("is the tone near %.4g Hz (%s)", math.Exp(f.y), f.pattern)
}

// cautions tells what is missing and what is worth a second look.
func (t *fitter) cautions(r *Report, a *rest) {
	for _, n := range t.f.Rep.Notes {
		r.Cautions = append(r.Cautions, n.Error())
	}
	weighed := false
	for i := range t.readings {
		weighed = weighed || t.readings[i].kind == weight && a.took[i] != leftOut
	}
	if !weighed {
		r.Cautions = append(r.Cautions, "nothing was weighed: tones give stiffness over density alone, and the density is the card's")
	}
	if !a.settled {
		r.Cautions = append(r.Cautions, fmt.Sprintf("the fit did not come to rest in %d steps: look at the readings that are far off", a.rounds))
	}
	if n := len(r.LeftOut); 2*n > len(t.readings) {
		r.Cautions = append(r.Cautions, fmt.Sprintf("%d of %d readings fit nothing: look at sizes, units and the card first", n, len(t.readings)))
	}
	for i, u := range t.unknowns {
		if z := math.Abs(a.x[i]) / u.sd; z > farOff {
			ask := ""
			if u.key == "EL" || u.key == "ER" {
				ask = ", does its length run along the grain"
			}
			r.Cautions = append(r.Cautions, fmt.Sprintf("%s lies %.1f standard deviations from what was expected: is %s the right card, are sizes and units right%s?", u.words, z, t.f.Like, ask))
		}
	}
	if m := t.f.MoistureNow; m > 0 {
		r.Cautions = append(r.Cautions, fmt.Sprintf("the constants are those at %.1f %% moisture, which %.0f %% humidity gives; the cards are for %d %%, and are taken to it here", m, *t.f.Humidity, materials.CardMoisture))
	} else {
		r.Cautions = append(r.Cautions, "the constants are those of the wood as dry as it was when measured; write humidity, and the card is taken to that")
	}
}

// farOff is how far from the card a constant may lie without a word, in standard deviations.
const farOff = 3.0
