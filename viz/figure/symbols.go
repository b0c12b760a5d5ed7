package figure

import (
	"archload/viz/canvas"
)

// drawGauge draws a dial gauge's place: a crossed circle.
func drawGauge(g *canvas.Page, at canvas.Point) {
	g.Fill([][]canvas.Point{canvas.Disc(at, 3.2)}, canvas.Paper())
	g.Stroke([][]canvas.Point{canvas.Disc(at, 3.2)}, true, canvas.Pen{Width: 0.8, Color: canvas.Ink()})
	g.Line(at.Add(-4.6, 0), at.Add(4.6, 0), canvas.Thin())
	g.Line(at.Add(0, -4.6), at.Add(0, 4.6), canvas.Thin())
}

// drawWorst draws a triangle at the place of the greatest value.
func drawWorst(g *canvas.Page, at canvas.Point) {
	t := []canvas.Point{at.Add(-4, -2.6), at.Add(4, -2.6), at.Add(0, 4.2)}
	g.Fill([][]canvas.Point{t}, canvas.Rust())
	g.Stroke([][]canvas.Point{t}, true, canvas.Pen{Width: 0.8, Color: canvas.Paper()})
}

// drawPost draws a post's place: a filled square.
func drawPost(g *canvas.Page, at canvas.Point) {
	q := canvas.Loop(canvas.Box(at.X-3.2, at.Y-3.2, at.X+3.2, at.Y+3.2))
	g.Fill([][]canvas.Point{q}, canvas.Ink())
	g.Stroke([][]canvas.Point{q}, true, canvas.Pen{Width: 0.8, Color: canvas.Paper()})
}
