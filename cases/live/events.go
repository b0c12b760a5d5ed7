package live

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"archload/cases/answer"
	"archload/cases/design"
	"archload/fem/contact"
)

// Event is something that happens while the load rises.
type Event struct {
	Load  float64 // fraction of full string load, 1
	Words string  // what, in a maker's words
}

// Events tells what happens at the foot as the load rises, in the order of the
// load and each once: what bears first, when the middle touches and has closed,
// what lifts. Nil without a bridge, or if the load cannot be followed.
func (l *Live) Events() []Event {
	if l.top.Stand == nil {
		return nil
	}
	t, err := l.follow()
	if err != nil {
		return nil
	}
	s := &design.Solution{Top: l.top, Result: &contact.Result{State: t.at(1)}}
	out := slices.Concat(bearing(s), middle(s), lifts(s))
	slices.SortStableFunc(out, func(a, b Event) int { return cmp.Compare(a.Load, b.Load) })
	return out
}

// middle tells when the middle third of a continuous foot, or the inner heels of
// two, touch and have closed.
func middle(s *design.Solution) []Event {
	touches, closed := "the middle first touches", "the middle has closed"
	var b answer.BridgeReport
	b.SetEvents(s)
	first, all := b.MiddleTouchesAt, b.MiddleClosesAt
	if b.TwoFeet() {
		touches, closed = "an inner heel first touches", "both inner heels have closed"
		first, all = answer.HeelsTouchAt(b.Feet), answer.HeelsCloseAt(b.Feet)
	}
	var out []Event
	if first.Known() && first > 0 {
		out = append(out, Event{float64(first), touches})
	}
	if all.Known() && all > 0 && all > first {
		out = append(out, Event{float64(all), closed})
	}
	return out
}

// stretch is a part of the foot with a name.
type stretch struct {
	words string
	pads  []int
}

// stretches are the parts of the foot that may bear or lift by themselves: its
// thirds, or its feet if there are two.
func stretches(s *design.Solution) []stretch {
	out := []stretch{{words: "the bass end"}, {words: middlePart}, {words: "the treble end"}}
	feet := len(s.Top.Built.Case.Bridge.Feet)
	if feet > 1 {
		out = []stretch{{words: "the bass foot"}, {words: "the treble foot"}}
		for i := 2; i < feet; i++ {
			out = append(out, stretch{words: fmt.Sprintf("foot %d", i+1)})
		}
	}
	for i := range s.Top.Built.Bridge.Pads {
		k := answer.Third(s.Top.Built.Bridge, i)
		if feet > 1 {
			k = s.Top.Built.Bridge.Cells[i].Foot
		}
		out[k].pads = append(out[k].pads, i)
	}
	return out
}

// bearing tells which parts bear from the start, and when the others come to
// bear. The middle of a continuous foot has its own words.
func bearing(s *design.Solution) []Event {
	at, all := firstLoads(s)
	switch {
	case len(at) == 0:
		return nil
	case all && len(s.Top.Built.Case.Bridge.Feet) > 1:
		return []Event{{0, "both feet bear from the start"}}
	case all:
		return []Event{{0, "the whole foot bears from the start"}}
	}
	ends := slices.DeleteFunc(at, func(e Event) bool { return e.Words == middlePart && e.Load > 0 })
	least := slices.MinFunc(ends, func(a, b Event) int { return cmp.Compare(a.Load, b.Load) }).Load
	if len(ends) == 2 && ends[0].Load == ends[1].Load && len(s.Top.Built.Case.Bridge.Feet) == 1 {
		return []Event{{least, "both ends bear first"}}
	}
	for i, e := range ends {
		ends[i].Words = e.Words + " comes to bear"
		if e.Load == least {
			ends[i].Words = e.Words + " bears first"
		}
	}
	return ends
}

// middlePart is the middle third of a continuous foot.
const middlePart = "the middle"

// firstLoads is the load at which each part of the foot first bears, with its
// name; all says that every part does so from the start.
func firstLoads(s *design.Solution) (at []Event, all bool) {
	first, parts := firstClosed(s), stretches(s)
	all = true
	for _, part := range parts {
		load := math.Inf(1)
		for _, i := range part.pads {
			if f, ok := first[int32(i)]; ok {
				load = min(load, f)
			}
		}
		all = all && load == 0
		if !math.IsInf(load, 1) {
			at = append(at, Event{load, part.words})
		}
	}
	return at, all
}

// firstClosed is the load at which each pad first bears.
func firstClosed(s *design.Solution) map[int32]float64 {
	out := map[int32]float64{}
	for _, e := range s.Result.State.Events {
		if _, seen := out[e.Pad]; e.Closes && !seen {
			out[e.Pad] = e.Load
		}
	}
	return out
}

// lifts tells which parts of the foot let go of the top for good: the parts
// along it, and its edges toward neck and tail.
func lifts(s *design.Solution) []Event {
	parts := append(stretches(s), edges(s)...)
	st := s.Result.State
	var out []Event
	for _, part := range parts {
		open, last := true, -1.0
		for _, i := range part.pads {
			open = open && !st.Closed[i]
		}
		for _, e := range st.Events {
			if !e.Closes && slices.Contains(part.pads, int(e.Pad)) {
				last = max(last, e.Load)
			}
		}
		if open && last >= 0 {
			out = append(out, Event{last, part.words + " lifts"})
		}
	}
	return out
}

// edges are the outermost rows of the contact grid toward neck and tail.
func edges(s *design.Solution) []stretch {
	neck, tail := stretch{words: "the edge toward the neck"}, stretch{words: "the edge toward the tail"}
	least, most := 0.0, 0.0
	for _, c := range s.Top.Built.Bridge.Cells {
		least, most = min(least, c.Y), max(most, c.Y)
	}
	for i, c := range s.Top.Built.Bridge.Cells {
		if c.Y == most {
			neck.pads = append(neck.pads, i)
		}
		if c.Y == least {
			tail.pads = append(tail.pads, i)
		}
	}
	return []stretch{neck, tail}
}
