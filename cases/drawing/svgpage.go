package drawing

import (
	"math"
	"strings"

	"archload/cases/tree"
)

// readPage finds the size of a user unit from the page's size and its viewBox.
func (w *svgSheet) readPage() error {
	r := w.root
	wide, unit, err := pageLength(r, "width")
	if err != nil {
		return err
	}
	high, _, err := pageLength(r, "height")
	if err != nil {
		return err
	}
	s := svgPen{text: strings.TrimSpace(r.attr["viewBox"])}
	box, err := s.numbers(4)
	if err != nil || s.at < len(s.text) || box[2] <= 0 || box[3] <= 0 {
		return r.faultf("viewBox: want four numbers as in \"0 0 420 594\", which say how large a unit of the page is, found %q", r.attr["viewBox"])
	}
	sx, sy := wide/box[2], high/box[3]
	if math.Abs(sx/sy-1) > 2e-3 {
		return r.faultf("viewBox: a unit would measure %.4g mm across the page and %.4g mm along it; want one size", sx, sy)
	}
	if r.attr["transform"] != "" {
		return r.faultf("want no transform of the whole page")
	}
	w.inch = unit == "in"
	w.toPage = affine{sx, 0, 0, sy, -sx * box[0], -sy * box[1]}
	return nil
}

// pageLength reads the page's width or height, mm.
func pageLength(r *svgElement, name string) (mm float64, unit string, err error) {
	text := strings.TrimSpace(r.attr[name])
	s := svgPen{text: text}
	x, err := s.number()
	unit = strings.TrimSpace(text[s.at:])
	if factor, ok := tree.PaperUnit(unit); ok && err == nil && x > 0 && x*factor < 1e5 {
		return x * factor, unit, nil
	}
	hint := ""
	if text == "" || err == nil && (unit == "" || unit == "px" || unit == "%") {
		hint = ": a page measured in pixels has no size; set the drawing's units to mm in its document settings and save it again"
	}
	if text == "" {
		text = "none"
	}
	return 0, "", r.faultf("%s: want the page's size with its unit (mm, cm, in, pt, pc), found %s%s", name, text, hint)
}

// toMM returns the map from an element's user units to mm on the page.
func (w *svgSheet) toMM(e *svgElement) (affine, error) {
	if e == w.root {
		return w.toPage, nil
	}
	outer, err := w.toMM(e.parent)
	if err != nil {
		return outer, err
	}
	if e.tag == "svg" {
		return outer, e.faultf("a drawing within the drawing; want it dissolved into a group")
	}
	if v, ok := e.styled("transform"); ok && v != "none" {
		return outer, e.faultf("a transform in the style; want it as the attribute transform")
	}
	own, err := parseTransform(e.attr["transform"])
	if err != nil {
		return outer, e.faultf("transform: %v", err)
	}
	return outer.of(own), nil
}
