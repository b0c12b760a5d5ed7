package cases

import (
	"errors"
	"fmt"
	"math"

	"archload/mesh"
)

// svgShape is what one element draws, mm on the page.
type svgShape struct {
	elem   *svgElement
	chains []svgChain
}

// shapes gathers the visible shapes of an element and all below it. A mark
// among them is an error: it would be taken for a line, or a line for it.
func (w *drawing) shapes(e *svgElement, out []svgShape) ([]svgShape, error) {
	for _, k := range e.kids {
		if k.undrawn() {
			continue
		}
		if k.isMark() && !e.isMark() {
			return nil, k.faultf("a mark within %q; want it outside of what is read", e.shown())
		}
		var err error
		if out, err = w.shapes(k, out); err != nil {
			return nil, err
		}
	}
	if e.tag == "use" {
		return nil, e.faultf("a clone; want it unlinked, as a shape of its own")
	}
	raw, err := e.chains()
	if err != nil || raw == nil {
		return out, err
	}
	m, err := w.toMM(e)
	if err != nil {
		return nil, err
	}
	s := svgShape{elem: e}
	for _, c := range raw {
		if moved := c.moved(m.at); len(moved.segs) > 0 {
			s.chains = append(s.chains, moved)
		}
	}
	return append(out, s), nil
}

// ring is a closed line on the plate.
type ring struct {
	elem   *svgElement
	points []mesh.Point // mm
	corner []bool
}

// rings returns the closed lines of an element and all below it, on the plate.
func (w *drawing) rings(e *svgElement) ([]ring, error) {
	shapes, err := w.shapes(e, nil)
	if err != nil {
		return nil, err
	}
	var out []ring
	for _, s := range shapes {
		for _, c := range s.chains {
			on := c.moved(w.fromPage)
			if !on.joined() {
				end := on.end()
				return nil, s.elem.faultf("an open line, its ends %.3g mm apart, at %s and %s; want it closed",
					math.Hypot(end[0]-on.start[0], end[1]-on.start[1]), spot(on.start), spot(end))
			}
			pts, corner, ok := on.points()
			if !ok {
				return nil, s.elem.faultf("want at most %d points in a line", drawnMost)
			}
			out = append(out, ring{s.elem, pts, corner})
		}
	}
	return out, nil
}

// smallest and largest size of an outline in a drawing, mm.
const (
	leastTop = 100
	mostTop  = 2000
)

// fromDrawing reads an outline or a hole from a drawing.
func (o *Outline) fromDrawing(d *decoder, n *node, key, value string) {
	o.File = value
	w, e := d.selected(n, key, value)
	if e == nil {
		return
	}
	rings, err := w.rings(e)
	if err == nil && len(rings) != 1 {
		err = e.faultf("want one closed line, found %d", len(rings))
	}
	if err == nil && key == "plate.outline" {
		lo, hi := boundsOf(rings[0].points)
		if size := max(hi[0]-lo[0], hi[1]-lo[1]); size < leastTop || size > mostTop {
			err = e.faultf("measures %.4g x %.4g mm; want %d to %d mm: is the page's size right?", hi[0]-lo[0], hi[1]-lo[1], leastTop, mostTop)
		}
	}
	if err != nil {
		d.drawingFault(w.src, key, err)
		return
	}
	o.Points, o.Corner = rings[0].points, rings[0].corner
	for range o.Points {
		o.lines = append(o.lines, place{w.src, e.line})
	}
}

// selected opens the drawing and finds the element that a key names; nil if
// there is a fault.
func (d *decoder) selected(n *node, key, value string) (*drawing, *svgElement) {
	file, name, _ := isDrawing(value)
	if name == "" {
		d.fault(n, key, "want the name of an element as well, as in %q", file+"#outline")
		return nil, nil
	}
	w := d.openDrawing(n, key, file)
	if w == nil {
		return nil, nil
	}
	e, err := w.find(name)
	if err != nil {
		d.fault(n, key, "%q: %w", value, err)
		return nil, nil
	}
	return w, e
}

// Lines of equal height in a drawing.
const (
	spotSize    = 5.0 // mm: a closed shape no larger is a spot height
	contourStep = 5.0 // mm between the points read off a line
	mostLevels  = 2000
	mostNested  = 2 // lines of one height inside each other: the two flanks of a trough
)

// fromDrawing reads contour lines and spot heights from a drawing.
func (h *HeightTable) fromDrawing(d *decoder, n *node, key, value string) {
	h.File, h.drawn = value, true
	w, e := d.selected(n, key, value)
	if e == nil {
		return
	}
	lines, err := w.contours(e)
	if err == nil && len(lines) == 0 {
		err = e.faultf("want closed lines with their heights, found no shape")
	}
	if err != nil {
		d.drawingFault(w.src, key, err)
		return
	}
	for _, l := range lines {
		for _, p := range l.points {
			h.Lines = append(h.Lines, l.name)
			h.X, h.Y, h.Height = append(h.X, p[0]), append(h.Y, p[1]), append(h.Height, l.height)
			h.rows = append(h.rows, place{w.src, l.elem.line})
		}
	}
}

// level is a line of equal height, or a spot of one point.
type level struct {
	elem   *svgElement
	name   string
	height float64 // mm
	points []mesh.Point
	curve  *mesh.Curve // nil for a spot
}

// contours reads every closed line of an element.
func (w *drawing) contours(e *svgElement) ([]level, error) {
	rings, err := w.rings(e)
	if err != nil {
		return nil, err
	}
	if len(rings) > mostLevels {
		return nil, e.faultf("want at most %d lines and spots, found %d", mostLevels, len(rings))
	}
	var out []level
	taken := map[string]int{}
	for _, r := range rings {
		l := level{elem: r.elem, name: r.elem.shown()}
		if l.height, err = r.elem.heightWithin(e, !w.inch); err != nil {
			return nil, err
		}
		if taken[l.name]++; taken[l.name] > 1 {
			l.name = fmt.Sprintf("%s (%d)", l.name, taken[l.name])
		}
		if err := l.lay(r); err != nil {
			return nil, err
		}
		out = append(out, l)
	}
	return out, checkNesting(out)
}

// lay reads the points off a ring: its middle if it is small, else evenly.
func (l *level) lay(r ring) error {
	lo, hi := boundsOf(r.points)
	if max(hi[0]-lo[0], hi[1]-lo[1]) <= spotSize {
		l.points = []mesh.Point{{(lo[0] + hi[0]) / 2, (lo[1] + hi[1]) / 2}}
		return nil
	}
	curve, err := mesh.NewCurve(r.points, r.corner)
	var ce *mesh.CurveError
	switch {
	case errors.As(err, &ce) && ce.Point >= 0:
		return r.elem.faultf("at %s: %s", spot(ce.At), ce.Msg)
	case err != nil:
		return r.elem.faultf("%v", err)
	}
	l.curve = curve
	l.points = evenly(curve.Polyline(0.01), contourStep)
	return nil
}

// checkNesting refuses a nest of lines of one height, which are lines whose
// own heights were not read: at most the two flanks of a trough lie so.
func checkNesting(lines []level) error {
	for i, l := range lines {
		around := 0
		for k, o := range lines {
			if k != i && l.curve != nil && o.curve != nil && o.height == l.height && o.curve.Contains(l.points[0]) {
				around++
			}
		}
		if around >= mostNested {
			return l.elem.faultf("lies inside %d other lines of the same height of %g mm; want each line's own height in its name", around, l.height)
		}
	}
	return nil
}
