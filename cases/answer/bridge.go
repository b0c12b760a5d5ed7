package answer

import (
	"math"

	"archload/cases/body"
	"archload/cases/design"
	"archload/fem/contact"
)

// bridgeReport is how the bridge of a solution stands at full load.
func bridgeReport(s *design.Solution) *BridgeReport {
	r := bridgeState(s)
	r.SetEvents(s)
	return r
}

// bridgeState is bridgeReport without what the path of the load tells.
func bridgeState(s *design.Solution) *BridgeReport {
	st := s.Top.Built.Bridge
	u := s.Result.Body
	r := &BridgeReport{Sink: Sink(s)}
	first, last := st.Body.Nodes[0], st.Body.Nodes[st.Base-1]
	half := float64(s.Top.Built.Case.Bridge.Length) / 2
	r.EndSink = [2]float64{-u[2] + fromSlack(s, -half), -u[6*(st.Base-1)+2] + fromSlack(s, half)}
	r.Tilt = TiltReport{
		ForeAft:  -degrees(u[6*st.Mid+3]),
		Sideways: degrees(math.Atan((r.EndSink[1] - r.EndSink[0]) / (last[0] - first[0]))),
	}
	r.ActionChange = actionChange(s)
	r.SetContact(s)
	r.Guides = s.Result.Guides
	return r
}

// degrees turns radians into degrees.
func degrees(rad float64) float64 { return rad * 180 / math.Pi }

// actionChange is the mean over the strings of what each comes down at the octave.
func actionChange(s *design.Solution) float64 {
	forces := s.Top.Built.Geometry.StringForces()
	sum := 0.0
	for _, f := range forces {
		sum += ActionChangeAt(s, f.X)
	}
	return sum / float64(len(forces))
}

// ActionChangeAt is how far a string at x from the bridge's middle, mm, comes down
// over the board at the octave from slack to pitch, mm: half the saddle's sink there,
// since the octave lies half way between a saddle that sinks and a nut that does not.
// In a body nut and board move with the neck block.
func ActionChangeAt(s *design.Solution, x float64) float64 {
	move := saddleMove(s, x)
	if lower, ok := body.LoweredAt(s, x, move); ok {
		return lower
	}
	return -move[2] / 2
}

// SetContact fills in points, shares, friction and how far out the foot presses.
func (r *BridgeReport) SetContact(s *design.Solution) {
	var share [3]float64
	sum, spread := 0.0, 0.0
	for i := range s.Top.Built.Bridge.Pads {
		p := &s.Top.Built.Bridge.Pads[i]
		f, drag := padForce(s, i)
		r.Contact = append(r.Contact, ContactReport{X: p.At[0], Y: p.At[1], Gap: s.Result.State.Gap[i],
			Force: f, Pressure: f / p.Area, Drag: drag})
		share[Third(s.Top.Built.Bridge, i)] += f
		sum += f
		spread += f * math.Abs(s.Top.Built.Bridge.Cells[i].X)
		r.GapLeft = math.Max(r.GapLeft, s.Result.State.Gap[i])
	}
	r.Share = ShareReport{BassEnd: share[0] / sum, Middle: share[1] / sum, TrebleEnd: share[2] / sum}
	r.Feet = feetReport(s)
	r.Spreading = spread / sum
	r.FrictionNeeded = friction(s)
	r.setRough(s)
}

// friction is the greatest ratio of summed tangential to summed normal force
// over the feet, or over the thirds of a continuous foot; none in slip.
func friction(s *design.Solution) Num {
	if s.Top.Built.Bridge.Hold == contact.Slip {
		return None()
	}
	type sum struct{ n, t, u float64 }
	groups := map[int]*sum{}
	two := len(s.Top.Built.Case.Bridge.Feet) > 1
	for i := range s.Top.Built.Bridge.Pads {
		k := Third(s.Top.Built.Bridge, i)
		if two {
			k = s.Top.Built.Bridge.Cells[i].Foot
		}
		if groups[k] == nil {
			groups[k] = &sum{}
		}
		f, drag := padForce(s, i)
		groups[k].n, groups[k].t, groups[k].u = groups[k].n+f, groups[k].t+drag[0], groups[k].u+drag[1]
	}
	worst := 0.0
	for _, g := range groups {
		if g.n > 0 {
			worst = math.Max(worst, math.Hypot(g.t, g.u)/g.n)
		}
	}
	return Num(worst)
}

// SetEvents follows thirds and heels through the load, and finds when the first
// and the last station of the middle third, and of inner heels, come to carry
// force.
func (r *BridgeReport) SetEvents(s *design.Solution) {
	st := s.Top.Built.Bridge
	for _, t := range s.Result.State.Trace {
		l := LoadReport{Load: t.Load}
		for i, f := range t.Force {
			l.Thirds[Third(st, i)] += f
		}
		if feet := s.Top.Built.Case.Bridge.Feet; len(feet) == 2 {
			heels := heelSum(st, feet, func(i int) float64 { return t.Force[i] })
			l.Heels = heels[:]
		}
		r.ByLoad = append(r.ByLoad, l)
	}
	r.MiddleTouchesAt, r.MiddleClosesAt = closing(s, func(i int) bool { return Third(st, i) == middleThird })
	if r.Feet == nil {
		r.Feet = feetReport(s)
	}
	heelEvents(s, r.Feet)
}

// BridgeReport is how the bridge stands at full load.
type BridgeReport struct {
	Sink            float64         `json:"sink"` // of the base at its middle, mm, from the slack strings
	Tilt            TiltReport      `json:"tilt"`
	ActionChange    float64         `json:"action_change"` // at the octave, mm, positive when strings come lower
	Contact         []ContactReport `json:"contact"`
	Share           ShareReport     `json:"share"`
	Feet            []FootReport    `json:"feet,omitempty"` // of two feet; share and middle_... speak of thirds of the bearing length
	MiddleTouchesAt Num             `json:"middle_touches_at"`
	MiddleClosesAt  Num             `json:"middle_closes_at"`
	FrictionNeeded  Num             `json:"friction_needed"`
	GapLeft         float64         `json:"gap_left"`  // greatest remaining, mm
	EndSink         [2]float64      `json:"end_sink"`  // of the base's bass and treble end, mm
	Spreading       float64         `json:"spreading"` // Σ f|x| / Σ f, mm: how far out the foot presses
	ByLoad          []LoadReport    `json:"by_load"`
	Guides          []float64       `json:"guides,omitempty"` // force across (N), along (N) and moment about the upright (N·mm) at the saddle; not in grip

	*RoughReport // of a foot with friction
}

// Pressed is the sum of the foot's forces square to the surface, N. On slopes
// it differs from the downforce, as drag carries a part of that.
func (r *BridgeReport) Pressed() float64 {
	sum := 0.0
	for _, c := range r.Contact {
		sum += c.Force
	}
	return sum
}

// HighestSpot is the greatest pressure on one place of the contact grid, MPa.
func (r *BridgeReport) HighestSpot() float64 {
	most := 0.0
	for _, c := range r.Contact {
		most = math.Max(most, c.Pressure)
	}
	return most
}

// TiltReport is the bridge's lean, deg.
type TiltReport struct {
	ForeAft  float64 `json:"fore_aft"` // positive: the top leans toward the neck
	Sideways float64 `json:"sideways"` // positive: the treble side is lower
}

// ShareReport is the part of the foot force that each third of the bearing
// length carries, 0 to 1.
type ShareReport struct {
	BassEnd   float64 `json:"bass_end"`
	Middle    float64 `json:"middle"`
	TrebleEnd float64 `json:"treble_end"`
}

// ContactReport is one contact point; x and y on the plate.
type ContactReport struct {
	X        float64    `json:"x"`
	Y        float64    `json:"y"`
	Gap      float64    `json:"gap"`
	Force    float64    `json:"force"`
	Pressure float64    `json:"pressure"`
	Drag     [2]float64 `json:"drag"`           // N, tangential force on the plate, across and along
	Slid     float64    `json:"slid,omitempty"` // mm, how far it has slid under load
}

// LoadReport is the foot force by thirds, of two feet also by heels, at one load.
type LoadReport struct {
	Load   float64    `json:"load"`
	Thirds [3]float64 `json:"thirds"`          // N: bass end, middle, treble end
	Heels  []float64  `json:"heels,omitempty"` // N, of two feet: outer and inner of the bass foot, inner and outer of the treble foot
}

// BridgeNow reports the bridge at the solution's own load: all but what
// follows from the whole path of the load (by_load and when the middle touches
// and closes). Nil without a bridge.
func BridgeNow(s *design.Solution) *BridgeReport {
	if s.Top.Built.Bridge == nil {
		return nil
	}
	r := bridgeState(s)
	r.MiddleTouchesAt, r.MiddleClosesAt = None(), None()
	return r
}
