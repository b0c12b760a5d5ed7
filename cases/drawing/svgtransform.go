package drawing

import (
	"fmt"
	"math"
	"strings"

	"archload/mesh"
)

// affine maps (x, y) to (a x + c y + e, b x + d y + f).
type affine struct{ a, b, c, d, e, f float64 }

func (m affine) at(p mesh.Point) mesh.Point {
	return mesh.Point{m.a*p[0] + m.c*p[1] + m.e, m.b*p[0] + m.d*p[1] + m.f}
}

// of returns the map that first applies n, then m.
func (m affine) of(n affine) affine {
	o := m.at(mesh.Point{n.e, n.f})
	return affine{
		m.a*n.a + m.c*n.b, m.b*n.a + m.d*n.b,
		m.a*n.c + m.c*n.d, m.b*n.c + m.d*n.d, o[0], o[1],
	}
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
