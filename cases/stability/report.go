package stability

import (
	"math"

	"archload/cases/answer"
	"archload/cases/quantity"
)

// Report is the answer on the moved shape, as a linear solve's report has it, with the linear
// numbers beside.
type Report struct {
	*answer.Report
	Order  string  `json:"order"` // second
	Times  float64 `json:"times"` // what every force of the case was multiplied by, 1
	Second Order   `json:"second_order"`
	Linear Linear  `json:"linear"`
}

// Order says what the movement of the shape itself does.
type Order struct {
	Share   answer.Num `json:"share"`   // of the sink: what it has more than the linear one, over itself, 1
	Steps   int        `json:"steps"`   // linear contact problems that were solved
	Factors int        `json:"factors"` // factorisations beside the linear one
	Parts   int        `json:"parts"`   // parts in which the load was raised
	Seconds float64    `json:"seconds"` // beyond the linear solve
}

// Linear are the numbers on the shape as carved.
type Linear struct {
	Bridge     *LinearBridge         `json:"bridge"`
	Gauges     []LinearGauge         `json:"gauges"`
	Energy     float64               `json:"energy"`     // N·mm, total
	Quantities map[string]answer.Num `json:"quantities"` // all that are known, by the keys of a comparison, in its units
}

// LinearBridge is how the bridge stands.
type LinearBridge struct {
	Sink         float64            `json:"sink"`
	Tilt         answer.TiltReport  `json:"tilt"`
	ActionChange float64            `json:"action_change"`
	Share        answer.ShareReport `json:"share"`
}

// LinearGauge is a gauge's reading, mm.
type LinearGauge struct {
	Name         string     `json:"name"`
	Sink         float64    `json:"sink"`
	Displacement [3]float64 `json:"displacement"`
}

// Summarize puts an answer on the moved shape, at so many times the case's forces, in the maker's
// words. What the mesh costs is taken from the linear answers.
func Summarize(s *Solution, times float64) *Report {
	first, second := quantity.Summarize(s.Linear), quantity.Summarize(s.Solution)
	second.Error.Discretisation, second.Error.Mesh = first.Error.Discretisation, first.Error.Mesh
	second.Timing = first.Timing
	second.Timing.Flow = s.Spent.Flow
	second.Timing.Total += s.Seconds + s.Spent.Flow - first.Timing.Flow
	if first.Bridge != nil {
		shiftFrictions(second.Bridge, first.Bridge)
	}
	r := &Report{Report: second, Order: "second", Times: times, Linear: linear(first)}
	r.Second = Order{Share: answer.None(), Steps: s.Effort.Steps, Factors: s.Effort.Tangents, Parts: s.Effort.Parts, Seconds: s.Seconds}
	if was, is := answer.Sink(s.Linear), answer.Sink(s.Solution); is != 0 {
		r.Second.Share = answer.Num(1 - was/is)
	}
	return r
}

// shiftFrictions adds to how the bridge would stand with other frictions, which is known by linear theory, what
// the movement makes at the case's own.
func shiftFrictions(second, first *answer.BridgeReport) {
	if second.RoughReport == nil {
		return
	}
	for i := range second.Frictions {
		f := &second.Frictions[i]
		f.Sink += second.Sink - first.Sink
		f.ActionChange += second.ActionChange - first.ActionChange
		f.Tilt.ForeAft += second.Tilt.ForeAft - first.Tilt.ForeAft
		f.Tilt.Sideways += second.Tilt.Sideways - first.Tilt.Sideways
		f.Share.BassEnd += second.Share.BassEnd - first.Share.BassEnd
		f.Share.Middle += second.Share.Middle - first.Share.Middle
		f.Share.TrebleEnd += second.Share.TrebleEnd - first.Share.TrebleEnd
	}
}

func linear(r *answer.Report) Linear {
	l := Linear{Energy: r.Energy.Total, Quantities: map[string]answer.Num{}}
	if b := r.Bridge; b != nil {
		l.Bridge = &LinearBridge{Sink: b.Sink, Tilt: b.Tilt, ActionChange: b.ActionChange, Share: b.Share}
	}
	for _, g := range r.Gauges {
		l.Gauges = append(l.Gauges, LinearGauge{Name: g.Name, Sink: g.Sink, Displacement: g.Displacement})
	}
	for _, q := range quantity.All() {
		if v := q.Get(r); v.Known() {
			l.Quantities[q.Key] = v
		}
	}
	return l
}

// Moved is a quantity that the moved shape changes.
type Moved struct {
	quantity.Quantity
	Linear, Second answer.Num
}

// Changed are the quantities in which the linear answer and that on the moved shape differ by more
// than a share of the larger, as far as is worth printing; a gauge's name stands before it.
func (r *Report) Changed(share float64) []Moved {
	var out []Moved
	add := func(q quantity.Quantity, was, is answer.Num) {
		if q.Compare == quantity.NotCompared || q.Compare == quantity.UnderMesh || q.Nought(is-was) {
			return
		}
		if math.Abs(float64(is-was)) > share*math.Max(math.Abs(float64(is)), math.Abs(float64(was))) {
			out = append(out, Moved{q, was, is})
		}
	}
	for _, q := range quantity.All() {
		if was, known := r.Linear.Quantities[q.Key]; known && q.Get(r.Report).Known() {
			add(q, was, q.Get(r.Report))
		}
	}
	for i, g := range r.Gauges {
		q := quantity.OfGauge(i, g.Name)
		add(q, answer.Num(r.Linear.Gauges[i].Sink), answer.Num(g.Sink))
	}
	return out
}
