package sheet

import (
	"math"

	"archload/mesh"
	"archload/mesh/plane"
	"archload/viz/canvas"
)

// perMM is how many points (1/72 inch) a millimetre of a full-scale sheet has.
const perMM = 72 / 25.4

// fullScale is a drawing in millimetres of paper: x to the right, y up.
type fullScale struct {
	items  []fullItem
	lo, hi mesh.Point   // box of everything drawn
	rule   *canvas.Page // measures text
}

// fullItem is one line, area or word. Only one of its kinds is set.
type fullItem struct {
	line   []mesh.Point
	closed bool
	pen    canvas.Pen
	fill   bool // the line's inside, in the pen's colour
	text   string
	style  canvas.Style
	align  float64
	angle  float64    // radians, anticlockwise
	lo, hi mesh.Point // its box
}

func newFullScale() *fullScale {
	inf := math.Inf(1)
	return &fullScale{lo: mesh.Point{inf, inf}, hi: mesh.Point{-inf, -inf}, rule: canvas.NewMeasure(0, 0)}
}

func (d *fullScale) add(it fullItem) {
	for k := range 2 {
		d.lo[k], d.hi[k] = math.Min(d.lo[k], it.lo[k]), math.Max(d.hi[k], it.hi[k])
	}
	d.items = append(d.items, it)
}

func (d *fullScale) stroke(l []mesh.Point, closed bool, by canvas.Pen) {
	if len(l) < 2 {
		return
	}
	it := fullItem{line: l, closed: closed, pen: by}
	it.lo, it.hi = plane.Bounds(l)
	d.add(it)
}

func (d *fullScale) fill(l []mesh.Point, by canvas.Pen) {
	it := fullItem{line: l, fill: true, pen: by}
	it.lo, it.hi = plane.Bounds(l)
	d.add(it)
}

func (d *fullScale) straight(a, b mesh.Point, by canvas.Pen) { d.stroke([]mesh.Point{a, b}, false, by) }

// words sets a line of text with its baseline through at; align as in
// canvas.Page.Text.
func (d *fullScale) words(at mesh.Point, text string, s canvas.Style, align float64) {
	d.turned(at, text, s, align, 0)
}

func (d *fullScale) turned(at mesh.Point, text string, s canvas.Style, align, angle float64) {
	if text == "" {
		return
	}
	b := d.rule.Place(canvas.At(at[0]*perMM, at[1]*perMM), text, s, align, angle)
	it := fullItem{line: []mesh.Point{at}, text: text, style: s, align: align, angle: angle}
	var l []mesh.Point
	for _, c := range b.Corners() {
		l = append(l, mesh.Point{c.X / perMM, c.Y / perMM})
	}
	it.lo, it.hi = plane.Bounds(l)
	d.add(it)
}

// onWhite sets centred text on a white patch, so that lines stop beside it.
func (d *fullScale) onWhite(at mesh.Point, text string, s canvas.Style) {
	w, h := d.wide(text, s)/2+0.6, s.Size/perMM/2+0.2
	d.fill([]mesh.Point{{at[0] - w, at[1] - h}, {at[0] + w, at[1] - h}, {at[0] + w, at[1] + h}, {at[0] - w, at[1] + h}}, canvas.Pen{Color: canvas.White()})
	d.words(mesh.Point{at[0], at[1] - 0.36*s.Size/perMM}, text, s, 0.5)
}

// wide is the width of a line of text, mm.
func (d *fullScale) wide(text string, s canvas.Style) float64 {
	return d.rule.TextWidth(text, s) / perMM
}

// include adds another drawing shifted by s.
func (d *fullScale) include(o *fullScale, s mesh.Point) {
	shift := func(p mesh.Point) mesh.Point { return mesh.Point{p[0] + s[0], p[1] + s[1]} }
	for _, it := range o.items {
		l := make([]mesh.Point, len(it.line))
		for i, p := range it.line {
			l[i] = shift(p)
		}
		it.line, it.lo, it.hi = l, shift(it.lo), shift(it.hi)
		d.add(it)
	}
}

// crosses says whether anything of the drawing shows in a window, mm.
func (d *fullScale) crosses(lo, hi mesh.Point) bool {
	for _, it := range d.items {
		if !it.apart(lo, hi) && it.touches(lo, hi) {
			return true
		}
	}
	return false
}

func (it *fullItem) apart(lo, hi mesh.Point) bool {
	return it.lo[0] > hi[0] || it.hi[0] < lo[0] || it.lo[1] > hi[1] || it.hi[1] < lo[1]
}

// touches says whether a line comes into the window; the box of an area or a
// word decides for those.
func (it *fullItem) touches(lo, hi mesh.Point) bool {
	if it.text != "" || it.fill {
		return true
	}
	n := len(it.line)
	if it.closed {
		n++
	}
	for i := 1; i < n; i++ {
		if segmentMeets(it.line[i-1], it.line[i%len(it.line)], lo, hi) {
			return true
		}
	}
	return false
}

// segmentMeets cuts a piece of line to the window side by side (J. D. Foley et
// al., Computer Graphics, parametric line clipping).
func segmentMeets(a, b, lo, hi mesh.Point) bool {
	from, to := 0.0, 1.0
	for k := range 2 {
		d := b[k] - a[k]
		if d == 0 {
			if a[k] < lo[k] || a[k] > hi[k] {
				return false
			}
			continue
		}
		u, v := (lo[k]-a[k])/d, (hi[k]-a[k])/d
		from, to = math.Max(from, math.Min(u, v)), math.Min(to, math.Max(u, v))
	}
	return from <= to
}

// paint draws what shows in the window lo..hi on a page whose frame f takes
// millimetres to points.
func (d *fullScale) paint(g *canvas.Page, f canvas.Frame, lo, hi mesh.Point) {
	for i := range d.items {
		it := &d.items[i]
		if it.apart(lo, hi) {
			continue
		}
		switch l := f.All(it.line); {
		case it.text != "":
			g.Put(g.Place(l[0], it.text, it.style, it.align, it.angle), it.text, it.style)
		case it.fill:
			g.Fill([][]canvas.Point{l}, it.pen.Color)
		default:
			g.Stroke([][]canvas.Point{l}, it.closed, it.pen)
		}
	}
}
