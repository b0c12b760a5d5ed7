package drawing

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
