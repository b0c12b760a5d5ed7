package viz

import (
	"fmt"
	"math"
)

// BarRow is one quantity of several designs.
type BarRow struct {
	Name   string
	Unit   string
	Values []float64 // one per design, in Unit; NaN: cannot be had
}

// BarsInput is what CompareBars draws.
type BarsInput struct {
	Caption Caption
	Designs []string
	Rows    []BarRow
}

// Sizes of a bar chart, points.
const (
	barHead   = 15.0
	barHeight = 13.0
	barGap    = 9.0
	mostBars  = 20  // on one page
	barRoom   = 560 // for all of them
)

// CompareBars draws numbers of two or more designs as bars, each quantity on
// its own scale, which begins at zero.
func CompareBars(in BarsInput) (*Picture, error) {
	n := len(in.Designs)
	height := float64(len(in.Rows)) * (barHead + barGap + barHeight*float64(n))
	if n < 1 || len(in.Rows) == 0 || n*len(in.Rows) > mostBars || height > barRoom {
		return nil, fmt.Errorf("compare bars: want 1 to %d bars, found %d designs times %d quantities", mostBars, n, len(in.Rows))
	}
	for _, r := range in.Rows {
		if len(r.Values) != n {
			return nil, fmt.Errorf("compare bars: %q: %d values for %d designs", r.Name, len(r.Values), n)
		}
	}
	p := &Picture{Width: pageWidth, Title: clean(in.Caption.Title)}
	p.Height = captionHeight(in.Caption) + height
	p.draw = func(g *page) { drawBars(g, in) }
	return p, nil
}

func drawBars(g *page, in BarsInput) {
	l := g.layCaption(in.Caption)
	g.drawCaption(l)
	r := l.free
	names := 0.0
	for _, d := range in.Designs {
		names = math.Max(names, g.width(clean(d), label()))
	}
	names = math.Min(names, 0.36*r.width())
	y := r.Y1 + 2
	for _, row := range in.Rows {
		y -= barHead
		g.text(pt{r.X0, y + 3}, g.shorten(heading(row), nameStyle(), r.width()), nameStyle(), 0)
		x := barAxis(row.Values, r.X0+names+10, r.X1-58)
		bottom := y - barHeight*float64(len(row.Values))
		for i, v := range row.Values {
			y -= barHeight
			g.text(pt{r.X0 + names, y + 3.5}, g.shorten(clean(in.Designs[i]), label(), names), label(), 1)
			g.bar(x, v, y, i)
		}
		g.line(pt{x.at(0), bottom - 1}, pt{x.at(0), bottom + barHeight*float64(len(row.Values)) + 1}, thin())
		y -= barGap
	}
}

// heading is a quantity with its unit.
func heading(r BarRow) string {
	if r.Unit == "" {
		return clean(r.Name)
	}
	return clean(r.Name + ", " + r.Unit)
}

// barAxis is an axis that holds zero and all values.
func barAxis(values []float64, a, b float64) axis {
	lo, hi := 0.0, 0.0
	for _, v := range values {
		if !math.IsNaN(v) && !math.IsInf(v, 0) {
			lo, hi = math.Min(lo, v), math.Max(hi, v)
		}
	}
	if lo == hi {
		hi = 1
	}
	if lo < 0 {
		a += 46 // room for the value left of a negative bar
	}
	return axis{lo: lo, hi: hi, step: 1, a: a, b: b}
}

// bar draws one bar with its value at the end.
func (g *page) bar(x axis, v, y float64, design int) {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		g.text(pt{x.at(0) + 5, y + 3.5}, "no value", small(), 0)
		return
	}
	a, b := math.Min(x.at(0), x.at(v)), math.Max(x.at(0), x.at(v))
	by := designPen(design)
	r := rect{a, y + 1.5, b, y + barHeight - 1.5}
	if b-a > 0.1 {
		g.fill([][]pt{box(r)}, faded(by.color, 0.7))
		g.stroke([][]pt{box(r)}, true, pen{width: 0.6, color: by.color})
	}
	if v < 0 {
		g.text(pt{a - 4, y + 3.5}, reading(v), label(), 1)
		return
	}
	g.text(pt{b + 5, y + 3.5}, reading(v), label(), 0)
}
