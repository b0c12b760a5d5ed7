package figure

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"archload/viz/canvas"
	"archload/viz/scale"
)

// Heights of a patch of the legend, points: labels of 8 points must fit.
const (
	mostPatch  = 20
	leastPatch = 10.5
)

// layLegend sets the legend at the top of a column.
func (v *planView) layLegend(g *canvas.Page, col canvas.Rect) legendLayout {
	l := legendLayout{scale: v.scale}
	y := col.Y1
	add := func(to *[]canvas.Line, text string, s canvas.Style) {
		for _, t := range g.AtMost(g.Wrap(canvas.Clean(text), s, col.Width()), 5, s, col.Width()) {
			y -= s.Size + 2.3
			*to = append(*to, canvas.Line{At: canvas.At(col.X0, y), Text: t, In: s})
		}
	}
	f := v.in.Field
	add(&l.head, f.Name, canvas.Style{Size: 9, Face: canvas.Bold, Color: canvas.Ink()})
	if f.Unit != "" {
		add(&l.head, "in "+f.Unit, canvas.Label())
	}
	y -= 9
	n := float64(v.scale.Bands())
	room := y - col.Y0 - 8 - v.keyHeight(g) - 10.3*float64(v.noteLines(g)) - 4
	patch := math.Max(leastPatch, math.Min(mostPatch, room/n))
	if v.empty {
		patch = 0
	}
	l.bar = canvas.Box(col.X0, y-n*patch, col.X0+18, y)
	y -= n*patch + 4
	for _, t := range v.legendNotes() {
		add(&l.notes, t, canvas.Small())
	}
	l.below = y - 8
	return l
}

// noteLines is how many lines the notes fill.
func (v *planView) noteLines(g *canvas.Page) int {
	n := 0
	for _, t := range v.legendNotes() {
		n += len(g.Wrap(t, canvas.Small(), planColumn))
	}
	return n
}

// legendNotes says in words what the legend cannot show.
func (v *planView) legendNotes() []string {
	f, s := v.in.Field, v.scale
	if v.empty {
		return []string{"no value anywhere"}
	}
	lo, hi, _ := f.Extent()
	if lo == hi {
		return []string{"the same everywhere: " + withUnit(scale.Reading(lo), f.Unit)}
	}
	d := scale.Decimals(s.Step)
	from := "from line to line "
	if f.Plain {
		from = "from colour to colour "
	}
	out := []string{
		from + withUnit(scale.Number(s.Step, d), f.Unit),
		"greatest " + withUnit(scale.Number(hi, d+1), f.Unit),
		"least " + withUnit(scale.Number(lo, d+1), f.Unit),
	}
	if s.Kind != scale.Counting && s.Lo < 0 && !f.Plain {
		out = append(out, "dashed lines: below zero")
	}
	if words := v.hatchWords(); words != "" {
		out = append(out, words)
	}
	if lo < s.Lo-scale.Slack*s.Step || hi > s.Hi+scale.Slack*s.Step {
		out = append(out, "values beyond the scale take its end colours")
	}
	if f.PerTriangle != nil {
		out = append(out, v.meansNote())
	}
	return out
}

// meansNote says how values of the triangles are drawn.
func (v *planView) meansNote() string {
	if slices.ContainsFunc(v.in.Field.PerTriangle, math.IsNaN) {
		return "drawn as means at the mesh nodes; the edge takes what is known beside it"
	}
	return "drawn as means at the mesh nodes"
}

func withUnit(v, unit string) string {
	if unit == "" {
		return v
	}
	return v + " " + unit
}

// drawLegend draws what layLegend has set.
func (v *planView) drawLegend(g *canvas.Page) {
	l := &v.bar
	g.DrawLines(l.head)
	g.DrawLines(l.notes)
	if v.empty {
		return
	}
	s := l.scale
	for k := 0; k < s.Bands(); k++ {
		g.Fill([][]canvas.Point{canvas.Loop(l.patch(k))}, s.BandColor(k))
	}
	for k := range s.Bands() {
		if v.hatched(k) {
			g.Stroke(hatchLines(canvas.Loop(l.patch(k)), sideStep), false, sidePen())
		}
	}
	for k := 1; k < s.Bands(); k++ {
		r := l.patch(k)
		g.Line(canvas.At(r.X0, r.Y0), canvas.At(r.X1, r.Y0), v.linePen(k))
	}
	g.Stroke([][]canvas.Point{canvas.Loop(l.bar)}, true, canvas.Thin())
	if s.Step == 0 {
		r := l.patch(0)
		g.Text(canvas.At(r.X1+6, (r.Y0+r.Y1)/2-3), scale.Reading(s.Lo), canvas.Label(), 0)
		return
	}
	for k := 0; k <= s.Bands(); k++ {
		y := l.bar.Y0 + float64(k)*l.bar.Height()/float64(s.Bands())
		g.Line(canvas.At(l.bar.X1, y), canvas.At(l.bar.X1+3, y), canvas.Thin())
		g.Text(canvas.At(l.bar.X1+6, y-3), s.Label(k), canvas.Label(), 0)
	}
}

// keyItems lists what is on the picture.
func (v *planView) keyItems() []canvas.KeyItem {
	d := v.in.Drawing
	var out []canvas.KeyItem
	add := func(is bool, words string, sample func(*canvas.Page, canvas.Rect)) {
		if is {
			out = append(out, canvas.KeyItem{Words: words, Sample: sample})
		}
	}
	outline := func(by canvas.Pen) func(*canvas.Page, canvas.Rect) {
		return func(g *canvas.Page, r canvas.Rect) { g.Stroke([][]canvas.Point{canvas.Loop(r)}, true, by) }
	}
	add(len(d.Braces) > 0, "brace, underneath", outline(canvas.Hidden()))
	add(len(d.Feet) > 0, "foot of the bridge", outline(canvas.Firm()))
	add(len(d.Strings) > 0, "string", func(g *canvas.Page, r canvas.Rect) {
		g.Line(canvas.At(r.X0, r.Y0+3), canvas.At(r.X1, r.Y0+3), canvas.Thin())
	})
	add(len(d.Flow) > 0, cmp.Or(canvas.Clean(d.FlowNote), "line of force"), func(g *canvas.Page, r canvas.Rect) {
		g.Line(canvas.At(r.X0, r.Y0+3), canvas.At(r.X1, r.Y0+3), flowPen())
	})
	add(len(d.Sand) > 0, "stays still: sand gathers", func(g *canvas.Page, r canvas.Rect) {
		g.Line(canvas.At(r.X0, r.Y0+3), canvas.At(r.X1, r.Y0+3), sandPen())
	})
	out = append(out, v.rimKey()...)
	add(v.hasMark(func(m Mark) bool { return !m.Worst && !m.Post }), "gauge", func(g *canvas.Page, r canvas.Rect) { drawGauge(g, canvas.At((r.X0+r.X1)/2, (r.Y0+r.Y1)/2)) })
	add(v.hasMark(func(m Mark) bool { return m.Post }), "post to the back", func(g *canvas.Page, r canvas.Rect) { drawPost(g, canvas.At((r.X0+r.X1)/2, (r.Y0+r.Y1)/2)) })
	add(v.hasMark(func(m Mark) bool { return m.Worst }), "worst place", func(g *canvas.Page, r canvas.Rect) { drawWorst(g, canvas.At((r.X0+r.X1)/2, (r.Y0+r.Y1)/2)) })
	add(v.sheet != nil && len(v.sheet.blank) > 0, "no value", func(g *canvas.Page, r canvas.Rect) {
		g.Fill([][]canvas.Point{canvas.Loop(r)}, scale.NoValue())
		g.Stroke(hatchLines(canvas.Loop(r), 5), false, canvas.Pen{Width: 0.5, Color: canvas.SoftInk()})
	})
	return out
}

func (v *planView) hasMark(kind func(Mark) bool) bool {
	return slices.ContainsFunc(v.in.Drawing.Gauges, kind)
}

// Sizes in the key, points.
const (
	keyRow   = 10.5 // a line of words
	keyGap   = 3.0  // between items
	keyWords = 26.0 // where words begin
	keyTail  = 66.0 // grain arrows and measure
)

// keyHeight is the room the key needs.
func (v *planView) keyHeight(g *canvas.Page) float64 {
	h := keyTail
	for _, it := range v.keyItems() {
		h += keyGap + keyRow*float64(len(g.Wrap(it.Words, canvas.Label(), planColumn-keyWords)))
	}
	return h
}

// drawKey draws samples, the grain and a measure at the foot of the column.
func (v *planView) drawKey(g *canvas.Page) {
	col := v.lay.column
	y := col.Y0 + v.keyHeight(g)
	for _, it := range v.keyItems() {
		y -= keyGap
		for i, t := range g.Wrap(it.Words, canvas.Label(), planColumn-keyWords) {
			y -= keyRow
			if i == 0 {
				it.Sample(g, canvas.Box(col.X0+1, y, col.X0+19, y+6.5))
			}
			g.Text(canvas.At(col.X0+keyWords, y), t, canvas.Label(), 0)
		}
	}
	y -= 16
	drawGrain(g, canvas.At(col.X0+10, y), v.in.Drawing.Grain+90, "along the grain")
	drawGrain(g, canvas.At(col.X0+10, y-17), v.in.Drawing.Grain, "across the grain")
	v.drawMeasure(g, canvas.At(col.X0+1, col.Y0+4))
}

// drawMeasure draws a bar of a round length.
func (v *planView) drawMeasure(g *canvas.Page, at canvas.Point) {
	mm := scale.StepAbove(70 / v.lay.frame.Scale)
	for mm*v.lay.frame.Scale > planColumn-4 {
		mm /= 2
	}
	l := mm * v.lay.frame.Scale
	for k := 0; k < 2; k++ {
		half := canvas.Box(at.X+float64(k)*l/2, at.Y, at.X+float64(k+1)*l/2, at.Y+3.5)
		if k == 0 {
			g.Fill([][]canvas.Point{canvas.Loop(half)}, canvas.Ink())
		}
		g.Stroke([][]canvas.Point{canvas.Loop(half)}, true, canvas.Thin())
	}
	g.Text(at.Add(0, 7), fmt.Sprintf("%g mm", mm), canvas.Label(), 0)
}

// drawGrain draws an arrow with two heads and its meaning.
func drawGrain(g *canvas.Page, at canvas.Point, degrees float64, words string) {
	s, c := math.Sincos(degrees * math.Pi / 180)
	for _, k := range []float64{-8, 8} {
		g.Arrow(at, at.Add(k*c, k*s), canvas.Thin())
	}
	g.Text(at.Add(keyWords-10, -3), words, canvas.Label(), 0)
}
