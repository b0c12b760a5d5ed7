package sketch

import (
	"image/color"
	"math"

	"archload/viz/panel"
)

// How the neck is drawn, in shares of the width of a guitar from tail to nut.
const (
	neckTurn   = 0.055 // rad
	bridgeSink = 0.13  // of the room's height
)

// neck draws body, neck and strings from the treble side, the tail at the left, before and after the neck block has
// turned and the bridge has sunk. Notes: at the neck block, at the nut, at the bridge, at the octave.
func (p *pen) neck() {
	in := p.head("sketch from the treble side, movements far too large; grey: before, rust: after")
	long := in.W - 16
	x := func(u float64) float64 { return in.X + 8 + u*long }
	deck, depth := in.Y+0.56*in.H, 0.26*in.H // of the top's rim; of the body
	block := panel.Point{X: x(0.6), Y: deck + depth}
	board := []panel.Point{{X: x(0.56), Y: deck - 9}, {X: x(0.99), Y: deck - 9}, {X: x(0.99), Y: deck + 1}, {X: x(0.63), Y: deck + 4}, {X: x(0.6), Y: deck + depth}, {X: x(0.56), Y: deck + depth}}
	nut := panel.Point{X: x(0.985), Y: deck - 14}
	sink := bridgeSink * in.H
	saddle := panel.Point{X: x(0.24), Y: deck - 0.3*in.H}
	tail := panel.Point{X: x(0.02), Y: deck - 4}

	body := []panel.Point{{X: x(0.01), Y: deck}, {X: x(0.6), Y: deck}, block, {X: x(0.01), Y: deck + depth}}
	p.Polygon(body, paleColor())
	p.top(x, deck, 0.1*in.H, 0, panel.Pencil())
	p.Polyline(closed(board), 1.2, panel.Pencil())
	p.Polyline([]panel.Point{tail, saddle, nut}, 1.2, panel.Pencil())

	now := allTurned(board, block, neckTurn)
	p.Polygon(now, woodColor())
	p.Polyline(closed(now), 1.4, panel.Rust())
	p.Polyline(body, 1, panel.SoftInk())
	p.top(x, deck, 0.1*in.H, sink, panel.Rust())
	low, up := panel.Point{X: saddle.X, Y: saddle.Y + sink}, turned(nut, block, neckTurn)
	p.Polygon([]panel.Point{{X: low.X - 3, Y: low.Y}, {X: low.X + 3, Y: low.Y}, {X: low.X + 8, Y: deck - 0.1*in.H + sink}, {X: low.X - 8, Y: deck - 0.1*in.H + sink}}, panel.Rust())
	p.Polyline([]panel.Point{tail, low, up}, 1.8, panel.Rust())
	p.Line(up, panel.Point{X: up.X, Y: up.Y + 6}, 4, panel.Rust())
	p.marks(saddle, nut, panel.Point{X: block.X, Y: deck + 0.3*depth}, sink)
}

// top draws the arch of the top over the rim, its middle gone down.
func (p *pen) top(x func(float64) float64, deck, arch, sink float64, k color.NRGBA) {
	var line []panel.Point
	for i := 0; i <= 40; i++ {
		t := float64(i) / 40
		s := math.Sin(math.Pi * t)
		u := math.Exp(-math.Pow((t-0.4)/0.2, 2)) // the bridge stands there
		line = append(line, panel.Point{X: x(0.01 + 0.58*t), Y: deck - arch*math.Sqrt(s) + sink*u*s})
	}
	p.Polyline(line, 1.6, k)
}

// marks are the arrows with their notes.
func (p *pen) marks(saddle, nut, block panel.Point, sink float64) {
	ink := panel.Blue()
	p.arrow(panel.Point{X: saddle.X, Y: saddle.Y - 24}, panel.Point{X: saddle.X, Y: saddle.Y - 2}, ink)
	p.write(p.note(2).Words, panel.Point{X: saddle.X, Y: saddle.Y - 32}, 0.4*p.at.W, panel.Ink())
	p.arrow(panel.Point{X: block.X + 34, Y: block.Y + 12}, panel.Point{X: block.X + 4, Y: block.Y}, ink)
	p.write(p.note(0).Words, panel.Point{X: block.X + 0.2*p.at.W, Y: block.Y + 22}, 0.34*p.at.W, panel.Ink())
	p.arrow(panel.Point{X: nut.X - 10, Y: nut.Y - 4}, panel.Point{X: nut.X - 10, Y: nut.Y - 34}, ink)
	p.write(p.note(1).Words, panel.Point{X: nut.X - 20, Y: nut.Y - 44}, 0.3*p.at.W, panel.Ink())
	u := panel.Point{X: (saddle.X + nut.X) / 2, Y: (saddle.Y+nut.Y)/2 + sink/8}
	p.arrow(panel.Point{X: u.X, Y: u.Y - 18}, u, ink)
	p.write(p.note(3).Words, panel.Point{X: u.X, Y: u.Y - 32}, 0.3*p.at.W, panel.Ink())
	p.Dashed(u, panel.Point{X: u.X, Y: block.Y + 8}, 1.2, [2]float64{4, 3}, panel.SoftInk())
}
