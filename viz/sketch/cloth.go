package sketch

import (
	"math"

	"archload/viz/panel"
)

// cloth draws a cloth and a plate between two pins with a weight on each: what has sunk pulls along itself at what holds its ends,
// and so holds the weight up. Notes: of the cloth, of the plate.
func (p *pen) cloth() {
	in := p.head("from the side, the sinking far too large; arrows: how each pulls at its ends")
	for i, cell := range halves(in) {
		p.hanging(cell, []float64{0.3, 0.13}[i], []float64{3, 0.07 * in.H}[i], []float64{1, 0.5}[i])
		p.write(p.note(i).Words, panel.Point{X: cell.X + cell.W/2, Y: cell.Bottom() - 14}, cell.W-8, panel.Ink())
	}
}

// hanging draws what hangs between two pins: how deep, as a share of the cell, how thick, and how large the pull is drawn.
func (p *pen) hanging(cell panel.Rect, deep, thick, pull float64) {
	left := panel.Point{X: cell.X + 0.16*cell.W, Y: cell.Y + 0.3*cell.H}
	wide := 0.68 * cell.W
	deep *= cell.H
	var upper, lower []panel.Point
	const n = 30
	for i := 0; i <= n; i++ {
		u := float64(i) / n
		q := panel.Point{X: left.X + wide*u, Y: left.Y + 4*deep*u*(1-u)}
		upper, lower = append(upper, panel.Point{X: q.X, Y: q.Y - thick/2}), append(lower, panel.Point{X: q.X, Y: q.Y + thick/2})
	}
	p.Dashed(left, panel.Point{X: left.X + wide, Y: left.Y}, 1.1, [2]float64{5, 4}, panel.Pencil())
	band := upper
	for i := n; i >= 0; i-- {
		band = append(band, lower[i])
	}
	p.Polygon(band, woodColor())
	p.Polyline(closed(band), 1.3, panel.Ink())
	low := panel.Point{X: left.X + wide/2, Y: left.Y + deep - thick/2}
	p.Polygon([]panel.Point{{X: low.X - 13, Y: low.Y - 20}, {X: low.X + 13, Y: low.Y - 20}, {X: low.X + 13, Y: low.Y}, {X: low.X - 13, Y: low.Y}}, panel.SoftInk())
	slope := math.Atan(4 * deep / wide)
	long := pull * 0.2 * wide
	for _, end := range []struct{ x, sense float64 }{{left.X, 1}, {left.X + wide, -1}} {
		pin := panel.Point{X: end.x, Y: left.Y}
		p.Disc(pin, 5, panel.Ink())
		sin, cos := math.Sincos(slope)
		at := panel.Point{X: pin.X, Y: pin.Y - thick/2 - 9}
		p.arrow(at, panel.Point{X: at.X + end.sense*long*cos, Y: at.Y + long*sin}, panel.Ink())
	}
}
