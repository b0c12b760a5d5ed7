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
	Arrows [][2]panel.Point        // shafts that words rather leave free

	dots   []panel.Point // places that words name: no value of a line hides one
	fixed  []panel.Rect  // what was taken before
	placed []Tag
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
	p.dots, p.fixed, p.placed = nil, p.Taken, nil
	var whole []string // words of those placed
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
				p.placed, whole = append(p.placed, t), append(whole, w.Text)
			}
		}
		if !level {
			p.clear(whole)
		}
	}
	p.Taken = p.fixed
	for _, t := range p.placed {
		p.Taken = append(p.Taken, t.Box)
	}
	return p.placed
}

// clear places words anew whose lines run through others, or that were shortened for others, now that all are known, and
// lets two of them change places where that alone helps.
func (p *Page) clear(whole []string) {
	for again, round := true, 0; again && round < 3; round++ { // a change may make another possible
		again = false
		for i, t := range p.placed {
			if was := p.mess(t, i); was > 0 || round == 0 && t.Text != whole[i] {
				again = p.moved(i, whole[i], was) || again
			}
		}
		again = p.untangle() || again
	}
}

// untangle lets two words change places whose lines cross, if that frees them.
func (p *Page) untangle() (better bool) {
	for i := range p.placed {
		for j := range i {
			if a, b := p.placed[i], p.placed[j]; a.led && b.led && crossing(a, b) {
				better = p.change(i, j) || better
			}
		}
	}
	return better
}

// moved places word i anew if that is less in the way than it is, in all its words if they have room now.
func (p *Page) moved(i int, whole string, was float64) (better bool) {
	t := p.placed[i]
	p.placed[i] = Tag{}
	w := t.Word
	w.Text = whole
	n, ok := p.place(w)
	if better = ok && (len(n.Text) > len(t.Text) || p.mess(n, i) < was); better {
		t = n
	}
	p.placed[i] = t
	return better
}

// change lets words i and j change places where both are free and less is in the way.
func (p *Page) change(i, j int) (better bool) {
	a, b := p.placed[i], p.placed[j]
	was := p.mess(a, i) + p.mess(b, j)
	n, m := a, b
	n.Box, m.Box = p.box(a, b.Box.Centre(), panel.Point{}), p.box(b, a.Box.Centre(), panel.Point{})
	p.placed[i], p.placed[j] = Tag{}, Tag{}
	if p.free(n.Box, p.Object) && p.free(m.Box, p.Object) && n.Box.Meet(m.Box).Empty() {
		p.placed[i], p.placed[j] = n, m
		if p.mess(n, i)+p.mess(m, j) < was {
			return true
		}
	}
	p.placed[i], p.placed[j] = a, b
	return false
}

// What a word in the way is worth going farther for, points: a line through another word, two lines that cross, and an
// arrow under a word.
const (
	through = 160.0
	crossed = 50.0
	hidden  = 30.0
)

// mess is how far word t, the i-th of those placed or none of them, is in the way of the others and they in its own, points.
func (p *Page) mess(t Tag, i int) float64 {
	sum, end := 0.0, t.end()
	for _, a := range p.Arrows {
		if cuts(a[0], a[1], t.Box) {
			sum += hidden
		}
	}
	if t.led {
		for _, r := range p.fixed {
			if cuts(t.At, end, r) {
				sum += through
			}
		}
	}
	for j, o := range p.placed {
		if j != i && o.Text != "" {
			sum += between(t, o)
		}
	}
	return sum
}

// between is how far two words are in each other's way, points.
func between(t, o Tag) (sum float64) {
	if t.led && cuts(t.At, t.end(), o.Box) {
		sum += through
	}
	if o.led && cuts(o.At, o.end(), t.Box) {
		sum += through
	}
	if t.led && o.led && crossing(t, o) {
		sum += crossed
	}
	return sum
}

// cross tells whether two lines, from a to b and from c to d, cross.
func cross(a, b, c, d panel.Point) bool {
	side := func(p, q, r panel.Point) float64 { return (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X) }
	return side(a, b, c)*side(a, b, d) < 0 && side(c, d, a)*side(c, d, b) < 0
}

// crossing tells whether the lines of two words cross.
func crossing(a, b Tag) bool { return cross(a.At, a.end(), b.At, b.end()) }

// cuts tells whether a line runs through a rectangle: then it ends in it or cuts one of its diagonals.
func cuts(a, b panel.Point, r panel.Rect) bool {
	return !r.Empty() && (r.Holds(a) || r.Holds(b) ||
		cross(a, b, panel.Point{X: r.X, Y: r.Y}, panel.Point{X: r.Right(), Y: r.Bottom()}) ||
		cross(a, b, panel.Point{X: r.X, Y: r.Bottom()}, panel.Point{X: r.Right(), Y: r.Y}))
}

func (p *Page) place(w Word) (Tag, bool) {
	t := Tag{Word: w, face: panel.Small}
	switch w.Kind {
	case scene.Level:
		t.Box = p.box(t, w.At, panel.Point{})
		return t, p.free(t.Box, p.Bridge) && p.mess(t, -1) == 0 && !slices.ContainsFunc(p.dots, func(d panel.Point) bool { return t.Box.Inset(-3, -3).Holds(d) })
	case scene.SectorForce, scene.Part, scene.Force:
		t.face = panel.SmallBold
	}
	off := w.Off
	if off == (panel.Point{}) || w.Kind == scene.Part || w.Kind == scene.Reading {
		off = p.away(w.At)
	}
	box, cost, ok := p.near(t, off, p.Object)
	if w.Kind == scene.Orientation {
		return t.in(box), ok && cost <= distant // else it would lead across the page
	}
	if (!ok || cost > astray) && p.In.W > 2*astray { // the drawing fills the page
		if b, c, found := p.near(t, off, p.Bridge); found && (!ok || c < 0.6*cost) {
			return t.in(b), true
		}
	}
	return p.shortened(t, off, box, cost, ok)
}

// shortened is a word in the place that was found for it, if any, or in fewer words much nearer, or wherever there is room.
func (p *Page) shortened(t Tag, off panel.Point, box panel.Rect, cost float64, ok bool) (Tag, bool) {
	short := t
	if t.Short != "" {
		short.Text = t.Short
	}
	if t.Short != "" && (!ok || cost > remote) {
		if b, c, found := p.near(short, off, p.Object); found && (!ok || c < 0.5*cost) {
			return short.in(b), true
		}
	}
	if ok {
		return t.in(box), true
	}
	box, ok = p.anywhere(short)
	return short.in(box), ok
}

// in is the word in a box, with a line if that stands off.
func (t Tag) in(box panel.Rect) Tag {
	t.Box = box
	far := 16.0
	if t.Kind == scene.Orientation {
		far = 44
	}
	end := t.end()
	t.led = math.Hypot(end.X-t.At.X, end.Y-t.At.Y) > far
	return t
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
	return !slices.ContainsFunc(p.fixed, func(o panel.Rect) bool { return !r.Meet(o).Empty() }) &&
		!slices.ContainsFunc(p.placed, func(o Tag) bool { return !r.Meet(o.Box).Empty() }) && (cover == nil || !cover(r))
}

// distant is how far off what it names a word that no line leads back stands too far to be read with it, points.
const distant = 90.0

// remote is how far off a word gives way to fewer of its words that stand much nearer, points.
const remote = 160.0

// astray is how far off its word a place on the drawing is better than one beside it, points.
const astray = 340.0

// near looks along a direction and to both sides of it for the nearest place that is free; to go
// aside, or into the way of other words, is worth going as much farther.
func (p *Page) near(t Tag, off panel.Point, cover func(panel.Rect) bool) (best panel.Rect, cost float64, ok bool) {
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
			if r := p.box(t, panel.Point{X: t.At.X + far*way.X, Y: t.At.Y + far*way.Y}, way); p.free(r, cover) {
				if cost += p.mess(t.in(r), -1); cost < least {
					best, ok, least = r, true, cost
				}
			}
		}
	}
	return best, least, ok
}

// anywhere is the nearest place of the page that is free, over the drawing if there is none
// beside it: for what must be said.
func (p *Page) anywhere(t Tag) (best panel.Rect, ok bool) {
	const beyond = 12.0
	from := t.At
	if t.Kind == scene.Force { // at the end of an arrow, clear of its head
		from = panel.Point{X: from.X + beyond*t.Off.X, Y: from.Y + beyond*t.Off.Y}
	}
	for _, cover := range []func(panel.Rect) bool{p.Object, p.Bridge, nil} {
		if best, ok = p.nearest(t, from, cover); ok {
			return best, true
		}
	}
	return best, false
}

// nearest is the place of the page nearest to another that is free, to be in the way of other words is worth going farther.
func (p *Page) nearest(t Tag, from panel.Point, cover func(panel.Rect) bool) (best panel.Rect, ok bool) {
	const step = 9.0
	least := math.Inf(1)
	for y := p.In.Y; y < p.In.Bottom(); y += step {
		for x := p.In.X; x < p.In.Right(); x += step {
			far := math.Hypot(x-from.X, y-from.Y)
			if far >= least {
				continue
			}
			if r := p.box(t, panel.Point{X: x, Y: y}, panel.Point{}); p.free(r, cover) {
				if far += p.mess(t.in(r), -1); far < least {
					best, ok, least = r, true, far
				}
			}
		}
	}
	return best, ok
}
