package label

import (
	"math"
	"slices"

	"archload/viz/panel"
	"archload/viz/scene"
)

// Word is a word about a place of the page.
type Word struct {
	Text  string
	Short string // what stands in its place where there is no room for all of it; "": nothing does
	Kind  scene.LabelKind
	At    panel.Point // of what it names, points
	Off   panel.Point // unit: where it stands off from there; zero: away from the middle of the drawing
}

// Page is where words find places.
type Page struct {
	Atlas  *panel.Atlas
	In     panel.Rect
	Middle panel.Point             // of the drawing
	Object func(r panel.Rect) bool // a rectangle touches the drawing
	Bridge func(r panel.Rect) bool // or what stands on it
	Taken  []panel.Rect            // by other words

	dots []panel.Point // places that words name: no value of a line hides one
}

// Tag is a word in its place.
type Tag struct {
	Word
	Box  panel.Rect
	face panel.Face
	led  bool // it stands off: a thin line leads back
}

// end is where the line to what is named meets the word.
func (t Tag) end() panel.Point {
	b := t.Box
	return panel.Point{X: math.Max(b.X, math.Min(b.Right(), t.At.X)), Y: math.Max(b.Y, math.Min(b.Bottom(), t.At.Y))}
}

// Place finds the places, for what must be said first before the values of lines. A word without
// a place is left out.
func (p *Page) Place(words []Word) []Tag {
	var out []Tag
	p.dots = nil
	for _, w := range words {
		if w.Kind == scene.Part || w.Kind == scene.Reading {
			p.dots = append(p.dots, w.At)
		}
	}
	for _, level := range []bool{false, true} {
		for _, w := range words {
			if (w.Kind == scene.Level) != level {
				continue
			}
			if t, ok := p.place(w); ok {
				out = append(out, t)
				p.Taken = append(p.Taken, t.Box)
			}
		}
		if !level {
			p.untangle(out)
		}
	}
	return out
}

// untangle changes the places of two words whose lines cross, if that frees them.
func (p *Page) untangle(tags []Tag) {
	own := p.Taken[len(p.Taken)-len(tags):]
	for range 3 { // a change may make another possible
		for i := range tags {
			for j := range i {
				if a, b := tags[i], tags[j]; a.led && b.led && crossing(a, b) {
					p.change(tags, own, i, j)
				}
			}
		}
	}
}

// change lets words i and j change places where both are free and their lines cross no more.
func (p *Page) change(tags []Tag, own []panel.Rect, i, j int) {
	a, b := tags[i], tags[j]
	a.Box, b.Box = p.box(a, b.Box.Centre(), panel.Point{}), p.box(b, a.Box.Centre(), panel.Point{})
	was := [2]panel.Rect{own[i], own[j]}
	own[i], own[j] = panel.Rect{}, b.Box
	ok := p.free(a.Box, p.Object) && !crossing(a, b)
	own[i], own[j] = a.Box, panel.Rect{}
	if ok = ok && p.free(b.Box, p.Object); ok {
		tags[i], tags[j], own[j] = a, b, b.Box
		return
	}
	own[i], own[j] = was[0], was[1]
}

// crossing tells whether the lines of two words cross.
func crossing(a, b Tag) bool {
	side := func(p, q, r panel.Point) float64 { return (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X) }
	c, d := a.end(), b.end()
	return side(a.At, c, b.At)*side(a.At, c, d) < 0 && side(b.At, d, a.At)*side(b.At, d, c) < 0
}

func (p *Page) place(w Word) (Tag, bool) {
	t := Tag{Word: w, face: panel.Small}
	switch w.Kind {
	case scene.Level:
		t.Box = p.box(t, w.At, panel.Point{})
		return t, p.free(t.Box, p.Bridge) && !slices.ContainsFunc(p.dots, func(d panel.Point) bool { return t.Box.Inset(-3, -3).Holds(d) })
	case scene.SectorForce, scene.Part, scene.Force:
		t.face = panel.SmallBold
	}
	off := w.Off
	if off == (panel.Point{}) || w.Kind == scene.Part || w.Kind == scene.Reading {
		off = p.away(w.At)
	}
	box, cost, ok := p.near(t, off)
	if w.Short != "" && (!ok || cost > distant) {
		short := t
		short.Text = w.Short
		if b, c, found := p.near(short, off); found && (!ok || c < 0.5*cost) {
			t, box, ok = short, b, true
		}
	}
	if w.Kind == scene.Orientation && cost > distant {
		return t, false // it would lead across the page
	}
	if !ok {
		if w.Short != "" {
			t.Text = w.Short
		}
		if box, ok = p.anywhere(t); !ok {
			return t, false
		}
	}
	t.Box = box
	far := 16.0
	if w.Kind == scene.Orientation {
		far = 44
	}
	end := t.end()
	t.led = math.Hypot(end.X-w.At.X, end.Y-w.At.Y) > far
	return t, true
}

// away is the direction from the middle of the drawing through a place; up in the middle.
func (p *Page) away(at panel.Point) panel.Point {
	n := math.Hypot(at.X-p.Middle.X, at.Y-p.Middle.Y)
	if n < 1 {
		return panel.Point{Y: -1}
	}
	return panel.Point{X: (at.X - p.Middle.X) / n, Y: (at.Y - p.Middle.Y) / n}
}

// box is where a word stands beside a place.
func (p *Page) box(t Tag, at, off panel.Point) panel.Rect {
	w, h := p.Atlas.TextWidth(t.face, t.Text), t.face.LineHeight()
	c := panel.Point{X: at.X + off.X*(w/2+6), Y: at.Y + off.Y*(h/2+4)}
	return panel.Rect{X: c.X - w/2 - 3, Y: c.Y - h/2, W: w + 6, H: h}
}

// free tells whether a word may stand in a rectangle.
func (p *Page) free(r panel.Rect, cover func(panel.Rect) bool) bool {
	if r.X < p.In.X+2 || r.Y < p.In.Y || r.Right() > p.In.Right()-2 || r.Bottom() > p.In.Bottom() {
		return false
	}
	return !slices.ContainsFunc(p.Taken, func(o panel.Rect) bool { return !r.Meet(o).Empty() }) && (cover == nil || !cover(r))
}

// distant is how far off what it names a word stands too far to be read with it, if fewer words stand nearer, points.
const distant = 90.0

// near looks along a direction and to both sides of it for the nearest place that is free; to go
// aside is worth going as much farther.
func (p *Page) near(t Tag, off panel.Point) (best panel.Rect, cost float64, ok bool) {
	const step, reach, aside = 7.0, 420.0, 34.0 // points; points for a radian
	least := math.Inf(1)
	for far := 0.0; far < reach && far < least; far += step {
		for _, turn := range []float64{0, 0.3, -0.3, 0.6, -0.6, 1, -1, 1.5, -1.5, 2.2, -2.2} {
			cost := far + aside*math.Abs(turn)
			if cost >= least {
				continue
			}
			sin, cos := math.Sincos(turn)
			way := panel.Point{X: off.X*cos - off.Y*sin, Y: off.X*sin + off.Y*cos}
			if r := p.box(t, panel.Point{X: t.At.X + far*way.X, Y: t.At.Y + far*way.Y}, way); p.free(r, p.Object) {
				best, ok, least = r, true, cost
			}
		}
	}
	return best, least, ok
}

// anywhere is the nearest place of the page that is free, over the drawing if there is none
// beside it: for what must be said.
func (p *Page) anywhere(t Tag) (best panel.Rect, ok bool) {
	if t.Kind == scene.Orientation {
		return best, false
	}
	const step, beyond = 9.0, 12.0
	from := t.At
	if t.Kind == scene.Force { // at the end of an arrow, clear of its head
		from = panel.Point{X: from.X + beyond*t.Off.X, Y: from.Y + beyond*t.Off.Y}
	}
	for _, cover := range []func(panel.Rect) bool{p.Object, p.Bridge, nil} {
		least := math.Inf(1)
		for y := p.In.Y; y < p.In.Bottom(); y += step {
			for x := p.In.X; x < p.In.Right(); x += step {
				if far := math.Hypot(x-from.X, y-from.Y); far < least {
					if r := p.box(t, panel.Point{X: x, Y: y}, panel.Point{}); p.free(r, cover) {
						best, ok, least = r, true, far
					}
				}
			}
		}
		if ok {
			return best, true
		}
	}
	return best, false
}
