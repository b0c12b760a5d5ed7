package desk

import (
	"fmt"
	"image/color"
	"math"

	"archload/cases/glossary"
	"archload/viz/desk/layout"
	"archload/viz/panel"
	"archload/viz/scale"
	"archload/viz/scene"
)

// legendTall is how high the colours of the legend stand at most, points.
const legendTall = 300.0

// leastLegend is the least height for the colours of the legend, points.
const leastLegend = 36.0

// legendStrip is where the colours of the legend stand; empty if there is no
// room.
func (d *Desk) legendStrip() panel.Rect {
	r := d.lay.Legend
	bars := 1.0
	if d.lay.Stacked() && d.want.Forces {
		bars = 2
	}
	const about, least = 44.0, 60.0 // points: unit and room below; for colours and measures
	room := bars * math.Min(barRoom, 0.3*r.H)
	tall := math.Min(r.H-about-room, legendTall)
	if tall < least { // without the measures
		tall = math.Min(r.H-about, least)
	}
	if tall < leastLegend {
		return panel.Rect{}
	}
	return panel.Rect{X: r.X + 10, Y: r.Y + 30, W: 16, H: tall}
}

// legendGround is what legend and measure cover of the drawing.
func (d *Desk) legendGround() panel.Rect {
	s := d.legendStrip()
	if s.Empty() || d.shown == nil || d.shown.Scenes[0].Scale == nil {
		return panel.Rect{}
	}
	return panel.Rect{X: d.lay.Legend.X, Y: d.lay.Legend.Y, W: layout.LegendWidth, H: s.Bottom() + 12 - d.lay.Legend.Y}
}

// drawLegend draws the colours of a scale with the value at each step, lowest
// below, and the unit above. While the hand moves the scale stays; values beyond
// it are then said over it.
func (d *Desk) drawLegend(l *panel.List, s scale.Scale, unit string) {
	const least = 13.0 // between two values
	strip, r := d.legendStrip(), d.lay.Legend
	if strip.Empty() {
		return
	}
	ground := paperColor()
	ground.A = 190
	l.Rect(d.legendGround(), ground) // a drawing may lie under it
	paints := make([]color.NRGBA, 65)
	for i := range paints {
		paints[i] = s.Tone(float64(i) / 64)
	}
	l.Strip(strip, paints, true)
	hatchLegend(l, strip, s)
	l.Frame(strip.Inset(-0.5, -0.5), 1, panel.Pencil())
	l.TextIn(panel.Rect{X: r.X + 6, Y: strip.Y - 25, W: r.W - 6, H: 16}, panel.SmallBold, panel.Left, panel.Ink(), unitWords(unit))
	d.panel.Hint("unit", panel.Rect{X: r.X + 6, Y: strip.Y - 25, W: r.W - 6, H: 16}, glossary.UnitWords(unit))
	if s.Step == 0 {
		l.TextIn(panel.Rect{X: strip.Right() + 6, Y: strip.Y + strip.H/2 - 8, W: 50, H: 16}, panel.Small, panel.Left, panel.Ink(), s.LevelText(0))
		return
	}
	if most, ok := d.shown.Beyond(); ok {
		words := "up to " + scale.Reading(most)
		l.TextIn(panel.Rect{X: r.X + 30, Y: strip.Y - 25, W: r.W, H: 16}, panel.SmallBold, panel.Left, panel.Rust(), words)
	}
	every := 1
	for strip.H/float64(s.Bands())*float64(every) < least {
		every++
	}
	zero := int(math.Round(-s.Lo / s.Step)) // its value is always written
	for k := 0; k <= s.Bands(); k++ {
		y := strip.Bottom() - strip.H*float64(k)/float64(s.Bands())
		l.Level(strip.X, strip.Right()+3, y, 1, panel.SoftInk())
		if (k-zero)%every == 0 {
			l.TextIn(panel.Rect{X: strip.Right() + 7, Y: y - 8, W: r.Right() - strip.Right() - 7, H: 16}, panel.Small, panel.Left, panel.Ink(), s.LevelText(k))
		}
	}
}

// hatchLegend hatches the part of a legend's strip that is hatched in the drawing.
func hatchLegend(l *panel.List, strip panel.Rect, s scale.Scale) {
	const hatchStep = 7.0 // points
	zero := strip.Bottom() - strip.H*math.Max(0, math.Min(1, -s.Lo/(s.Hi-s.Lo)))
	part := panel.Rect{X: strip.X, Y: strip.Y, W: strip.W, H: zero - strip.Y}
	switch s.HatchedSide() {
	case 0:
		return
	case -1:
		part.Y, part.H = zero, strip.Bottom()-zero
	}
	ink := panel.Ink()
	ink.A = 110
	l.Hatch(part, hatchStep, 0.8, ink)
}

// unitWords names a unit above the legend.
func unitWords(unit string) string {
	if unit == "" {
		return "share"
	}
	return unit
}

// barRoom is the height that the measure of movement needs below the legend,
// points.
const barRoom = 96.0

// measure is an upright bar that shows how long a round movement, or a round force, is in the drawing.
type measure struct {
	foot  panel.Point
	long  float64 // points
	size  string
	words string
}

// box is what a measure covers with its words, points.
func (m measure) box(a *panel.Atlas) panel.Rect {
	wide := math.Max(a.TextWidth(panel.SmallBold, m.size), a.TextWidth(panel.Small, m.words))
	tall := math.Max(m.long, 30)
	return panel.Rect{X: m.foot.X - 8, Y: m.foot.Y - m.long/2 - tall/2 - 4, W: 18 + wide + 6, H: tall + 8}
}

// leastBar is the height of a measure with its words, points.
const leastBar = 40.0

// measures are the bars for movement and force at the foot of the first drawing, below the legend,
// as long as both are drawn in the middle of the scene.
func (d *Desk) measures() []measure {
	s := d.shown.Scenes[0]
	const steepest = 62 // deg: from higher up upright lengths are too short to be compared
	if d.shown.Want.Field == scene.Tone || math.Abs(d.camera.Pitch) > steepest {
		return nil // how far a tone swings is not known
	}
	var out []measure
	view := d.lay.Views[0]
	foot := panel.Point{X: d.lay.Legend.X + 18, Y: d.lay.Legend.Bottom() - 16}
	if g := d.legendGround(); !g.Empty() && g.Bottom() > d.lay.Legend.Bottom()-leastBar {
		return nil // the legend needs the room
	}
	if m, ok := d.measure(view, s, d.scales().Enlarge, []float64{0.5, 0.2, 0.1, 0.05, 1, 2, 5}); ok {
		m.foot, m.size, m.words = foot, m.size+" mm", "of movement"
		out = append(out, m)
		if box := m.box(d.atlas); d.lay.Stacked() { // the second drawing's title is beside it
			foot.Y = box.Y - 6
		} else {
			foot.X = box.Right() + 12
		}
	}
	if m, ok := d.measure(view, s, d.scales().Arrow, []float64{20, 10, 50, 5, 100, 2, 200, 1}); ok && d.shown.Want.Forces {
		m.foot, m.size, m.words = foot, m.size+" N", "of force"
		out = append(out, m)
	}
	return out
}

// measure is the first of some round sizes whose bar, each unit drawn as so many mm of the scene, has
// a good length.
func (d *Desk) measure(view panel.Rect, s *scene.Scene, perUnit float64, sizes []float64) (m measure, ok bool) {
	_, y0, ok := d.project(view, s.Centre)
	up := s.Centre
	up[2] += perUnit
	_, y1, ok2 := d.project(view, up)
	if !ok || !ok2 {
		return m, false
	}
	for _, v := range sizes {
		if n := v * math.Abs(y0-y1); n >= 8 && n <= 62 {
			return measure{long: n, size: fmt.Sprintf("%g", v)}, true
		}
	}
	return m, false
}

// drawMeasures draws them.
func (d *Desk) drawMeasures(l *panel.List) {
	ground := paperColor()
	ground.A = 190
	for _, m := range d.measures() {
		l.Rect(m.box(l.Atlas), ground) // a drawing may lie under it
		l.Upright(m.foot.X, m.foot.Y-m.long, m.foot.Y, 2, panel.Rust())
		for _, y := range []float64{m.foot.Y - m.long, m.foot.Y} {
			l.Level(m.foot.X-4, m.foot.X+6, y, 1.5, panel.Rust())
		}
		at := panel.Rect{X: m.foot.X + 10, Y: m.foot.Y - m.long/2 - 15, W: 90, H: 15}
		l.TextIn(at, panel.SmallBold, panel.Left, panel.Ink(), m.size)
		at.Y += at.H
		l.TextIn(at, panel.Small, panel.Left, panel.SoftInk(), m.words)
	}
}
