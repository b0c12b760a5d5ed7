package sketch

import (
	"math"

	"archload/viz/panel"
)

// swingingString draws a string four times in one swing, with how hard it pulls at the saddle, and the pull over that
// time. Notes: where it is straight, where it is out, of the curve.
func (p *pen) swingingString() {
	in := p.head("one swing of a string, saddle at the left, nut at the right; the arrow: its pull on the saddle")
	const columns = 4
	upper := panel.Rect{X: in.X, Y: in.Y + 2, W: in.W, H: 0.5 * in.H}
	for i := range columns {
		cell := panel.Rect{X: in.X + float64(i)*in.W/columns + 8, Y: upper.Y, W: in.W/columns - 20, H: upper.H}
		out := math.Sin(math.Pi / 2 * float64(i))
		mid := cell.Y + 0.55*cell.H
		var line []panel.Point
		for k := 0; k <= 24; k++ {
			u := float64(k) / 24
			line = append(line, panel.Point{X: cell.X + u*cell.W, Y: mid - 0.3*cell.H*out*math.Sin(math.Pi*u)})
		}
		p.Line(line[0], line[24], 1, panel.Pencil())
		p.Polyline(line, 1.8, panel.Ink())
		for _, end := range []panel.Point{line[0], line[24]} {
			p.Line(end, panel.Point{X: end.X, Y: end.Y + 12}, 3.4, panel.Ink())
		}
		long := 12 + 26*math.Abs(out)
		p.arrow(panel.Point{X: cell.X, Y: mid - 0.42*cell.H}, panel.Point{X: cell.X + long, Y: mid - 0.42*cell.H}, panel.Rust())
		p.write(p.note(i%2).Words, panel.Point{X: cell.Centre().X, Y: cell.Bottom() + 2}, cell.W+14, panel.Ink())
	}
	lower := panel.Rect{X: in.X, Y: upper.Bottom() + 16, W: in.W, H: in.Bottom() - upper.Bottom() - 20}
	var curve []panel.Point
	first := lower.X + in.W/columns/2 - 2
	for k := 0; k <= 96; k++ {
		u := -0.4 + float64(k)/96*(columns-0.2)
		high := math.Pow(math.Sin(math.Pi/2*u), 2)
		curve = append(curve, panel.Point{X: first + u*in.W/columns, Y: lower.Bottom() - 16 - (lower.H-26)*high})
	}
	p.Polyline(curve, 2, panel.Rust())
	p.Line(panel.Point{X: lower.X + 8, Y: lower.Bottom() - 13}, panel.Point{X: lower.Right() - 12, Y: lower.Bottom() - 13}, 1, panel.Pencil())
	p.write(p.note(2).Words, panel.Point{X: lower.Centre().X, Y: lower.Bottom() - 4}, lower.W, panel.Ink())
}
