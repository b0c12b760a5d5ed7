package panel

// drawNumber draws the label, the line to write on, the unit, and what is
// wrong with what is typed.
func (p *Panel) drawNumber(n Number, f feel, v float64) {
	l, box := p.list, p.entryBox(n)
	typing := p.entry.id == n.ID
	shown := n.bare(v)
	if typing {
		shown = string(p.entry.text)
	}
	p.place(n.Control, NumberPlace, shown)
	p.wash(n.At, feel{hot: f.hot && !typing})
	l.TextIn(Rect{n.At.X, n.At.Y, box.X - n.At.X - 8, n.At.H}, Body, Left, n.ink(), n.words())
	l.TextIn(Rect{box.Right() + 6, n.At.Y, n.At.Right() - box.Right() - 6, n.At.H}, Body, Left, n.ink(), n.Unit)
	line := SoftInk()
	if n.Off != "" {
		line = Hair()
	}
	if !typing {
		l.Level(box.X, box.Right(), box.Bottom()-1, 1, line)
		l.TextIn(box.Inset(4, 0), Body, Right, n.ink(), shown)
		p.ring(n.At, f)
		return
	}
	l.Rect(box, Slip())
	p.drawEntry(box)
	edge := Rust()
	if p.entry.fault != "" {
		edge = Fault()
		p.slip(box, p.entry.fault, Fault())
	}
	l.Frame(box, 1.5, edge)
}

// drawEntry draws what is typed, what is selected and the caret; a long entry
// is moved so that the caret shows.
func (p *Panel) drawEntry(box Rect) {
	l, e := p.list, p.entry
	in := box.Inset(4, 0)
	width := func(n int) float64 { return l.Atlas.TextWidth(Body, string(e.text[:n])) }
	x := in.X - max(0, width(e.caret)-in.W+2)
	l.Clip(box.Inset(2, 0))
	if e.all && len(e.text) > 0 {
		l.Rect(Rect{x - 1, in.Y + 3, width(len(e.text)) + 2, in.H - 6}, faded(Rust(), 0.22))
	}
	l.Text(Point{x, in.Y + (in.H+l.Atlas.capHeight(Body))/2}, Body, Left, Ink(), string(e.text))
	if !e.all {
		l.Upright(x+width(e.caret), in.Y+3, in.Bottom()-3, 1, Ink())
	}
	l.Unclip()
}
