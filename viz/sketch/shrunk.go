package sketch

import "archload/viz/panel"

// shrunk draws a board from above before and after it has dried: narrower, hardly shorter. Notes: across, along.
func (p *pen) shrunk() {
	in := p.head("a board of spruce from above, far too large; grey: before, rust: dried")
	const share = 0.12 // of its width that it loses
	wide := 0.4 * in.W
	r := panel.Rect{X: in.X + 0.2*in.W, Y: in.Y + 14, W: wide, H: in.H - 40}
	now := panel.Rect{X: r.X + share*wide, Y: r.Y + 1, W: wide * (1 - 2*share), H: r.H - 2}
	p.Frame(r, 1.4, panel.Pencil())
	p.Rect(now, woodColor())
	for i := 1; i < 9; i++ {
		p.Upright(now.X+now.W*float64(i)/9, now.Y, now.Bottom(), 1.4, lateColor())
	}
	p.Frame(now, 2, panel.Rust())
	y := r.Centre().Y
	p.arrow(panel.Point{X: r.X - 22, Y: y}, panel.Point{X: now.X - 2, Y: y}, panel.Ink())
	p.arrow(panel.Point{X: r.Right() + 22, Y: y}, panel.Point{X: now.Right() + 2, Y: y}, panel.Ink())
	p.write(p.note(0).Words, panel.Point{X: r.Right() + 0.14*in.W, Y: y - 26}, 0.26*in.W, panel.Ink())
	p.write(p.note(1).Words, panel.Point{X: r.Centre().X, Y: in.Bottom() - 10}, in.W-20, panel.Ink())
}
