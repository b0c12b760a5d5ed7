package canvas

import (
	"math"

	"archload/viz/scale"
)

// Axis takes values to one coordinate of the page.
type Axis struct {
	Lo, Hi float64 // values at the ends
	Step   float64 // between marks, 1-2-5
	A, B   float64 // page coordinate at lo and hi, points
}

// NewAxis covers lo..hi with whole steps, at most most of them.
func NewAxis(lo, hi float64, most int, a, b float64) Axis {
	x := Axis{Lo: lo, Hi: hi, A: a, B: b}
	if !(hi > lo) {
		x.Lo, x.Hi = lo-0.5, lo+0.5
	}
	x.Step = scale.StepAbove((x.Hi - x.Lo) / float64(most))
	x.Lo = math.Floor(x.Lo/x.Step+scale.Slack) * x.Step
	x.Hi = math.Ceil(x.Hi/x.Step-scale.Slack) * x.Step
	return x
}

// TightAxis is an axis that ends at lo and hi, the marks between them.
func TightAxis(lo, hi float64, most int, a, b float64) Axis {
	return Axis{Lo: lo, Hi: hi, Step: scale.StepAbove((hi - lo) / float64(most)), A: a, B: b}
}

// At is the page coordinate of v, points.
func (x Axis) At(v float64) float64 { return x.A + (v-x.Lo)/(x.Hi-x.Lo)*(x.B-x.A) }

// marks returns the multiples of step within the axis.
func (x Axis) marks() []float64 {
	var out []float64
	for k := math.Ceil(x.Lo/x.Step - scale.Slack); k*x.Step <= x.Hi+scale.Slack*x.Step; k++ {
		out = append(out, k*x.Step)
	}
	return out
}

func (x Axis) label(v float64) string { return scale.Number(v, scale.Decimals(x.Step)) }

// Levels draws the marks of an upright axis as hair lines from x0 to x1, with
// labels left of x0.
func (p *Page) Levels(y Axis, x0, x1 float64) {
	for _, v := range y.marks() {
		p.Line(Point{x0, y.At(v)}, Point{x1, y.At(v)}, Hair())
		p.Text(Point{x0 - 5, y.At(v) - 3}, y.label(v), Label(), 1)
	}
}

// Ruler draws the marks of a level axis below y0, with what it measures.
func (p *Page) Ruler(x Axis, y0 float64, words string) {
	p.Line(Point{x.A, y0}, Point{x.B, y0}, Thin())
	for _, v := range x.marks() {
		p.Line(Point{x.At(v), y0}, Point{x.At(v), y0 - 3}, Thin())
		p.Text(Point{x.At(v), y0 - 12}, x.label(v), Label(), 0.5)
	}
	p.Text(Point{(x.A + x.B) / 2, y0 - 24}, words, Label(), 0.5)
}

// LevelsAt draws the marks of an upright axis left of x0.
func (p *Page) LevelsAt(y Axis, x0 float64) {
	for _, v := range y.marks() {
		p.Line(Point{x0 - 3, y.At(v)}, Point{x0, y.At(v)}, Thin())
		p.Text(Point{x0 - 5, y.At(v) - 3}, y.label(v), Label(), 1)
	}
}
