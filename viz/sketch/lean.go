package sketch

import (
	"math"

	"archload/viz/panel"
)

// leanDrawn is how many times as large the lean of a bridge is drawn.
const leanDrawn = 150.0

// lean draws two bridges from the treble side, the nut at the right: the strings push them toward the nut at their
// saddles, and they lean. Notes, of A and then of B: the push in N, the lean in degrees; and what stands below both.
func (p *pen) lean() {
	in := p.head("the bridge from the treble side, nut at the right; its lean drawn 150 times as large")
	most := math.Max(math.Abs(p.note(0).Value), math.Abs(p.note(2).Value))
	for i, cell := range halves(in) {
		p.leaning(cell, i, p.note(2*i), p.note(2*i+1), most)
	}
}

// leaning draws bridge i.
func (p *pen) leaning(r panel.Rect, i int, push, lean Note, most float64) {
	ink := panel.Rust()
	if i > 0 {
		ink = panel.Blue()
	}
	base := r.Y + 0.72*r.H
	mid := r.X + 0.42*r.W
	tall := 0.5 * r.H
	p.Polygon([]panel.Point{{X: r.X + 8, Y: base}, {X: r.Right() - 8, Y: base}, {X: r.Right() - 8, Y: base + 10}, {X: r.X + 8, Y: base + 10}}, woodColor())
	p.Line(panel.Point{X: r.X + 8, Y: base}, panel.Point{X: r.Right() - 8, Y: base}, 1.2, panel.Ink())
	shape := []panel.Point{{X: mid - 15, Y: base}, {X: mid + 15, Y: base}, {X: mid + 12, Y: base - 0.45*tall}, {X: mid + 4, Y: base - tall}, {X: mid - 4, Y: base - tall}, {X: mid - 12, Y: base - 0.45*tall}}
	p.Polygon(shape, paleColor())
	front := panel.Point{X: mid + 15, Y: base}
	by := -lean.Value * leanDrawn * math.Pi / 180 // to the nut: clockwise
	now := allTurned(shape, front, by)
	p.Polyline(closed(now), 2, ink)
	saddle := turned(panel.Point{X: mid, Y: base - tall}, front, by)
	p.Polyline([]panel.Point{{X: r.X + 8, Y: saddle.Y + 16}, saddle, {X: r.Right() - 8, Y: saddle.Y + 12}}, 1.1, panel.SoftInk())
	long := 62.0 * math.Abs(push.Value) / math.Max(1e-9, most)
	p.arrow(panel.Point{X: saddle.X + 3, Y: saddle.Y - 7}, panel.Point{X: saddle.X + 3 + long, Y: saddle.Y - 7}, ink)
	p.write(push.Words, panel.Point{X: saddle.X + 20, Y: saddle.Y - 20}, 0.6*r.W, panel.Ink())
	p.write(lean.Words, panel.Point{X: r.X + r.W/2, Y: base + 26}, r.W-8, panel.Ink())
	if i > 0 { // the front edge bears
		foot := panel.Point{X: front.X + 2, Y: base + 1}
		p.arrow(panel.Point{X: foot.X + 26, Y: base - 26}, foot, panel.Ink())
		p.write(p.note(4).Words, panel.Point{X: foot.X + 76, Y: base - 32}, 0.36*r.W, panel.Ink())
	}
}
