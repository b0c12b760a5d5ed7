package cases

import (
	"math"
	"slices"
)

// Answer is one number that decides, with the two ranges it has: the mesh's
// and the wood's.
type Answer struct {
	Key     string // "bridge_sink"
	Name    string // "the bridge sinks"
	Unit    string
	Digits  int     // behind the point, as it is worth printing
	Value   Num     // in Unit
	Mesh    Num     // half the width of the mesh's range, in Unit; NaN if not estimated
	Least   Num     // the wood's range: in about two planks of three the number lies
	Most    Num     // between these; NaN: it never comes to it
	Ends    [2]Num  // with every stiffness 22 % lower, and 22 % higher; strength as it is
	Scatter Scatter // where the wood's range comes from
}

// Scatter says which property of wood is let scatter behind a range.
type Scatter int

// What the wood's range of an answer is made of.
const (
	OfStiffness Scatter = iota // every stiffness 22 % lower, and 22 % higher
	OfBending                  // that, and bending strength 16 % higher and lower
	OfCrushing                 // that, and crushing strength 28 % higher and lower
)

// Coefficients of variation from board to board, 1 (Wood Handbook, table 5-6;
// crushing across the grain from memory).
const (
	bendingScatter  = 0.16
	crushingScatter = 0.28
)

// ScatterOf returns the coefficient of variation from board to board: of
// stiffness, of bending strength, of crushing strength across the grain, 1.
func ScatterOf(w Scatter) float64 {
	return [...]float64{OfStiffness: scatter, OfBending: bendingScatter, OfCrushing: crushingScatter}[w]
}

// question is where an answer stands in a report.
type question struct {
	key, name, unit string
	digits          int
	moves           bool // a movement: it grows as the wood gets softer
	scatter         Scatter
	get             func(*Report) Num
}

func questions() []question {
	percent := func(get func(*BridgeReport) Num) func(*Report) Num {
		return ofBridge(func(b *BridgeReport) Num { return 100 * get(b) })
	}
	return []question{
		{"bridge_sink", "the bridge sinks", "mm", 2, true, OfStiffness, ofBridge(func(b *BridgeReport) Num { return Num(b.Sink) })},
		{"bass_end_sink", "its bass end sinks", "mm", 2, true, OfStiffness, ofBridge(func(b *BridgeReport) Num { return Num(b.EndSink[0]) })},
		{"treble_end_sink", "its treble end sinks", "mm", 2, true, OfStiffness, ofBridge(func(b *BridgeReport) Num { return Num(b.EndSink[1]) })},
		{"action_change", "the strings come lower at the octave by", "mm", 2, true, OfStiffness, ofBridge(func(b *BridgeReport) Num { return Num(b.ActionChange) })},
		{"most_sunk", "the top sinks most by", "mm", 2, true, OfStiffness, func(r *Report) Num { return Num(r.Top.MostSunk.Value) }},
		{"middle_touches_at", "the middle of the foot first touches at", "% of the load", 0, false, OfStiffness, percent(func(b *BridgeReport) Num { return b.MiddleTouchesAt })},
		{"middle_closes_at", "the middle of the foot has closed at", "% of the load", 0, false, OfStiffness, percent(func(b *BridgeReport) Num { return b.MiddleClosesAt })},
		{"middle_share", "the middle of the foot carries", "% of the load", 0, false, OfStiffness, percent(func(b *BridgeReport) Num { return Num(b.Share.Middle) })},
		{"gap_left", "the gap left under the foot is", "mm", 3, true, OfStiffness, ofBridge(func(b *BridgeReport) Num { return Num(b.GapLeft) })},
		{"strength_used", "the worst place uses", "% of the wood's strength", 0, false, OfBending, func(r *Report) Num { return 100 * r.Strength.Used }},
		{"foot_used", "the foot uses", "% of the strength against crushing", 0, false, OfCrushing, func(r *Report) Num { return 100 * r.Strength.FootUsed }},
	}
}

// Answers lists the numbers that decide, each with its two ranges.
//
// The mesh's range comes from the coarser solve: a third of the difference for
// movements and shares, which converge with the square of the triangles' size
// (see ErrorReport.Discretisation), the whole of it for strength, where a
// peak under a foot converges more slowly.
//
// The wood's range takes every stiffness of the design together 22 % lower and
// 22 % higher. A linear top on a unilateral foot depends on load over
// stiffness and on the gap alone,
//
//	u(k E, gap) = u(E, k gap) / k,   stress(k E, gap) = stress(E, k gap),
//
// so that each end costs one more fit on the same factor, and none without a
// gap. Strengths scatter as well: their range divides by 1 ± the coefficient
// of variation at the worse of the two ends.
func (s *Solution) Answers(r *Report) ([]Answer, error) {
	soft, err := s.ofStiffness(1 - scatter)
	if err != nil {
		return nil, err
	}
	stiff, err := s.ofStiffness(1 + scatter)
	if err != nil {
		return nil, err
	}
	var coarse *Report
	if s.Coarse != nil {
		coarse = Summarize(s.Coarse)
	}
	var out []Answer
	for _, q := range questions() {
		a := Answer{Key: q.key, Name: q.name, Unit: q.unit, Digits: q.digits, Value: q.get(r), Mesh: None(), Scatter: q.scatter}
		ends := []float64{float64(q.get(soft)), float64(q.get(stiff))}
		if q.moves {
			ends[0], ends[1] = ends[0]/(1-scatter), ends[1]/(1+scatter)
		}
		a.Ends = [2]Num{Num(ends[0]), Num(ends[1])}
		a.Least, a.Most = q.span(ends)
		if coarse != nil {
			a.Mesh = q.meshSpan(a.Value, q.get(coarse))
		}
		if a.Value.Known() || a.Least.Known() || a.Most.Known() {
			out = append(out, a)
		}
	}
	return out, nil
}

// span orders the two ends; NaN, which here means "never", counts as most.
func (q question) span(ends []float64) (least, most Num) {
	slices.Sort(ends)
	if math.IsNaN(ends[0]) {
		ends[0], ends[1] = ends[1], ends[0]
	}
	if q.scatter != OfStiffness {
		cv := ScatterOf(q.scatter)
		ends[0], ends[1] = ends[0]/(1+cv), ends[1]/(1-cv)
	}
	return Num(ends[0]), Num(ends[1])
}

func (q question) meshSpan(fine, coarse Num) Num {
	d := Num(math.Abs(float64(fine - coarse)))
	if q.scatter == OfStiffness {
		return d / 3
	}
	return d
}

// ofStiffness reports the case with every gap k times as deep; see Answers.
func (s *Solution) ofStiffness(k float64) (*Report, error) {
	if !s.gapped() {
		return Summarize(s), nil
	}
	b, br := *s.Built, *s.Bridge
	br.pads = slices.Clone(br.pads)
	for i := range br.pads {
		br.pads[i].Gap *= k
	}
	b.Bridge = &br
	p := *s.Prepared
	p.Built = &b
	sol, err := p.answer()
	if err != nil {
		return nil, err
	}
	return Summarize(sol), nil
}

// gapped says whether any place of the foot stands off the slack top.
func (s *Solution) gapped() bool {
	if s.Bridge == nil {
		return false
	}
	for i := range s.Bridge.pads {
		if s.Bridge.pads[i].Gap != 0 {
			return true
		}
	}
	return false
}
