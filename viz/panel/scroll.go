package panel

import "math"

const (
	barWidth = 9.0 // points
	barGap   = 5.0 // beside it
	notch    = 48  // points that a notch of the wheel scrolls
)

// Scroll opens an area whose content may be higher than it is, and returns
// where the content begins: its height is what the content had in the frame
// before. EndScroll closes it.
func (p *Panel) Scroll(id string, at Rect) Rect {
	if p.scrolls == nil {
		p.scrolls = make(map[string]*scroll)
	}
	s := p.scrolls[id]
	if s == nil {
		s = &scroll{}
		p.scrolls[id] = s
	}
	s.offset = min(max(0, s.offset), max(0, s.content-at.H))
	p.place(Control{ID: id, At: at}, ScrollPlace, number(s.offset, 0))
	p.areas = append(p.areas, area{id, at, s})
	p.list.Clip(at)
	return Rect{at.X, p.list.Atlas.snap(at.Y - s.offset), at.W - barWidth - barGap, max(at.H, s.content)}
}

// EndScroll closes the innermost area; used is the height of its content,
// points. The wheel scrolls it from the next frame on.
func (p *Panel) EndScroll(used float64) {
	n := len(p.areas)
	if n == 0 {
		return
	}
	a := p.areas[n-1]
	was := *a.s
	if !(used >= 0) || math.IsInf(used, 0) {
		used = 0
	}
	a.s.content = used
	p.list.Unclip()
	room := used - a.at.H
	if room > 0 {
		p.bar(a, room)
		p.scrollHand(a)
	}
	p.areas = p.areas[:n-1]
	a.s.offset = min(max(0, a.s.offset), max(0, room))
	if *a.s != was {
		p.wake = 0
	}
}

// scrollHand moves an area by the wheel and by the page keys.
func (p *Panel) scrollHand(a area) {
	if !p.under(a.at) {
		return
	}
	if n := p.in.Wheel[1]; n != 0 && !p.wheeled {
		p.wheeled = true
		a.s.offset -= n * notch
	}
	if p.entry.id != "" {
		return
	}
	if k, ok := p.key(KeyPageUp, KeyPageDown); ok {
		by := 0.9 * a.at.H
		if k.Key == KeyPageUp {
			by = -by
		}
		a.s.offset += by
	}
}

// bar draws the drag bar and follows the pointer on it.
func (p *Panel) bar(a area, room float64) {
	rail := Rect{a.at.Right() - barWidth, a.at.Y, barWidth, a.at.H}
	long := max(24, rail.H*rail.H/(rail.H+room))
	way := max(1, rail.H-long)
	at := func() Rect { return Rect{rail.X, rail.Y + way*a.s.offset/room, rail.W, long} }
	id := a.id + "/bar"
	hot := p.under(rail) && (p.held == "" || p.held == id)
	if hot && p.in.Pressed[LeftButton] && p.held == "" {
		p.leaveEntry()
		p.held = id
		p.grab = p.in.Y - at().Y
		if !at().Holds(p.pointer()) {
			p.grab = long / 2
		}
	}
	if p.held == id {
		a.s.offset = min(max(0, (p.in.Y-p.grab-rail.Y)/way*room), room)
	}
	p.place(Control{ID: id, At: at()}, BarPlace, number(a.s.offset, 0))
	k := faded(Pencil(), 0.55)
	if hot || p.held == id {
		k = Pencil()
	}
	p.list.Upright(rail.Centre().X, rail.Y, rail.Bottom(), 1, Hair())
	p.list.Rect(at().Inset(2.5, 0), k)
}
