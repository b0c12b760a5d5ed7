package viz

import (
	"fmt"
	"math"
	"slices"
)

// legendLayout is the place of a legend on the page.
type legendLayout struct {
	scale Scale
	head  []setLine // name and unit of the field
	bar   rect      // all patches together
	notes []setLine // below the bar
	below float64   // where the key may begin, points
}

// patch returns the patch of band k.
func (l *legendLayout) patch(k int) rect {
	h := l.bar.height() / float64(l.scale.Bands())
	k = max(k, 0)
	return rect{l.bar.X0, l.bar.Y0 + h*float64(k), l.bar.X1, l.bar.Y0 + h*float64(k+1)}
}

// Heights of a patch of the legend, points: labels of 8 points must fit.
const (
	mostPatch  = 20
	leastPatch = 10.5
)

// layLegend sets the legend at the top of a column.
func (g *page) layLegend(v *planView, col rect) legendLayout {
	l := legendLayout{scale: v.scale}
	y := col.Y1
	add := func(to *[]setLine, text string, s style) {
		for _, t := range g.most(g.wrap(clean(text), s, col.width()), 5, s, col.width()) {
			y -= s.size + 2.3
			*to = append(*to, setLine{pt{col.X0, y}, t, s})
		}
	}
	f := v.in.Field
	add(&l.head, f.Name, style{9, bold, inkColor()})
	if f.Unit != "" {
		add(&l.head, "in "+f.Unit, label())
	}
	y -= 9
	n := float64(v.scale.Bands())
	room := y - col.Y0 - 8 - v.keyHeight(g) - 10.3*float64(v.noteLines(g)) - 4
	patch := math.Max(leastPatch, math.Min(mostPatch, room/n))
	if v.empty {
		patch = 0
	}
	l.bar = rect{col.X0, y - n*patch, col.X0 + 18, y}
	y -= n*patch + 4
	for _, t := range v.legendNotes() {
		add(&l.notes, t, small())
	}
	l.below = y - 8
	return l
}

// noteLines is how many lines the notes fill.
func (v *planView) noteLines(g *page) int {
	n := 0
	for _, t := range v.legendNotes() {
		n += len(g.wrap(t, small(), planColumn))
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
		return []string{"the same everywhere: " + withUnit(reading(lo), f.Unit)}
	}
	d := decimals(s.Step)
	from := "from line to line "
	if f.Plain {
		from = "from colour to colour "
	}
	out := []string{
		from + withUnit(number(s.Step, d), f.Unit),
		"greatest " + withUnit(number(hi, d+1), f.Unit),
		"least " + withUnit(number(lo, d+1), f.Unit),
	}
	if lo < s.Lo-slack*s.Step || hi > s.Hi+slack*s.Step {
		out = append(out, "values beyond the scale take its end colours")
	}
	if f.PerTriangle != nil {
		out = append(out, "drawn as means at the mesh nodes")
	}
	return out
}

func withUnit(v, unit string) string {
	if unit == "" {
		return v
	}
	return v + " " + unit
}

// drawLegend draws what layLegend has set.
func (g *page) drawLegend(v *planView) {
	l := &v.bar
	g.setLines(l.head)
	g.setLines(l.notes)
	if v.empty {
		return
	}
	s := l.scale
	for k := 0; k < s.Bands(); k++ {
		g.fill([][]pt{box(l.patch(k))}, s.BandColor(k))
	}
	for k := 1; k < s.Bands(); k++ {
		r := l.patch(k)
		g.line(pt{r.X0, r.Y0}, pt{r.X1, r.Y0}, v.linePen(k))
	}
	g.stroke([][]pt{box(l.bar)}, true, thin())
	if s.Step == 0 {
		r := l.patch(0)
		g.text(pt{r.X1 + 6, (r.Y0+r.Y1)/2 - 3}, reading(s.Lo), label(), 0)
		return
	}
	for k := 0; k <= s.Bands(); k++ {
		y := l.bar.Y0 + float64(k)*l.bar.height()/float64(s.Bands())
		g.line(pt{l.bar.X1, y}, pt{l.bar.X1 + 3, y}, thin())
		g.text(pt{l.bar.X1 + 6, y - 3}, s.label(k), label(), 0)
	}
}

// label is the value at the lower edge of band k in words; sign shown on both
// sides of a signed scale.
func (s Scale) label(k int) string {
	v := s.Level(k)
	t := number(v, decimals(s.Step))
	if s.Signed && v > 0 {
		t = "+" + t
	}
	return t
}

// keyItem is a sample with its meaning.
type keyItem struct {
	words  string
	sample func(g *page, r rect)
}

// keyItems lists what is on the picture.
func (v *planView) keyItems() []keyItem {
	d := v.in.Drawing
	var out []keyItem
	add := func(is bool, words string, sample func(*page, rect)) {
		if is {
			out = append(out, keyItem{words, sample})
		}
	}
	outline := func(by pen) func(*page, rect) {
		return func(g *page, r rect) { g.stroke([][]pt{box(r)}, true, by) }
	}
	add(len(d.Braces) > 0, "brace, underneath", outline(hidden()))
	add(len(d.Feet) > 0, "foot of the bridge", outline(firm()))
	add(len(d.Strings) > 0, "string", func(g *page, r rect) { g.line(pt{r.X0, r.Y0 + 3}, pt{r.X1, r.Y0 + 3}, thin()) })
	add(len(d.Flow) > 0, orElse(clean(d.FlowNote), "line of force"), func(g *page, r rect) {
		g.line(pt{r.X0, r.Y0 + 3}, pt{r.X1, r.Y0 + 3}, flowPen())
	})
	out = append(out, v.rimKey()...)
	add(v.hasMark(func(m Mark) bool { return !m.Worst && !m.Post }), "gauge", func(g *page, r rect) { g.gauge(pt{(r.X0 + r.X1) / 2, (r.Y0 + r.Y1) / 2}) })
	add(v.hasMark(func(m Mark) bool { return m.Post }), "post to the back", func(g *page, r rect) { g.post(pt{(r.X0 + r.X1) / 2, (r.Y0 + r.Y1) / 2}) })
	add(v.hasMark(func(m Mark) bool { return m.Worst }), "worst place", func(g *page, r rect) { g.worst(pt{(r.X0 + r.X1) / 2, (r.Y0 + r.Y1) / 2}) })
	add(v.sheet != nil && len(v.sheet.blank) > 0, "no value", func(g *page, r rect) {
		g.fill([][]pt{box(r)}, noValueColor())
		g.stroke(hatchLines(box(r), 5), false, pen{width: 0.5, color: softInkColor()})
	})
	return out
}

func orElse(s, other string) string {
	if s == "" {
		return other
	}
	return s
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
func (v *planView) keyHeight(g *page) float64 {
	h := keyTail
	for _, it := range v.keyItems() {
		h += keyGap + keyRow*float64(len(g.wrap(it.words, label(), planColumn-keyWords)))
	}
	return h
}

// drawKey draws samples, the grain and a measure at the foot of the column.
func (g *page) drawKey(v *planView) {
	col := v.lay.column
	y := col.Y0 + v.keyHeight(g)
	for _, it := range v.keyItems() {
		y -= keyGap
		for i, t := range g.wrap(it.words, label(), planColumn-keyWords) {
			y -= keyRow
			if i == 0 {
				it.sample(g, rect{col.X0 + 1, y, col.X0 + 19, y + 6.5})
			}
			g.text(pt{col.X0 + keyWords, y}, t, label(), 0)
		}
	}
	y -= 16
	g.grain(pt{col.X0 + 10, y}, v.in.Drawing.Grain+90, "along the grain")
	g.grain(pt{col.X0 + 10, y - 17}, v.in.Drawing.Grain, "across the grain")
	v.drawMeasure(g, pt{col.X0 + 1, col.Y0 + 4})
}

// grain draws an arrow with two heads and its meaning.
func (g *page) grain(at pt, degrees float64, words string) {
	s, c := math.Sincos(degrees * math.Pi / 180)
	for _, k := range []float64{-8, 8} {
		g.arrow(at, at.add(k*c, k*s), thin())
	}
	g.text(at.add(keyWords-10, -3), words, label(), 0)
}

// drawMeasure draws a bar of a round length.
func (v *planView) drawMeasure(g *page, at pt) {
	mm := nice(70 / v.lay.frame.scale)
	for mm*v.lay.frame.scale > planColumn-4 {
		mm /= 2
	}
	l := mm * v.lay.frame.scale
	for k := 0; k < 2; k++ {
		half := rect{at.X + float64(k)*l/2, at.Y, at.X + float64(k+1)*l/2, at.Y + 3.5}
		if k == 0 {
			g.fill([][]pt{box(half)}, inkColor())
		}
		g.stroke([][]pt{box(half)}, true, thin())
	}
	g.text(at.add(0, 7), fmt.Sprintf("%g mm", mm), label(), 0)
}
