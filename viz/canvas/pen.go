package canvas

import (
	"image/color"
	"math"

	"gonum.org/v1/plot/vg"
)

// Pen is how a line is drawn.
type Pen struct {
	Width float64 // points
	Color color.NRGBA
	Dash  []float64 // points on, off, on, off; nil: unbroken
}

// Thin is the pen of outlines, 0.5 points.
func Thin() Pen { return Pen{Width: 0.5, Color: Ink()} }

// Firm is the pen of what matters most in a picture, 1.1 points.
func Firm() Pen { return Pen{Width: 1.1, Color: Ink()} }

// Hair is the pen of grid lines, 0.4 points.
func Hair() Pen { return Pen{Width: 0.4, Color: HairGrey()} }

// Hidden is the dashed pen of what lies underneath.
func Hidden() Pen { return Pen{Width: 0.8, Color: Ink(), Dash: []float64{4, 2.2}} }

// Stroke draws polylines, open or closed.
func (p *Page) Stroke(lines [][]Point, closed bool, by Pen) {
	p.c.SetColor(by.Color)
	p.c.SetLineWidth(vg.Length(by.Width))
	dash := make([]vg.Length, len(by.Dash))
	for i, d := range by.Dash {
		dash[i] = vg.Length(d)
	}
	p.c.SetLineDash(dash, 0)
	for _, l := range lines {
		if len(l) > 1 {
			p.c.Stroke(trace(nil, l, closed))
		}
	}
}

// Line draws one straight line.
func (p *Page) Line(a, b Point, by Pen) { p.Stroke([][]Point{{a, b}}, false, by) }

// Fill fills closed loops as one area (non-zero winding).
func (p *Page) Fill(loops [][]Point, c color.NRGBA) {
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

func trace(to vg.Path, l []Point, closed bool) vg.Path {
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

// Loop returns the corners of a rectangle, anticlockwise.
func Loop(r Rect) []Point { return []Point{{r.X0, r.Y0}, {r.X1, r.Y0}, {r.X1, r.Y1}, {r.X0, r.Y1}} }

// Disc returns a circle as a polygon fine enough for a mark.
func Disc(at Point, r float64) []Point {
	l := make([]Point, 24)
	for i := range l {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(len(l)))
		l[i] = at.Add(r*c, r*s)
	}
	return l
}

// Head draws an arrow head whose middle is at, pointing along angle (radians).
func (p *Page) Head(at Point, angle float64, c color.NRGBA) {
	s, k := math.Sincos(angle)
	turn := func(u, v float64) Point { return at.Add(u*k-v*s, u*s+v*k) }
	p.Fill([][]Point{{turn(3.2, 0), turn(-2.6, 1.9), turn(-2.6, -1.9)}}, c)
}

// Arrow draws a line with a filled head at b.
func (p *Page) Arrow(a, b Point, by Pen) {
	l := math.Hypot(b.X-a.X, b.Y-a.Y)
	if l == 0 {
		return
	}
	ux, uy := (b.X-a.X)/l, (b.Y-a.Y)/l
	head := math.Min(5, 0.6*l)
	neck := b.Add(-head*ux, -head*uy)
	p.Line(a, neck, by)
	p.Fill([][]Point{{b, neck.Add(-0.36*head*uy, 0.36*head*ux), neck.Add(0.36*head*uy, -0.36*head*ux)}}, by.Color)
}
