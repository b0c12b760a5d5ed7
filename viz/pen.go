package viz

import (
	"image/color"
	"math"

	"gonum.org/v1/plot/vg"
)

// pen is how a line is drawn.
type pen struct {
	width float64 // points
	color color.NRGBA
	dash  []float64 // points on, off, on, off; nil: unbroken
}

func thin() pen   { return pen{width: 0.5, color: inkColor()} }
func firm() pen   { return pen{width: 1.1, color: inkColor()} }
func hair() pen   { return pen{width: 0.4, color: hairColor()} }
func hidden() pen { return pen{width: 0.8, color: inkColor(), dash: []float64{4, 2.2}} }

// stroke draws polylines, open or closed.
func (p *page) stroke(lines [][]pt, closed bool, by pen) {
	p.c.SetColor(by.color)
	p.c.SetLineWidth(vg.Length(by.width))
	dash := make([]vg.Length, len(by.dash))
	for i, d := range by.dash {
		dash[i] = vg.Length(d)
	}
	p.c.SetLineDash(dash, 0)
	for _, l := range lines {
		if len(l) > 1 {
			p.c.Stroke(trace(nil, l, closed))
		}
	}
}

// line draws one straight line.
func (p *page) line(a, b pt, by pen) { p.stroke([][]pt{{a, b}}, false, by) }

// fill fills closed loops as one area (non-zero winding).
func (p *page) fill(loops [][]pt, c color.NRGBA) {
	var all vg.Path
	for _, l := range loops {
		if len(l) > 2 {
			all = trace(all, l, true)
		}
	}
	if len(all) > 0 {
		p.c.SetColor(c)
		p.c.Fill(all)
	}
}

func trace(to vg.Path, l []pt, closed bool) vg.Path {
	for i, v := range l {
		if i == 0 {
			to.Move(v.vg())
			continue
		}
		to.Line(v.vg())
	}
	if closed {
		to.Close()
	}
	return to
}

// box returns the corners of a rectangle, anticlockwise.
func box(r rect) []pt { return []pt{{r.X0, r.Y0}, {r.X1, r.Y0}, {r.X1, r.Y1}, {r.X0, r.Y1}} }

// disc returns a circle as a polygon fine enough for a mark.
func disc(at pt, r float64) []pt {
	l := make([]pt, 24)
	for i := range l {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(len(l)))
		l[i] = at.add(r*c, r*s)
	}
	return l
}

// head draws an arrow head whose middle is at, pointing along angle (radians).
func (p *page) head(at pt, angle float64, c color.NRGBA) {
	s, k := math.Sincos(angle)
	turn := func(u, v float64) pt { return at.add(u*k-v*s, u*s+v*k) }
	p.fill([][]pt{{turn(3.2, 0), turn(-2.6, 1.9), turn(-2.6, -1.9)}}, c)
}

// arrow draws a line with a filled head at b.
func (p *page) arrow(a, b pt, by pen) {
	l := math.Hypot(b.X-a.X, b.Y-a.Y)
	if l == 0 {
		return
	}
	ux, uy := (b.X-a.X)/l, (b.Y-a.Y)/l
	head := math.Min(5, 0.6*l)
	neck := b.add(-head*ux, -head*uy)
	p.line(a, neck, by)
	p.fill([][]pt{{b, neck.add(-0.36*head*uy, 0.36*head*ux), neck.add(0.36*head*uy, -0.36*head*ux)}}, by.color)
}
