package panel

import (
	"image/color"
	"math"
)

// Point is a place on the page, points from the left and the top.
type Point struct{ X, Y float64 }

// Rect is a rectangle of the page, points.
type Rect struct{ X, Y, W, H float64 }

// Right returns the x of the right edge, points.
func (r Rect) Right() float64 { return r.X + r.W }

// Bottom returns the y of the lower edge, points.
func (r Rect) Bottom() float64 { return r.Y + r.H }

// Centre returns the middle.
func (r Rect) Centre() Point { return Point{r.X + r.W/2, r.Y + r.H/2} }

// Inset returns the rectangle with dx less on the left and on the right, dy
// less above and below.
func (r Rect) Inset(dx, dy float64) Rect {
	return Rect{r.X + dx, r.Y + dy, max(0, r.W-2*dx), max(0, r.H-2*dy)}
}

// Holds tells whether the place lies in the rectangle; the right and the
// lower edge do not belong to it.
func (r Rect) Holds(p Point) bool {
	return p.X >= r.X && p.X < r.Right() && p.Y >= r.Y && p.Y < r.Bottom()
}

// Meet returns what both rectangles cover; its width or height is 0 if nothing.
func (r Rect) Meet(s Rect) Rect {
	x0, y0 := max(r.X, s.X), max(r.Y, s.Y)
	x1, y1 := min(r.Right(), s.Right()), min(r.Bottom(), s.Bottom())
	return Rect{x0, y0, max(0, x1-x0), max(0, y1-y0)}
}

// Empty tells whether nothing lies inside.
func (r Rect) Empty() bool { return !(r.W > 0 && r.H > 0) }

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

// Circle draws the outline of a circle; radius and width in points.
func (l *List) Circle(at Point, radius, width float64, k color.NRGBA) {
	ring := l.around(at, radius)
	l.Polyline(append(ring, ring[0]), width, k)
}

// Disc fills a circle; radius in points.
func (l *List) Disc(at Point, radius float64, k color.NRGBA) {
	l.Polygon(l.around(at, radius), k)
}

// around returns a ring of places, fine enough for a smooth edge.
func (l *List) around(at Point, radius float64) []Point {
	n := int(min(96, max(12, math.Ceil(6*math.Sqrt(radius*l.Atlas.Density)))))
	out := make([]Point, n)
	for i := range out {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		out[i] = Point{at.X + radius*c, at.Y + radius*s}
	}
	return out
}

// faded returns k with its opacity multiplied by a, 0 to 1.
func faded(k color.NRGBA, a float64) color.NRGBA {
	k.A = uint8(math.Round(float64(k.A) * min(1, max(0, a))))
	return k
}
