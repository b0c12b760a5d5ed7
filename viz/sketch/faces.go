package sketch

import (
	"image/color"
	"math"
	"strings"

	"archload/viz/panel"
)

// pulledWord begins the note of a face that is pulled; any other face is squeezed.
const pulledWord = "pulled"

// faces draws a piece of A and one of B, cut out along the grain, with arrows to one scale for what pulls and squeezes
// them from face to face, in the colours of the stress. Notes: of A the outer face and the inner one, of B the same; one that
// begins with "pulled" is of a face that is pulled.
func (p *pen) faces() {
	in := p.head("a piece of each beside the bridge, cut out along the grain; blue arrows squeeze it, brown ones pull it")
	most := 1e-9
	var signed [4]float64
	for i := range signed {
		n := p.note(i)
		signed[i] = -math.Abs(n.Value)
		if strings.HasPrefix(n.Words, pulledWord) {
			signed[i] = -signed[i]
		}
		most = math.Max(most, math.Abs(n.Value))
	}
	for i, cell := range halves(in) {
		p.piece(cell, []string{"A", "B"}[i], signed[2*i]/most, signed[2*i+1]/most)
		x := cell.X + cell.W/2
		p.write("outer face: "+p.note(2*i).Words, panel.Point{X: x, Y: cell.Y + 0.12*cell.H}, cell.W-8, panel.Ink())
		p.write("inner face: "+p.note(2*i+1).Words, panel.Point{X: x, Y: cell.Bottom() - 0.1*cell.H}, cell.W-8, panel.Ink())
	}
}

// piece draws one piece under what acts at its outer and its inner face, -1 to 1, and evenly between them.
func (p *pen) piece(cell panel.Rect, letter string, outer, inner float64) {
	box := panel.Rect{W: 0.3 * cell.W, H: 0.46 * cell.H}
	box.X, box.Y = cell.X+(cell.W-box.W)/2, cell.Y+0.24*cell.H
	p.Rect(box, woodColor())
	for i := 1; i < 5; i++ {
		p.Level(box.X, box.Right(), box.Y+box.H*float64(i)/5, 1, lateColor())
	}
	p.Frame(box, 1.4, panel.Ink())
	p.TextIn(box, panel.BodyBold, panel.Middle, panel.Ink(), letter)
	const arrows = 6
	for i := range arrows {
		u := float64(i) / (arrows - 1)
		v := outer + u*(inner-outer)
		long := 0.28 * cell.W * math.Abs(v)
		if long < 4 {
			continue
		}
		y := box.Y + 4 + (box.H-8)*u
		for _, side := range []struct{ x, sense float64 }{{box.X - 3, -1}, {box.Right() + 3, 1}} {
			near, far := panel.Point{X: side.x, Y: y}, panel.Point{X: side.x + side.sense*long, Y: y}
			if v < 0 {
				p.arrow(far, near, pushInk())
			} else {
				p.arrow(near, far, pullInk())
			}
		}
	}
}

// The inks of pull and push, as the fields of stress have them.
func pullInk() color.NRGBA { return panel.Rust() }
func pushInk() color.NRGBA { return color.NRGBA{70, 120, 196, 255} }
