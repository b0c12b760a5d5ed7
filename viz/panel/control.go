package panel

import (
	"image/color"
	"slices"
)

// The heights that suit each control, points.
const (
	ButtonHeight = 26
	ToggleHeight = 24
	ChoiceHeight = 26 // of a row, or of each word in a column
	SliderHeight = 46
	NumberHeight = 26
	RowHeight    = 20 // of a key and its value, and of a table
	HeadHeight   = 30 // of a heading and of a section's line
)

// Places returns every control of the last frame, in the order of drawing.
func (p *Panel) Places() []Place { return slices.Clone(p.places) }

// Find returns the place with an id.
func (p *Panel) Find(id string) (Place, bool) {
	for _, q := range p.places {
		if q.ID == id {
			return q, true
		}
	}
	return Place{}, false
}

// seen returns what of a rectangle shows through the open scroll areas.
func (p *Panel) seen(r Rect) Rect {
	r = r.Meet(p.page)
	for _, a := range p.areas {
		r = r.Meet(a.at)
	}
	return r
}

func (p *Panel) place(c Control, kind Kind, value string) {
	p.places = append(p.places, Place{
		ID: c.ID, Kind: kind, At: c.At, Seen: p.seen(c.At), Label: c.Label,
		Value: value, Off: c.Off != "", Focus: p.focus == c.ID && c.ID != "",
	})
}

// feel is how the hand is with a control.
type feel struct {
	hot     bool // the pointer is over it and nothing else is held
	held    bool
	pressed bool // in this frame
	double  bool // pressed twice
	let     bool // let go over it, in this frame, having been pressed
	focused bool
	ring    bool // draw the focus ring
}

// under tells whether the pointer is over a visible part of r.
func (p *Panel) under(r Rect) bool {
	at := p.pointer()
	if p.in.Away || p.underLid && p.lidBefore.Holds(at) {
		return false
	}
	return p.seen(r).Holds(at)
}

// touch works out how the hand is with a control; it may take the press and
// the focus.
func (p *Panel) touch(c Control) feel {
	if r := p.seen(c.At); !r.Empty() {
		p.covers = append(p.covers, r)
	}
	p.order = append(p.order, c.ID)
	p.reveal(c)
	var f feel
	over := p.under(c.At)
	f.hot = over && (p.held == "" || p.held == c.ID)
	if f.hot {
		p.hot = c.ID
	}
	p.tipFor(c, over)
	f.focused = p.focus == c.ID
	f.ring = f.focused && p.byKeys
	if c.Off != "" {
		f.hot = false
		return f
	}
	if f.hot && p.in.Pressed[LeftButton] && p.held == "" {
		p.press(c.ID)
		f.pressed, f.focused, f.ring = true, true, false
		f.double = p.second(c.ID)
	}
	f.held = p.held == c.ID
	f.let = f.held && p.in.Released[LeftButton] && over
	return f
}

// press gives a control the pointer and the focus.
func (p *Panel) press(id string) {
	if p.entry.id != id {
		p.leaveEntry()
	}
	p.held, p.focus, p.byKeys = id, id, false
}

// second tells whether this press is the second of two on a control, and
// remembers it.
func (p *Panel) second(id string) bool {
	const apart, within = 5.0, 0.4 // points, s
	at := p.pointer()
	l := p.last
	p.last = lastPress{id, at, p.in.Now}
	near := abs(at.X-l.at.X) <= apart && abs(at.Y-l.at.Y) <= apart
	if l.id == id && near && p.in.Now-l.when <= within {
		p.last = lastPress{}
		return true
	}
	return false
}

func abs(v float64) float64 { return max(v, -v) }

// key takes a key that a focused control understands.
func (p *Panel) key(keys ...Key) (KeyPress, bool) {
	for i, k := range p.in.Keys {
		if !p.taken[i] && slices.Contains(keys, k.Key) {
			p.taken[i] = true
			return k, true
		}
	}
	return KeyPress{}, false
}

// activated tells whether a control was clicked, or Space or Enter pressed on it.
func (p *Panel) activated(c Control, f feel) bool {
	if c.Off != "" {
		return false
	}
	if f.let {
		return true
	}
	if f.focused && p.entry.id == "" {
		_, ok := p.key(KeySpace, KeyEnter)
		return ok
	}
	return false
}

// walk moves the focus with Tab and Shift+Tab along the last frame's controls.
func (p *Panel) walk() {
	for i, k := range p.in.Keys {
		if k.Key != KeyTab || len(p.before) == 0 {
			continue
		}
		p.taken[i] = true
		at := slices.Index(p.before, p.focus)
		step := 1
		if k.Shift {
			step = -1
			if at < 0 {
				at = 0
			}
		}
		n := len(p.before)
		next := p.before[((at+step)%n+n)%n]
		if p.entry.id != next {
			p.leaveEntry()
		}
		p.focus, p.byKeys = next, true
		p.aim = next
	}
}

// ring draws the mark of the keyboard about a control, just outside it: a
// column in a scroll area wants 3 points of padding to show it.
func (p *Panel) ring(r Rect, f feel) {
	if f.ring {
		p.list.Frame(r.Inset(-3, -2), 1.5, Rust())
	}
}

// wash lays a shade over a control that the pointer is on.
func (p *Panel) wash(r Rect, f feel) {
	switch {
	case f.held && f.hot:
		p.list.Rect(r, pressed())
	case f.hot:
		p.list.Rect(r, hover())
	}
}

// ink is the paint of a control's words.
func (c Control) ink() color.NRGBA {
	if c.Off != "" {
		return asleep()
	}
	return Ink()
}

// reveal scrolls the control that the keyboard has just reached into view.
func (p *Panel) reveal(c Control) {
	if p.aim == "" || p.aim != c.ID {
		return
	}
	p.aim, p.aimed = "", c.ID
	n := len(p.areas)
	if n == 0 {
		return
	}
	const air = 8 // points
	a := p.areas[n-1]
	switch {
	case c.At.Y < a.at.Y:
		a.s.offset -= a.at.Y - c.At.Y + air
	case c.At.Bottom() > a.at.Bottom():
		a.s.offset += c.At.Bottom() - a.at.Bottom() + air
	default:
		return
	}
	p.wake = 0
}

// canScroll tells whether the innermost open area is higher than it shows.
func (p *Panel) canScroll() bool {
	for _, a := range p.areas {
		if a.s.content > a.at.H {
			return true
		}
	}
	return false
}
