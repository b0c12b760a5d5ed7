package desk

import (
	"fmt"
	"math"

	"archload/cases/answer"
	"archload/mesh"
	"archload/viz/desk/layout"
	"archload/viz/panel"
	"archload/viz/scale"
	"archload/viz/scene"
	"archload/viz/stage"
)

// clickReach is how far the pointer may move in a click, points.
const clickReach = 4.0

// gestures turn, shift and near the drawing, pin places and draw cuts.
func (d *Desk) gestures(in panel.Input, density float64) {
	held, _ := d.panel.Holds()
	at := panel.Point{X: in.X, Y: in.Y}
	view := d.viewAt(at)
	if d.drag.what != noDrag {
		d.dragOn(in, at, density)
		return
	}
	d.hover = nil
	d.grips.Leave()
	if held || view < 0 || d.over != noSheet || in.Away || d.shown == nil {
		return
	}
	if d.grippable() && view < len(d.shown.Scenes) {
		d.grips.Hover(d.lookAt(view), at, d.places(view))
	}
	if in.Wheel[1] != 0 && !d.panel.WheelUsed() {
		d.nearer(view, at, math.Pow(1.1, in.Wheel[1]), density)
	}
	switch {
	case in.Pressed[panel.LeftButton] && in.Shift:
		d.beginCut(view, at, density)
	case in.Pressed[panel.LeftButton] && d.grips.Near():
		d.grips.Take(at)
		d.drag, d.edit = drag{what: gripping, view: view, from: at, last: at}, view
	case in.Pressed[panel.LeftButton]:
		d.drag = drag{what: turning, view: view, from: at, last: at}
	case in.Pressed[panel.RightButton], in.Pressed[panel.MiddleButton]:
		d.drag = drag{what: shifting, view: view, from: at, last: at}
	case d.grips.Near(): // its words stand there
	default:
		d.hover = d.readAt(view, at, density)
	}
}

// viewAt is the view under a place of the page; -1: none.
func (d *Desk) viewAt(at panel.Point) int {
	for i, r := range d.lay.Views {
		if r.Holds(at) {
			return i
		}
	}
	return -1
}

// dragOn goes on with what the hand has begun.
func (d *Desk) dragOn(in panel.Input, at panel.Point, density float64) {
	g := &d.drag
	dx, dy := at.X-g.last.X, at.Y-g.last.Y
	if math.Hypot(at.X-g.from.X, at.Y-g.from.Y) > clickReach {
		g.moved = true
	}
	if g.moved && (dx != 0 || dy != 0) {
		switch g.what {
		case turning:
			d.turn(dx, dy)
		case shifting:
			d.shift(dx, dy, density)
		case cutting:
			d.dragCut(at, density)
		case gripping:
			d.dragGrip(g.view, at, in.Shift)
		}
	}
	g.last = at
	if in.Down[panel.LeftButton] || in.Down[panel.RightButton] || in.Down[panel.MiddleButton] {
		return
	}
	if (g.what == turning || g.what == gripping) && !g.moved {
		d.pinAt(g.view, at, density)
	}
	if g.what == gripping {
		d.letGrip()
	}
	d.drag = drag{}
	d.again = true // once more with full care
}

// turn orbits by a drag of dx, dy points.
func (d *Desk) turn(dx, dy float64) {
	const perPoint = 0.35 // deg
	d.camera = d.camera.Orbited(-dx*perPoint, dy*perPoint)
	d.looks.View, d.fly.On = "", false
}

// shift moves the drawing along with the pointer.
func (d *Desk) shift(dx, dy, density float64) {
	d.camera = d.camera.Moved(dx*density, dy*density, layout.Pixels(d.lay.Views[0], density).Dy())
	d.looks.View = ""
}

// nearer zooms about a place of the page.
func (d *Desk) nearer(view int, at panel.Point, factor, density float64) {
	r := layout.Pixels(d.lay.Views[view], density)
	x, y := at.X*density-float64(r.Min.X), at.Y*density-float64(r.Min.Y)
	d.camera = d.camera.Zoomed(factor, x, y, r.Dx(), r.Dy())
	d.looks.View, d.fly.On = "", false
	d.again = true
}

// hit is the place of the plate under a place of the page, in plan, mm.
func (d *Desk) hit(view int, at panel.Point, density float64) (mesh.Point, bool) {
	if d.shown == nil || view >= len(d.shown.Scenes) {
		return mesh.Point{}, false
	}
	r := layout.Pixels(d.lay.Views[view], density)
	h, ok := d.shown.Scenes[view].Pick(d.camera, at.X*density-float64(r.Min.X), at.Y*density-float64(r.Min.Y), r.Dx(), r.Dy())
	if !ok {
		return mesh.Point{}, false
	}
	return d.shown.Designs[view].Skeleton.Plan(h)
}

// rows are what is read, as names and values.
func (h *hover) rows() [][2]string {
	place := [2]string{"place: x to treble, y to neck", fmt.Sprintf("x %s, y %s mm", scale.Fixed(h.read.X, 0), scale.Fixed(h.read.Y, 0))}
	if o := h.other; o != nil {
		a, b := &h.read, o
		if h.onB {
			a, b = b, a
		}
		pair := func(x, y float64, digits int, unit string) string {
			return scale.Fixed(x, digits) + "   " + scale.Fixed(y, digits) + "   " + scale.Fixed(y-x, digits) + " " + unit
		}
		return [][2]string{place, {"A, B, B less A: sink", pair(a.Sink, b.Sink, gaugeDigits, "mm")},
			{"stress along, outer", pair(a.Outer.Along, b.Outer.Along, 2, "MPa")}, {"inner", pair(a.Inner.Along, b.Inner.Along, 2, "MPa")},
			{"stress across, outer", pair(a.Outer.Across, b.Outer.Across, 2, "MPa")}, {"inner", pair(a.Inner.Across, b.Inner.Across, 2, "MPa")}}
	}
	return [][2]string{
		place,
		{"sink", scale.Fixed(h.read.Sink, gaugeDigits) + " mm"},
		{"stress along the grain, outer", scale.Fixed(h.read.Outer.Along, 2) + " MPa"},
		{"inner", scale.Fixed(h.read.Inner.Along, 2) + " MPa"},
		{"stress across the grain, outer", scale.Fixed(h.read.Outer.Across, 2) + " MPa"},
		{"inner", scale.Fixed(h.read.Inner.Across, 2) + " MPa"},
		{"thickness", scale.Fixed(h.wood.Thickness, 2) + " mm"},
		{"height over the rim", scale.Fixed(h.wood.Height, 1) + " mm"},
		{"slope", scale.Fixed(h.wood.Slope, 1) + " degrees"},
	}
}

// readAt reads the place under the pointer; nil beside the plate.
func (d *Desk) readAt(view int, at panel.Point, density float64) *hover {
	q, ok := d.hit(view, at, density)
	if !ok {
		return nil
	}
	now := d.shown.Designs[view].Now
	r, inside := answer.ReadingAt(now, q)
	if !inside {
		return nil
	}
	h := &hover{at: at, read: r, wood: now.Top.Built.PlateAt(q)}
	if len(d.shown.Designs) == 2 {
		if other, inside := answer.ReadingAt(d.shown.Designs[1-view].Now, q); inside {
			h.other, h.onB, h.place = &other, view == 1, q
		}
	}
	return h
}

// drawHover shows what is read under the pointer.
func (d *Desk) drawHover(l *panel.List) {
	h := d.hover
	if h == nil || d.over != noSheet || d.drag.what != noDrag {
		return
	}
	rows := h.rows()
	width := 268.0
	const line = 15.0
	if h.other != nil {
		width = 312
		d.drawTwin(l, h)
	}
	r := panel.Rect{X: h.at.X + 16, Y: h.at.Y + 16, W: width, H: line*float64(len(rows)) + 10}
	if r.Right() > d.lay.View.Right()-4 {
		r.X = h.at.X - 12 - r.W
	}
	if r.Bottom() > d.lay.View.Bottom()-4 {
		r.Y = h.at.Y - 12 - r.H
	}
	l.Rect(r, panel.Slip())
	l.Frame(r, 1, panel.Pencil())
	for i, w := range rows {
		row := panel.Rect{X: r.X + 8, Y: r.Y + 5 + line*float64(i), W: r.W - 16, H: line}
		l.TextIn(row, panel.Small, panel.Left, panel.SoftInk(), w[0])
		l.TextIn(row, panel.Small, panel.Right, panel.Ink(), w[1])
	}
}

// gaugeDigits are the decimals of a reading in mm: tenths of what a dial of
// hundredths shows.
const gaugeDigits = 3

// pinsApart is how near two pins may stand, mm.
const pinsApart = 2.0

// pinAt pins the place under a click.
func (d *Desk) pinAt(view int, at panel.Point, density float64) {
	q, ok := d.hit(view, at, density)
	if !ok {
		return
	}
	if d.lesson != nil && d.lesson.Asking {
		d.lesson.Reveal(&q)
		d.showStep()
		return
	}
	n := 1
	for _, p := range d.want.Pins {
		var k int
		if _, err := fmt.Sscanf(p.Name, "pin %d", &k); err == nil && k >= n {
			n = k + 1
		}
	}
	for i := range q {
		q[i] = math.Round(10*q[i]) / 10
	}
	for _, p := range d.want.Pins {
		if math.Hypot(p.At[0]-q[0], p.At[1]-q[1]) < pinsApart {
			return // the second of two clicks
		}
	}
	d.want.Pins = append(d.want.Pins[:len(d.want.Pins):len(d.want.Pins)], scene.Pin{Name: fmt.Sprintf("pin %d", n), At: q})
}

// beginCut starts the line of a section.
func (d *Desk) beginCut(view int, at panel.Point, density float64) {
	if q, ok := d.hit(view, at, density); ok {
		d.drag = drag{what: cutting, view: view, from: at, last: at, cut: q}
	}
}

// dragCut draws the section's line on.
func (d *Desk) dragCut(at panel.Point, density float64) {
	if q, ok := d.hit(d.drag.view, at, density); ok && math.Hypot(q[0]-d.drag.cut[0], q[1]-d.drag.cut[1]) > 5 {
		d.want.Cut = stage.Cut{Kind: stage.FreeCut, From: d.drag.cut, To: q}
	}
}
