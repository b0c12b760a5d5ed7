package grip

import (
	"image/color"
	"strings"

	"archload/mesh"
	"archload/viz/panel"
	"archload/viz/scale"
)

// Draw draws the grips as rings, the one under the pointer or in the hand with its words, within
// a part of the page.
func (h *Hand) Draw(l *panel.List, look Look, in panel.Rect) {
	l.Clip(in)
	defer l.Unclip()
	if h.held != nil {
		h.drawHeld(l, look, in)
		return
	}
	for i := range h.spots {
		ring(l, h.spots[i].on, 5, panel.Pencil())
	}
	if n := h.near; n != nil && n.Lifts {
		ring(l, n.on, 7, panel.Rust())
		words(l, n.on, in, n.Name+": "+scale.Fixed(n.Now, 2)+" mm", "drag up or down to change it")
	} else if n != nil {
		ring(l, h.near.on, 7, panel.Rust())
		l.Disc(h.near.on, 2, panel.Rust())
		words(l, h.near.on, in, h.near.Name, "drag to move it")
	}
}

// drawHeld draws where the held grip was and where it goes, with its bar.
func (h *Hand) drawHeld(l *panel.List, look Look, in panel.Rect) {
	g := h.held
	if g.Lifts {
		to := panel.Point{X: g.on.X, Y: g.on.Y - perMM*g.by[1]}
		ring(l, g.on, 4, panel.Pencil())
		l.Line(g.on, to, 2, panel.Rust())
		ring(l, to, 7, panel.Rust())
		words(l, to, in, g.Name, lifted(g.Now, g.by[1]))
		return
	}
	point := func(p [3]float64, by mesh.Point) panel.Point {
		x, y, _ := look.Project([3]float64{p[0] + by[0], p[1] + by[1], p[2]})
		return panel.Point{X: x, Y: y}
	}
	if len(g.line) == len(g.Line) {
		var was, is []panel.Point
		for k, p := range g.line {
			by := mesh.Point{}
			if g.Along[k] {
				by = g.by
			}
			was, is = append(was, point(p, mesh.Point{})), append(is, point(p, by))
		}
		if len(was) > 1 {
			l.Polyline(was, 1, panel.Pencil())
			l.Polyline(is, 2, panel.Rust())
		}
	}
	from, to := point(g.at, mesh.Point{}), point(g.at, g.by)
	ring(l, from, 4, panel.Pencil())
	l.Line(from, to, 1.2, panel.Rust())
	ring(l, to, 7, panel.Rust())
	l.Disc(to, 2, panel.Rust())
	words(l, to, in, g.Name, Words(g.by))
}

// Words say how far something is moved in plan, mm.
func Words(by mesh.Point) string {
	var out []string
	for k, way := range [2][2]string{{"bass", "treble"}, {"tail", "neck"}} {
		switch {
		case by[k] > 0:
			out = append(out, scale.Fixed(by[k], 1)+" mm to the "+way[1])
		case by[k] < 0:
			out = append(out, scale.Fixed(-by[k], 1)+" mm to the "+way[0])
		}
	}
	if len(out) == 0 {
		return "not moved"
	}
	return strings.Join(out, ", ")
}

// lifted says how far a number goes, mm.
func lifted(now, by float64) string {
	sign := ""
	if by > 0 {
		sign = "+"
	}
	return scale.Fixed(now, 2) + " → " + scale.Fixed(now+by, 2) + " mm (" + sign + scale.Fixed(by, 2) + ")"
}

// words are a slip beside a place, within a part of the page.
func words(l *panel.List, at panel.Point, in panel.Rect, name, what string) {
	w := max(l.Atlas.TextWidth(panel.SmallBold, name), l.Atlas.TextWidth(panel.Small, what)) + 16
	h := 2*panel.Small.LineHeight() + 8
	r := panel.Rect{X: at.X + 14, Y: at.Y - h - 6, W: w, H: h}
	if r.Right() > in.Right()-2 {
		r.X = at.X - 14 - w
	}
	if r.Y < in.Y+2 {
		r.Y = at.Y + 14
	}
	l.Rect(r, panel.Slip())
	l.Frame(r, 1, panel.Rust())
	l.TextIn(panel.Rect{X: r.X + 8, Y: r.Y + 4, W: w - 16, H: h / 2}, panel.SmallBold, panel.Left, panel.Ink(), name)
	l.TextIn(panel.Rect{X: r.X + 8, Y: r.Y + h/2, W: w - 16, H: h/2 - 4}, panel.Small, panel.Left, panel.SoftInk(), what)
}

// ring is a circle that is seen on any ground.
func ring(l *panel.List, at panel.Point, radius float64, k color.NRGBA) {
	l.Circle(at, radius, 3.5, panel.Slip())
	l.Circle(at, radius, 1.5, k)
}
