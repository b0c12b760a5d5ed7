package figure

import (
	"image/color"
	"math"
	"slices"

	"archload/mesh"
	"archload/viz/canvas"
)

// drawFlow draws lines of force with an arrow head on each, toward the rim.
func (v *planView) drawFlow(g *canvas.Page) {
	halo := canvas.Pen{Width: 1.9, Color: canvas.Faded(canvas.Paper(), 0.55)}
	for _, l := range v.in.Drawing.Flow {
		q := v.lay.frame.All(l)
		g.Stroke([][]canvas.Point{q}, false, halo)
		g.Stroke([][]canvas.Point{q}, false, flowPen())
	}
	var heads []canvas.Point
	for _, l := range v.in.Drawing.Flow {
		q := v.lay.frame.All(l)
		if canvas.PolyLength(q) < 24 {
			continue
		}
		for _, share := range []float64{0.6, 0.7, 0.5, 0.8, 0.4, 0.9} {
			at, angle := canvas.Along(q, share)
			if !crowded(heads, at) {
				g.Head(at, angle, flowPen().Color)
				heads = append(heads, at)
				break
			}
		}
	}
}

// crowded tells whether an arrow head stands near.
func crowded(heads []canvas.Point, at canvas.Point) bool {
	return slices.ContainsFunc(heads, func(h canvas.Point) bool { return math.Hypot(h.X-at.X, h.Y-at.Y) < 6 })
}

// Smoothed draws a line of force without the small corners of the triangles:
// points every few millimetres, each drawn toward its neighbours' mean three
// times. The ends stay.
func Smoothed(l [][2]float64) []mesh.Point {
	const step = 2.5 // mm
	pts := make([]canvas.Point, len(l))
	for i, p := range l {
		pts[i] = canvas.At(p[0], p[1])
	}
	n := max(1, int(math.Round(canvas.PolyLength(pts)/step)))
	out := make([]mesh.Point, n+1)
	for i := range out {
		q, _ := canvas.Along(pts, float64(i)/float64(n))
		out[i] = mesh.Point{q.X, q.Y}
	}
	for range 3 {
		last := out[0]
		for i := 1; i < n; i++ {
			here := out[i]
			for k := range here {
				out[i][k] = (last[k] + 2*here[k] + out[i+1][k]) / 4
			}
			last = here
		}
	}
	return out
}

func flowPen() canvas.Pen { return canvas.Pen{Width: 0.9, Color: color.NRGBA{120, 30, 60, 255}} }

// sandPen draws the lines where sand gathers.
func sandPen() canvas.Pen { return canvas.Pen{Width: 2.4, Color: color.NRGBA{92, 64, 28, 255}} }
