package figure

import (
	"fmt"
	"math"
	"slices"

	"archload/mesh"
	"archload/mesh/plane"
	"archload/viz/canvas"
)

// PlanView draws one field over the plate, seen from outside with the neck
// up: bands and lines a legend step apart, the outline, openings white,
// braces dashed, feet, gauges with their readings, legend and key.
func PlanView(in PlanInput) (*canvas.Picture, error) {
	v, err := newPlanView(in)
	if err != nil {
		return nil, err
	}
	return canvas.NewPicture(planWidth, v.height, in.Caption.Title, v.draw), nil
}

func newPlanView(in PlanInput) (*planView, error) {
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
	return v, nil
}

// measure lays out the page.
func (v *planView) measure() error {
	lo, hi, err := v.bounds()
	if err != nil {
		return err
	}
	rows := listRows(len(v.in.Drawing.Gauges))
	v.height = v.pageHeight(rows)
	g := canvas.NewMeasure(planWidth, v.height)
	l := planLayout{caption: g.LayCaption(v.in.Caption)}
	free := l.caption.Free
	l.list = canvas.Box(free.X0, free.Y0, free.X1, free.Y0+listHeight(rows))
	if rows > 0 {
		free.Y0 = l.list.Y1 + 4
	}
	l.column = canvas.Box(free.X1-planColumn, free.Y0, free.X1, free.Y1)
	l.frame = canvas.Fit(lo, hi, canvas.Box(free.X0+planWords, free.Y0+planWords, l.column.X0-planWords-6, free.Y1-planWords))
	a, b := l.frame.At(lo), l.frame.At(hi)
	l.plate = canvas.Box(a.X, a.Y, b.X, b.Y)
	v.lay = l
	if v.sheet != nil {
		v.bar = v.layLegend(g, l.column)
	}
	return nil
}

// pageHeight is the usual height, or what the column and the list need.
func (v *planView) pageHeight(rows int) float64 {
	const tall = 2000
	g := canvas.NewMeasure(planWidth, tall)
	need := v.keyHeight(g) + 8
	if v.sheet != nil {
		l := v.layLegend(g, canvas.Box(0, 0, planColumn, 0)) // no room: the least patches
		need -= l.below
	}
	most := float64(planLeast)
	if v.in.Caption.Bare {
		most = v.natural()
	}
	h := canvas.CaptionHeight(v.in.Caption) + listHeight(rows) + 4 + math.Max(need, most)
	if v.in.Caption.Bare {
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
	w := float64(planWidth - 2*canvas.Margin - planColumn - 2*planWords - 6)
	return math.Min(planMost, w*(hi[1]-lo[1])/(hi[0]-lo[0])) + 2*planWords
}

// bounds returns the box of outline and nodes, mm.
func (v *planView) bounds() (lo, hi mesh.Point, err error) {
	all := v.in.Drawing.Outline
	if v.sheet != nil {
		all = slices.Concat(all, v.sheet.pts)
	}
	lo, hi = plane.Bounds(all)
	if w, h := hi[0]-lo[0], hi[1]-lo[1]; !(w > 0 && h > 0) || math.IsInf(w+h, 0) {
		return lo, hi, fmt.Errorf("outline: want a closed curve of finite size, found %d points", len(v.in.Drawing.Outline))
	}
	return lo, hi, nil
}

func (v *planView) draw(g *canvas.Page) {
	g.DrawCaption(v.lay.caption)
	v.drawRim(g)
	if v.sheet != nil {
		v.drawLegend(g)
	}
	v.drawKey(g)
	d, f := v.in.Drawing, v.lay.frame
	drawList(g, d.Gauges, v.lay.list)
	v.keepClear(g)
	marks := v.placeMarks(g)
	names := v.placeBraceNames(g)
	for _, l := range append(v.clippedStrings(), f.Lines(d.Flow)...) {
		g.AvoidLine(l) // lines may pass under the veil of other names, not under these
	}
	names = append(names, v.drawField(g)...)
	for _, h := range d.Holes {
		g.Fill([][]canvas.Point{f.All(h)}, canvas.White())
		g.Stroke([][]canvas.Point{f.All(h)}, true, canvas.Thin())
	}
	g.Stroke([][]canvas.Point{f.All(d.Outline)}, true, canvas.Firm())
	v.drawParts(g)
	v.drawMarks(g, marks)
	for _, n := range names {
		n.Draw(g)
	}
}

// drawField draws bands and lines and returns the names of the lines.
func (v *planView) drawField(g *canvas.Page) []canvas.Tag {
	f := v.lay.frame
	if v.sheet == nil {
		g.Fill([][]canvas.Point{f.All(v.in.Drawing.Outline)}, canvas.Wood())
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
		g.Fill(paths(f, loops), v.scale.BandColor(k))
	}
	v.hatchSide(g)
	var names []canvas.Tag
	for k := 1; k < len(lines) && !v.in.Field.Plain; k++ {
		name, ok := v.placeLineName(g, k, lines[k])
		for _, l := range lines[k] {
			if !ok {
				g.Stroke([][]canvas.Point{f.All(l.pts)}, l.closed, v.linePen(k))
				continue
			}
			g.Stroke(canvas.Outside(f.All(l.pts), l.closed, name.Box.Grown(1)), false, v.linePen(k))
		}
		if ok {
			names = append(names, name)
		}
	}
	hatch(g, v.sheet, f)
	return names
}

// drawParts draws braces, strings, feet and lines of force.
func (v *planView) drawParts(g *canvas.Page) {
	d, f := v.in.Drawing, v.lay.frame
	halo := canvas.Pen{Width: 2.2, Color: canvas.Faded(canvas.Paper(), 0.55)}
	for _, b := range d.Braces {
		edge := f.All(ribbon(b))
		g.Stroke([][]canvas.Point{edge}, true, halo)
		g.Stroke([][]canvas.Point{edge}, true, canvas.Hidden())
	}
	g.Stroke(v.clippedStrings(), false, canvas.Pen{Width: 0.4, Color: canvas.Faded(canvas.Ink(), 0.6)})
	v.drawRimHold(g)
	v.drawFlow(g)
	g.Stroke(v.lay.frame.Lines(d.Sand), false, sandPen())
	for _, l := range d.Feet {
		g.Stroke([][]canvas.Point{f.All(l)}, true, canvas.Pen{Width: 2.6, Color: canvas.Faded(canvas.Paper(), 0.7)})
		g.Stroke([][]canvas.Point{f.All(l)}, true, canvas.Firm())
	}
}

// clippedStrings returns the strings where they run over the plate's box.
func (v *planView) clippedStrings() [][]canvas.Point {
	var out [][]canvas.Point
	for _, l := range v.lay.frame.Lines(v.in.Drawing.Strings) {
		for i := 1; i < len(l); i++ {
			if a, b, ok := canvas.ClipLine(l[i-1], l[i], v.lay.plate); ok {
				out = append(out, []canvas.Point{a, b})
			}
		}
	}
	return out
}

// drawRim draws the centre line and the words around the plate.
func (v *planView) drawRim(g *canvas.Page) {
	r, x := v.lay.plate, v.lay.frame.At(mesh.Point{}).X
	x = math.Max(r.X0, math.Min(r.X1, x))
	neck, tail, bass, treble := v.rimWords()
	g.Text(canvas.At(x, r.Y1+6), neck, canvas.Rim(), 0.5)
	g.Text(canvas.At(x, r.Y0-13), tail, canvas.Rim(), 0.5)
	g.Turned(canvas.At(r.X0-6, (r.Y0+r.Y1)/2), bass, canvas.Rim(), math.Pi/2)
	g.Turned(canvas.At(r.X1+6, (r.Y0+r.Y1)/2), treble, canvas.Rim(), -math.Pi/2)
}
