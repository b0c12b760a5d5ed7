package section

import (
	"image/color"
	"math"

	"archload/cases"
	"archload/cases/design"
	"archload/viz/panel"
)

// nearCut is how far beside a cut a post is still drawn with it, mm: one stands a little behind
// its foot.
const nearCut = 30

// postHead is the upper end of a post that stands near a cut.
type postHead struct {
	name string
	half float64 // of its width, mm
	at   float64 // along the cut, mm
	top  float64 // height above z = 0 of the plate's inner face there, mm
	sink float64 // of the plate there, mm
}

// headsNear are the posts near a cut through the top.
func headsNear(c *design.LineCut, posts []cases.Post) (out []postHead) {
	dx, dy := c.To[0]-c.From[0], c.To[1]-c.From[1]
	long := math.Hypot(dx, dy)
	for _, p := range posts {
		px, py := p.At[0]-c.From[0], p.At[1]-c.From[1]
		along, beside := (px*dx+py*dy)/long, (px*dy-py*dx)/long
		if math.Abs(beside) > nearCut {
			continue
		}
		best := -1
		for i := range c.Along {
			if !math.IsNaN(c.Inner[i]) && (best < 0 || math.Abs(c.Along[i]-along) < math.Abs(c.Along[best]-along)) {
				best = i
			}
		}
		if best >= 0 && math.Abs(c.Along[best]-along) < float64(p.Diameter) {
			out = append(out, postHead{p.Name, float64(p.Diameter) / 2, along, c.Inner[best], c.Sink[best]})
		}
	}
	return out
}

// drawPosts draws the upper ends of the posts, down to the strip's floor.
func (s *Strip) drawPosts(l *panel.List, f stripFrame, c *design.LineCut, posts []cases.Post) {
	for _, p := range headsNear(c, posts) {
		head, end := f.place(p.at-p.half, p.top-s.in.Scales.Enlarge*p.sink), f.place(p.at+p.half, f.low)
		r := panel.Rect{X: head.X, Y: head.Y, W: end.X - head.X, H: end.Y - head.Y}
		l.Rect(r, color.NRGBA{240, 226, 196, 255})
		l.Frame(r, 1, panel.Pencil())
		l.TextIn(panel.Rect{X: r.Right() + 4, Y: r.Bottom() - 15, W: 120, H: 15}, panel.Small, panel.Left, panel.SoftInk(), p.name)
	}
}
