package sketch

import (
	"image/color"
	"math"

	"archload/viz/panel"
)

// Note is what is written at a place of a sketch, with its number.
type Note struct {
	Words string
	Value float64 // the first number of the words; 0: none
}

// pen draws one sketch.
type pen struct {
	*panel.List
	at    panel.Rect
	notes []Note
}

// note is note i; empty if it was not given.
func (p *pen) note(i int) Note {
	if i >= len(p.notes) {
		return Note{}
	}
	return p.notes[i]
}

// head writes what the sketch is, and returns the room below it.
func (p *pen) head(words string) panel.Rect {
	h := p.Paragraph(panel.Rect{X: p.at.X, Y: p.at.Y, W: p.at.W}, panel.SmallBold, panel.SoftInk(), words)
	return panel.Rect{X: p.at.X, Y: p.at.Y + h + 2, W: p.at.W, H: p.at.H - h - 2}
}

// halves are the two halves of a room, side by side.
func halves(r panel.Rect) [2]panel.Rect {
	left, right := r, r
	left.W /= 2
	right.X, right.W = left.Right(), left.W
	return [2]panel.Rect{left, right}
}

// write writes a note about a place, kept within the room, in so many lines as it needs.
func (p *pen) write(words string, middle panel.Point, width float64, k color.NRGBA) {
	x := math.Max(p.at.X, math.Min(middle.X-width/2, p.at.Right()-width))
	tall := panel.Small.LineHeight()
	lines := p.Atlas.Wrap(panel.Small, words, width)
	high := float64(len(lines)) * tall
	y := math.Min(middle.Y-high/2, p.at.Bottom()-high)
	for i, s := range lines {
		p.TextIn(panel.Rect{X: x, Y: y + float64(i)*tall, W: width, H: tall}, panel.Small, panel.Middle, k, s)
	}
}

// arrow draws an arrow from one place to another.
func (p *pen) arrow(from, to panel.Point, k color.NRGBA) {
	const half = 0.45 // rad, of the head
	p.Line(from, to, 2.4, k)
	long := math.Hypot(to.X-from.X, to.Y-from.Y)
	way := math.Atan2(to.Y-from.Y, to.X-from.X)
	head := math.Min(9, 0.6*long)
	var ends []panel.Point
	for _, turn := range []float64{half, -half} {
		sin, cos := math.Sincos(way + math.Pi + turn)
		ends = append(ends, panel.Point{X: to.X + head*cos, Y: to.Y + head*sin})
	}
	p.Polyline([]panel.Point{ends[0], to, ends[1]}, 2.4, k)
}

// turned is a place turned about another by an angle, rad, anticlockwise as it is seen.
func turned(q, about panel.Point, by float64) panel.Point {
	sin, cos := math.Sincos(by)
	x, y := q.X-about.X, q.Y-about.Y
	return panel.Point{X: about.X + cos*x + sin*y, Y: about.Y - sin*x + cos*y}
}

// allTurned are places turned about another.
func allTurned(all []panel.Point, about panel.Point, by float64) []panel.Point {
	out := make([]panel.Point, len(all))
	for i, q := range all {
		out[i] = turned(q, about, by)
	}
	return out
}

// closed is a line back to its first place.
func closed(all []panel.Point) []panel.Point { return append(all[:len(all):len(all)], all[0]) }

// The colours of wood in a sketch.
func woodColor() color.NRGBA { return color.NRGBA{233, 214, 176, 255} }
func lateColor() color.NRGBA { return color.NRGBA{206, 172, 118, 255} }
func paleColor() color.NRGBA { return color.NRGBA{226, 214, 196, 255} }
