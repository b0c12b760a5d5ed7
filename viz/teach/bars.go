package teach

import (
	"image/color"
	"math"

	"archload/cases/lesson"
	"archload/viz/panel"
	"archload/viz/sketch"
)

// rowTall is the height of a bar with its room at most, points.
const rowTall = 26.0

// BarsHeight is the height, points, that the bars of a chart need below a drawing.
func BarsHeight(c lesson.Chart) float64 { return 38 + rowTall*float64(len(c.Rows)) }

// BelowHeight is the height, points, that the step's sketch and bars need below a drawing in a width; 0 if there are
// none, or a section stands in their place.
func (w *Walk) BelowHeight(width float64, section bool) float64 {
	if section || !w.Below() {
		return 0
	}
	bars := BarsHeight(w.Chart())
	switch {
	case w.Step().Sketch.Of == "":
		return bars
	case len(w.Chart().Rows) == 0:
		return sketch.Height
	case width < abreast:
		return sketch.Height + 6 + bars
	}
	return math.Max(sketch.Height, bars)
}

// sketchShare is how much of the width a sketch takes beside bars, and abreast the width, points, below which the bars
// stand under it.
const (
	sketchShare = 0.56
	abreast     = 560.0
)

// DrawBelow draws the step's sketch and its bars, whatever of them it has.
func (w *Walk) DrawBelow(l *panel.List, at panel.Rect) {
	c, s := w.Chart(), w.Step().Sketch
	if s.Of == "" {
		DrawBars(l, at, c)
		return
	}
	drawing, bars := at, at
	switch {
	case len(c.Rows) == 0:
	case at.W < abreast:
		bars.H = math.Min(BarsHeight(c), at.H/2)
		drawing.H = at.H - bars.H - 6
		bars.Y = drawing.Bottom() + 6
	default:
		drawing.W = math.Round(sketchShare * at.W)
		bars.X, bars.W = drawing.Right()+18, at.W-drawing.W-18
		l.Upright(drawing.Right()+8, at.Y+4, at.Bottom()-4, 1, panel.Hair())
	}
	var notes []sketch.Note
	for _, r := range s.Notes {
		notes = append(notes, sketch.Note{Words: r.Words, Value: r.Value})
	}
	sketch.Draw(l, drawing, s.Of, notes)
	DrawBars(l, bars, c)
}

// wordsShare is how much of the width the words beside the bars may take.
const wordsShare = 0.62

// DrawBars draws the numbers of a chart as bars from one upright line, the words at
// their left, those of design A and B in their colours; a thin line with ends shows how far a number scatters.
func DrawBars(l *panel.List, at panel.Rect, c lesson.Chart) {
	head := l.Paragraph(panel.Rect{X: at.X, Y: at.Y, W: at.W, H: 16}, panel.SmallBold, panel.SoftInk(), c.Title) + 5
	lo, hi, wide, small := 0.0, 0.0, 0.0, 0.0
	for _, r := range c.Rows {
		lo, hi = math.Min(lo, r.Value-r.Spread), math.Max(hi, r.Value+r.Spread)
		wide, small = math.Max(wide, l.Atlas.TextWidth(panel.Body, r.Words)), math.Max(small, l.Atlas.TextWidth(panel.Small, r.Words))
	}
	if len(c.Rows) == 0 || hi == lo {
		return
	}
	face := panel.Body
	if wide > wordsShare*at.W {
		face, wide = panel.Small, math.Min(small, wordsShare*at.W)
	}
	over := small > wordsShare*at.W // the words stand over their bars
	if over {
		wide = -8
	}
	room := panel.Rect{X: at.X + wide + 18, Y: at.Y + head, W: at.W - wide - 26, H: at.H - head - 2}
	x := func(v float64) float64 { return room.X + room.W*(v-lo)/(hi-lo) }
	tall := math.Min(rowTall, room.H/float64(len(c.Rows)))
	for i, r := range c.Rows {
		y := room.Y + tall*float64(i)
		words, bar := panel.Rect{X: at.X, Y: y, W: wide + 4, H: tall}, panel.Rect{Y: y + 0.2*tall, H: 0.6 * tall}
		if over {
			words.W, words.H = at.W, 0.6*tall
			bar.Y, bar.H = y+0.65*tall, 0.25*tall
		}
		l.TextIn(words, face, panel.Left, panel.Ink(), r.Words)
		bar.X = math.Min(x(0), x(r.Value))
		bar.W = math.Max(x(0), x(r.Value)) - bar.X
		ink := barInk(r.Of)
		if r.Spread > 0 {
			ink.A = 110 // the line over it stays dark on bar and paper
		}
		l.Rect(bar, ink)
		if r.Spread > 0 {
			drawSpread(l, x(r.Value-r.Spread), x(r.Value+r.Spread), bar.Centre().Y, bar.H/2)
		}
	}
	l.Upright(x(0), room.Y, room.Y+tall*float64(len(c.Rows)), 1.5, panel.Ink())
}

// barInk is the colour of a design's numbers, that of its line in a section.
func barInk(of lesson.Whose) color.NRGBA {
	switch of {
	case lesson.OfBeside:
		return panel.Rust()
	case lesson.OfOwn:
		return panel.Blue()
	}
	return panel.SoftInk()
}

// drawSpread draws a level line from x0 to x1 with ends.
func drawSpread(l *panel.List, x0, x1, y, half float64) {
	const width = 2.0
	l.Level(x0, x1, y-width/2, width, panel.Ink())
	for _, x := range []float64{x0, x1} {
		l.Upright(x-width/2, y-half, y+half, width, panel.Ink())
	}
}
