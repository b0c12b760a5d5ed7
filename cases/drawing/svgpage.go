package drawing

import (
	"fmt"
	"math"
	"strings"

	"archload/cases/tree"
	"archload/mesh"
)

// affine maps (x, y) to (a x + c y + e, b x + d y + f).
type affine struct{ a, b, c, d, e, f float64 }

func (m affine) at(p mesh.Point) mesh.Point {
	return mesh.Point{m.a*p[0] + m.c*p[1] + m.e, m.b*p[0] + m.d*p[1] + m.f}
}

// Of returns the map that first applies n, then m.
func (m affine) of(n affine) affine {
	o := m.at(mesh.Point{n.e, n.f})
	return affine{
		m.a*n.a + m.c*n.b, m.b*n.a + m.d*n.b,
		m.a*n.c + m.c*n.d, m.b*n.c + m.d*n.d, o[0], o[1],
	}
}

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

// parseTransform reads a list of transforms (SVG 1.1, section 7.6); the last
// one listed is applied first.
func parseTransform(text string) (affine, error) {
	m := affine{a: 1, d: 1}
	s := svgPen{text: text}
	s.blanks()
	for s.at < len(s.text) {
		name, rest, ok := strings.Cut(s.text[s.at:], "(")
		inner, _, closed := strings.Cut(rest, ")")
		if !ok || !closed {
			return m, fmt.Errorf("want name(numbers), found %q", s.text[s.at:])
		}
		t, err := oneTransform(strings.TrimSpace(name), inner)
		if err != nil {
			return m, err
		}
		m = m.of(t)
		s.at += len(name) + len(inner) + 2
		s.comma()
	}
	if det := m.a*m.d - m.b*m.c; !(math.Abs(det) > 1e-12 && math.Abs(det) < 1e12) {
		return m, fmt.Errorf("want one that keeps a size, found %q", text)
	}
	return m, nil
}

// oneTransform reads one transform's numbers.
func oneTransform(name, text string) (affine, error) {
	var v []float64
	s := svgPen{text: text}
	for s.blanks(); s.at < len(s.text); s.comma() {
		x, err := s.number()
		if err != nil {
			return affine{}, fmt.Errorf("%s: %w", name, err)
		}
		v = append(v, x)
	}
	for len(v) < 6 {
		v = append(v, math.NaN())
	}
	given := func(k int) bool { return len(v) > k && !math.IsNaN(v[k]) }
	only := func(n int) bool { return !given(n) && (n == 0 || given(n-1)) && len(v) <= 6 }
	switch {
	case name == "matrix" && given(5) && len(v) == 6:
		return affine{v[0], v[1], v[2], v[3], v[4], v[5]}, nil
	case name == "translate" && only(1):
		return affine{1, 0, 0, 1, v[0], 0}, nil
	case name == "translate" && only(2):
		return affine{1, 0, 0, 1, v[0], v[1]}, nil
	case name == "scale" && only(1):
		return affine{a: v[0], d: v[0]}, nil
	case name == "scale" && only(2):
		return affine{a: v[0], d: v[1]}, nil
	case name == "rotate" && only(1):
		return rotation(v[0], 0, 0), nil
	case name == "rotate" && only(3):
		return rotation(v[0], v[1], v[2]), nil
	case name == "skewX" && only(1):
		return affine{a: 1, c: math.Tan(v[0] * math.Pi / 180), d: 1}, nil
	case name == "skewY" && only(1):
		return affine{a: 1, b: math.Tan(v[0] * math.Pi / 180), d: 1}, nil
	}
	return affine{}, fmt.Errorf("want matrix, translate, scale, rotate, skewX or skewY with its numbers, found %s(%s)", name, text)
}

// rotation turns by deg about (x, y).
func rotation(deg, x, y float64) affine {
	sin, cos := math.Sincos(deg * math.Pi / 180)
	return affine{cos, sin, -sin, cos, x - cos*x + sin*y, y - sin*x - cos*y}
}
