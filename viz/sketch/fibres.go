package sketch

import (
	"math"

	"archload/viz/panel"
)

// How the cut is drawn.
const (
	fibreRows = 5
	shearBy   = 0.42 // of its height that the upper edge is pushed aside
	rollBy    = 1.1  // rad, that a fibre has rolled
)

// fibres draws a cut square to the grain, large, at rest and in rolling shear: its fibres are seen from their ends, and
// each has a mark by which it is seen to roll; and a thick bar across the grain, pressed between two supports close to
// each other. Notes: of the cut at rest, of the sheared one, of the bar.
func (p *pen) fibres() {
	in := p.head("cut square to the grain, drawn large: each ring is one fibre, seen from its end")
	const under, over = 44.0, 18.0
	side := math.Max(20, math.Min(in.H-under-over, 0.2*in.W))
	top := in.Y + over
	one := panel.Rect{X: in.X + in.W/6 - side/2, Y: top, W: side, H: side}
	two := one
	two.X += in.W/3 - shearBy*side/2
	p.cut(one, 0)
	p.cut(two, 1)
	y := top + side + 30
	p.write(p.note(0).Words, panel.Point{X: in.X + in.W/6, Y: y}, 0.3*in.W, panel.Ink())
	p.write(p.note(1).Words, panel.Point{X: in.X + in.W/2, Y: y}, 0.32*in.W, panel.Ink())
	p.write(p.note(2).Words, panel.Point{X: in.X + 5*in.W/6, Y: y}, 0.32*in.W, panel.Ink())
	p.bar(panel.Rect{X: in.X + 5*in.W/6 - 0.13*in.W, Y: top + 0.3*side, W: 0.26 * in.W, H: 0.4 * side})
	aside := shearBy * side
	p.arrow(panel.Point{X: two.X + 0.25*side + aside, Y: top - 9}, panel.Point{X: two.X + 0.85*side + aside, Y: top - 9}, panel.Rust())
	p.arrow(panel.Point{X: two.X + 0.75*side, Y: top + side + 8}, panel.Point{X: two.X + 0.15*side, Y: top + side + 8}, panel.Rust())
}

// bar draws a thick bar across the grain, its fibres seen from their ends, between two supports and a pressing arrow.
func (p *pen) bar(r panel.Rect) {
	p.Rect(r, woodColor())
	const rows, columns = 3, 9
	radius := 0.36 * r.H / rows
	for i := range rows {
		for k := range columns {
			p.Circle(panel.Point{X: r.X + r.W*(float64(k)+0.5)/columns, Y: r.Y + r.H*(float64(i)+0.5)/rows}, radius, 1, panel.SoftInk())
		}
	}
	p.Frame(r, 1.4, panel.Ink())
	for _, u := range []float64{0.15, 0.85} {
		x := r.X + u*r.W
		p.Polyline(closed([]panel.Point{{X: x, Y: r.Bottom()}, {X: x - 9, Y: r.Bottom() + 16}, {X: x + 9, Y: r.Bottom() + 16}}), 1.6, panel.Ink())
	}
	mid := r.Centre().X
	p.arrow(panel.Point{X: mid, Y: r.Y - 34}, panel.Point{X: mid, Y: r.Y - 1}, panel.Rust())
}

// cut draws the cut with a share of the shear.
func (p *pen) cut(r panel.Rect, share float64) {
	at := func(u, v float64) panel.Point { // of the square: to the right, and up
		return panel.Point{X: r.X + r.W*(u+share*shearBy*v), Y: r.Bottom() - r.H*v}
	}
	edge := []panel.Point{at(0, 0), at(1, 0), at(1, 1), at(0, 1)}
	p.Polygon(edge, woodColor())
	const rings = 2 // dark bands of late wood
	for i := range rings {
		u := (float64(i) + 0.7) / rings
		p.Polygon([]panel.Point{at(u-0.06, 0), at(u+0.06, 0), at(u+0.06, 1), at(u-0.06, 1)}, lateColor())
	}
	radius := 0.42 * r.H / fibreRows
	for row := range fibreRows {
		for col := range fibreRows {
			c := at((float64(col)+0.5)/fibreRows, (float64(row)+0.5)/fibreRows)
			p.Circle(c, radius, 1.1, panel.Ink())
			sin, cos := math.Sincos(share * rollBy) // the upper rows go to the right: clockwise
			p.Line(c, panel.Point{X: c.X + radius*sin, Y: c.Y - radius*cos}, 1.8, panel.Rust())
		}
	}
	p.Polyline(closed(edge), 1.4, panel.Ink())
}
