package drawing

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"archload/cases/tree"
	"archload/mesh"
	"archload/mesh/plane"
)

// Limits on the marks of a drawing.
const (
	markNear   = 5.0  // mm: a mark must lie farther from the origin to point anywhere
	markLean   = 30.0 // deg by which the neck's mark may lie off the page's axis
	originSize = 30.0 // mm: a larger mark has no clear middle
)

// isMark reports whether an element places the drawing and is no part of it.
func (e *svgElement) isMark() bool {
	for _, name := range e.names() {
		name = strings.ToLower(name)
		if strings.HasPrefix(name, "ruler") || slices.Contains([]string{"origin", "neck", "tail", "bass", "treble"}, name) {
			return true
		}
	}
	return false
}

// mark returns the middle and the size of what is drawn under a mark's name,
// mm on the page; nil if there is no such element.
func (w *svgSheet) mark(name string) (middle *mesh.Point, size float64, err error) {
	var found []*svgElement
	w.root.each(func(e *svgElement) {
		same := func(n string) bool { return strings.EqualFold(n, name) }
		if e != w.root && !e.undrawn() && slices.ContainsFunc(e.names(), same) && (e.parent == nil || !slices.ContainsFunc(e.parent.names(), same)) {
			found = append(found, e)
		}
	})
	switch {
	case len(found) == 0:
		return nil, 0, nil
	case len(found) > 1:
		return nil, 0, found[1].faultf("a second mark of this name (the first is on line %d); want one", found[0].line)
	}
	pts, err := w.drawnPoints(found[0])
	if err != nil {
		return nil, 0, err
	}
	if len(pts) == 0 {
		return nil, 0, found[0].faultf("a mark that holds no shape; want a small circle or a cross of lines")
	}
	lo, hi := plane.Bounds(pts)
	return &mesh.Point{(lo[0] + hi[0]) / 2, (lo[1] + hi[1]) / 2}, max(hi[0]-lo[0], hi[1]-lo[1]), nil
}

// drawnPoints returns points of all shapes of an element, mm on the page.
func (w *svgSheet) drawnPoints(e *svgElement) ([]mesh.Point, error) {
	shapes, err := w.shapes(e, nil)
	if err != nil {
		return nil, err
	}
	var pts []mesh.Point
	for _, s := range shapes {
		for _, c := range s.chains {
			pts = append(pts, c.start)
			for i := range c.segs {
				if pts = c.segs[i].sample(pts, 0); len(pts) > drawnMost {
					return nil, s.elem.faultf("want at most %d points", drawnMost)
				}
			}
		}
	}
	return pts, nil
}

// readMarks finds the origin and the directions to the neck and the treble
// side on the page.
func (w *svgSheet) readMarks() error {
	at := map[string]*mesh.Point{}
	for _, name := range []string{"origin", "neck", "tail", "bass", "treble"} {
		middle, size, err := w.mark(name)
		if err != nil {
			return err
		}
		if name == "origin" && size > originSize {
			return w.root.faultf("the mark \"origin\" measures %.3g mm; want a small one, at most %g mm", size, originSize)
		}
		at[name] = middle
	}
	if at["origin"] == nil {
		return w.root.faultf("no mark \"origin\"; want a small circle or cross of this name on the centre line at the bridge's place")
	}
	w.origin = *at["origin"]
	neck, err := w.pointing(at, "neck", "tail")
	if err != nil {
		return err
	}
	if w.up, err = w.alongPage(neck); err != nil {
		return err
	}
	treble, err := w.pointing(at, "treble", "bass")
	if err != nil {
		return err
	}
	w.right = mesh.Point{-w.up[1], w.up[0]} // on a page whose y runs down
	side := treble[0]*w.right[0] + treble[1]*w.right[1]
	if math.Abs(side) < markNear {
		return w.root.faultf("the marks \"treble\" or \"bass\" lie on the centre line; want them at their sides")
	}
	if side < 0 {
		w.mirrored = true
		w.right = mesh.Point{-w.right[0], -w.right[1]}
	}
	return nil
}

// pointing returns the direction to the first mark, or away from the second.
func (w *svgSheet) pointing(at map[string]*mesh.Point, to, from string) (mesh.Point, error) {
	var out []mesh.Point
	for _, name := range []string{to, from} {
		p := at[name]
		if p == nil {
			continue
		}
		v := mesh.Point{p[0] - w.origin[0], p[1] - w.origin[1]}
		if math.Hypot(v[0], v[1]) < markNear {
			return v, w.root.faultf("the mark %q lies on the origin; want it away from it", name)
		}
		if name == from {
			v = mesh.Point{-v[0], -v[1]}
		}
		out = append(out, v)
	}
	switch {
	case len(out) == 0:
		return mesh.Point{}, w.root.faultf("no mark %q or %q; want one, so that the drawing cannot be read the wrong way round", to, from)
	case len(out) == 2 && out[0][0]*out[1][0]+out[0][1]*out[1][1] <= 0:
		return mesh.Point{}, w.root.faultf("the marks %q and %q lie on the same side of the origin; want them on opposite sides", to, from)
	}
	return out[0], nil
}

// alongPage returns the direction of the page's edges nearest to v.
func (w *svgSheet) alongPage(v mesh.Point) (mesh.Point, error) {
	k := 0
	if math.Abs(v[1]) > math.Abs(v[0]) {
		k = 1
	}
	if off := math.Atan2(math.Abs(v[1-k]), math.Abs(v[k])) * 180 / math.Pi; off > markLean {
		return v, w.root.faultf("seen from the origin the neck lies %.0f degrees off the page's edges; want the centre line along one of them", off)
	}
	var out mesh.Point
	out[k] = math.Copysign(1, v[k])
	return out, nil
}

// checkRuler refuses a drawing in which a line of stated length has another.
func (w *svgSheet) checkRuler() error {
	var fault error
	w.root.each(func(e *svgElement) {
		for _, name := range e.names() {
			text, ok := strings.CutPrefix(strings.ToLower(name), "ruler")
			if !ok || fault != nil || e.undrawn() {
				continue
			}
			fault = w.measure(e, strings.TrimFunc(text, isNameBreak))
		}
	})
	return fault
}

// measure compares a ruler with the length its name states.
func (w *svgSheet) measure(e *svgElement, stated string) error {
	dim, _ := tree.DimensionOf(tree.Length(0))
	want, err := dim.Parse(strings.ReplaceAll(stated, "_", " "))
	if err != nil || want <= 0 {
		return e.faultf("want a ruler's length in its name, as in \"ruler 300 mm\"")
	}
	pts, err := w.drawnPoints(e)
	if err != nil {
		return err
	}
	long := 0.0
	if len(pts) > 0 {
		lo, hi := plane.Bounds(pts)
		long = math.Hypot(hi[0]-lo[0], hi[1]-lo[1])
	}
	if math.Abs(long-want) > 0.005*want {
		return e.faultf("measures %.4g mm in this drawing, want %.4g: its scale is off by a factor of %s", long, want, fmt.Sprintf("%.4g", long/want))
	}
	return nil
}
