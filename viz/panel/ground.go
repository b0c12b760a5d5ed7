package panel

// crowd keeps texts from overlapping.
type crowd struct{ taken []Rect }

// room tells whether r is free, and takes it if so.
func (c *crowd) room(r Rect) bool {
	for _, t := range c.taken {
		if !t.Meet(r).Empty() {
			return false
		}
	}
	c.taken = append(c.taken, r)
	return true
}

// ground is the paper and the axes of a chart.
type ground struct {
	at         Rect
	title      string
	across, up Axis
	equal      bool
	blank      bool
}

const (
	chartEdge = 8.0  // points, inside a chart's paper
	tickRow   = 17.0 // of the labels under a chart
)

// ground draws the paper, the grid and the labels of the axes that span ends
// (across from, to, up from, to).
func (l *List) ground(g ground, ends [4]float64) (Plot, *crowd) {
	words := &crowd{}
	if !g.blank {
		l.Rect(g.at, Slip())
		l.Frame(g.at, 1, Hair())
	}
	top := 6.0
	if g.title != "" || g.up.words() != "" {
		top = 3 + Small.LineHeight() + 5
	}
	inner := Rect{g.at.X + chartEdge, g.at.Y + top, g.at.W - 2*chartEdge, max(1, g.at.H-top-tickRow-4)}
	ys, yd := Ticks(ends[2], ends[3], int(inner.H/24))
	wide := 0.0
	for _, v := range ys {
		wide = max(wide, l.Atlas.TextWidth(Small, number(v, yd)))
	}
	inner.X, inner.W = inner.X+wide+5, max(1, inner.W-wide-5)
	if g.equal {
		ends = widened(ends, inner)
		ys, yd = Ticks(ends[2], ends[3], int(inner.H/24))
	}
	plot := Plot{inner, span{ends[0], ends[1], inner.X, inner.Right()}, span{ends[2], ends[3], inner.Bottom(), inner.Y}}
	l.heads(g, words)
	l.levels(plot, ys, yd, words)
	l.uprights(g, plot, words)
	return plot, words
}

// widened returns ends spread about their middle so that a unit is as long
// across as up.
func widened(e [4]float64, in Rect) [4]float64 {
	across, up := (e[1]-e[0])/in.W, (e[3]-e[2])/in.H // units to a point
	if across > up {
		m, h := (e[2]+e[3])/2, across*in.H/2
		return [4]float64{e[0], e[1], m - h, m + h}
	}
	m, h := (e[0]+e[1])/2, up*in.W/2
	return [4]float64{m - h, m + h, e[2], e[3]}
}

// heads writes the title and the name of the axis up over the chart.
func (l *List) heads(g ground, words *crowd) {
	x := g.at.X + chartEdge
	row := Rect{x, g.at.Y + 3, 0, Small.LineHeight()}
	for i, t := range []string{g.title, g.up.words()} {
		if t == "" {
			continue
		}
		f, k := SmallBold, Ink()
		if i == 1 {
			f, k = Small, SoftInk()
		}
		row.X = x
		row.W = l.Atlas.TextWidth(f, t)
		if row.Right() > g.at.Right()-chartEdge {
			row.W = max(0, g.at.Right()-chartEdge-x)
		}
		if words.room(row) {
			l.TextIn(row, f, Left, k, t)
		}
		x += row.W + 12
	}
}

// levels draws the level grid lines with their values on the left.
func (l *List) levels(plot Plot, at []float64, decimals int, words *crowd) {
	in := plot.Inner
	for _, v := range at {
		y := plot.Y(v)
		k := faded(Hair(), 0.7)
		if v == 0 {
			k = SoftInk()
		}
		l.Level(in.X, in.Right(), y-0.5, 1, k)
		t := number(v, decimals)
		w := l.Atlas.TextWidth(Small, t)
		r := Rect{in.X - 5 - w, y - 6, w, 12}
		if words.room(r) {
			l.TextIn(r, Small, Left, SoftInk(), t)
		}
	}
}

// uprights draws the axis across, its marks and values, and its name at the
// right end.
func (l *List) uprights(g ground, plot Plot, words *crowd) {
	in := plot.Inner
	y := in.Bottom()
	l.Level(in.X, in.Right(), y, 1, SoftInk())
	name := g.across.words()
	w := l.Atlas.TextWidth(Small, name)
	r := Rect{in.Right() - w, y + 5, w, 12}
	if name != "" && w < in.W && words.room(Rect{r.X - 8, r.Y, w + 8, r.H}) {
		l.TextIn(r, Small, Left, SoftInk(), name)
	}
	at, decimals := Ticks(plot.x.lo, plot.x.hi, int(in.W/45))
	for _, v := range at {
		x := plot.X(v)
		l.Upright(x, y, y+4, 1, SoftInk())
		t := number(v, decimals)
		w := l.Atlas.TextWidth(Small, t)
		left := min(max(x-w/2, g.at.X+2), g.at.Right()-2-w)
		if words.room(Rect{left - 2, y + 5, w + 4, 12}) {
			l.TextIn(Rect{left, y + 5, w, 12}, Small, Left, SoftInk(), t)
		}
	}
}
