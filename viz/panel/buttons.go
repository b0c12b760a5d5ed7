package panel

import "image/color"

// Button draws a framed word and tells whether it was pressed.
func (p *Panel) Button(c Control) bool {
	f := p.touch(c)
	p.place(c, ButtonPlace, "")
	edge := Pencil()
	if c.Off != "" {
		edge = Hair()
	}
	p.list.Rect(c.At, Slip())
	p.wash(c.At, f)
	p.list.Frame(c.At, 1, edge)
	in := c.At.Inset(6, 0)
	p.list.TextIn(in, p.list.Atlas.fitting(c.words(), in.W), Middle, c.ink(), c.words())
	p.ring(c.At, f)
	return p.activated(c, f)
}

// Room in a row of a list, points: of its first line, and beside its words.
const (
	pickHead  = 20.0
	pickInset = 9.0
)

// PickHeight is how high a row of a list with softer words under its label is in a width, points.
func (a *Atlas) PickHeight(under string, width float64) float64 {
	return pickHead + a.ParagraphHeight(Small, under, width-pickInset) + 2
}

// Pick draws one of several rows of a list, its label over softer words, and tells
// whether it was pressed; the chosen one has a mark.
func (p *Panel) Pick(c Control, under string, chosen bool) bool {
	f := p.touch(c)
	value := ""
	if chosen {
		value = "chosen"
	}
	p.place(c, ButtonPlace, value)
	l := p.list
	p.wash(c.At, f)
	face := Body
	if chosen {
		face = BodyBold
		l.Upright(c.At.X, c.At.Y+2, c.At.Bottom()-3, 3, Rust())
	}
	in := Rect{c.At.X + pickInset, c.At.Y + 1, c.At.W - pickInset, pickHead - 1}
	l.TextIn(in, face, Left, c.ink(), c.words())
	l.Paragraph(Rect{in.X, in.Bottom(), in.W, c.At.H - pickHead}, Small, SoftInk(), under)
	l.Level(c.At.X, c.At.Right(), c.At.Bottom()-1, 1, faded(Hair(), 0.6))
	p.ring(c.At, f)
	return p.activated(c, f)
}

// Toggle draws a square to tick, and tells whether on was changed.
func (p *Panel) Toggle(c Control, on *bool) bool {
	const side = 13
	f := p.touch(c)
	changed := p.activated(c, f)
	if changed {
		*on = !*on
	}
	value := "off"
	if *on {
		value = "on"
	}
	p.place(c, TogglePlace, value)
	l := p.list
	p.wash(c.At, f)
	box := Rect{c.At.X + 4, l.Atlas.snap(c.At.Y + (c.At.H-side)/2), side, side}
	edge, mark := Pencil(), Rust()
	if c.Off != "" {
		edge, mark = Hair(), asleep()
	}
	l.Rect(box, Slip())
	l.Frame(box, 1, edge)
	if *on {
		tick(l, box, mark)
	}
	l.TextIn(Rect{box.Right() + 8, c.At.Y, c.At.Right() - box.Right() - 10, c.At.H}, Body, Left, c.ink(), c.words())
	p.ring(c.At, f)
	return changed
}

// tick draws a pencil's tick over a box.
func tick(l *List, box Rect, k color.NRGBA) {
	l.Polyline([]Point{
		{box.X + 2.5, box.Y + 6.5}, {box.X + 5.5, box.Y + 10}, {box.X + 12.5, box.Y + 0.5},
	}, 2, k)
}

// Section draws the line that folds a part of a column away, changes open
// when it is pressed, and returns it.
func (p *Panel) Section(c Control, open *bool) bool {
	f := p.touch(c)
	if p.activated(c, f) {
		*open = !*open
	}
	value := "folded"
	if *open {
		value = "open"
	}
	p.place(c, SectionPlace, value)
	l := p.list
	p.wash(c.At, f)
	mid := l.Atlas.snap(c.At.Y + c.At.H/2)
	x := c.At.X + 4
	arrow := []Point{{x, mid - 4.5}, {x + 5.5, mid}, {x, mid + 4.5}}
	if *open {
		arrow = []Point{{x - 2, mid - 3}, {x + 7, mid - 3}, {x + 2.5, mid + 2.5}}
	}
	l.Polygon(arrow, c.ink())
	words := Rect{x + 13, c.At.Y, c.At.Right() - x - 13, c.At.H}
	l.TextIn(words, BodyBold, Left, c.ink(), c.words())
	end := words.X + l.Atlas.TextWidth(BodyBold, c.words()) + 8
	l.Level(end, c.At.Right(), mid, 1, Hair())
	p.ring(c.At, f)
	return *open
}
