package stage

import (
	"slices"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/live"
	"archload/cases/stability"
	"archload/cases/study"
	"archload/cases/tone"
	"archload/mesh"
	"archload/mesh/plane"
	"archload/viz/scene"
)

// Scales are what one state is drawn by. While the hand drags or the load plays
// they stay as they were; afterwards they change only if they no longer serve.
type Scales struct {
	Enlarge float64    // movements are drawn this many times as large
	Range   [2]float64 // ends of the legend, in the field's unit
	Force   float64    // end of the axis of the foot's forces, N/mm
	Gap     float64    // end of the axis of relief and gap, mm
	Arrow   float64    // mm of arrow to a newton
}

// Shown is an answered want: every picture and number of one state of the
// hand. It never changes, so that what stands on the page is always of one
// piece.
type Shown struct {
	Want    Want
	Designs []*Answered
	Scenes  []*scene.Scene // of each design, or one for a difference
	Scales
	Table  *study.Comparison
	Ranges *study.Comparison // of the linear numbers, with their ranges; nil until those are worked out
	Like   []tone.Likeness   // tones of the second design beside those of the first; nil if none are wanted

	reach  [2]float64  // of the field's values
	values [][]float64 // of the field in each design
}

// Before is a design as its file says, at the want's load: what changes are
// measured by.
type Before struct {
	Bridge *answer.BridgeReport // nil without a bridge
	Cut    *design.LineCut      // nil without a section
}

// Answered is one design under its want.
type Answered struct {
	Live      *live.Live
	Skeleton  *scene.Skeleton
	Full      *design.Solution     // at full string load
	Now       *design.Solution     // at the want's load
	Bridge    *answer.BridgeReport // now; nil without a bridge
	Before    *Before              // the design as its file says; nil if nothing is changed
	Gauges    []answer.GaugeReport // of the case, now
	Pins      []answer.GaugeReport // now; a pin off the wood has NaN
	Cut       *design.LineCut      // now; nil without a section
	FullCut   *design.LineCut      // at full load
	Flow      *answer.FlowReport   // now; nil if no lines of force are wanted
	Pathless  string               // why there are no paths of the load, if they are wanted
	Events    []live.Event
	Report    *answer.Report    // at full load; nil until it is worked out
	Sure      *design.Solution  // of the case solved afresh, at full load; nil until it is worked out
	Linear    *answer.Report    // of Sure, from which Report differs on the moved shape; nil until it is worked out
	Moved     *stability.Report // on its moved shape, whose numbers Report then has; nil until it is worked out, or linear
	GivesWay  float64           // share of the load beyond which no equilibrium was found on the moved shape; 0: one was, or was not asked for
	Sound     *Sound            // its tones; nil if they are not wanted, or not yet found
	Soundless string            // why there are none, if they are wanted
	Air       *Air              // taken to other air; nil if that is not wanted, or not yet worked out
	Airless   string            // why it is not, if it is wanted
	Spread    *study.Spread     // how that answers to its wood and its edge; nil until it is worked out
}

// cutLine is the line of a cut over a design, bass to treble or tail to neck;
// ok is false without one.
func cutLine(c *cases.Case, cut Cut, edge []mesh.Point) (from, to mesh.Point, ok bool) {
	lo, hi := plane.Bounds(edge)
	at := mesh.Point{}
	if c.Bridge != nil {
		at = c.Bridge.At
	}
	switch cut.Kind {
	case CrossArch:
		return mesh.Point{lo[0], at[1]}, mesh.Point{hi[0], at[1]}, true
	case LongArch:
		return mesh.Point{at[0], lo[1]}, mesh.Point{at[0], hi[1]}, true
	case FreeCut:
		return cut.From, cut.To, cut.From != cut.To
	}
	return from, to, false
}

// Of is answered design i; nil if there is none.
func (s *Shown) Of(i int) *Answered {
	if s == nil || i >= len(s.Designs) {
		return nil
	}
	return s.Designs[i]
}

// Settled says whether the numbers at full load are there.
func (s *Shown) Settled() bool {
	for _, d := range s.Designs {
		if d.Report == nil {
			return false
		}
	}
	return true
}

// Confirmed says whether every number at full load is that of the case solved
// afresh.
func (s *Shown) Confirmed() bool {
	for _, d := range s.Designs {
		if d.Sure == nil {
			return false
		}
	}
	return true
}

// moved says whether each design was asked for its equilibrium on the moved shape.
func (s *Shown) moved() bool {
	return !slices.ContainsFunc(s.Designs, func(d *Answered) bool { return d.Moved == nil && d.GivesWay == 0 })
}

// Ranged says whether every number at full load has its ranges by wood and edge.
func (s *Shown) Ranged() bool {
	return !slices.ContainsFunc(s.Designs, func(d *Answered) bool { return d.Spread == nil })
}

// tabulate sets the numbers at full load side by side, once they are there.
func (s *Shown) tabulate() {
	if !s.Settled() {
		return
	}
	var names []string
	var sols []*design.Solution
	var reps []*answer.Report
	for _, d := range s.Designs {
		sol := d.Full
		if s.Confirmed() {
			sol = d.Sure
		}
		names, sols, reps = append(names, d.Live.Name()), append(sols, sol), append(reps, d.Report)
	}
	s.Table = study.Compare(names, sols, reps)
	if !s.Ranged() {
		return
	}
	var linear []*answer.Report
	var spreads []*study.Spread
	for _, d := range s.Designs {
		linear, spreads = append(linear, d.Linear), append(spreads, d.Spread)
	}
	s.Ranges = study.CompareRanged(names, sols, linear, spreads)
}
