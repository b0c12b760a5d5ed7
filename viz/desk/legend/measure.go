package legend

import (
	"fmt"
	"image/color"
	"math"

	"archload/viz/panel"
)

// Measure is an upright bar that shows how long a round movement, or a round force, is in the drawing.
type Measure struct {
	Foot  panel.Point
	Size  string // "0.5"
	Words string // what it measures
	long  float64
}

// MeasureTall is the height of a measure with its words, points, at least.
const MeasureTall = 40.0

// Round is the first of some round sizes whose bar has a good length, where one unit is so many points long.
func Round(unit float64, sizes []float64) (m Measure, ok bool) {
	for _, v := range sizes {
		if n := v * unit; n >= 8 && n <= 62 {
			return Measure{long: n, Size: fmt.Sprintf("%g", v)}, true
		}
	}
	return m, false
}

// Box is what a measure covers with its words.
func (m Measure) Box(a *panel.Atlas) panel.Rect {
	wide := math.Max(a.TextWidth(panel.SmallBold, m.Size), a.TextWidth(panel.Small, m.Words))
	tall := math.Max(m.long, 30)
	return panel.Rect{X: m.Foot.X - 8, Y: m.Foot.Y - m.long/2 - tall/2 - 4, W: 18 + wide + 6, H: tall + 8}
}

// Draw draws a measure; a drawing may lie under it.
func (m Measure) Draw(l *panel.List, ground color.NRGBA) {
	l.Rect(m.Box(l.Atlas), ground)
	l.Upright(m.Foot.X, m.Foot.Y-m.long, m.Foot.Y, 2, panel.Rust())
	for _, y := range []float64{m.Foot.Y - m.long, m.Foot.Y} {
		l.Level(m.Foot.X-4, m.Foot.X+6, y, 1.5, panel.Rust())
	}
	at := panel.Rect{X: m.Foot.X + 10, Y: m.Foot.Y - m.long/2 - 15, W: 90, H: 15}
	l.TextIn(at, panel.SmallBold, panel.Left, panel.Ink(), m.Size)
	at.Y += at.H
	l.TextIn(at, panel.Small, panel.Left, panel.SoftInk(), m.Words)
}
