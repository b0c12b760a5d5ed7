package figure

import (
	"math"
	"strconv"

	"archload/mesh"
	"archload/viz/canvas"
	"archload/viz/scale"
)

// markName is the number of a mark on the picture and in the list; letters are
// the designs'.
func markName(i int) string { return strconv.Itoa(i + 1) }

// keepClear notes the lines and marks that text should keep clear of.
func (v *planView) keepClear(g *canvas.Page) {
	f, d := v.lay.frame, v.in.Drawing
	loops := append([][]mesh.Point{d.Outline}, d.Holes...)
	loops = append(loops, d.Feet...)
	for _, b := range d.Braces {
		loops = append(loops, ribbon(b))
	}
	for _, l := range loops {
		if len(l) > 0 {
			g.AvoidLine(append(f.All(l), f.At(l[0])))
		}
	}
	for _, m := range d.Gauges {
		a := f.At(m.At)
		g.Avoid(canvas.Upright(canvas.Box(a.X-5, a.Y-5, a.X+5, a.Y+5)))
	}
}

// placedMark is a mark's label: near the mark, further away with a leader, or
// nowhere if there is no room.
type placedMark struct {
	canvas.Tag
	far, ok bool
}

// middle is the middle of an upright label.
func (p placedMark) middle() canvas.Point { return p.Box.At.Add(p.Box.W/2, p.Box.Up/2) }

// placeMarks finds a place for each mark's number and reading.
func (v *planView) placeMarks(g *canvas.Page) []placedMark {
	marks := v.in.Drawing.Gauges
	out := make([]placedMark, len(marks))
	for i, m := range marks {
		words := markName(i)
		if !math.IsNaN(m.Value) {
			words += ": " + scale.Reading(m.Value) // "1  0.54" would read as one number
		}
		p := &out[i]
		p.Tag = canvas.Tag{Text: words, In: canvas.Label(), Back: canvas.Behind()}
		p.Box, p.far, p.ok = g.Beside(v.lay.frame.At(m.At), p.Text, p.In)
		if !p.ok { // too crowded for the reading, which stands in the list too
			p.Text = markName(i)
			p.Box, p.far, p.ok = g.Beside(v.lay.frame.At(m.At), p.Text, p.In)
		}
		if p.ok {
			g.Reserve(p.Box)
			g.Avoid(canvas.Around(v.lay.frame.At(m.At), p.middle(), 0.6))
		}
	}
	return out
}

// drawMarks draws leaders, marks, then labels.
func (v *planView) drawMarks(g *canvas.Page, placed []placedMark) {
	f := v.lay.frame
	for i, m := range v.in.Drawing.Gauges {
		p, at := placed[i], f.At(m.At)
		if p.ok && p.far {
			c := p.middle()
			g.Line(at, c, canvas.Pen{Width: 1.8, Color: canvas.Faded(canvas.Paper(), 0.6)})
			g.Line(at, c, canvas.Thin())
		}
	}
	for i, m := range v.in.Drawing.Gauges {
		switch {
		case m.Worst:
			drawWorst(g, f.At(m.At))
		case m.Post:
			drawPost(g, f.At(m.At))
		default:
			drawGauge(g, f.At(m.At))
		}
		if placed[i].ok {
			placed[i].Draw(g)
		}
	}
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
func drawList(g *canvas.Page, marks []Mark, r canvas.Rect) {
	rows := listRows(len(marks))
	const gap = 14
	w := (r.Width() - gap*(listColumns-1)) / listColumns
	for i, m := range marks {
		x := r.X0 + float64(i/rows)*(w+gap)
		y := r.Y1 - listLead*float64(i%rows+1) + 2
		value := markReading(m)
		right := g.TextWidth(value, canvas.Label())
		g.Text(canvas.At(x, y), markName(i), canvas.Style{Size: canvas.Smallest, Face: canvas.Bold, Color: canvas.Ink()}, 0)
		g.Text(canvas.At(x+14, y), g.Shorten(canvas.Clean(m.Name), canvas.Label(), w-14-right-8), canvas.Label(), 0)
		g.Text(canvas.At(x+w, y), value, canvas.Label(), 1)
	}
}

// markReading is a mark's reading in words.
func markReading(m Mark) string {
	t := ""
	if !math.IsNaN(m.Value) {
		t = withUnit(scale.Reading(m.Value), m.Unit)
	}
	if m.Measured != nil {
		t += " (bench " + withUnit(scale.Reading(*m.Measured), m.Unit) + ")"
	}
	return t
}
