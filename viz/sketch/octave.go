package sketch

import (
	"image/color"
	"math"

	"archload/viz/panel"
)

// octave draws the strings from saddle to nut over the board, as made and in two airs, and how far they moved at the
// octave, half way along them. Notes: A and B, each with its number, mm, up positive; at the octave; as made.
func (p *pen) octave() {
	in := p.head("the strings over the board, from the treble side, movements far too large; grey: as made")
	x := func(u float64) float64 { return in.X + 30 + u*(in.W-70) }
	board := in.Y + 0.8*in.H
	most := math.Max(1e-9, math.Max(math.Abs(p.note(0).Value), math.Abs(p.note(1).Value)))
	lift := func(i int) float64 { return 0.14 * in.H * p.note(i).Value / most } // at the octave
	nut := panel.Point{X: x(1), Y: board - 10}
	saddle := panel.Point{X: x(0), Y: board - 0.42*in.H}
	p.Polygon([]panel.Point{{X: x(0.36), Y: board}, {X: x(1.01), Y: board}, {X: x(1.01), Y: board + 9}, {X: x(0.36), Y: board + 9}}, lateColor())
	p.Line(nut, panel.Point{X: nut.X, Y: board}, 5, panel.Ink())
	p.Dashed(panel.Point{X: x(0.5), Y: in.Y + 2}, panel.Point{X: x(0.5), Y: board + 9}, 1, [2]float64{4, 3}, panel.SoftInk())
	mid := panel.Point{X: x(0.5), Y: (saddle.Y + nut.Y) / 2}
	p.stringTo(saddle, nut, 0, panel.Pencil())
	for i, k := range []color.NRGBA{panel.Rust(), panel.Blue()} {
		p.stringTo(saddle, nut, lift(i), k)
		by := 14.0 * float64(i)
		p.arrow(panel.Point{X: mid.X + 8 + by, Y: mid.Y}, panel.Point{X: mid.X + 8 + by, Y: mid.Y - lift(i)}, k)
		place := panel.Point{X: x(0.5) + 0.19*in.W, Y: mid.Y - lift(i) - 16}
		if lift(i) < 0 { // there is room under the string at the left
			place = panel.Point{X: x(0.5) - 0.18*in.W, Y: board - 12}
		}
		p.write(p.note(i).Words, place, 0.32*in.W, k)
	}
	p.write(p.note(2).Words, panel.Point{X: x(0.5), Y: board + 20}, 0.5*in.W, panel.Ink())
	p.write(p.note(3).Words, panel.Point{X: x(0), Y: board + 20}, 0.14*in.W, panel.Ink())
}

// stringTo draws a string whose saddle went so far up that it comes so much higher half way to the nut.
func (p *pen) stringTo(saddle, nut panel.Point, lift float64, k color.NRGBA) {
	low := panel.Point{X: saddle.X, Y: saddle.Y - 2*lift}
	p.Line(low, nut, 1.8, k)
	p.Polyline([]panel.Point{{X: low.X - 5, Y: low.Y + 26}, low, {X: low.X + 5, Y: low.Y + 26}}, 1.8, k)
}
