package panel

import (
	"image/color"
	"math"
)

// Polygon fills the shape with the places around it, in either sense; it may
// be hollow but must not cross itself. Its edge is soft, within a pixel.
func (l *List) Polygon(places []Point, k color.NRGBA) {
	d := l.Atlas.Density
	var p []Point
	for _, q := range places {
		if bad(q) {
			return
		}
		q = Point{q.X * d, q.Y * d}
		if n := len(p); n > 0 && math.Hypot(q.X-p[n-1].X, q.Y-p[n-1].Y) < 1e-3 {
			continue
		}
		p = append(p, q)
	}
	if n := len(p); n > 1 && math.Hypot(p[0].X-p[n-1].X, p[0].Y-p[n-1].Y) < 1e-3 {
		p = p[:n-1]
	}
	if len(p) < 3 {
		return
	}
	if twiceArea(p) < 0 {
		for i, j := 0, len(p)-1; i < j; i, j = i+1, j-1 {
			p[i], p[j] = p[j], p[i]
		}
	}
	for _, t := range ears(p) {
		a, b, c := p[t[0]], p[t[1]], p[t[2]]
		l.triangle(corner{a.X, a.Y, k}, corner{b.X, b.Y, k}, corner{c.X, c.Y, k})
	}
	l.softEdge(p, k)
}

// softEdge surrounds a shape, its area positive, with a ramp to clear.
func (l *List) softEdge(p []Point, k color.NRGBA) {
	const ramp = 0.75 // pixels
	n := len(p)
	out := make([]Point, n)
	for i := range p {
		r := mitre(p[i], normal(p[(i+n-1)%n], p[i]), normal(p[i], p[(i+1)%n]))
		out[i] = Point{p[i].X - ramp*r.across.X, p[i].Y - ramp*r.across.Y}
	}
	none := faded(k, 0)
	for i := range p {
		j := (i + 1) % n
		l.quad(corner{p[i].X, p[i].Y, k}, corner{p[j].X, p[j].Y, k},
			corner{out[j].X, out[j].Y, none}, corner{out[i].X, out[i].Y, none})
	}
}

// twiceArea returns twice the signed area, pixels².
func twiceArea(p []Point) float64 {
	s := 0.0
	for i := range p {
		j := (i + 1) % len(p)
		s += p[i].X*p[j].Y - p[j].X*p[i].Y
	}
	return s
}

func turn(a, b, c Point) float64 { return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X) }

// ears cuts a shape of positive area into triangles, one corner after the
// other. If none can be cut, the shape crosses itself: what is left is fanned.
func ears(p []Point) [][3]int {
	left := make([]int, len(p))
	for i := range left {
		left[i] = i
	}
	var out [][3]int
	for i, misses := 0, 0; len(left) > 3; {
		n := len(left)
		i %= n
		if misses > n || isEar(p, left, i) {
			out = append(out, [3]int{left[(i+n-1)%n], left[i], left[(i+1)%n]})
			left = append(left[:i], left[i+1:]...)
			misses = 0
			i++ // cut every other corner: the triangles stay compact
			continue
		}
		i++
		misses++
	}
	return append(out, [3]int{left[0], left[1], left[2]})
}

// isEar tells whether the corner at position i can be cut off.
func isEar(p []Point, left []int, i int) bool {
	n := len(left)
	a, b, c := p[left[(i+n-1)%n]], p[left[i]], p[left[(i+1)%n]]
	if turn(a, b, c) <= 0 {
		return false
	}
	for k := 2; k < n-1; k++ {
		q := p[left[(i+k)%n]]
		if q != a && q != c && turn(a, b, q) >= 0 && turn(b, c, q) >= 0 && turn(c, a, q) >= 0 {
			return false
		}
	}
	return true
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
