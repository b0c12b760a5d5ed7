package desk

import (
	"image/color"
	"math"

	"archload/cases/glossary"
	"archload/viz/desk/layout"
	"archload/viz/desk/legend"
	"archload/viz/panel"
	"archload/viz/scale"
	"archload/viz/scene"
)

// legendStrip is where the colours of the legend stand; empty if there is no
// room.
func (d *Desk) legendStrip() panel.Rect {
	measures := 1
	if len(d.lay.Views) > 1 && *d.forcesOn() {
		measures = 2
	}
	return legend.Strip(d.lay.Legend, measures)
}

// legendGround is what the legend covers of the drawing.
func (d *Desk) legendGround() panel.Rect {
	s := d.legendStrip()
	if s.Empty() || d.shown == nil || d.shown.Scenes[0].Scale == nil {
		return panel.Rect{}
	}
	return legend.Ground(d.lay.Legend, s)
}

// sheer is the paper under what lies over a drawing.
func sheer() color.NRGBA {
	ground := paperColor()
	ground.A = 190
	return ground
}

// drawLegend draws the colours of a scale. While the hand moves the scale stays; values beyond
// it are then said over it.
func (d *Desk) drawLegend(l *panel.List, s scale.Scale, unit string) {
	strip := d.legendStrip()
	if strip.Empty() {
		return
	}
	l.Rect(d.legendGround(), sheer())
	beyond := ""
	if most, ok := d.shown.Beyond(); ok {
		beyond = "up to " + scale.Reading(most)
	}
	legend.Draw(l, d.lay.Legend, strip, s, unit, beyond)
	d.panel.Hint("unit", legend.Unit(d.lay.Legend, strip), glossary.UnitWords(unit))
}

// measures are the bars for movement and force at the foot of the first drawing, below the legend,
// as long as both are drawn in the middle of the scene.
func (d *Desk) measures() []legend.Measure {
	s := d.shown.Scenes[0]
	const steepest = 62 // deg: from higher up upright lengths are too short to be compared
	if d.shown.Want.Field == scene.Tone || math.Abs(d.camera.Pitch) > steepest {
		return nil // how far a tone swings is not known
	}
	if g := d.legendGround(); !g.Empty() && g.Bottom() > d.lay.Legend.Bottom()-legend.MeasureTall {
		return nil // the legend needs the room
	}
	var out []legend.Measure
	foot := panel.Point{X: d.lay.Legend.X + 18, Y: d.lay.Legend.Bottom() - 16}
	if m, ok := d.measure(s, d.scales().Enlarge, []float64{0.5, 0.2, 0.1, 0.05, 1, 2, 5}); ok {
		m.Foot, m.Size, m.Words = foot, m.Size+" mm", "of movement"
		out = append(out, m)
	}
	m, ok := d.measure(s, d.scales().Arrow, []float64{20, 10, 50, 5, 100, 2, 200, 1})
	if !ok || !d.shown.Want.Forces || d.offForces() != "" {
		return out
	}
	m.Foot, m.Size, m.Words = foot, m.Size+" N", "of force"
	if len(out) > 0 {
		first := out[0].Box(d.atlas)
		m.Foot.X = first.Right() + 12
		// The second drawing's title, or a drawing, may be beside the first measure.
		if box := m.Box(d.atlas); len(d.lay.Views) > 1 || !d.shown.Want.Field.OnFoot() && d.drawnIn(box) {
			m.Foot.X = foot.X
			m.Foot.Y -= m.Box(d.atlas).Bottom() - first.Y + 2
		}
	}
	if m.Box(d.atlas).Meet(d.legendGround()).Empty() {
		out = append(out, m)
	}
	return out
}

// drawnIn tells whether the first drawing covers something of a rectangle of the page.
func (d *Desk) drawnIn(box panel.Rect) bool {
	r, density := d.lay.Views[0], d.atlas.Density
	all, _ := d.covered(0, d.shown.Scenes[0], layout.Pixels(r, density))
	return all.Meets((box.X-r.X)*density, (box.Y-r.Y)*density, (box.Right()-r.X)*density, (box.Bottom()-r.Y)*density)
}

// measure is a bar of one of some round sizes, each unit drawn as so many mm of the scene.
func (d *Desk) measure(s *scene.Scene, perUnit float64, sizes []float64) (m legend.Measure, ok bool) {
	_, y0, ok := d.project(d.lay.Views[0], s.Centre)
	up := s.Centre
	up[2] += perUnit
	_, y1, ok2 := d.project(d.lay.Views[0], up)
	if !ok || !ok2 {
		return m, false
	}
	return legend.Round(math.Abs(y0-y1), sizes)
}
