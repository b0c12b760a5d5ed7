package sketch

import (
	"image/color"
	"math"

	"archload/viz/panel"
)

// edgeTurn is how far the edge of a top is drawn to turn under the strings, rad.
const edgeTurn = 0.16

// hinge draws the edge of a top on a hinge. Note: what the edge does.
func (p *pen) hinge() {
	in := p.head("the edge of the top, cut across, drawn large; grey: before, rust: under the strings")
	p.edge(in, false, panel.Rust(), p.note(0).Words)
}

// hingeAndSides draws the edge of A on a hinge and that of B on a side. Notes: what each does.
func (p *pen) hingeAndSides() {
	in := p.head("the edge of the top, cut across, drawn large; grey: before, in colour: under the strings")
	cells := halves(in)
	p.edge(cells[0], false, panel.Rust(), p.note(0).Words)
	p.edge(cells[1], true, panel.Blue(), p.note(1).Words)
}

// edge draws one edge: the top comes down from the left.
func (p *pen) edge(r panel.Rect, side bool, k color.NRGBA, words string) {
	corner := panel.Point{X: r.X + 0.56*r.W, Y: r.Y + 0.42*r.H}
	size := math.Min(1.3, r.W/320)
	at := func(x, y float64) panel.Point { return panel.Point{X: corner.X + size*x, Y: corner.Y + size*y} }
	top := []panel.Point{at(0, 0), at(-30, -2), at(-60, -14), at(-100, -34), at(-140, -48), at(-140, -36), at(-100, -22), at(-60, -3), at(-30, 9), at(0, 11)}
	foot := at(0, 11)
	now, out := allTurned(top, foot, edgeTurn), 0.0
	if side {
		out = 15
		for i := range now {
			now[i].X += size * out
		}
		tall := 0.3 * r.H / size
		p.Polygon([]panel.Point{at(-7, 11), at(0, 11), at(0, 11+tall), at(-7, 11+tall)}, paleColor())
		p.Polyline(closed([]panel.Point{at(-7, 11), at(0, 11), at(0, 11+tall), at(-7, 11+tall)}), 1, panel.Pencil())
		p.Polyline(closed([]panel.Point{at(-7+out, 11), at(out, 11), at(0, 11+tall), at(-7, 11+tall)}), 2, k)
		p.arrow(at(out+8, 4), at(out+48, 4), panel.Ink())
	} else {
		p.Polyline(closed([]panel.Point{foot, at(-16, 42), at(16, 42)}), 1.6, panel.Ink())
		p.Line(at(-26, 43), at(26, 43), 2, panel.Ink())
	}
	p.Polygon(top, paleColor())
	p.Polyline(closed(top), 1, panel.Pencil())
	p.Polyline(closed(now), 2, k)
	if !side {
		p.Disc(foot, 4, panel.Ink())
	}
	p.write(words, panel.Point{X: r.Centre().X, Y: r.Bottom() - 12}, r.W-8, panel.Ink())
}
