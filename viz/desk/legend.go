package desk

import (
	"fmt"
	"image/color"
	"math"

	"archload/cases/glossary"
	"archload/viz/panel"
	"archload/viz/scale"
	"archload/viz/scene"
)

// legendTall is how high the colours of the legend stand at most, points.
const legendTall = 300.0

// legendStrip is where the colours of the legend stand; empty if there is no
// room.
func (d *Desk) legendStrip() panel.Rect {
	r := d.lay.legend
	room := math.Min(barRoom, 0.3*r.H)
	tall := math.Min(r.H-44-room, legendTall)
	if tall < 60 {
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
	return panel.Rect{X: d.lay.legend.X, Y: d.lay.legend.Y, W: legendWidth, H: s.Bottom() + 12 - d.lay.legend.Y}
}

// drawLegend draws the colours of a scale with the value at each step, lowest
// below, and the unit above. While the hand moves the scale stays; values beyond
// it are then said over it.
func (d *Desk) drawLegend(l *panel.List, s scale.Scale, unit string) {
	const least = 13.0 // between two values
	strip, r := d.legendStrip(), d.lay.legend
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

// drawMeasure draws how long a round movement is in the drawing, and how long a round
// force: upright bars where the legend ends, as long as they are drawn in the middle of
// the scene.
func (d *Desk) drawMeasure(l *panel.List, view panel.Rect) {
	s := d.shown.Scenes[0]
	const steepest = 62 // deg: from higher up upright lengths are too short to be compared
	if d.shown.Want.Field == scene.Tone || math.Abs(d.camera.Pitch) > steepest {
		return // how far a tone swings is not known
	}
	x, foot := d.lay.legend.X+18, d.lay.legend.Bottom()-16
	if d.shown.Want.Forces {
		d.drawUnit(l, view, s, panel.Point{X: x + 64, Y: foot}, d.shown.Arrow, []float64{20, 10, 50, 5, 100, 2, 200, 1}, "N", "of force")
	}
	d.drawUnit(l, view, s, panel.Point{X: x, Y: foot}, d.enlarged(), []float64{0.5, 0.2, 0.1, 0.05, 1, 2, 5}, "mm", "of movement")
}

// drawUnit draws one bar that ends at a foot: the first of some round sizes whose bar, each
// unit drawn as so many mm of the scene, has a good length.
func (d *Desk) drawUnit(l *panel.List, view panel.Rect, s *scene.Scene, foot panel.Point, perUnit float64, sizes []float64, unit, words string) {
	_, y0, ok := d.project(view, s.Centre)
	up := s.Centre
	up[2] += perUnit
	_, y1, ok2 := d.project(view, up)
	long := math.Abs(y0 - y1) // points to a unit
	if !ok || !ok2 {
		return
	}
	for _, v := range sizes {
		n := v * long
		if n < 8 || n > 62 {
			continue
		}
		l.Upright(foot.X, foot.Y-n, foot.Y, 2, panel.Rust())
		for _, y := range []float64{foot.Y - n, foot.Y} {
			l.Level(foot.X-4, foot.X+6, y, 1.5, panel.Rust())
		}
		l.TextIn(panel.Rect{X: foot.X + 10, Y: foot.Y - n/2 - 15, W: 90, H: 15}, panel.SmallBold, panel.Left, panel.Ink(), fmt.Sprintf("%g %s", v, unit))
		l.TextIn(panel.Rect{X: foot.X + 10, Y: foot.Y - n/2, W: 90, H: 15}, panel.Small, panel.Left, panel.SoftInk(), words)
		return
	}
}
