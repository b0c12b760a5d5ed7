package figure

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"archload/viz/canvas"
	"archload/viz/scale"
)

// Event is something that happens while the load grows.
type Event struct {
	At    float64 // share of full string load, 0 to 1
	Words string  // "the middle first touches"
}

// FootLine is the force on a part of the foot.
type FootLine struct {
	Name  string    // "bass end"
	Force []float64 // N, one per load
}

// FootForceInput is what FootForce draws: the force on each part of the foot, at
// most four from bass to treble, at each share of the load.
type FootForceInput struct {
	Caption canvas.Caption
	Load    []float64 // share of full string load, rising from 0 to 1
	Lines   []FootLine
	Events  []Event
}

// FootForce draws how the foot takes up the load.
func FootForce(in FootForceInput) (*canvas.Picture, error) {
	n := len(in.Load)
	if most := len(footPens()); n < 2 || len(in.Lines) == 0 || len(in.Lines) > most {
		return nil, fmt.Errorf("foot force: want at least 2 loads and 1 to %d lines, found %d loads and %d lines", most, n, len(in.Lines))
	}
	for _, l := range in.Lines {
		if len(l.Force) != n {
			return nil, fmt.Errorf("foot force: want as many forces as loads, found %d loads and %d forces", n, len(l.Force))
		}
	}
	if !slices.IsSorted(in.Load) {
		return nil, fmt.Errorf("foot force: loads do not rise")
	}
	events := slices.DeleteFunc(slices.Clone(in.Events), func(e Event) bool { return math.IsNaN(e.At) })
	slices.SortStableFunc(events, func(a, b Event) int { return cmp.Compare(a.At, b.At) })
	in.Events = events
	height := canvas.CaptionHeight(in.Caption) + 230 + 12*float64(len(events))
	return canvas.NewPicture(canvas.PageWidth, height, in.Caption.Title, func(g *canvas.Page) { drawFootForce(g, in) }), nil
}

// series is one line of the diagram.
type series struct {
	name string
	v    []float64
	by   canvas.Pen
}

func (in FootForceInput) series() []series {
	pens := footPens()
	out := make([]series, len(in.Lines))
	for i, l := range in.Lines {
		by := pens[i]
		if i == len(in.Lines)-1 && i > 0 {
			by = pens[len(pens)-1] // the treble end keeps its own
		}
		out[i] = series{l.Name, l.Force, by}
	}
	return out
}

// footPens draw the parts of the foot, bass to treble.
func footPens() []canvas.Pen {
	return []canvas.Pen{
		{Width: 1.4, Color: canvas.Rust()},
		{Width: 1.4, Color: canvas.Ink(), Dash: []float64{1.5, 2}},
		{Width: 1.4, Color: canvas.SoftInk(), Dash: []float64{3, 1.5}},
		{Width: 1.4, Color: canvas.Blue(), Dash: []float64{6, 2.5}},
	}
}

func drawFootForce(g *canvas.Page, in FootForceInput) {
	l := g.LayCaption(in.Caption)
	g.DrawCaption(l)
	r := l.Free
	lo, hi := 0.0, 0.0
	for _, s := range in.series() {
		for _, v := range s.v {
			if !math.IsNaN(v) {
				lo, hi = math.Min(lo, v), math.Max(hi, v)
			}
		}
	}
	if hi == lo {
		hi = 1
	}
	const names = 92 // room for the lines' names
	x := canvas.TightAxis(0, 100, 10, r.X0+40, r.X1-names)
	plot := canvas.Box(x.A, r.Y0+34, x.B, r.Y1-8)
	rows := placeEvents(g, in.Events, x)
	for _, e := range rows {
		plot.Y1 = math.Min(plot.Y1, r.Y1-8-12*float64(e.row+1))
	}
	y := canvas.NewAxis(lo, hi, 7, plot.Y0, plot.Y1-4)
	g.Levels(y, x.A, x.B)
	g.Turned(canvas.At(x.A-31, (y.A+y.B)/2), "force on the top, newtons", canvas.Label(), math.Pi/2)
	drawEvents(g, rows, plot)
	for _, s := range in.series() {
		g.Stroke(canvas.Curve(len(s.v), func(i int) canvas.Point { return canvas.At(x.At(100*in.Load[i]), y.At(s.v[i])) }), false, s.by)
	}
	nameSeries(g, in.series(), y, x.B)
	g.Ruler(x, plot.Y0, "string load, % of full")
}

// placedEvent is an event with its row of text above the plot.
type placedEvent struct {
	x    float64 // of its line, points
	from float64 // start of its text, points
	to   float64
	row  int // 0 is the lowest
	text string
}

// placeEvents gives each event a row so that texts do not meet and no line
// passes through a text: a text whose span holds another event's line lies
// above that event's row.
func placeEvents(g *canvas.Page, events []Event, x canvas.Axis) []placedEvent {
	all := make([]placedEvent, len(events))
	for i, e := range events {
		at := math.Max(0, math.Min(1, e.At))
		t := g.Shorten(canvas.Clean(e.Words), canvas.Label(), x.B-x.A-60)
		t = fmt.Sprintf("%s, at %.0f %%", t, 100*at)
		w := g.TextWidth(t, canvas.Label())
		px := x.At(100 * at)
		from := math.Min(px-2, g.W-canvas.Margin-w)
		all[i] = placedEvent{x: px, from: from, to: from + w, row: -1, text: t}
	}
	for row, left := 0, len(all); left > 0; row++ {
		chosen := lowest(all)
		for _, i := range chosen {
			all[i].row = row
		}
		left -= len(chosen)
	}
	return all
}

// lowest returns the events, not yet in a row, that may share the next row.
func lowest(all []placedEvent) []int {
	var chosen []int
	for i, e := range all {
		ok := e.row < 0
		for j, o := range all {
			crosses := j != i && o.row < 0 && o.x > e.from-2 && o.x < e.to+2
			ok = ok && !crosses
		}
		for _, j := range chosen {
			ok = ok && (e.from > all[j].to+6 || e.to < all[j].from-6)
		}
		if ok {
			chosen = append(chosen, i)
		}
	}
	for i := len(all) - 1; len(chosen) == 0; i-- {
		if all[i].row < 0 {
			chosen = append(chosen, i)
		}
	}
	return chosen
}

func drawEvents(g *canvas.Page, rows []placedEvent, plot canvas.Rect) {
	by := canvas.Pen{Width: 0.6, Color: canvas.SoftInk(), Dash: []float64{1.2, 2}}
	base := func(e placedEvent) float64 { return plot.Y1 + 4 + 12*float64(e.row) }
	for _, e := range rows {
		g.Line(canvas.At(e.x, plot.Y0), canvas.At(e.x, base(e)-2.5), by)
	}
	paper := canvas.Paper() // interrupts the lines of others where no order of rows avoids them
	for _, e := range rows {
		canvas.Tag{Text: e.text, In: canvas.Label(), Box: g.Place(canvas.At(e.from, base(e)), e.text, canvas.Label(), 0, 0), Back: &paper}.Draw(g)
	}
}

// nameSeries writes each line's name and last value at its right end, moved
// apart where they would meet.
func nameSeries(g *canvas.Page, all []series, y canvas.Axis, x float64) {
	const lead = 11
	order := make([]int, len(all))
	for i := range order {
		order[i] = i
	}
	last := func(i int) float64 {
		v := all[i].v[len(all[i].v)-1]
		if math.IsNaN(v) {
			return y.A
		}
		return y.At(v)
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(last(a), last(b)) })
	place := make([]float64, len(all))
	low := math.Inf(-1)
	for _, i := range order {
		place[i] = math.Max(last(i)-3, low+lead)
		low = place[i]
	}
	if low > y.B-4 {
		for k := len(order) - 1; k >= 0; k-- {
			place[order[k]] = math.Min(place[order[k]], y.B-4-lead*float64(len(order)-1-k))
		}
	}
	for i, s := range all {
		g.Line(canvas.At(x+1, last(i)), canvas.At(x+8, place[i]+3), canvas.Pen{Width: 0.5, Color: s.by.Color})
		g.Line(canvas.At(x+8, place[i]+3), canvas.At(x+18, place[i]+3), s.by)
		words := s.name + "  " + scale.Reading(s.v[len(s.v)-1])
		g.Text(canvas.At(x+21, place[i]), words, canvas.Style{Size: canvas.Smallest, Face: canvas.Bold, Color: s.by.Color}, 0)
	}
}
