package viz

import (
	"image/color"
	"math"
	"strconv"

	"archload/mesh"
)

// gauge draws a dial gauge's place: a crossed circle.
func (g *page) gauge(at pt) {
	g.fill([][]pt{disc(at, 3.2)}, paperColor())
	g.stroke([][]pt{disc(at, 3.2)}, true, pen{width: 0.8, color: inkColor()})
	g.line(at.add(-4.6, 0), at.add(4.6, 0), thin())
	g.line(at.add(0, -4.6), at.add(0, 4.6), thin())
}

// worst draws a triangle at the place of the greatest value.
func (g *page) worst(at pt) {
	t := []pt{at.add(-4, -2.6), at.add(4, -2.6), at.add(0, 4.2)}
	g.fill([][]pt{t}, rustColor())
	g.stroke([][]pt{t}, true, pen{width: 0.8, color: paperColor()})
}

// post draws a post's place: a filled square.
func (g *page) post(at pt) {
	q := box(rect{at.X - 3.2, at.Y - 3.2, at.X + 3.2, at.Y + 3.2})
	g.fill([][]pt{q}, inkColor())
	g.stroke([][]pt{q}, true, pen{width: 0.8, color: paperColor()})
}

// markName is the number of a mark on the picture and in the list; letters are
// the designs'.
func markName(i int) string { return strconv.Itoa(i + 1) }

// tag is a piece of text with its place.
type tag struct {
	text string
	s    style
	box  block
	back *color.NRGBA // fill behind the text; nil: none
}

func (t tag) draw(g *page) {
	if t.back != nil {
		g.patch(t.box.grown(1.2), *t.back)
	}
	g.put(t.box, t.text, t.s)
}

// behind is the veil behind names, so that they can be read on any colour.
func behind() *color.NRGBA {
	c := faded(paperColor(), 0.84)
	return &c
}

// keepClear notes the lines and marks that text should keep clear of.
func (v *planView) keepClear(g *page) {
	f, d := v.lay.frame, v.in.Drawing
	loops := append([][]mesh.Point{d.Outline}, d.Holes...)
	loops = append(loops, d.Feet...)
	for _, b := range d.Braces {
		loops = append(loops, ribbon(b))
	}
	for _, l := range loops {
		if len(l) > 0 {
			g.block(append(f.all(l), f.at(l[0])))
		}
	}
	for _, m := range d.Gauges {
		a := f.at(m.At)
		g.blocked = append(g.blocked, upright(rect{a.X - 5, a.Y - 5, a.X + 5, a.Y + 5}))
	}
}

// block notes a line that text should keep clear of.
func (g *page) block(l []pt) {
	for i := 1; i < len(l); i++ {
		g.blocked = append(g.blocked, around(l[i-1], l[i], 0.6))
	}
}

// placedMark is a mark's label: near the mark, further away with a leader, or
// nowhere if there is no room.
type placedMark struct {
	tag
	far, ok bool
}

// middle is the middle of an upright label.
func (p placedMark) middle() pt { return p.box.at.add(p.box.w/2, p.box.up/2) }

// placeMarks finds a place for each mark's number and reading.
func (g *page) placeMarks(v *planView) []placedMark {
	marks := v.in.Drawing.Gauges
	out := make([]placedMark, len(marks))
	for i, m := range marks {
		words := markName(i)
		if !math.IsNaN(m.Value) {
			words += ": " + reading(m.Value) // "1  0.54" would read as one number
		}
		p := &out[i]
		p.tag = tag{text: words, s: label(), back: behind()}
		p.box, p.far, p.ok = g.beside(v.lay.frame.at(m.At), p.text, p.s)
		if !p.ok { // too crowded for the reading, which stands in the list too
			p.text = markName(i)
			p.box, p.far, p.ok = g.beside(v.lay.frame.at(m.At), p.text, p.s)
		}
		if p.ok {
			g.blocked = append(g.blocked, p.box, around(v.lay.frame.at(m.At), p.middle(), 0.6))
			g.labels = append(g.labels, p.box)
		}
	}
	return out
}

// drawMarks draws leaders, marks, then labels.
func (g *page) drawMarks(v *planView, placed []placedMark) {
	f := v.lay.frame
	for i, m := range v.in.Drawing.Gauges {
		p, at := placed[i], f.at(m.At)
		if p.ok && p.far {
			c := p.middle()
			g.line(at, c, pen{width: 1.8, color: faded(paperColor(), 0.6)})
			g.line(at, c, thin())
		}
	}
	for i, m := range v.in.Drawing.Gauges {
		switch {
		case m.Worst:
			g.worst(f.at(m.At))
		case m.Post:
			g.post(f.at(m.At))
		default:
			g.gauge(f.at(m.At))
		}
		if placed[i].ok {
			placed[i].draw(g)
		}
	}
}

// beside looks for a free place near a mark: to the right first, then around
// it, then further out.
func (g *page) beside(at pt, words string, s style) (b block, far, ok bool) {
	w := g.width(words, s)
	for ring, r := range []float64{6.5, 9, 16, 26, 38, 52, 70} {
		for _, d := range [][2]float64{{1, 0}, {1, 1}, {1, -1}, {-1, 0}, {-1, 1}, {-1, -1}, {0, 1}, {0, -1}} {
			x, y := at.X+d[0]*r, at.Y-3+d[1]*r
			switch {
			case d[0] < 0:
				x -= w
			case d[0] == 0:
				x, y = x-w/2, y+5*d[1]
			}
			b = g.place(pt{x, y}, words, s, 0, 0)
			if g.free(b.grown(1.2)) && (ring < 2 || g.open(at, b)) {
				return b, ring > 1, true
			}
		}
	}
	return b, false, false
}

// open tells whether the straight way from a mark to its label crosses no
// other label.
func (g *page) open(at pt, b block) bool {
	way := around(at, b.at.add(b.w/2, b.up/2), 0.5)
	for _, o := range g.labels {
		if way.overlaps(o) {
			return false
		}
	}
	return true
}

// Sizes of the list of readings.
const (
	listColumns = 2
	listLead    = 11.0 // points
)

func listRows(n int) int { return (n + listColumns - 1) / listColumns }

func listHeight(rows int) float64 {
	if rows == 0 {
		return 0
	}
	return listLead*float64(rows) + 2
}

// drawList writes each mark's number, name, reading and bench reading.
func (g *page) drawList(marks []Mark, r rect) {
	rows := listRows(len(marks))
	const gap = 14
	w := (r.width() - gap*(listColumns-1)) / listColumns
	for i, m := range marks {
		x := r.X0 + float64(i/rows)*(w+gap)
		y := r.Y1 - listLead*float64(i%rows+1) + 2
		value := markReading(m)
		right := g.width(value, label())
		g.text(pt{x, y}, markName(i), style{smallest, bold, inkColor()}, 0)
		g.text(pt{x + 14, y}, g.shorten(clean(m.Name), label(), w-14-right-8), label(), 0)
		g.text(pt{x + w, y}, value, label(), 1)
	}
}

// markReading is a mark's reading in words.
func markReading(m Mark) string {
	t := ""
	if !math.IsNaN(m.Value) {
		t = withUnit(reading(m.Value), m.Unit)
	}
	if m.Measured != nil {
		t += " (bench " + withUnit(reading(*m.Measured), m.Unit) + ")"
	}
	return t
}

// patch fills a block.
func (g *page) patch(b block, c color.NRGBA) {
	q := b.corners()
	g.fill([][]pt{q[:]}, c)
}
