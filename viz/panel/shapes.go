package panel

import (
	"image/color"
	"math"
)

// NewList returns an empty page.
func NewList(a *Atlas) *List { return &List{Atlas: a} }

// corner is a place in pixels with a paint.
type corner struct {
	x, y  float64
	paint color.NRGBA
}

func (l *List) triangle(a, b, c corner) {
	u, v := l.Atlas.full[0], l.Atlas.full[1]
	l.emit([3]Vertex{{a.x, a.y, u, v, a.paint}, {b.x, b.y, u, v, b.paint}, {c.x, c.y, u, v, c.paint}})
}

// quad adds the four-sided shape with the corners in order around it.
func (l *List) quad(a, b, c, d corner) {
	l.triangle(a, b, c)
	l.triangle(a, c, d)
}

// snapped returns the edges of r on whole pixels.
func (l *List) snapped(r Rect) (x0, y0, x1, y1 float64) {
	d := l.Atlas.Density
	return math.Round(r.X * d), math.Round(r.Y * d), math.Round(r.Right() * d), math.Round(r.Bottom() * d)
}

// stroke returns a line's width in whole pixels, at least 1; w in points.
func (l *List) stroke(w float64) float64 { return max(1, math.Round(w*l.Atlas.Density)) }

func (l *List) block(x0, y0, x1, y1 float64, k color.NRGBA) {
	if x1 <= x0 || y1 <= y0 {
		return
	}
	l.quad(corner{x0, y0, k}, corner{x1, y0, k}, corner{x1, y1, k}, corner{x0, y1, k})
}

// Rect fills a rectangle, its edges on whole pixels.
func (l *List) Rect(r Rect, k color.NRGBA) {
	x0, y0, x1, y1 := l.snapped(r)
	l.block(x0, y0, x1, y1, k)
	l.hide(r, k.A)
}

// Frame draws the outline of a rectangle, inside it; width in points.
func (l *List) Frame(r Rect, width float64, k color.NRGBA) {
	x0, y0, x1, y1 := l.snapped(r)
	w := min(l.stroke(width), (x1-x0)/2, (y1-y0)/2)
	if w <= 0 {
		return
	}
	l.block(x0, y0, x1, y0+w, k)
	l.block(x0, y1-w, x1, y1, k)
	l.block(x0, y0+w, x0+w, y1-w, k)
	l.block(x1-w, y0+w, x1, y1-w, k)
}

// Level draws a level line from x0 to x1 whose upper edge is at y, crisp.
func (l *List) Level(x0, x1, y, width float64, k color.NRGBA) {
	d := l.Atlas.Density
	top := math.Round(y * d)
	l.block(math.Round(x0*d), top, math.Round(x1*d), top+l.stroke(width), k)
}

// Upright draws an upright line from y0 to y1 whose middle is at x, crisp.
func (l *List) Upright(x, y0, y1, width float64, k color.NRGBA) {
	d, w := l.Atlas.Density, l.stroke(width)
	left := math.Round(x*d - w/2)
	l.block(left, math.Round(y0*d), left+w, math.Round(y1*d), k)
}

// Strip fills a rectangle with bands that blend from each paint to the next,
// from the left to the right, or, if up, from below to above: for legends.
func (l *List) Strip(r Rect, paints []color.NRGBA, up bool) {
	x0, y0, x1, y1 := l.snapped(r)
	n := float64(len(paints) - 1)
	for i := 0; i+1 < len(paints); i++ {
		a, b, t0, t1 := paints[i], paints[i+1], float64(i)/n, float64(i+1)/n
		if up {
			lo, hi := y1+(y0-y1)*t0, y1+(y0-y1)*t1
			l.quad(corner{x0, lo, a}, corner{x1, lo, a}, corner{x1, hi, b}, corner{x0, hi, b})
			continue
		}
		le, ri := x0+(x1-x0)*t0, x0+(x1-x0)*t1
		l.quad(corner{le, y0, a}, corner{ri, y0, b}, corner{ri, y1, b}, corner{le, y1, a})
	}
}

// faded returns k with its opacity multiplied by a, 0 to 1.
func faded(k color.NRGBA, a float64) color.NRGBA {
	k.A = uint8(math.Round(float64(k.A) * min(1, max(0, a))))
	return k
}
