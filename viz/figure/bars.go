package figure

import (
	"fmt"
	"math"

	"archload/viz/canvas"
	"archload/viz/scale"
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
	Caption canvas.Caption
	Designs []string
	Rows    []BarRow
}

// Sizes of a bar chart, points.
const (
	barHead   = 15.0
	barHeight = 13.0
	barGap    = 9.0
	MostBars  = 20  // on one page
	barRoom   = 560 // for all of them
)

// CompareBars draws numbers of two or more designs as bars, each quantity on
// its own scale, which begins at zero.
func CompareBars(in BarsInput) (*canvas.Picture, error) {
	n := len(in.Designs)
	height := float64(len(in.Rows)) * (barHead + barGap + barHeight*float64(n))
	if n < 1 || len(in.Rows) == 0 || n*len(in.Rows) > MostBars || height > barRoom {
		return nil, fmt.Errorf("compare bars: want 1 to %d bars, found %d designs times %d quantities", MostBars, n, len(in.Rows))
	}
	for _, r := range in.Rows {
		if len(r.Values) != n {
			return nil, fmt.Errorf("compare bars: %q: %d values for %d designs", r.Name, len(r.Values), n)
		}
		if r.Wood != nil && len(r.Wood) != n {
			return nil, fmt.Errorf("compare bars: %q: %d ranges for %d designs", r.Name, len(r.Wood), n)
		}
	}
	height += canvas.CaptionHeight(in.Caption)
	return canvas.NewPicture(canvas.PageWidth, height, in.Caption.Title, func(g *canvas.Page) { drawBars(g, in) }), nil
}

func drawBars(g *canvas.Page, in BarsInput) {
	l := g.LayCaption(in.Caption)
	g.DrawCaption(l)
	r := l.Free
	names := 0.0
	for _, d := range in.Designs {
		names = math.Max(names, g.TextWidth(canvas.Clean(d), canvas.Label()))
	}
	names = math.Min(names, 0.36*r.Width())
	y := r.Y1 + 2
	for _, row := range in.Rows {
		y -= barHead
		g.Text(canvas.At(r.X0, y+3), g.Shorten(heading(row.Name, row.Unit), nameStyle(), r.Width()), nameStyle(), 0)
		x := barAxis(row.reach(), r.X0+names+10, r.X1-58)
		bottom := y - barHeight*float64(len(row.Values))
		for i, v := range row.Values {
			y -= barHeight
			g.Text(canvas.At(r.X0+names, y+3.5), g.Shorten(canvas.Clean(in.Designs[i]), canvas.Label(), names), canvas.Label(), 1)
			drawBar(g, x, v, row.wood(i), y, i)
			row.drawWhisker(g, x, i, y+barHeight/2)
		}
		g.Line(canvas.At(x.At(0), bottom-1), canvas.At(x.At(0), bottom+barHeight*float64(len(row.Values))+1), canvas.Thin())
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

// drawWhisker draws the wood's range of design i across the end of its bar.
func (r BarRow) drawWhisker(g *canvas.Page, x canvas.Axis, i int, y float64) {
	w := r.wood(i)
	if w == 0 || math.IsNaN(r.Values[i]) {
		return
	}
	const half = 2.2 // of the strokes at its ends, points
	a, b := x.At(r.Values[i]-w), x.At(r.Values[i]+w)
	by := canvas.Pen{Width: 0.9, Color: canvas.Ink()}
	g.Line(canvas.At(a, y), canvas.At(b, y), by)
	g.Line(canvas.At(a, y-half), canvas.At(a, y+half), by)
	g.Line(canvas.At(b, y-half), canvas.At(b, y+half), by)
}

// barAxis is an axis that holds zero and all values.
func barAxis(values []float64, a, b float64) canvas.Axis {
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
	return canvas.Axis{Lo: lo, Hi: hi, Step: 1, A: a, B: b}
}

// drawBar draws one bar with its value at the end.
func drawBar(g *canvas.Page, x canvas.Axis, v, wood, y float64, design int) {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		g.Text(canvas.At(x.At(0)+5, y+3.5), "no value", canvas.Small(), 0)
		return
	}
	a, b := math.Min(x.At(0), x.At(v)), math.Max(x.At(0), x.At(v))
	by := designPen(design)
	r := canvas.Box(a, y+1.5, b, y+barHeight-1.5)
	if b-a > 0.1 {
		g.Fill([][]canvas.Point{canvas.Loop(r)}, canvas.Faded(by.Color, 0.7))
		g.Stroke([][]canvas.Point{canvas.Loop(r)}, true, canvas.Pen{Width: 0.6, Color: by.Color})
	}
	if v < 0 {
		g.Text(canvas.At(math.Min(a, x.At(v-wood))-4, y+3.5), scale.Reading(v), canvas.Label(), 1)
		return
	}
	g.Text(canvas.At(math.Max(b, x.At(v+wood))+5, y+3.5), scale.Reading(v), canvas.Label(), 0)
}
