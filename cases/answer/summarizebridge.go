package answer

import (
	"math"

	"archload/cases/design"
	"archload/fem/contact"
)

// thirds of the bearing length.
const (
	bassEnd = iota
	middleThird
	trebleEnd
)

// Third of the bearing length that pad i lies in.
func Third(st *design.BridgeModel, i int) int {
	switch a := st.Along[i]; {
	case a < 1.0/3:
		return bassEnd
	case a <= 2.0/3:
		return middleThird
	}
	return trebleEnd
}

// normalForce is the contact force of pad i along the normal, N.
func rows(s *design.Solution) int {
	if s.Top.Built.Bridge.Hold == contact.Slip {
		return 1
	}
	return 3
}

func padForce(s *design.Solution, i int) (normal float64, drag [2]float64) {
	per := rows(s)
	l := s.Result.State.Lambda
	if per == 3 {
		drag = [2]float64{-l[3*i+1], -l[3*i+2]}
	}
	return l[i*per], drag
}

func bridgeReport(s *design.Solution) *BridgeReport {
	r := bridgeState(s)
	Events(s, r)
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
	Contact(s, r)
	r.Guides = s.Result.Guides
	return r
}

func degrees(rad float64) float64 { return rad * 180 / math.Pi }

// actionChange is half the mean sink of the strings at the saddle: the octave
// lies half way between a saddle that sinks and a nut that does not.
func actionChange(s *design.Solution) float64 {
	forces := s.Top.Built.Geometry.StringForces()
	sum := 0.0
	for _, f := range forces {
		sum -= saddleMove(s, f.X)[2]
	}
	return sum / float64(len(forces)) / 2
}

// Contact fills points, shares, friction and how far out the foot presses.
func Contact(s *design.Solution, r *BridgeReport) {
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
	r.Spreading = spread / sum
	r.FrictionNeeded = friction(s)
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

// Events follows the thirds through the load, and finds when the first and
// the last station of the middle third come to carry force.
func Events(s *design.Solution, r *BridgeReport) {
	st := s.Top.Built.Bridge
	for _, t := range s.Result.State.Trace {
		l := LoadReport{Load: t.Load}
		for i, f := range t.Force {
			l.Thirds[Third(st, i)] += f
		}
		r.ByLoad = append(r.ByLoad, l)
	}
	closed := map[float64]float64{} // first load at which each middle station carries
	stations := map[float64]bool{}
	for i := range st.Pads {
		if Third(st, i) == middleThird {
			stations[st.Cells[i].X] = true
		}
	}
	for _, e := range s.Result.State.Events {
		x := st.Cells[e.Pad].X
		if !e.Closes || !stations[x] {
			continue
		}
		if _, seen := closed[x]; !seen {
			closed[x] = e.Load
		}
	}
	r.MiddleTouchesAt, r.MiddleClosesAt = None(), None()
	for _, load := range closed {
		if !r.MiddleTouchesAt.Known() || load < float64(r.MiddleTouchesAt) {
			r.MiddleTouchesAt = Num(load)
		}
		if len(closed) == len(stations) && (!r.MiddleClosesAt.Known() || load > float64(r.MiddleClosesAt)) {
			r.MiddleClosesAt = Num(load)
		}
	}
}
