package stage

import (
	"slices"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/live"
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
	Second     bool // numbers settle to those on the moved shape
	Table      *study.Comparison
	Ranges     *study.Comparison // of the linear numbers at full load, with their ranges; nil until those are worked out
	HereRanges *study.Comparison // the same at the want's load
	Like       []tone.Likeness   // tones of the second design beside those of the first; nil if none are wanted

	reach  [2]float64  // of the field's values
	values [][]float64 // of the field in each design
}

// Before is a design as its file says, at the want's load: what changes are
// measured by.
type Before struct {
	Bridge *answer.BridgeReport // nil without a bridge
	Cut    *design.LineCut      // nil without a section
	Sink   *scene.Before        // of the outer surface

	base   *live.Live // whose it is under load and cut, while nothing is solved afresh
	load   float64
	origin *Certain // whose it is under the cut once it is
	cut    Cut
}

// Answered is one design under its want.
type Answered struct {
	Live      *live.Live
	of        string               // what its case is remembered by
	Skeleton  *scene.Skeleton      // of Now
	Full      *design.Solution     // at full string load
	Now       *design.Solution     // at the want's load: of Here, once every design has one
	Drawn     *design.Solution     // whose movements are drawn: Now, or what other air does
	Bridge    *answer.BridgeReport // now; nil without a bridge
	Before    *Before              // the design as its file says; nil if nothing is changed
	Gauges    []answer.GaugeReport // of the case, now
	Pins      []answer.GaugeReport // now; a pin off the wood has NaN
	Cut       *design.LineCut      // of Drawn; nil without a section
	FullCut   *design.LineCut      // at full load
	Flow      *answer.FlowReport   // now; nil if no lines of force are wanted
	Pathless  string               // why there are no paths of the load, if they are wanted
	Events    []live.Event
	Report    *answer.Report // at full load: of Pitch, once every design has one; nil until anything is worked out
	Pitch     *Certain       // solved afresh at full load; nil until that is worked out
	Here      *Certain       // at the want's load: then Now is its solution; nil until it is worked out, or where nothing moves
	Origin    *Certain       // the design as its file says, at the want's load; nil until it is worked out, or if nothing is changed
	Earlier   []*Certain     // numbers of the same design before the last changes, with their spreads, at full load and at another
	Sound     *Sound         // its tones; nil if they are not wanted, or not yet found
	Soundless string         // why there are none, if they are wanted
	Air       *Air           // taken to other air; nil if that is not wanted, or not yet worked out
	Airless   string         // why it is not, if it is wanted

	sure   bool            // Now is that of Here
	carved *scene.Skeleton // of Full
	quick  *answer.Report  // at full load, of Live; nil until it is worked out
	base   *live.Live      // the design as its file says; nil if nothing is changed
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

// Sure is the answer of the case solved afresh that is shown; nil as long as that of the top in
// hand is, on the shape as carved.
func (d *Answered) Sure() *Certain {
	if !d.sure {
		return nil
	}
	return d.Here
}

// AtPitch is the solution at full load that Report is of; nil as long as there is none.
func (d *Answered) AtPitch() *design.Solution {
	switch {
	case d.Report == nil:
		return nil
	case d.Pitch != nil && d.Report == d.Pitch.Report:
		return d.Pitch.Solution
	}
	return d.Full
}

// EarlierAt are the numbers at a share of the load of the same design before the last changes, with its
// spread; nil if there is none.
func (d *Answered) EarlierAt(load float64) *Certain {
	for _, c := range d.Earlier {
		if c.Load == load {
			return c
		}
	}
	return nil
}

// Of is answered design i; nil if there is none.
func (s *Shown) Of(i int) *Answered {
	if s == nil || i >= len(s.Designs) {
		return nil
	}
	return s.Designs[i]
}

// grasped is what is shown as the hand takes hold of it, where nothing else is wanted: nothing moves; nil if
// something is.
func (s *Shown) grasped(w Want) *Shown {
	if s == nil || !w.Held || !s.Want.sameView(w) {
		return nil
	}
	out := *s
	out.Want = w
	return &out
}

// looksAs says whether the scenes of what was shown before are those of this one, too: drawn of the same
// solutions by the same scales.
func (s *Shown) looksAs(last *Shown) bool {
	return last != nil && last.Want.sameView(s.Want) && last.Scales == s.Scales && last.Scenes != nil &&
		slices.EqualFunc(s.Designs, last.Designs, func(d, o *Answered) bool {
			mark, was := s.worst(d), last.worst(o)
			return d.Live == o.Live && d.Now == o.Now && d.Skeleton == o.Skeleton && d.Before == o.Before &&
				d.Sound == o.Sound && d.Air == o.Air && d.Airless == o.Airless &&
				(mark == was || mark != nil && was != nil && *mark == *was)
		})
}

// Settled says whether the numbers at full load are there.
func (s *Shown) Settled() bool {
	return !slices.ContainsFunc(s.Designs, func(d *Answered) bool { return d.Report == nil })
}

// Confirmed says whether picture and numbers are those of the case solved afresh: at the load that is
// shown and at full load.
func (s *Shown) Confirmed() bool {
	return s.pitched() && (s.Want.Load < leastShare || s.here())
}

// pitched says whether every design is solved afresh at full load.
func (s *Shown) pitched() bool {
	return !slices.ContainsFunc(s.Designs, func(d *Answered) bool { return d.Pitch == nil })
}

// here says whether every design is solved afresh at the load that is shown.
func (s *Shown) here() bool {
	return !slices.ContainsFunc(s.Designs, func(d *Answered) bool { return d.Here == nil })
}

// Ranged says whether nothing more is worked out: every number has its ranges by wood and edge.
func (s *Shown) Ranged() bool {
	return s.Confirmed() && !slices.ContainsFunc(s.Designs, func(d *Answered) bool {
		return d.Pitch.Spread == nil || d.Here != nil && d.Here.Spread == nil || d.base != nil && d.Origin == nil && s.Want.Load >= leastShare
	})
}

// tabulate sets the numbers side by side, once they are there: those at full load, and
// as Ranges and HereRanges with how sure they are.
func (s *Shown) tabulate() {
	if !s.Settled() {
		return
	}
	var names []string
	var sols []*design.Solution
	var reps []*answer.Report
	for _, d := range s.Designs {
		sol := d.Full
		if s.pitched() {
			sol = d.Pitch.Linear
		}
		names, sols, reps = append(names, d.Live.Name()), append(sols, sol), append(reps, d.Report)
	}
	s.Table = study.Compare(names, sols, reps)
	s.Ranges = ranged(names, s.Designs, func(d *Answered) *Certain { return d.Pitch })
	s.HereRanges = ranged(names, s.Designs, func(d *Answered) *Certain { return d.Here })
}

// ranged compares answers with their ranges; nil if one is missing.
func ranged(names []string, designs []*Answered, of func(*Answered) *Certain) *study.Comparison {
	var sols []*design.Solution
	var reps []*answer.Report
	var spreads []*study.Spread
	for _, d := range designs {
		c := of(d)
		if c == nil || c.Spread == nil {
			return nil
		}
		sols, reps, spreads = append(sols, c.Linear), append(reps, c.Carved), append(spreads, c.Spread)
	}
	return study.CompareRanged(names, sols, reps, spreads)
}
