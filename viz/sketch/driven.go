package sketch

import (
	"math"

	"archload/viz/panel"
)

// driven draws a bridge three times, pushed with the same force up, across and lengthwise, and how far it moves.
// Notes: of the three ways, each with its number.
func (p *pen) driven() {
	in := p.head("the same force three ways (rust), and how far it then moves the bridge (blue)")
	most := 1e-9
	for i := range 3 {
		most = math.Max(most, math.Abs(p.note(i).Value))
	}
	for i, way := range []panel.Point{{Y: -1}, {X: 1}, {X: 1}} {
		cell := panel.Rect{X: in.X + float64(i)*in.W/3, Y: in.Y, W: in.W / 3, H: in.H}
		p.drivenWay(cell, way, i == 2, 0.36*in.H*math.Abs(p.note(i).Value)/most)
		p.write(p.note(i).Words, panel.Point{X: cell.Centre().X, Y: in.Bottom() - 14}, cell.W-8, panel.Ink())
	}
}

// drivenWay draws one bridge, from the tail or from the treble side, pushed along a way, and how far it moves.
func (p *pen) drivenWay(r panel.Rect, way panel.Point, side bool, far float64) {
	base, mid, tall := r.Bottom()-34, r.Centre().X, 0.3*r.H
	p.Line(panel.Point{X: r.X + 10, Y: base}, panel.Point{X: r.Right() - 10, Y: base}, 1.2, panel.Ink())
	saddle := panel.Point{X: mid, Y: base - tall}
	if side {
		p.Polyline(closed([]panel.Point{{X: mid - 13, Y: base}, {X: mid + 13, Y: base}, {X: mid + 10, Y: base - 0.45*tall}, {X: mid + 3, Y: base - tall}, {X: mid - 3, Y: base - tall}, {X: mid - 10, Y: base - 0.45*tall}}), 1.6, panel.Ink())
	} else {
		p.bridge(panel.Point{X: mid - 36, Y: base}, panel.Point{X: mid + 36, Y: base}, tall, panel.Ink())
	}
	const force = 30.0
	from := panel.Point{X: saddle.X - 34, Y: saddle.Y - 4}
	if way.X > 0 {
		from = panel.Point{X: saddle.X - force/2, Y: saddle.Y - 22}
	}
	p.arrow(from, panel.Point{X: from.X + force*way.X, Y: from.Y + force*way.Y}, panel.Rust())
	middle := panel.Point{X: saddle.X, Y: saddle.Y - 8 + far/2*way.Y}
	one := panel.Point{X: middle.X - far/2*way.X, Y: middle.Y - far/2*way.Y}
	two := panel.Point{X: middle.X + far/2*way.X, Y: middle.Y + far/2*way.Y}
	p.arrow(one, two, panel.Blue())
	p.arrow(two, one, panel.Blue())
}
