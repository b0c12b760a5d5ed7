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
	Wood   []float64 // half the wood's range of each, in Unit; nil: not drawn, NaN: cannot be had
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
		if r.Wood != nil && len(r.Wood) != n {
			return nil, fmt.Errorf("compare bars: %q: %d ranges for %d designs", r.Name, len(r.Wood), n)
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
		x := barAxis(row.reach(), r.X0+names+10, r.X1-58)
		bottom := y - barHeight*float64(len(row.Values))
		for i, v := range row.Values {
			y -= barHeight
			g.text(pt{r.X0 + names, y + 3.5}, g.shorten(clean(in.Designs[i]), label(), names), label(), 1)
			g.bar(x, v, row.wood(i), y, i)
			g.whisker(x, row, i, y+barHeight/2)
		}
		g.line(pt{x.at(0), bottom - 1}, pt{x.at(0), bottom + barHeight*float64(len(row.Values)) + 1}, thin())
		y -= barGap
	}
}

// reach are the values and the ends of their ranges.
func (r BarRow) reach() []float64 {
	out := r.Values
	for i, w := range r.Wood {
		if !math.IsNaN(w) {
			out = append(out[:len(out):len(out)], r.Values[i]-w, r.Values[i]+w)
		}
	}
	return out
}

// wood is half the wood's range of design i; 0 if it cannot be had.
func (r BarRow) wood(i int) float64 {
	if r.Wood == nil || math.IsNaN(r.Wood[i]) {
		return 0
	}
	return r.Wood[i]
}

// whisker draws the wood's range of design i across the end of its bar.
func (g *page) whisker(x axis, r BarRow, i int, y float64) {
	w := r.wood(i)
	if w == 0 || math.IsNaN(r.Values[i]) {
		return
	}
	const half = 2.2 // of the strokes at its ends, points
	a, b := x.at(r.Values[i]-w), x.at(r.Values[i]+w)
	by := pen{width: 0.9, color: inkColor()}
	g.line(pt{a, y}, pt{b, y}, by)
	g.line(pt{a, y - half}, pt{a, y + half}, by)
	g.line(pt{b, y - half}, pt{b, y + half}, by)
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
func (g *page) bar(x axis, v, wood, y float64, design int) {
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
		g.text(pt{math.Min(a, x.at(v-wood)) - 4, y + 3.5}, reading(v), label(), 1)
		return
	}
	g.text(pt{math.Max(b, x.at(v+wood)) + 5, y + 3.5}, reading(v), label(), 0)
}
