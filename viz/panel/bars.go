package panel

import (
	"image/color"
	"math"
)

// Bar is one bar: a value over a stretch of the axis across.
type Bar struct {
	From, To float64 // of the axis across
	Value    float64 // not a number: none
	Paint    color.NRGBA
}

// Bars is bars at places of an axis.
type Bars struct {
	At         Rect
	Title      string
	Across, Up Axis
	Bars       []Bar
	Decimals   int  // of the values
	Values     bool // each bar's value is written at its end, where there is room
	Blank      bool // no paper behind
}

// Bars draws bars from 0 up, and down if they are negative, and returns where
// the values lie.
func (l *List) Bars(b Bars) Plot {
	lo, hi := math.Inf(1), math.Inf(-1)
	y0, y1 := 0.0, 0.0
	for _, bar := range b.Bars {
		lo, hi = min(lo, bar.From, bar.To), max(hi, bar.From, bar.To)
		if !math.IsNaN(bar.Value) && !math.IsInf(bar.Value, 0) {
			y0, y1 = min(y0, bar.Value), max(y1, bar.Value)
		}
	}
	b.Up.Zero = true
	x0, x1 := b.Across.ends(lo, hi)
	if b.Up.Min >= b.Up.Max {
		if y0 == y1 {
			y1 = 1
		}
		air := (y1 - y0) * 0.06
		if b.Values {
			air = (y1 - y0) * min(0.6, 15/max(1, b.At.H-76))
		}
		if y0 < 0 {
			y0 -= air
		}
		if y1 > 0 {
			y1 += air
		}
	} else {
		y0, y1 = b.Up.Min, b.Up.Max
	}
	g := ground{at: b.At, title: b.Title, across: b.Across, up: b.Up, blank: b.Blank}
	plot, words := l.ground(g, [4]float64{x0, x1, y0, y1})
	l.Clip(plot.Inner)
	for _, bar := range b.Bars {
		l.bar(b, bar, plot, words)
	}
	if y0 < 0 && y1 > 0 {
		l.Level(plot.Inner.X, plot.Inner.Right(), plot.Y(0)-0.5, 1, SoftInk())
	}
	l.Unclip()
	return plot
}

// bar draws one bar and, if there is room, its value.
func (l *List) bar(b Bars, bar Bar, plot Plot, words *crowd) {
	if math.IsNaN(bar.Value) || math.IsInf(bar.Value, 0) {
		return
	}
	k := bar.Paint
	if k == (color.NRGBA{}) {
		k = Rust()
	}
	x0, x1 := plot.X(min(bar.From, bar.To)), plot.X(max(bar.From, bar.To))
	if x1-x0 > 3 { // a slit between neighbours
		x0, x1 = x0+0.5, x1-0.5
	}
	zero, end := plot.Y(0), plot.Y(bar.Value)
	top, low := min(zero, end), max(zero, end)
	r := Rect{x0, top, max(x1-x0, 1/l.Atlas.Density), low - top}
	l.Rect(r, faded(k, 0.75))
	if !b.Values {
		return
	}
	t := number(bar.Value, b.Decimals)
	w := l.Atlas.TextWidth(Small, t)
	label := Rect{(x0+x1)/2 - w/2, top - 13, w, 12}
	if bar.Value < 0 {
		label.Y = low + 1
	}
	spare := Rect{label.X - 2, label.Y, w + 4, 12}
	if label.X >= plot.Inner.X && label.Right() <= plot.Inner.Right() && words.room(spare) {
		if !b.Blank {
			l.Rect(label, faded(Slip(), 0.85)) // hides the grid line behind
		}
		l.TextIn(Rect{label.X, label.Y, w + 1, 12}, Small, Left, Ink(), t)
	}
}
