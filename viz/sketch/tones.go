package sketch

import (
	"math"

	"archload/viz/panel"
)

// heardTones is how many tones were heard; one fewer are given by the wood.
const heardTones = 6

// tones draws the tones that were heard over a line in Hz, and below it those that one wood gives: those that agree
// stand over each other. Notes: of the six heard, then of the five given.
func (p *pen) tones() {
	in := p.head("over the line: the tones as they were written down, Hz; under it: the tones that one wood gives")
	most := 1e-9
	for i := range 2*heardTones - 1 {
		most = math.Max(most, p.note(i).Value)
	}
	y := in.Y + 0.45*in.H
	x := func(v float64) float64 { return in.X + 38 + (in.W-84)*v/most }
	p.Line(panel.Point{X: in.X + 4, Y: y}, panel.Point{X: in.Right() - 4, Y: y}, 1.4, panel.Ink())
	for i := range 2*heardTones - 1 {
		n, up, ink := p.note(i), -1.0, panel.Ink()
		if i >= heardTones {
			up, ink = 1, panel.Blue()
		} else if !p.given(n.Value) {
			ink = panel.Rust()
			p.Circle(panel.Point{X: x(n.Value), Y: y - 28}, 34, 2, ink)
		}
		p.Line(panel.Point{X: x(n.Value), Y: y + 2*up}, panel.Point{X: x(n.Value), Y: y + 30*up}, 4, ink)
		p.write(n.Words, panel.Point{X: x(n.Value), Y: y + up*(44+7*math.Max(0, up))}, 74, ink)
	}
}

// given tells whether one of the wood's tones lies within a hundredth of a heard one.
func (p *pen) given(hz float64) bool {
	for i := heardTones; i < 2*heardTones-1; i++ {
		if math.Abs(p.note(i).Value-hz) < 0.01*hz {
			return true
		}
	}
	return false
}
