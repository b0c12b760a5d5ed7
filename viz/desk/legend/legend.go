// Package legend draws what tells by how much: the colours of a field with the value at each step, and upright bars as
// long as a round movement, or a round force, is in the drawing. All lengths are points of the page.
package legend

import (
	"image/color"
	"math"

	"archload/viz/panel"
	"archload/viz/scale"
)

// Least is the least height for the colours, points.
const Least = 36.0

// Strip is where the colours stand in a column, with room for so many measures below them; in a low column without
// that room; empty if there is none.
func Strip(column panel.Rect, measures int) panel.Rect {
	const most, enough, about = 300.0, 60.0, 44.0 // of the colours; unit and room below
	const each = 96.0                             // height of a measure
	tall := math.Min(column.H-about-float64(measures)*math.Min(each, 0.3*column.H), most)
	if tall < enough {
		tall = math.Min(column.H-about, enough)
	}
	if tall < Least {
		return panel.Rect{}
	}
	return panel.Rect{X: column.X + 10, Y: column.Y + 30, W: 16, H: tall}
}

// Ground is what the colours cover of a column with their values.
func Ground(column, strip panel.Rect) panel.Rect {
	return panel.Rect{X: column.X, Y: column.Y, W: column.W, H: strip.Bottom() + 12 - column.Y}
}

// Unit is where the unit stands over the colours.
func Unit(column, strip panel.Rect) panel.Rect {
	return panel.Rect{X: column.X + 6, Y: strip.Y - 25, W: column.W - 6, H: 16}
}

// Draw draws the colours of a scale with the value at each step, lowest below, and the unit above; beyond is said
// beside it: values that the scale does not reach.
func Draw(l *panel.List, column, strip panel.Rect, s scale.Scale, unit, beyond string) {
	const least = 13.0 // between two values
	paints := make([]color.NRGBA, 65)
	for i := range paints {
		paints[i] = s.Tone(float64(i) / 64)
	}
	l.Strip(strip, paints, true)
	hatched(l, strip, s)
	l.Frame(strip.Inset(-0.5, -0.5), 1, panel.Pencil())
	if unit == "" {
		unit = "share"
	}
	over := Unit(column, strip)
	l.TextIn(over, panel.SmallBold, panel.Left, panel.Ink(), unit)
	if s.Step == 0 {
		l.TextIn(panel.Rect{X: strip.Right() + 6, Y: strip.Y + strip.H/2 - 8, W: 50, H: 16}, panel.Small, panel.Left, panel.Ink(), s.LevelText(0))
		return
	}
	if beyond != "" {
		l.TextIn(panel.Rect{X: column.X + 30, Y: over.Y, W: column.W, H: 16}, panel.SmallBold, panel.Left, panel.Rust(), beyond)
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
			l.TextIn(panel.Rect{X: strip.Right() + 7, Y: y - 8, W: column.Right() - strip.Right() - 7, H: 16}, panel.Small, panel.Left, panel.Ink(), s.LevelText(k))
		}
	}
}

// hatched hatches the part of the colours that is hatched in the drawing.
func hatched(l *panel.List, strip panel.Rect, s scale.Scale) {
	const step = 7.0 // points
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
	l.Hatch(part, step, 0.8, ink)
}
