package drawing

import (
	"bytes"
	"math"

	"archload/cases/tree"
)

// Rings returns the closed lines of the element of this name and of all below
// it, on the plate.
func (w *svgSheet) Rings(name string) ([]Ring, error) {
	e, err := w.find(name)
	if err != nil {
		return nil, err
	}
	shapes, err := w.shapes(e, nil)
	if err != nil {
		return nil, err
	}
	var out []Ring
	for _, s := range shapes {
		for _, c := range s.chains {
			on := c.moved(w.fromPage)
			if !on.joined() {
				end := on.end()
				return nil, s.elem.faultf("an open line, its ends %.3g mm apart, at %s and %s; want it closed",
					math.Hypot(end[0]-on.start[0], end[1]-on.start[1]), tree.Spot(on.start), tree.Spot(end))
			}
			pts, corner, ok := on.points()
			if !ok {
				return nil, s.elem.faultf("want at most %d points in a line", drawnMost)
			}
			out = append(out, Ring{Points: pts, Corner: corner, Labels: s.elem.labels(e)})
		}
	}
	if len(out) == 0 {
		return nil, &EmptyError{e.asLabel()}
	}
	return out, nil
}

// labels are those of an element and of the groups around it, up to the one
// selected.
func (e *svgElement) labels(selected *svgElement) []Label {
	var out []Label
	for a := e; a != nil; a = a.parent {
		out = append(out, a.asLabel())
		if a == selected {
			break
		}
	}
	return out
}

func (e *svgElement) asLabel() Label { return Label{Line: e.line, Shown: e.shown(), Names: e.names()} }

// readSVG reads the elements, the page's size and the marks.
func readSVG(data []byte) (Sheet, error) {
	if bytes.HasPrefix(data, []byte{0x1f, 0x8b}) {
		return nil, &Fault{Line: 1, Msg: "a compressed drawing; want it saved as plain SVG"}
	}
	root, err := parseSVG(data)
	if err != nil {
		return nil, err
	}
	w := &svgSheet{root: root}
	if err := w.readPage(); err != nil {
		return nil, err
	}
	if err := w.readMarks(); err != nil {
		return nil, err
	}
	return w, w.checkRuler()
}
