package answer

import (
	"math"

	"archload/cases/design"
	"archload/fem/contact"
)

// RoughReport is how a foot with friction stands at full load.
type RoughReport struct {
	Friction        Num              `json:"friction"`         // coefficient, 1
	FrictionReached Num              `json:"friction_reached"` // greatest drag over press of a place that bears, 1
	Slid            Num              `json:"slid"`             // how far a place of the foot has slid at most, mm
	Sliding         Num              `json:"sliding"`          // share of the force under the foot that rests on places that slide, 0 to 1
	Glides          bool             `json:"glides"`           // no friction holds the bridge as a whole: the strings do, at the saddle
	Frictions       []FrictionReport `json:"friction_range,omitempty"`
}

// FrictionReport is how the bridge would stand with another friction.
type FrictionReport struct {
	Friction     float64     `json:"friction"` // coefficient, 1
	Sink         float64     `json:"sink"`     // mm
	Tilt         TiltReport  `json:"tilt"`
	ActionChange float64     `json:"action_change"` // mm
	Share        ShareReport `json:"share"`
	Slid         float64     `json:"slid"`       // mm
	Dissipated   float64     `json:"dissipated"` // N·mm
}

// rough says whether the foot of a solution has friction.
func rough(s *design.Solution) bool {
	b := s.Top.Built.Bridge
	return b != nil && b.Hold == contact.Rough
}

// setRough fills in what only a foot with friction has.
func (r *BridgeReport) setRough(s *design.Solution) {
	if !rough(s) {
		return
	}
	st := s.Result.State
	q := &RoughReport{Friction: Num(s.Top.Fit().Friction), Glides: st.Glides}
	sum, slides := 0.0, 0.0
	for i, c := range r.Contact {
		r.Contact[i].Slid = st.Slid[i]
		q.Slid = Num(math.Max(float64(q.Slid), st.Slid[i]))
		if c.Force > 1e-6*r.Pressed() { // less is rounding
			q.FrictionReached = Num(math.Max(float64(q.FrictionReached), math.Hypot(c.Drag[0], c.Drag[1])/c.Force))
		}
		sum += c.Force
		if st.Slides[i] {
			slides += c.Force
		}
	}
	q.Sliding = Num(slides / sum)
	r.RoughReport = q
}

// setFrictions tells how the bridge would stand with the least and the most friction of
// wood.
func (r *BridgeReport) setFrictions(s *design.Solution) {
	for _, f := range s.Frictions {
		if f.Solution == nil {
			continue
		}
		b := bridgeState(f.Solution)
		r.Frictions = append(r.Frictions, FrictionReport{Friction: f.Coefficient, Sink: b.Sink, Tilt: b.Tilt, ActionChange: b.ActionChange,
			Share: b.Share, Slid: float64(b.Slid), Dissipated: f.Solution.Result.State.Lost})
	}
}
