package cases

import (
	"fmt"
	"math"
)

// Answer is one number that decides, with the two ranges it has: the mesh's
// and the wood's.
type Answer struct {
	Key    string // "bridge_sink"
	Name   string // "the bridge sinks"
	Unit   string
	Digits int // behind the point, as it is worth printing
	Value  Num // in Unit
	Mesh   Num // half the width of the mesh's range, in Unit; NaN if not estimated
	Wood   Num // half the width of the wood's range, one standard deviation, in Unit; NaN if it cannot be had
	Least  Num // Value less Wood, for what cannot be negative at least 0
	Most   Num // Value and Wood
}

// question is where an answer stands in a report.
type question struct {
	key, name, unit string
	digits          int
	signed          bool // it may be negative
	measure
}

func questions() []question {
	percent := func(get func(*BridgeReport) Num) measure {
		return measure{get: ofBridge(func(b *BridgeReport) Num { return 100 * get(b) })}
	}
	bridge := func(get func(*BridgeReport) Num) measure { return measure{get: ofBridge(get)} }
	return []question{
		{"bridge_sink", "the bridge sinks", "mm", 2, true, bridge(func(b *BridgeReport) Num { return Num(b.Sink) })},
		{"bass_end_sink", "its bass end sinks", "mm", 2, true, bridge(func(b *BridgeReport) Num { return Num(b.EndSink[0]) })},
		{"treble_end_sink", "its treble end sinks", "mm", 2, true, bridge(func(b *BridgeReport) Num { return Num(b.EndSink[1]) })},
		{"action_change", "the strings come lower at the octave by", "mm", 2, true, bridge(func(b *BridgeReport) Num { return Num(b.ActionChange) })},
		{"most_sunk", "the top sinks most by", "mm", 2, true, measure{get: func(r *Report) Num { return Num(r.Top.MostSunk.Value) }}},
		{"middle_touches_at", "the middle of the foot first touches at", "% of full load", 0, false, percent(func(b *BridgeReport) Num { return b.MiddleTouchesAt })},
		{"middle_closes_at", "the middle of the foot has closed at", "% of full load", 0, false, percent(func(b *BridgeReport) Num { return b.MiddleClosesAt })},
		{"middle_share", "the middle of the foot carries", "% of the force under it", 0, false, percent(func(b *BridgeReport) Num { return Num(b.Share.Middle) })},
		{"gap_left", "the gap left under the foot is", "mm", 3, false, bridge(func(b *BridgeReport) Num { return Num(b.GapLeft) })},
		{"strength_used", "the worst place uses", "% of the wood's strength", 0, false, measure{func(r *Report) Num { return 100 * r.Strength.Used }, true}},
		{"foot_used", "the foot uses", "% of the strength against crushing", 0, false, measure{func(r *Report) Num { return 100 * r.Strength.FootUsed }, true}},
	}
}

// Answers lists the numbers that decide, each with its two ranges, which come
// from a spread as those of a comparison do; without one they are not known.
func (r *Report) Answers(sp *Spread) []Answer {
	var out []Answer
	for _, q := range questions() {
		if a := q.answer(r, sp); a.Value.Known() {
			out = append(out, a)
		}
	}
	return out
}

// GaugeAnswer is how far gauge i of the case sinks, with its two ranges.
func (r *Report) GaugeAnswer(i int, sp *Spread) Answer {
	q := question{"gauge_sink", r.Gauges[i].Name + " sinks", "mm", 2, true, measure{get: func(r *Report) Num { return Num(r.Gauges[i].Sink) }}}
	return q.answer(r, sp)
}

// answer is the question's with its ranges.
func (q question) answer(r *Report, sp *Spread) Answer {
	a := Answer{Key: q.key, Name: q.name, Unit: q.unit, Digits: q.digits, Value: q.get(r), Mesh: None(), Wood: None()}
	if sp != nil {
		a.Mesh, a.Wood = sp.mesh(r, q.measure), sp.wood(q.measure)
	}
	a.Least, a.Most = a.Value-a.Wood, a.Value+a.Wood
	if !q.signed && a.Least.Known() {
		a.Least = Num(math.Max(0, float64(a.Least)))
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
