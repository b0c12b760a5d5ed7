package figure

import (
	"math"

	"archload/viz/canvas"
	"archload/viz/scale"
)

// hatch draws the triangles without a value.
func hatch(g *canvas.Page, s *sheet, f canvas.Frame) {
	var loops [][]canvas.Point
	var lines [][]canvas.Point
	for _, t := range s.blank {
		c := [3]canvas.Point{f.At(s.pts[t[0]]), f.At(s.pts[t[1]]), f.At(s.pts[t[2]])}
		loops = append(loops, c[:])
		lines = append(lines, hatchLines(c[:], 5)...)
	}
	g.Fill(loops, scale.NoValue())
	g.Stroke(lines, false, canvas.Pen{Width: 0.5, Color: canvas.SoftInk()})
}

// hatchLines returns the pieces of the lines x + y = k·step inside a convex
// polygon, points.
func hatchLines(c []canvas.Point, step float64) [][]canvas.Point {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, q := range c {
		lo, hi = math.Min(lo, q.X+q.Y), math.Max(hi, q.X+q.Y)
	}
	var out [][]canvas.Point
	for k := math.Ceil(lo / step); k*step <= hi; k++ {
		var cut []canvas.Point
		for i, a := range c {
			b := c[(i+1)%len(c)]
			da, db := a.X+a.Y-k*step, b.X+b.Y-k*step
			if (da < 0) != (db < 0) {
				t := da / (da - db)
				cut = append(cut, canvas.At(a.X+t*(b.X-a.X), a.Y+t*(b.Y-a.Y)))
			}
		}
		if len(cut) == 2 {
			out = append(out, cut)
		}
	}
	return out
}
