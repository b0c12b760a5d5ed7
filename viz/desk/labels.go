package desk

import (
	"math"

	"archload/viz/panel"
	"archload/viz/scene"
)

// tag is a word of the scene on the page.
type tag struct {
	at   panel.Rect
	from panel.Point // what it names
	led  bool        // it stands off from there: a thin line leads back
	face panel.Face
	of   scene.Label
}

// drawLabels writes the words of the scene: those that name something stand
// outside the plate's silhouette, with a thin line to what they name, and none
// covers another. Values of lines and readings stay where they are, or are left
// out if there is no room.
func (d *Desk) drawLabels(l *panel.List, r panel.Rect, i int, s *scene.Scene) {
	shape := d.silhouette(r, s)
	taken := append(d.headGround(i), d.legendGround())
	var tags []tag
	for _, lead := range []bool{true, false} { // what must be said first
		for _, w := range s.Labels {
			if (w.Kind != scene.Level) != lead {
				continue
			}
			t, ok := d.tag(l, r, i, s, w, shape, taken)
			if !ok {
				continue
			}
			taken = append(taken, t.at)
			tags = append(tags, t)
		}
	}
	for _, t := range tags {
		t.draw(l)
	}
}

// tag finds the place of a word; ok is false if it is not to be seen.
func (d *Desk) tag(l *panel.List, r panel.Rect, i int, s *scene.Scene, w scene.Label, shape []panel.Point, taken []panel.Rect) (t tag, ok bool) {
	x, y, ok := d.project(r, w.At)
	if !ok || !r.Holds(panel.Point{X: x, Y: y}) || w.Kind == scene.Orientation && d.hides(i, s, w) || w.Kind == scene.Level && d.hides(i, s, w) {
		return t, false
	}
	t = tag{from: panel.Point{X: x, Y: y}, of: w, face: panel.Small}
	if w.Kind == scene.SectorForce || w.Kind == scene.Part || w.Kind == scene.Force {
		t.face = panel.SmallBold
	}
	off := d.off(r, w)
	t.at = tagPlace(l, t.from, off, t.face, w.Text)
	if w.Kind == scene.Level {
		if math.Abs(d.camera.Pitch) < leastPitch {
			return t, false // the lines lie too close
		}
		return t, alone(t.at, taken) && inside(r, t.at)
	}
	if off == (panel.Point{}) || w.Kind == scene.Part || w.Kind == scene.Reading {
		off = away(t.from, shape)
	}
	keepOff := shape
	if w.Kind == scene.Reading || w.Kind == scene.Force {
		keepOff = nil // it stands beside its ring, or its arrow
	}
	var free bool
	if t.at, free = outside(l, r, t, off, keepOff, taken); !free { // the plate fills the page
		t.at, _ = outside(l, r, t, off, nil, taken)
	}
	c := t.at.Centre()
	t.led = math.Hypot(c.X-t.from.X, c.Y-t.from.Y) > t.at.W/2+t.at.H+8
	return t, true
}

// leastPitch is how far above the plate's level the eye must stand for values on
// lines, deg.
const leastPitch = 18

// outside looks for a place along a direction, and beside it, where a word
// meets neither the plate nor other words: the first that is free, near before
// far; free is false if there is none, and the word stands where it would without them.
func outside(l *panel.List, r panel.Rect, t tag, off panel.Point, shape []panel.Point, taken []panel.Rect) (at panel.Rect, free bool) {
	for far := 0.0; far < 900; far += 9 {
		for _, turn := range []float64{0, 0.35, -0.35, 0.75, -0.75, 1.2, -1.2, 1.7, -1.7, 2.3, -2.3, math.Pi} {
			sin, cos := math.Sincos(turn)
			way := panel.Point{X: off.X*cos - off.Y*sin, Y: off.X*sin + off.Y*cos}
			at = tagPlace(l, panel.Point{X: t.from.X + far*way.X, Y: t.from.Y + far*way.Y}, way, t.face, t.of.Text)
			if inside(r, at) && alone(at, taken) && !meets(at, shape) {
				return at, true
			}
		}
	}
	return t.at, false
}

// away is the direction from the middle of the silhouette through a place; up if
// it lies in the middle.
func away(p panel.Point, shape []panel.Point) panel.Point {
	var c panel.Point
	for _, q := range shape {
		c.X, c.Y = c.X+q.X/float64(len(shape)), c.Y+q.Y/float64(len(shape))
	}
	n := math.Hypot(p.X-c.X, p.Y-c.Y)
	if len(shape) == 0 || n < 1 {
		return panel.Point{Y: -1}
	}
	return panel.Point{X: (p.X - c.X) / n, Y: (p.Y - c.Y) / n}
}

// silhouette is the plate's edge on the page.
func (d *Desk) silhouette(r panel.Rect, s *scene.Scene) []panel.Point {
	var out []panel.Point
	for _, p := range s.Edge {
		if x, y, ok := d.project(r, p); ok {
			out = append(out, panel.Point{X: x, Y: y})
		}
	}
	return out
}

// meets tells whether a rectangle touches a closed line or lies within.
func meets(r panel.Rect, shape []panel.Point) bool {
	in := false
	c := r.Centre()
	for i, a := range shape {
		b := shape[(i+1)%len(shape)]
		if r.Holds(a) {
			return true
		}
		if (a.Y > c.Y) != (b.Y > c.Y) && c.X < a.X+(c.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}

func inside(r, in panel.Rect) bool {
	return in.X >= r.X && in.Y >= r.Y && in.Right() <= r.Right() && in.Bottom() <= r.Bottom()
}

func alone(r panel.Rect, taken []panel.Rect) bool {
	for _, o := range taken {
		if !r.Meet(o).Empty() {
			return false
		}
	}
	return true
}

// draw writes the word, and the line that leads to it.
func (t tag) draw(l *panel.List) {
	if t.led {
		c := t.at.Centre()
		end := panel.Point{X: math.Max(t.at.X, math.Min(t.at.Right(), t.from.X)), Y: math.Max(t.at.Y, math.Min(t.at.Bottom(), t.from.Y))}
		if math.Abs(t.from.X-c.X) > t.at.W/2 {
			end.Y = c.Y
		}
		l.Line(t.from, end, 1, panel.Pencil())
		l.Disc(t.from, 1.8, panel.SoftInk())
	}
	ground := paperColor()
	ground.A = 200
	ink := panel.Ink()
	switch t.of.Kind {
	case scene.Orientation:
		ink = panel.SoftInk()
		ground.A = 0
	case scene.Level:
		ground.A = 110
	}
	if ground.A > 0 {
		l.Rect(t.at, ground)
	}
	l.TextIn(t.at, t.face, panel.Middle, ink, t.of.Text)
}

// hides says whether a word of view i stands behind something; worked out once
// for each camera, when the hand has let go.
func (d *Desk) hides(i int, s *scene.Scene, w scene.Label) bool {
	if d.drag.what != noDrag {
		return w.Kind == scene.Level
	}
	if d.seen.camera != d.camera || d.seen.of != d.shown {
		d.seen = sight{d.camera, d.shown, map[hiddenWord]bool{}}
	}
	k := hiddenWord{i, w.Text, w.At}
	h, known := d.seen.hidden[k]
	if !known {
		at := w.At
		off := wordOff
		if w.Kind == scene.Level {
			off = 1
		}
		for k := range at {
			at[k] += off * w.Toward[k]
		}
		h = s.Hides(d.camera, at)
		d.seen.hidden[k] = h
	}
	return h
}

// wordOff is how far off the rim a word is taken to stand, mm.
const wordOff = 12.0

// off is where on the page a label stands off its place to, a unit step.
func (d *Desk) off(r panel.Rect, w scene.Label) panel.Point {
	if w.Toward == ([3]float64{}) || w.Kind == scene.Level {
		return panel.Point{}
	}
	far := w.At
	for k := range far {
		far[k] += 10 * w.Toward[k]
	}
	x, y, ok := d.project(r, w.At)
	x2, y2, ok2 := d.project(r, far)
	n := math.Hypot(x2-x, y2-y)
	if !ok || !ok2 || n < 1e-6 {
		return panel.Point{}
	}
	return panel.Point{X: (x2 - x) / n, Y: (y2 - y) / n}
}

// tagPlace is where a word stands beside a place.
func tagPlace(l *panel.List, at, off panel.Point, face panel.Face, text string) panel.Rect {
	w, h := l.Atlas.TextWidth(face, text), face.LineHeight()
	c := panel.Point{X: at.X + off.X*(w/2+6), Y: at.Y + off.Y*(h/2+4)}
	return panel.Rect{X: c.X - w/2 - 3, Y: c.Y - h/2, W: w + 6, H: h}
}
