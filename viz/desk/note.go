package desk

import (
	"math"

	"archload/viz/panel"
)

// noteTime is how long a note stands, s.
const noteTime = 8.0

// lowView is the height of the drawings below which notes stand over the strip, points.
const lowView = 250.0

// say notes what was just done, for a while.
func (d *Desk) say(text string) { d.note, d.noted = text, noted{} }

// noteLeft is how much longer the note stands, s; infinite without one.
func (d *Desk) noteLeft() float64 {
	if d.note == "" {
		return math.Inf(1)
	}
	return math.Max(0, d.noted.since+noteTime-d.now)
}

// drawNote shows what was just done, at the foot of the drawing, until something
// else is, or its time is over.
func (d *Desk) drawNote() {
	if d.note == "" {
		return
	}
	if d.noted.text != d.note {
		d.noted = noted{d.note, d.now}
	}
	if d.noteLeft() == 0 {
		d.note = ""
		return
	}
	l, in := d.panel.List(), d.lay.View
	if in.H < lowView && d.lay.Strip.W > in.H {
		in = d.lay.Strip // it would hide the drawing
	}
	w := min(l.Atlas.TextWidth(panel.Body, d.note)+24, in.W-40)
	lines := l.Atlas.Wrap(panel.Body, d.note, w-24)
	h := float64(len(lines))*panel.Body.LineHeight() + 12
	r := panel.Rect{X: in.X + (in.W-w)/2, Y: in.Bottom() - h - 14, W: w, H: h}
	l.Rect(r, panel.Slip())
	l.Frame(r, 1, panel.Pencil())
	l.Paragraph(panel.Rect{X: r.X + 12, Y: r.Y + 6, W: w - 24, H: h}, panel.Body, panel.Ink(), d.note)
}
