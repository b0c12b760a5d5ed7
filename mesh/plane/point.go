package plane

import "math"

// Point is a place in plan: x across (treble positive), y along (neck
// positive), mm.
type Point [2]float64

// MaxCoord is the greatest coordinate that a plan may have, mm.
const MaxCoord = 1e5

// InReach tells whether both coordinates are numbers within MaxCoord.
func (p Point) InReach() bool {
	return math.Abs(p[0]) <= MaxCoord && math.Abs(p[1]) <= MaxCoord
}

// Dist returns the distance between two points, mm.
func Dist(a, b Point) float64 { return math.Hypot(a[0]-b[0], a[1]-b[1]) }

// Cross returns twice the signed area of triangle abc, mm².
func Cross(a, b, c Point) float64 {
	return (b[0]-a[0])*(c[1]-a[1]) - (b[1]-a[1])*(c[0]-a[0])
}

// Lerp returns the point at a fraction t of the way from a to b.
func Lerp(a, b Point, t float64) Point {
	return Point{a[0] + t*(b[0]-a[0]), a[1] + t*(b[1]-a[1])}
}

// Bounds returns the least and greatest coordinates of the points, mm; zeros if
// there are none.
func Bounds(pts []Point) (lo, hi Point) {
	if len(pts) == 0 {
		return lo, hi
	}
	lo, hi = pts[0], pts[0]
	for _, p := range pts[1:] {
		for k := range 2 {
			lo[k], hi[k] = min(lo[k], p[k]), max(hi[k], p[k])
		}
	}
	return lo, hi
}

// OnChord returns the fraction along ab of the point nearest to p, and
// the squared distance, mm².
func OnChord(a, b, p Point) (t, d2 float64) {
	vx, vy := b[0]-a[0], b[1]-a[1]
	wx, wy := p[0]-a[0], p[1]-a[1]
	if vv := vx*vx + vy*vy; vv > 0 {
		t = min(max((wx*vx+wy*vy)/vv, 0), 1)
	}
	dx, dy := wx-t*vx, wy-t*vy
	return t, dx*dx + dy*dy
}

// Region is the inside of a closed plan curve; *Curve is one.
type Region interface {
	// Polyline returns the curve's corners, anticlockwise, the first not
	// repeated, with a chord error of at most tol mm.
	Polyline(tol float64) []Point
}
