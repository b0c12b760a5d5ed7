package figure

import (
	"fmt"
	"math"

	"archload/viz/canvas"
	"archload/viz/scale"
)

// ChartInput is what Chart draws: several quantities over the same choices,
// each in a panel of its own.
type ChartInput struct {
	Caption canvas.Caption
	Across  string    // what the choices are, with unit: "depth of the relief, mm"
	X       []float64 // rising; with Words their order alone counts
	Words   []string  // one for each X if the choices are no numbers
	Joined  bool      // the words follow each other, as ages do: lines join their values
	Names   []string  // of the lines; the key shows them if there is more than one
	Panels  []ChartPanel
}

// ChartPanel is one quantity.
type ChartPanel struct {
	Name  string
	Unit  string
	Lines [][]float64 // one for each of Names, a value for each X; NaN: none
}

// Sizes of a chart, points.
const (
	chartHeight = 112.0 // of a panel with its axis
	chartSide   = 34.0  // left of a panel for the numbers
	chartGap    = 18.0  // between two panels beside each other
	mostPanels  = 10
)

// Chart draws quantities over choices, two panels to a row, one across the page.
func Chart(in ChartInput) (*canvas.Picture, error) {
	n := len(in.X)
	if n == 0 || len(in.Panels) == 0 || len(in.Panels) > mostPanels || len(in.Words) > 0 && len(in.Words) != n {
		return nil, fmt.Errorf("chart: want places, as many words, and 1 to %d panels, found %d places, %d words, %d panels",
			mostPanels, n, len(in.Words), len(in.Panels))
	}
	for _, p := range in.Panels {
		if len(p.Lines) != len(in.Names) {
			return nil, fmt.Errorf("chart: %q: %d lines for %d names", p.Name, len(p.Lines), len(in.Names))
		}
		for _, l := range p.Lines {
			if len(l) != n {
				return nil, fmt.Errorf("chart: %q: %d values for %d places", p.Name, len(l), n)
			}
		}
	}
	in, key := in.keyed()
	panels := float64((len(in.Panels)+1)/2) * chartHeight
	height := canvas.CaptionHeight(in.Caption) + panels + 6 + in.keyHeight() + key.height()
	return canvas.NewPicture(canvas.PageWidth, height, in.Caption.Title, func(g *canvas.Page) {
		r := in.drawAll(g)
		key.draw(g, r.X0, r.Y1-panels)
	}), nil
}

func (in ChartInput) keyHeight() float64 {
	if len(in.Names) < 2 {
		return 0
	}
	return 12 * math.Ceil(float64(len(in.Names))/2)
}

// drawAll draws the panels and returns the page's free part, its top at theirs.
func (in ChartInput) drawAll(g *canvas.Page) canvas.Rect {
	l := g.LayCaption(in.Caption)
	g.DrawCaption(l)
	r := l.Free
	if len(in.Names) > 1 {
		var items []canvas.KeyItem
		for i, name := range in.Names {
			items = append(items, canvas.KeyItem{Words: canvas.Clean(name), Sample: canvas.LineSample(designPen(i))})
		}
		g.SampleRow(canvas.At(r.X0, r.Y1-8), r.Width(), items)
		r.Y1 -= in.keyHeight()
	}
	w := in.panelWidth()
	for k, p := range in.Panels {
		x0 := r.X0 + float64(k%2)*(w+chartGap)
		y1 := r.Y1 - float64(k/2)*chartHeight
		in.panel(g, p, canvas.Box(x0+chartSide, y1-chartHeight+30, x0+w-4, y1-16), k+2 >= len(in.Panels))
	}
	return r
}

// panel draws one quantity; the lowest of a column names what lies across.
func (in ChartInput) panel(g *canvas.Page, p ChartPanel, r canvas.Rect, lowest bool) {
	g.Text(canvas.At(r.X0-chartSide, r.Y1+7), g.Shorten(heading(p.Name, p.Unit), nameStyle(), r.Width()+chartSide), nameStyle(), 0)
	lo, hi, known := p.span()
	if !known {
		g.Text(canvas.At((r.X0+r.X1)/2, (r.Y0+r.Y1)/2), "never, or not known", canvas.Small(), 0.5)
	}
	y := canvas.NewAxis(lo, hi, 4, r.Y0, r.Y1)
	g.Levels(y, r.X0, r.X1)
	if lo < 0 && hi > 0 {
		g.Line(canvas.At(r.X0, y.At(0)), canvas.At(r.X1, y.At(0)), canvas.Pen{Width: 0.7, Color: canvas.SoftInk()})
	}
	x, at := in.across(r)
	for i, l := range p.Lines {
		by := designPen(i)
		point := func(k int) canvas.Point { return canvas.At(at(k), y.At(l[k])) }
		if len(in.Words) == 0 || in.Joined {
			g.Stroke(canvas.Curve(len(l), point), false, by)
		}
		for k, v := range l {
			if !math.IsNaN(v) && (len(l) <= 24 || len(in.Words) > 0) {
				g.Fill([][]canvas.Point{canvas.Disc(point(k), 1.7)}, by.Color)
			}
		}
	}
	in.foot(g, r, x, at, lowest)
}

// leastSpan is how much of the greatest value an upright axis covers at least,
// so that a difference of no account does not look like one, 1.
const leastSpan = 0.05

// leastOf is how much an upright axis covers at least in a unit, where a hand
// or an eye on the bench tells nothing less apart.
func leastOf(unit string) float64 {
	switch unit {
	case "mm":
		return 0.02
	case "%":
		return 5
	}
	return 0
}

// span is what the upright axis must hold: the values, zero with them if it is
// near, and never less than leastSpan and leastOf its unit.
func (p ChartPanel) span() (lo, hi float64, known bool) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, l := range p.Lines {
		for _, v := range l {
			if !math.IsNaN(v) && !math.IsInf(v, 0) {
				lo, hi = math.Min(lo, v), math.Max(hi, v)
			}
		}
	}
	if lo > hi {
		return 0, 1, false
	}
	if lo > 0 && lo < 0.5*hi {
		lo = 0
	}
	size := math.Max(math.Abs(lo), math.Abs(hi))
	least := math.Max(leastSpan*size, leastOf(p.Unit))
	if least == 0 {
		return 0, 1, true
	}
	if thin := least - (hi - lo); thin > 0 {
		below := thin / 2
		if lo >= 0 {
			below = math.Min(below, lo) // what cannot be negative needs no room there
		}
		lo, hi = lo-below, hi+thin-below
	}
	return lo, hi, true
}

// across returns the level axis and the place of each choice on it.
func (in ChartInput) across(r canvas.Rect) (canvas.Axis, func(k int) float64) {
	n := len(in.X)
	if len(in.Words) > 0 || n == 1 {
		step := r.Width() / float64(n)
		return canvas.Axis{}, func(k int) float64 { return r.X0 + (float64(k)+0.5)*step }
	}
	x := canvas.TightAxis(in.X[0], in.X[n-1], 5, r.X0, r.X1)
	return x, func(k int) float64 { return x.At(in.X[k]) }
}

// foot draws the level axis.
func (in ChartInput) foot(g *canvas.Page, r canvas.Rect, x canvas.Axis, at func(k int) float64, lowest bool) {
	name := ""
	if lowest {
		name = canvas.Clean(in.Across)
	}
	if len(in.Words) == 0 && len(in.X) > 1 {
		g.Ruler(x, r.Y0, name)
		return
	}
	g.Line(canvas.At(r.X0, r.Y0), canvas.At(r.X1, r.Y0), canvas.Thin())
	room := r.Width()/float64(len(in.X)) - 3
	for k := range in.X {
		words := scale.Reading(in.X[k])
		if len(in.Words) > 0 {
			words = in.Words[k]
		}
		g.Text(canvas.At(at(k), r.Y0-12), g.Shorten(canvas.Clean(words), canvas.Label(), room), canvas.Label(), 0.5)
	}
	g.Text(canvas.At((r.X0+r.X1)/2, r.Y0-24), name, canvas.Label(), 0.5)
}
