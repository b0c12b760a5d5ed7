package study

import (
	"fmt"
	"math"

	"archload/cases/answer"
	"archload/cases/quantity"
)

// Answer is one quantity of one answer with the two ranges it has: the mesh's
// and the wood's.
type Answer struct {
	quantity.Quantity
	Value answer.Num // in Unit
	Mesh  answer.Num // half the width of the mesh's range, in Unit; NaN if not estimated
	Wood  answer.Num // half the width of the wood's range, one standard deviation, in Unit; NaN if it cannot be had
	Least answer.Num // Value less Wood, for what cannot be negative at least 0
	Most  answer.Num // Value and Wood
}

// Answers lists the quantities of a printed report that an answer has, each
// with its two ranges, which come from a spread as those of a comparison do;
// without one they are not known.
func Answers(r *answer.Report, sp *Spread) []Answer {
	var out []Answer
	for _, q := range quantity.Reported() {
		if a := answerOf(q, r, sp); a.Value.Known() {
			out = append(out, a)
		}
	}
	return out
}

// GaugeAnswer is how far gauge i of the case sinks, with its two ranges.
func GaugeAnswer(r *answer.Report, i int, sp *Spread) Answer {
	return answerOf(quantity.OfGauge(i, r.Gauges[i].Name), r, sp)
}

// answerOf is a quantity of an answer with its ranges.
func answerOf(q quantity.Quantity, r *answer.Report, sp *Spread) Answer {
	a := Answer{Quantity: q, Value: q.Get(r), Mesh: answer.None(), Wood: answer.None()}
	if sp != nil {
		a.Mesh, a.Wood = sp.mesh(q), sp.wood(q)
	}
	a.Least, a.Most = a.Value-a.Wood, a.Value+a.Wood
	if q.Plus == "" && a.Least.Known() {
		a.Least = answer.Num(math.Max(0, float64(a.Least)))
	}
	return a
}

// SemitonesBelow is how far below pitch strings have to be slackened, all alike,
// to pull with a fraction of their full load: 12 log2(1/sqrt(p)), because
// tension goes with the square of pitch (T = m (2 L f)^2).
func SemitonesBelow(p float64) float64 { return -6 * math.Log2(p) }

// LeastGap is the gap below which a feeler finds none, mm: half a hundredth, thinner
// than the thinnest blade (common practice, from memory).
const LeastGap = 0.005

// GapWords writes a gap in mm, or that there is none.
func GapWords(gap float64) string {
	if gap < LeastGap {
		return "no gap that a feeler can find"
	}
	return fmt.Sprintf("%.2f mm of gap", gap)
}

// GaugeApart is how much farther gauge i of the case sinks in the second of two designs than in the first, with its ranges, both cut
// from the same planks; without a first one, how far it sinks.
func GaugeApart(i int, first, second *answer.Report, a, b *Spread) Answer {
	if first == nil {
		return GaugeAnswer(second, i, b)
	}
	q := quantity.OfGauge(i, second.Gauges[i].Name)
	d := Answer{Quantity: q, Value: q.Get(second) - q.Get(first), Wood: a.apart(b, q), Mesh: answer.None()}
	if a.companion && b.companion {
		d.Mesh = answer.MeshRange(d.Value, q.Get(b.base)-q.Get(a.base), q.Peak)
	}
	d.Least, d.Most = d.Value-d.Wood, d.Value+d.Wood
	return d
}
