package drawing

import (
	"fmt"
	"math"
	"strings"

	"archload/mesh"
)

// chains returns what a shape draws, in its own user units; nil for an element
// that is no shape.
func (e *svgElement) chains() ([]svgChain, error) {
	var out []svgChain
	var err error
	switch e.tag {
	case "path":
		out, err = parsePath(e.attr["d"])
	case "polygon", "polyline":
		out, err = e.polygon()
	case "line", "rect", "circle", "ellipse":
		out, err = e.basic()
	default:
		return nil, nil
	}
	if err != nil {
		return nil, e.faultf("%v", err)
	}
	return out, nil
}

// polygon reads the list of points of a polygon or polyline.
func (e *svgElement) polygon() ([]svgChain, error) {
	s := svgPen{text: e.attr["points"]}
	var c svgChain
	s.blanks()
	for k := 0; s.at < len(s.text); k++ {
		v, err := s.numbers(2)
		if err != nil {
			return nil, fmt.Errorf("points: %w", err)
		}
		if p := (mesh.Point{v[0], v[1]}); k == 0 {
			c.start = p
		} else {
			c.lineTo(p)
		}
		s.comma()
	}
	if len(c.segs) == 0 {
		return nil, fmt.Errorf("want two points or more, found less")
	}
	c.closed = e.tag == "polygon"
	return []svgChain{c}, nil
}

// basic reads a line, rectangle, circle or ellipse.
func (e *svgElement) basic() ([]svgChain, error) {
	names := map[string]string{"line": "x1 y1 x2 y2", "rect": "x y width height rx ry", "circle": "cx cy r", "ellipse": "cx cy rx ry"}
	v := map[string]float64{}
	for _, name := range strings.Fields(names[e.tag]) {
		text := strings.TrimSuffix(strings.TrimSpace(e.attr[name]), "px")
		if text == "" || text == "auto" {
			continue
		}
		s := svgPen{text: text}
		x, err := s.number()
		if err != nil || s.at < len(s.text) {
			return nil, fmt.Errorf("%s: want a plain number in the drawing's own units, found %q", name, e.attr[name])
		}
		v[name] = x
	}
	switch e.tag {
	case "line":
		c := svgChain{start: mesh.Point{v["x1"], v["y1"]}}
		c.lineTo(mesh.Point{v["x2"], v["y2"]})
		return []svgChain{c}, nil
	case "circle":
		return ellipseChain(v["cx"], v["cy"], v["r"], v["r"])
	case "ellipse":
		return ellipseChain(v["cx"], v["cy"], v["rx"], v["ry"])
	}
	return rectChain(v, e.attr["rx"] != "" && e.attr["rx"] != "auto", e.attr["ry"] != "" && e.attr["ry"] != "auto")
}

// ellipseChain draws a whole ellipse.
func ellipseChain(cx, cy, rx, ry float64) ([]svgChain, error) {
	if rx <= 0 || ry <= 0 {
		return nil, fmt.Errorf("want a radius > 0, found %g", min(rx, ry))
	}
	c := svgChain{start: mesh.Point{cx + rx, cy}, closed: true}
	c.circular(func(u, v float64) mesh.Point { return mesh.Point{cx + rx*u, cy + ry*v} }, 0, 2*math.Pi, c.start)
	return []svgChain{c}, nil
}

// rectChain draws a rectangle, its corners rounded if a radius is given.
func rectChain(v map[string]float64, hasX, hasY bool) ([]svgChain, error) {
	x, y, w, h, rx, ry := v["x"], v["y"], v["width"], v["height"], v["rx"], v["ry"]
	if w <= 0 || h <= 0 || rx < 0 || ry < 0 {
		return nil, fmt.Errorf("want width and height > 0 and no radius below 0, found %g, %g", w, h)
	}
	if !hasX {
		rx = ry
	}
	if !hasY {
		ry = rx
	}
	rx, ry = min(rx, w/2), min(ry, h/2)
	c := svgChain{start: mesh.Point{x + rx, y}, closed: true}
	round := svgArc{rx: rx, ry: ry, sweep: true}
	for _, side := range [][2]mesh.Point{
		{{x + w - rx, y}, {x + w, y + ry}}, {{x + w, y + h - ry}, {x + w - rx, y + h}},
		{{x + rx, y + h}, {x, y + h - ry}}, {{x, y + ry}, {x + rx, y}},
	} {
		c.lineTo(side[0])
		if rx > 0 && ry > 0 {
			c.arcTo(round, side[1])
		}
	}
	return []svgChain{c}, nil
}
