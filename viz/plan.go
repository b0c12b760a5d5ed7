package viz

import (
	"fmt"
	"image/color"
	"math"

	"archload/mesh"
)

// Drawing is what is drawn over a field in plan. All points are mm, x across
// (treble positive), y along (neck positive). Every part may be empty.
type Drawing struct {
	Outline  []mesh.Point   // the plate's edge, closed, not repeated
	Holes    [][]mesh.Point // sound holes, closed
	Braces   []Strip        // on the underside, drawn dashed
	Feet     [][]mesh.Point // bearing areas of the bridge, closed
	Strings  [][]mesh.Point // centre lines
	Flow     [][]mesh.Point // lines of equal force
	FlowNote string         // what one of them carries: "each line carries 5 N"
	Rim      *RimHold       // what holds the edge up; nil: not shown
	Gauges   []Mark
	Grain    float64 // turn of the grain from the centre line, degrees, anticlockwise seen from outside
}

// Strip is a brace in plan.
type Strip struct {
	Name string
	Line []mesh.Point // centre line, mm
	Half []float64    // half width, mm: one value, or one per point of Line
}

// Mark is a place with a reading: a dial gauge, or the worst place.
type Mark struct {
	Name     string
	At       mesh.Point // mm
	Value    float64    // in Unit; NaN: none
	Unit     string
	Measured *float64 // reading on the bench, in Unit; nil: none
	Worst    bool     // drawn as a triangle: the place of the greatest value
	Post     bool     // drawn as a square: a post between top and back
}

// PlanInput is what PlanView draws.
type PlanInput struct {
	Caption Caption
	Plan    *mesh.Plan // needed if there is a field
	Field   *Field     // nil: the bare plate
	Drawing Drawing
}

// Size of a plan page, points; many words or gauges make it higher.
const (
	planWidth  = 504 // 7 in
	planHeight = 648 // 9 in
	planColumn = 112 // the legend's column
	planLeast  = 380 // least height of the plate's part
	planMost   = 520 // greatest height of the plate in a report
	planWords  = 16  // room for the words at the rim
)

// planLayout says where the parts of a plan page lie.
type planLayout struct {
	caption captionLayout
	frame   frame
	plate   rect // box of the plate on the page
	column  rect // legend and key
	list    rect // readings
}

// PlanView draws one field over the plate, seen from outside with the neck
// up: bands and lines a legend step apart, the outline, openings white,
// braces dashed, feet, gauges with their readings, legend and key.
func PlanView(in PlanInput) (*Picture, error) {
	v := &planView{in: in}
	if in.Field != nil {
		s, err := newSheet(in.Plan, *in.Field)
		if err != nil {
			return nil, fmt.Errorf("plan view: %w", err)
		}
		v.sheet, v.scale = s, in.Field.Scale()
		if _, _, ok := in.Field.Extent(); !ok {
			v.empty = true
		}
	}
	if err := v.measure(); err != nil {
		return nil, fmt.Errorf("plan view: %w", err)
	}
	p := &Picture{
		Width: planWidth, Height: v.height, Title: clean(in.Caption.Title),
		draw: v.draw, frame: v.lay.frame,
	}
	if v.sheet != nil && !v.empty {
		p.legend = &v.bar
	}
	return p, nil
}

type planView struct {
	in     PlanInput
	sheet  *sheet // nil: no field
	scale  Scale
	empty  bool // the field has no value anywhere
	height float64
	lay    planLayout
	bar    legendLayout
}

// measure lays out the page.
func (v *planView) measure() error {
	lo, hi, err := v.bounds()
	if err != nil {
		return err
	}
	rows := listRows(len(v.in.Drawing.Gauges))
	v.height = v.pageHeight(rows)
	g := newMeasure(planWidth, v.height)
	l := planLayout{caption: g.layCaption(v.in.Caption)}
	free := l.caption.free
	l.list = rect{free.X0, free.Y0, free.X1, free.Y0 + listHeight(rows)}
	if rows > 0 {
		free.Y0 = l.list.Y1 + 4
	}
	l.column = rect{free.X1 - planColumn, free.Y0, free.X1, free.Y1}
	l.frame = fit(lo, hi, rect{free.X0 + planWords, free.Y0 + planWords, l.column.X0 - planWords - 6, free.Y1 - planWords})
	a, b := l.frame.at(lo), l.frame.at(hi)
	l.plate = rect{a.X, a.Y, b.X, b.Y}
	v.lay = l
	if v.sheet != nil {
		v.bar = g.layLegend(v, l.column)
	}
	return nil
}

// pageHeight is the usual height, or what the column and the list need.
func (v *planView) pageHeight(rows int) float64 {
	const tall = 2000
	g := newMeasure(planWidth, tall)
	need := v.keyHeight(g) + 8
	if v.sheet != nil {
		l := g.layLegend(v, rect{0, 0, planColumn, 0}) // no room: the least patches
		need -= l.below
	}
	most := float64(planLeast)
	if v.in.Caption.bare {
		most = v.natural()
	}
	h := captionHeight(v.in.Caption) + listHeight(rows) + 4 + math.Max(need, most)
	if v.in.Caption.bare {
		return h
	}
	return math.Max(planHeight, h)
}

// natural is the height that the plate takes if it fills the page's width,
// points.
func (v *planView) natural() float64 {
	lo, hi, err := v.bounds()
	if err != nil {
		return planLeast
	}
	w := float64(planWidth - 2*margin - planColumn - 2*planWords - 6)
	return math.Min(planMost, w*(hi[1]-lo[1])/(hi[0]-lo[0])) + 2*planWords
}

// bounds returns the box of outline and nodes, mm.
func (v *planView) bounds() (lo, hi mesh.Point, err error) {
	lo = mesh.Point{math.Inf(1), math.Inf(1)}
	hi = mesh.Point{math.Inf(-1), math.Inf(-1)}
	lists := [][]mesh.Point{v.in.Drawing.Outline}
	if v.sheet != nil {
		lists = append(lists, v.sheet.pts)
	}
	for _, l := range lists {
		for _, q := range l {
			for k := range q {
				lo[k], hi[k] = math.Min(lo[k], q[k]), math.Max(hi[k], q[k])
			}
		}
	}
	if w, h := hi[0]-lo[0], hi[1]-lo[1]; !(w > 0 && h > 0) || math.IsInf(w+h, 0) {
		return lo, hi, fmt.Errorf("outline: want a closed curve of finite size, found %d points", len(v.in.Drawing.Outline))
	}
	return lo, hi, nil
}

func (v *planView) draw(g *page) {
	g.drawCaption(v.lay.caption)
	v.drawRim(g)
	if v.sheet != nil {
		g.drawLegend(v)
	}
	g.drawKey(v)
	d, f := v.in.Drawing, v.lay.frame
	g.drawList(d.Gauges, v.lay.list)
	v.keepClear(g)
	marks := g.placeMarks(v)
	names := g.placeBraceNames(v)
	for _, l := range append(v.clippedStrings(), f.lines(d.Flow)...) {
		g.block(l) // lines may pass under the veil of other names, not under these
	}
	names = append(names, v.drawField(g)...)
	for _, h := range d.Holes {
		g.fill([][]pt{f.all(h)}, whiteColor())
		g.stroke([][]pt{f.all(h)}, true, thin())
	}
	g.stroke([][]pt{f.all(d.Outline)}, true, firm())
	v.drawParts(g)
	g.drawMarks(v, marks)
	for _, n := range names {
		n.draw(g)
	}
}

// drawField draws bands and lines and returns the names of the lines.
func (v *planView) drawField(g *page) []tag {
	f := v.lay.frame
	if v.sheet == nil {
		g.fill([][]pt{f.all(v.in.Drawing.Outline)}, woodColor())
		return nil
	}
	lines := make([][]path, v.scale.Bands())
	for k := range lines {
		level := v.scale.Level(k)
		if k == 0 {
			level = math.Inf(-1)
		}
		var loops []path
		loops, lines[k] = v.sheet.above(level)
		g.fill(f.paths(loops), v.scale.BandColor(k))
	}
	var names []tag
	for k := 1; k < len(lines) && !v.in.Field.Plain; k++ {
		name, ok := g.placeLineName(v, k, lines[k])
		for _, l := range lines[k] {
			if !ok {
				g.stroke([][]pt{f.all(l.pts)}, l.closed, v.linePen(k))
				continue
			}
			g.stroke(outside(f.all(l.pts), l.closed, name.box.grown(1)), false, v.linePen(k))
		}
		if ok {
			names = append(names, name)
		}
	}
	g.hatch(v.sheet, f)
	return names
}

// linePen is the pen of the line between bands k-1 and k: light on dark, and
// firmer for zero and every fifth step, so that lines can be counted.
func (v *planView) linePen(k int) pen {
	by := pen{width: 0.45, color: faded(inkColor(), 0.55)}
	if lightness(v.scale.BandColor(k)) < 0.62 {
		by.color = faded(paperColor(), 0.75)
	}
	if n := math.Round(v.scale.Level(k) / v.scale.Step); math.Mod(n, 5) == 0 {
		by.width = 0.95
	}
	return by
}

// hatch draws the triangles without a value.
func (g *page) hatch(s *sheet, f frame) {
	var loops [][]pt
	var lines [][]pt
	for _, t := range s.blank {
		c := [3]pt{f.at(s.pts[t[0]]), f.at(s.pts[t[1]]), f.at(s.pts[t[2]])}
		loops = append(loops, c[:])
		lines = append(lines, hatchLines(c[:], 5)...)
	}
	g.fill(loops, noValueColor())
	g.stroke(lines, false, pen{width: 0.5, color: softInkColor()})
}

// hatchLines returns the pieces of the lines x + y = k·step inside a convex
// polygon, points.
func hatchLines(c []pt, step float64) [][]pt {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, q := range c {
		lo, hi = math.Min(lo, q.X+q.Y), math.Max(hi, q.X+q.Y)
	}
	var out [][]pt
	for k := math.Ceil(lo / step); k*step <= hi; k++ {
		var cut []pt
		for i, a := range c {
			b := c[(i+1)%len(c)]
			da, db := a.X+a.Y-k*step, b.X+b.Y-k*step
			if (da < 0) != (db < 0) {
				t := da / (da - db)
				cut = append(cut, pt{a.X + t*(b.X-a.X), a.Y + t*(b.Y-a.Y)})
			}
		}
		if len(cut) == 2 {
			out = append(out, cut)
		}
	}
	return out
}

// drawParts draws braces, strings, feet and lines of force.
func (v *planView) drawParts(g *page) {
	d, f := v.in.Drawing, v.lay.frame
	halo := pen{width: 2.2, color: faded(paperColor(), 0.55)}
	for _, b := range d.Braces {
		edge := f.all(ribbon(b))
		g.stroke([][]pt{edge}, true, halo)
		g.stroke([][]pt{edge}, true, hidden())
	}
	g.stroke(v.clippedStrings(), false, pen{width: 0.4, color: faded(inkColor(), 0.6)})
	v.drawRimHold(g)
	v.drawFlow(g)
	for _, l := range d.Feet {
		g.stroke([][]pt{f.all(l)}, true, pen{width: 2.6, color: faded(paperColor(), 0.7)})
		g.stroke([][]pt{f.all(l)}, true, firm())
	}
}

// clippedStrings returns the strings where they run over the plate's box.
func (v *planView) clippedStrings() [][]pt {
	var out [][]pt
	for _, l := range v.lay.frame.lines(v.in.Drawing.Strings) {
		for i := 1; i < len(l); i++ {
			if a, b, ok := clip(l[i-1], l[i], v.lay.plate); ok {
				out = append(out, []pt{a, b})
			}
		}
	}
	return out
}

func flowPen() pen { return pen{width: 0.9, color: color.NRGBA{120, 30, 60, 255}} }

// ribbon returns the edge of a brace in plan, mm.
func ribbon(b Strip) []mesh.Point {
	n := len(b.Line)
	if n < 2 || len(b.Half) == 0 {
		return b.Line
	}
	out := make([]mesh.Point, 2*n)
	for i, q := range b.Line {
		p, r := b.Line[max(i-1, 0)], b.Line[min(i+1, n-1)]
		l := math.Hypot(r[0]-p[0], r[1]-p[1])
		if l == 0 {
			l = 1
		}
		h := b.Half[min(i, len(b.Half)-1)]
		nx, ny := -h*(r[1]-p[1])/l, h*(r[0]-p[0])/l
		out[i] = mesh.Point{q[0] + nx, q[1] + ny}
		out[2*n-1-i] = mesh.Point{q[0] - nx, q[1] - ny}
	}
	return out
}

// drawRim draws the centre line and the words around the plate.
func (v *planView) drawRim(g *page) {
	r, x := v.lay.plate, v.lay.frame.at(mesh.Point{}).X
	x = math.Max(r.X0, math.Min(r.X1, x))
	neck, tail, bass, treble := v.rimWords()
	g.text(pt{x, r.Y1 + 6}, neck, rim(), 0.5)
	g.text(pt{x, r.Y0 - 13}, tail, rim(), 0.5)
	g.turned(pt{r.X0 - 6, (r.Y0 + r.Y1) / 2}, bass, rim(), math.Pi/2)
	g.turned(pt{r.X1 + 6, (r.Y0 + r.Y1) / 2}, treble, rim(), -math.Pi/2)
}
