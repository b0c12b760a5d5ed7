package viz

import (
	"image/color"
	"math"
)

// axis takes values to one coordinate of the page.
type axis struct {
	lo, hi float64 // values at the ends
	step   float64 // between marks, 1-2-5
	a, b   float64 // page coordinate at lo and hi, points
}

// newAxis covers lo..hi with whole steps, at most most of them.
func newAxis(lo, hi float64, most int, a, b float64) axis {
	x := axis{lo: lo, hi: hi, a: a, b: b}
	if !(hi > lo) {
		x.lo, x.hi = lo-0.5, lo+0.5
	}
	x.step = nice((x.hi - x.lo) / float64(most))
	x.lo = math.Floor(x.lo/x.step+slack) * x.step
	x.hi = math.Ceil(x.hi/x.step-slack) * x.step
	return x
}

// tightAxis is an axis that ends at lo and hi, the marks between them.
func tightAxis(lo, hi float64, most int, a, b float64) axis {
	return axis{lo: lo, hi: hi, step: nice((hi - lo) / float64(most)), a: a, b: b}
}

func (x axis) at(v float64) float64 { return x.a + (v-x.lo)/(x.hi-x.lo)*(x.b-x.a) }

// marks returns the multiples of step within the axis.
func (x axis) marks() []float64 {
	var out []float64
	for k := math.Ceil(x.lo/x.step - slack); k*x.step <= x.hi+slack*x.step; k++ {
		out = append(out, k*x.step)
	}
	return out
}

func (x axis) label(v float64) string { return number(v, decimals(x.step)) }

// levels draws the marks of an upright axis as hair lines from x0 to x1, with
// labels left of x0.
func (p *page) levels(y axis, x0, x1 float64) {
	for _, v := range y.marks() {
		p.line(pt{x0, y.at(v)}, pt{x1, y.at(v)}, hair())
		p.text(pt{x0 - 5, y.at(v) - 3}, y.label(v), label(), 1)
	}
}

// ruler draws the marks of a level axis below y0, with what it measures.
func (p *page) ruler(x axis, y0 float64, words string) {
	p.line(pt{x.a, y0}, pt{x.b, y0}, thin())
	for _, v := range x.marks() {
		p.line(pt{x.at(v), y0}, pt{x.at(v), y0 - 3}, thin())
		p.text(pt{x.at(v), y0 - 12}, x.label(v), label(), 0.5)
	}
	p.text(pt{(x.a + x.b) / 2, y0 - 24}, words, label(), 0.5)
}

// curve is a run of places with gaps where a coordinate is NaN.
func curve(n int, at func(i int) pt) [][]pt {
	var out [][]pt
	var run []pt
	for i := 0; i < n; i++ {
		q := at(i)
		if math.IsNaN(q.X + q.Y) {
			if len(run) > 1 {
				out = append(out, run)
			}
			run = nil
			continue
		}
		run = append(run, q)
	}
	if len(run) > 1 {
		out = append(out, run)
	}
	return out
}

// sampleRow draws samples with their meaning in a row from at to the right,
// within w; items that do not fit start another row below.
func (p *page) sampleRow(at pt, w float64, items []keyItem) {
	x, y := at.X, at.Y
	for _, it := range items {
		words := 22.0
		if it.sample == nil {
			words = 0
		}
		need := words + p.width(it.words, label())
		if x > at.X && x+need > at.X+w {
			x, y = at.X, y-12
		}
		if it.sample != nil {
			it.sample(p, rect{x, y, x + 17, y + 6})
		}
		p.text(pt{x + words, y}, p.shorten(it.words, label(), w-words), label(), 0)
		x += need + 14
	}
}

// lineSample is a key's sample of a line.
func lineSample(by pen) func(*page, rect) {
	return func(g *page, r rect) {
		y := (r.Y0 + r.Y1) / 2
		g.line(pt{r.X0, y}, pt{r.X1, y}, by)
	}
}

// areaSample is a key's sample of an area.
func areaSample(k color.NRGBA, by pen) func(*page, rect) {
	return func(g *page, r rect) {
		g.fill([][]pt{box(r)}, k)
		g.stroke([][]pt{box(r)}, true, by)
	}
}
