package desk

import (
	"image/color"

	"archload/viz/panel"
	"archload/viz/scale"
)

// drawLegend draws the colours of a scale with the value at each step, lowest
// below, and the unit above.
func drawLegend(l *panel.List, r panel.Rect, s scale.Scale, unit string) {
	const (
		width = 16.0
		least = 13.0 // between two values
	)
	tall := min(r.H-58, 320)
	if tall < 60 {
		return
	}
	strip := panel.Rect{X: r.X + 14, Y: r.Y + (r.H-tall)/2 + 8, W: width, H: tall}
	paints := make([]color.NRGBA, 65)
	for i := range paints {
		paints[i] = s.Smooth(s.Lo + (s.Hi-s.Lo)*float64(i)/64)
	}
	l.Strip(strip, paints, true)
	l.Frame(strip.Inset(-0.5, -0.5), 1, panel.Pencil())
	l.TextIn(panel.Rect{X: r.X + 10, Y: strip.Y - 24, W: r.W - 10, H: 16}, panel.SmallBold, panel.Left, panel.Ink(), unitWords(unit))
	if s.Step == 0 {
		l.TextIn(panel.Rect{X: strip.Right() + 6, Y: strip.Y + tall/2 - 8, W: 50, H: 16}, panel.Small, panel.Left, panel.Ink(), s.LevelText(0))
		return
	}
	every := 1
	for tall/float64(s.Bands())*float64(every) < least {
		every++
	}
	for k := 0; k <= s.Bands(); k++ {
		y := strip.Bottom() - tall*float64(k)/float64(s.Bands())
		l.Level(strip.X, strip.Right()+3, y, 1, panel.SoftInk())
		if k%every == 0 {
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
