package desk

import (
	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/live"
	"archload/cases/study"
	"archload/mesh"
	"archload/mesh/plane"
	"archload/viz/scene"
)

// Shown is an answered want: every picture and number of one state of the
// hand. It never changes, so that what stands on the page is always of one
// piece.
type Shown struct {
	Want    Want
	Designs []*Answered
	Scenes  []*scene.Scene // of each design, or one for a difference
	Enlarge float64        // movements are drawn this many times as large
	Table   *study.Comparison
}

// Answered is one design under its want.
type Answered struct {
	Live     *live.Live
	Skeleton *scene.Skeleton
	Full     *design.Solution     // at full string load
	Now      *design.Solution     // at the want's load
	Bridge   *answer.BridgeReport // now; nil without a bridge
	Gauges   []answer.GaugeReport // of the case, now
	Pins     []answer.GaugeReport // now; a pin off the wood has NaN
	Cut      *design.LineCut      // now; nil without a section
	Flow     *answer.FlowReport   // now; nil if no lines of force are wanted
	Pathless string               // why there are no paths of the load, if they are wanted
	Events   []live.Event
	Report   *answer.Report // at full load; nil until it is worked out
}

// Settled says whether the slower numbers are there.
func (s *Shown) Settled() bool {
	for _, d := range s.Designs {
		if d.Report == nil {
			return false
		}
	}
	return true
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

func lastOf(s *Shown, i int) *Answered {
	if s == nil || i >= len(s.Designs) {
		return nil
	}
	return s.Designs[i]
}
