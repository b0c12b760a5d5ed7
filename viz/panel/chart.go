package panel

import (
	"image/color"
	"math"
)

// Curve is a line of a chart; a place that is not a number breaks it.
type Curve struct {
	X, Y  []float64
	Name  string      // in the key, if it has one
	Paint color.NRGBA // zero: ink
	Width float64     // points; 0 means 1.5
	Under bool        // the ground between the curve and 0 is tinted
}

// Chart is lines over two axes.
type Chart struct {
	At         Rect // all of it, with the labels
	Title      string
	Across, Up Axis
	Equal      bool // a unit is as long across as up; else each axis fills its side
	Curves     []Curve
	Marked     bool
	Mark       float64 // an upright line at this place of the axis across, if Marked
	Blank      bool    // no paper behind
}

// span returns the least and greatest finite value that pick gives.
func (c Chart) span(pick func(Curve) []float64) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, k := range c.Curves {
		for _, v := range pick(k) {
			if !math.IsNaN(v) && !math.IsInf(v, 0) {
				lo, hi = min(lo, v), max(hi, v)
			}
		}
	}
	return lo, hi
}

// Chart draws the chart and returns where its values lie.
func (l *List) Chart(c Chart) Plot {
	x0, x1 := c.Across.ends(c.span(func(k Curve) []float64 { return k.X }))
	y0, y1 := c.Up.ends(c.span(func(k Curve) []float64 { return k.Y }))
	if c.Up.Min >= c.Up.Max { // air above and below the data
		air := (y1 - y0) * 0.06
		if !(c.Up.Zero && y0 == 0) {
			y0 -= air
		}
		if !(c.Up.Zero && y1 == 0) {
			y1 += air
		}
	}
	g := ground{at: c.At, title: c.Title, across: c.Across, up: c.Up, equal: c.Equal, blank: c.Blank}
	plot, words := l.ground(g, [4]float64{x0, x1, y0, y1})
	l.Clip(plot.Inner)
	for _, k := range c.Curves {
		l.curve(plot, k)
	}
	if c.Marked && c.Mark >= plot.x.lo && c.Mark <= plot.x.hi {
		l.Upright(plot.X(c.Mark), plot.Inner.Y, plot.Inner.Bottom(), 1, Rust())
	}
	l.Unclip()
	l.chartKey(c, words)
	return plot
}

// curve draws one line, and the tint under it.
func (l *List) curve(plot Plot, k Curve) {
	paint := k.Paint
	if paint == (color.NRGBA{}) {
		paint = Ink()
	}
	n := min(len(k.X), len(k.Y))
	places := make([]Point, n)
	for i := range places {
		places[i] = Point{plot.X(k.X[i]), plot.Y(k.Y[i])}
	}
	if k.Under {
		base := min(max(plot.Y(0), plot.Inner.Y), plot.Inner.Bottom())
		for i := 0; i+1 < n; i++ {
			l.tint(places[i], places[i+1], base, faded(paint, 0.15))
		}
	}
	width := k.Width
	if width <= 0 {
		width = 1.5
	}
	l.Polyline(places, width, paint)
}

// tint fills between a stretch of a curve and the level y.
func (l *List) tint(a, b Point, y float64, k color.NRGBA) {
	if bad(a) || bad(b) {
		return
	}
	d := l.Atlas.Density
	if (a.Y-y)*(b.Y-y) < 0 { // crosses
		m := Point{a.X + (b.X-a.X)*(a.Y-y)/(a.Y-b.Y), y}
		l.tint(a, m, y, k)
		l.tint(m, b, y, k)
		return
	}
	l.quad(corner{a.X * d, a.Y * d, k}, corner{b.X * d, b.Y * d, k}, corner{b.X * d, y * d, k}, corner{a.X * d, y * d, k})
}

// chartKey writes the names of the curves behind samples, right-aligned over
// the chart; what has no room is left out.
func (l *List) chartKey(c Chart, words *crowd) {
	const sample = 16.0
	x := c.At.Right() - chartEdge
	for i := len(c.Curves) - 1; i >= 0; i-- {
		k := c.Curves[i]
		if k.Name == "" {
			continue
		}
		w := l.Atlas.TextWidth(Small, k.Name)
		r := Rect{x - w - sample - 5, c.At.Y + 3, w + sample + 5, Small.LineHeight()}
		if r.X < c.At.X || !words.room(r) {
			continue
		}
		paint := k.Paint
		if paint == (color.NRGBA{}) {
			paint = Ink()
		}
		l.Level(r.X, r.X+sample, r.Y+r.H/2-0.5, 2, paint)
		l.TextIn(Rect{r.X + sample + 5, r.Y, w + 1, r.H}, Small, Left, SoftInk(), k.Name)
		x = r.X - 12
	}
}
