package answer

import (
	"math"

	"archload/cases"
	"archload/cases/design"
)

// heels of two feet, bass first.
const (
	bassOuter = iota
	bassInner
	trebleInner
	trebleOuter
	heelCount
)

// FootReport is what one of two feet carries. Its heels are the halves of its
// length; the inner ones face each other. Shares are of the force under both
// feet, 0 to 1.
type FootReport struct {
	Name  string  `json:"name"` // "bass foot" or "treble foot"
	From  float64 `json:"from"` // mm from the bridge's middle
	To    float64 `json:"to"`
	Share float64 `json:"share"`
	Outer float64 `json:"outer"`
	Inner float64 `json:"inner"`

	InnerTouchesAt Num `json:"inner_touches_at"` // fraction of full load at which the inner heel first bears; null: never
	InnerClosesAt  Num `json:"inner_closes_at"`  // and at which it bears all along; null: never
}

// heelSum adds the forces on the heels of two feet, N: those on a station in the
// middle of a foot go to both of its heels.
func heelSum(st *design.BridgeModel, feet []cases.Foot, forces func(i int) float64) [heelCount]float64 {
	var out [heelCount]float64
	for i := range st.Pads {
		c := st.Cells[i]
		f := forces(i)
		inner := f * innerPart(feet, c.Foot, c.X)
		if c.Foot == 0 {
			out[bassInner] += inner
			out[bassOuter] += f - inner
		} else {
			out[trebleInner] += inner
			out[trebleOuter] += f - inner
		}
	}
	return out
}

// innerPart is how much of a place of a foot belongs to its inner heel, 0 to 1.
func innerPart(feet []cases.Foot, foot int, x float64) float64 {
	past := x - float64(feet[foot].From+feet[foot].To)/2
	if foot > 0 {
		past = -past
	}
	switch {
	case math.Abs(past) < 1e-9:
		return 0.5
	case past > 0:
		return 1
	}
	return 0
}

// feetReport is what each of two feet carries, without the loads at which their
// heels close; nil of a continuous foot.
func feetReport(s *design.Solution) []FootReport {
	st := s.Top.Built.Bridge
	feet := s.Top.Built.Case.Bridge.Feet
	if len(feet) != 2 {
		return nil
	}
	f := heelSum(st, feet, func(i int) float64 { normal, _ := padForce(s, i); return normal })
	sum := f[bassOuter] + f[bassInner] + f[trebleInner] + f[trebleOuter]
	out := []FootReport{{Name: "bass foot", Outer: f[bassOuter] / sum, Inner: f[bassInner] / sum},
		{Name: "treble foot", Outer: f[trebleOuter] / sum, Inner: f[trebleInner] / sum}}
	for i := range out {
		out[i].From, out[i].To = float64(feet[i].From), float64(feet[i].To)
		out[i].Share = out[i].Outer + out[i].Inner
		out[i].InnerTouchesAt, out[i].InnerClosesAt = None(), None()
	}
	return out
}

// heelEvents finds when the inner heels of two feet touch and have closed.
func heelEvents(s *design.Solution, out []FootReport) {
	st := s.Top.Built.Bridge
	feet := s.Top.Built.Case.Bridge.Feet
	for i := range out {
		out[i].InnerTouchesAt, out[i].InnerClosesAt = closing(s, func(pad int) bool {
			return st.Cells[pad].Foot == i && innerPart(feet, i, st.Cells[pad].X) > 0
		})
	}
}

// closing finds the loads at which the first and the last station of a part of
// the foot come to carry force, as fractions of full load; none if never.
func closing(s *design.Solution, within func(pad int) bool) (first, all Num) {
	st := s.Top.Built.Bridge
	closed := map[float64]float64{} // first load at which each station carries
	stations := map[float64]bool{}
	for i := range st.Pads {
		if within(i) {
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
	first, all = None(), None()
	for _, load := range closed {
		if !first.Known() || load < float64(first) {
			first = Num(load)
		}
		if len(closed) == len(stations) && (!all.Known() || load > float64(all)) {
			all = Num(load)
		}
	}
	return first, all
}

// TwoFeet says whether the bridge stands on two feet, which have no thirds.
func (g *BridgeReport) TwoFeet() bool { return g != nil && len(g.Feet) > 0 }

// InnerHeels is what the inner heels of two feet carry together, 0 to 1.
func InnerHeels(feet []FootReport) float64 {
	sum := 0.0
	for _, f := range feet {
		sum += f.Inner
	}
	return sum
}

// HeelsTouchAt is the load at which the first inner heel of two feet touches, and
// HeelsCloseAt the one at which the last has closed, fractions of full load.
func HeelsTouchAt(feet []FootReport) Num {
	first := None()
	for _, f := range feet {
		if f.InnerTouchesAt.Known() && !(f.InnerTouchesAt >= first) {
			first = f.InnerTouchesAt
		}
	}
	return first
}

// HeelsCloseAt is described at HeelsTouchAt; none if one of them never closes.
func HeelsCloseAt(feet []FootReport) Num {
	last := None()
	for i, f := range feet {
		if !f.InnerClosesAt.Known() {
			return None()
		}
		if i == 0 || f.InnerClosesAt > last {
			last = f.InnerClosesAt
		}
	}
	return last
}
