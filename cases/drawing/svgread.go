package drawing

import (
	"archload/cases/tree"
)

import "math"

// svgShape is what one element draws, mm on the page.
type svgShape struct {
	elem   *svgElement
	chains []svgChain
}

// shapes gathers the visible shapes of an element and all below it. A mark
// among them is an error: it would be taken for a line, or a line for it.
func (w *svgSheet) shapes(e *svgElement, out []svgShape) ([]svgShape, error) {
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

// Labels are those of an element and of the groups around it, up to the one
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
