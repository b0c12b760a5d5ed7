package desk

import (
	"image"
	"maps"
	"math"

	"archload/viz/desk/label"
	"archload/viz/desk/layout"
	"archload/viz/panel"
	"archload/viz/scene"
)

// coverCell is the size of the squares in which a drawing covers the page, points.
const coverCell = 6.0

// leastPitch is how far above the plate's level the eye must stand for values on
// lines, deg: below, they lie too close.
const leastPitch = 18

// drawLabels writes the words of the scene that can be seen: those that name something stand
// outside what is drawn, with a thin line to what they name, and none covers another. Values of
// lines stay where they are, or are left out if there is no room.
func (d *Desk) drawLabels(l *panel.List, r panel.Rect, i int, s *scene.Scene) {
	density := d.atlas.Density
	all, bridge := d.covered(i, s, layout.Pixels(r, density))
	meets := func(c *scene.Covered) func(panel.Rect) bool {
		return func(b panel.Rect) bool {
			return c.Meets((b.X-r.X)*density, (b.Y-r.Y)*density, (b.Right()-r.X)*density, (b.Bottom()-r.Y)*density)
		}
	}
	x, y, _ := d.project(r, s.Centre)
	in := r
	in.Y, in.H = r.Y+d.lay.Head.All(), r.H-d.lay.Head.All() // below the title
	p := label.Page{Atlas: l.Atlas, In: in, Middle: panel.Point{X: x, Y: y}, Taken: d.taken(),
		Object: meets(all), Bridge: meets(bridge), Arrows: label.Arrows(s, func(p [3]float64) (x, y float64, ok bool) { return d.project(r, p) })}
	var words []label.Word
	for _, w := range s.Labels {
		x, y, ok := d.project(r, w.At)
		aside := w.Kind == scene.Orientation || w.Kind == scene.Level
		if !ok || !r.Holds(panel.Point{X: x, Y: y}) || aside && d.hides(i, s, w) || w.Kind == scene.Level && math.Abs(d.camera.Pitch) < leastPitch {
			continue
		}
		words = append(words, label.Word{Text: w.Text, Short: label.Short(w), Kind: w.Kind, At: panel.Point{X: x, Y: y}, Off: d.off(r, w)})
	}
	label.Draw(l, p.Place(words), paperColor())
}

// taken is what words of the drawings must not cover: legend, measures and the tab of the panel.
func (d *Desk) taken() []panel.Rect {
	out := []panel.Rect{d.legendGround()}
	for _, m := range d.measures() {
		out = append(out, m.Box(d.atlas))
	}
	if !d.alone && !d.lay.Bar.Empty() {
		out = append(out, d.sideTab())
	}
	return out
}

// covered is what scene i covers of its view, and its bridge alone, found anew when either or the
// camera changes. While the hand drags, words do not get out of each other's way for the little that
// the drawing's edge moves: what it covered before counts, but for the bridge.
func (d *Desk) covered(i int, s *scene.Scene, view image.Rectangle) (all, bridge *scene.Covered) {
	k := cover{of: s, camera: d.camera, size: view.Size(), density: d.atlas.Density}
	if i < len(d.covers) {
		if was := d.covers[i]; was.camera == k.camera && was.size == k.size && was.density == k.density {
			if was.of == k.of && (d.underHand || !was.held) {
				return was.all, was.bridge
			}
			if d.underHand {
				k.all, k.held = was.all, true
			}
		}
	}
	cell := coverCell * k.density
	if k.all == nil {
		k.all = s.Covered(d.camera, k.size.X, k.size.Y, cell)
	}
	k.bridge = s.Covered(d.camera, k.size.X, k.size.Y, cell, scene.BridgeSolids()...)
	d.covers = append(d.covers[:min(i, len(d.covers)):min(i, len(d.covers))], k)
	return k.all, k.bridge
}

// hides says whether a word of view i stands behind something; worked out once
// for each camera, when the hand has let go.
func (d *Desk) hides(i int, s *scene.Scene, w scene.Label) bool {
	if d.drag.what != noDrag {
		return w.Kind == scene.Level
	}
	switch {
	case d.seen.camera != d.camera || !d.underHand && (d.seen.of != d.shown || d.seen.briefly):
		d.seen = sight{camera: d.camera, of: d.shown, hidden: map[hiddenWord]bool{}}
	case d.seen.of != d.shown: // the words at the rim stay where they were
		d.seen.of, d.seen.briefly = d.shown, true
		maps.DeleteFunc(d.seen.hidden, func(k hiddenWord, _ bool) bool { return k.kind == scene.Level })
	}
	k := hiddenWord{i, w.Kind, w.Text, w.At}
	if w.Kind == scene.Orientation {
		k.at = [3]float64{}
	}
	if _, known := d.seen.hidden[k]; !known {
		d.sightWords(i, s)
	}
	return d.seen.hidden[k]
}

// sightWords finds which words of view i are hidden, all that may be at once.
func (d *Desk) sightWords(i int, s *scene.Scene) {
	var words []hiddenWord
	var places [][3]float64
	for _, w := range s.Labels {
		off, k := wordOff, hiddenWord{i, w.Kind, w.Text, w.At}
		switch {
		case w.Kind == scene.Orientation && !d.seen.briefly:
			k.at = [3]float64{}
		case w.Kind == scene.Level:
			if off = 1; d.camera.Pitch < 0 { // read through the plate, on its inner face
				off = -throughPlate
			}
		default:
			continue
		}
		at := w.At
		for k := range at {
			at[k] += off * w.Toward[k]
		}
		words, places = append(words, k), append(places, at)
	}
	var before []string
	if d.seen.briefly {
		before = scene.BridgeSolids()
	}
	for k, h := range s.Hides(d.camera, places, before...) {
		d.seen.hidden[words[k]] = h
	}
}

// throughPlate is how far below the outer face a place is taken to lie that is seen from inside, mm: beyond the thickest plate.
const throughPlate = 10.0

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
