package viz

import (
	"fmt"
	"math"
	"slices"
)

// Event is something that happens while the load grows.
type Event struct {
	At    float64 // share of full string load, 0 to 1
	Words string  // "the middle first touches"
}

// FootForceInput is what FootForce draws: the force on each third of the
// bearing length at each share of the load.
type FootForceInput struct {
	Caption                  Caption
	Load                     []float64 // share of full string load, rising from 0 to 1
	BassEnd, Middle, TrebEnd []float64 // N, one per load
	Events                   []Event
}

// FootForce draws how the foot takes up the load.
func FootForce(in FootForceInput) (*Picture, error) {
	n := len(in.Load)
	if n < 2 || len(in.BassEnd) != n || len(in.Middle) != n || len(in.TrebEnd) != n {
		return nil, fmt.Errorf("foot force: want at least 2 loads and as many forces, found %d loads and %d, %d, %d forces",
			n, len(in.BassEnd), len(in.Middle), len(in.TrebEnd))
	}
	if !slices.IsSorted(in.Load) {
		return nil, fmt.Errorf("foot force: loads do not rise")
	}
	events := slices.DeleteFunc(slices.Clone(in.Events), func(e Event) bool { return math.IsNaN(e.At) })
	slices.SortStableFunc(events, func(a, b Event) int { return int(sign(a.At - b.At)) })
	in.Events = events
	p := &Picture{Width: pageWidth, Title: clean(in.Caption.Title)}
	p.Height = captionHeight(in.Caption) + 230 + 12*float64(len(events))
	p.draw = func(g *page) { drawFootForce(g, in) }
	return p, nil
}

// series is one line of the diagram.
type series struct {
	name string
	v    []float64
	by   pen
}

func (in FootForceInput) series() []series {
	return []series{
		{"bass end", in.BassEnd, pen{width: 1.4, color: rustColor()}},
		{"middle", in.Middle, pen{width: 1.4, color: inkColor(), dash: []float64{1.5, 2}}},
		{"treble end", in.TrebEnd, pen{width: 1.4, color: blueColor(), dash: []float64{6, 2.5}}},
	}
}

func drawFootForce(g *page, in FootForceInput) {
	l := g.layCaption(in.Caption)
	g.drawCaption(l)
	r := l.free
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
	x := tightAxis(0, 100, 10, r.X0+40, r.X1-names)
	plot := rect{x.a, r.Y0 + 34, x.b, r.Y1 - 8}
	rows := placeEvents(g, in.Events, x)
	for _, e := range rows {
		plot.Y1 = math.Min(plot.Y1, r.Y1-8-12*float64(e.row+1))
	}
	y := newAxis(lo, hi, 7, plot.Y0, plot.Y1-4)
	g.levels(y, x.a, x.b)
	g.turned(pt{x.a - 31, (y.a + y.b) / 2}, "force on the top, newtons", label(), math.Pi/2)
	drawEvents(g, rows, plot)
	for _, s := range in.series() {
		g.stroke(curve(len(s.v), func(i int) pt { return pt{x.at(100 * in.Load[i]), y.at(s.v[i])} }), false, s.by)
	}
	nameSeries(g, in.series(), y, x.b)
	g.ruler(x, plot.Y0, "string load, % of full")
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
func placeEvents(g *page, events []Event, x axis) []placedEvent {
	all := make([]placedEvent, len(events))
	for i, e := range events {
		at := math.Max(0, math.Min(1, e.At))
		t := g.shorten(clean(e.Words), label(), x.b-x.a-60)
		t = fmt.Sprintf("%s, at %.0f %%", t, 100*at)
		w := g.width(t, label())
		px := x.at(100 * at)
		from := math.Min(px-2, g.w-margin-w)
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

func drawEvents(g *page, rows []placedEvent, plot rect) {
	by := pen{width: 0.6, color: softInkColor(), dash: []float64{1.2, 2}}
	base := func(e placedEvent) float64 { return plot.Y1 + 4 + 12*float64(e.row) }
	for _, e := range rows {
		g.line(pt{e.x, plot.Y0}, pt{e.x, base(e) - 2.5}, by)
	}
	paper := paperColor() // interrupts the lines of others where no order of rows avoids them
	for _, e := range rows {
		tag{e.text, label(), g.place(pt{e.from, base(e)}, e.text, label(), 0, 0), &paper}.draw(g)
	}
}

// nameSeries writes each line's name and last value at its right end, moved
// apart where they would meet.
func nameSeries(g *page, all []series, y axis, x float64) {
	const lead = 11
	order := []int{0, 1, 2}
	last := func(i int) float64 {
		v := all[i].v[len(all[i].v)-1]
		if math.IsNaN(v) {
			return y.a
		}
		return y.at(v)
	}
	slices.SortStableFunc(order, func(a, b int) int { return int(sign(last(a) - last(b))) })
	place := make([]float64, len(all))
	low := math.Inf(-1)
	for _, i := range order {
		place[i] = math.Max(last(i)-3, low+lead)
		low = place[i]
	}
	if low > y.b-4 {
		for k := len(order) - 1; k >= 0; k-- {
			place[order[k]] = math.Min(place[order[k]], y.b-4-lead*float64(len(order)-1-k))
		}
	}
	for i, s := range all {
		g.line(pt{x + 1, last(i)}, pt{x + 8, place[i] + 3}, pen{width: 0.5, color: s.by.color})
		g.line(pt{x + 8, place[i] + 3}, pt{x + 18, place[i] + 3}, s.by)
		words := s.name + "  " + reading(s.v[len(s.v)-1])
		g.text(pt{x + 21, place[i]}, words, style{smallest, bold, s.by.color}, 0)
	}
}
