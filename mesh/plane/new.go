package plane

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// Limits on the points of a curve. Lengths relative to the diagonal of the
// bounding box.
const (
	maxPoints = 20000
	closing   = 1e-4 // a last point that near the first only repeats it
	repeat    = 1e-6 // nearer points count as one
	Flatness  = 1e-6 // chord error of the fine polyline
)

// NewCurve lays a closed curve through pts, mm, rounded to 1e-9, in either
// direction. corner
// says where it may turn sharply; nil means nowhere. A last point that repeats
// the first is dropped. Fewer than three points, repeated points, numbers that
// are not finite or beyond 100 m, points on one line and curves that cross
// themselves give a *CurveError.
func NewCurve(pts []Point, corner []bool) (*Curve, error) {
	if corner != nil && len(corner) != len(pts) {
		return nil, &CurveError{Point: -1, Msg: fmt.Sprintf("want one corner mark for each of the %d points, found %d", len(pts), len(corner))}
	}
	if err := checkNumbers(pts); err != nil {
		return nil, err
	}
	c := &Curve{pts: make([]Point, len(pts)), corner: make([]bool, len(pts))}
	for i, p := range pts {
		c.pts[i] = p.Rounded()
	}
	copy(c.corner, corner)
	lo, hi := Bounds(pts)
	diag := Dist(lo, hi)
	if n := len(pts); n > 1 && Dist(pts[0], pts[n-1]) <= closing*diag {
		c.corner[0] = c.corner[0] || c.corner[n-1]
		c.pts, c.corner = c.pts[:n-1], c.corner[:n-1]
	}
	if err := checkDistinct(c.pts, diag); err != nil {
		return nil, err
	}
	reversed := ringArea(c.pts) < 0
	if reversed {
		c.turn()
	}
	c.build(diag)
	if c.Area() < 0 { // a spline with large overshoots may turn against its points
		reversed = !reversed
		c.turn()
		c.build(diag)
	}
	if err := c.checkShape(reversed); err != nil {
		return nil, err
	}
	return c, nil
}

// turn reverses the direction; the first point stays the first.
func (c *Curve) turn() {
	slices.Reverse(c.pts[1:])
	slices.Reverse(c.corner[1:])
}

// build fits the spline and the search structures.
func (c *Curve) build(diag float64) {
	n := len(c.pts)
	c.knot = make([]float64, n+1)
	for i := range n {
		c.knot[i+1] = c.knot[i] + Dist(c.pts[i], c.pts[(i+1)%n])
	}
	c.cubic = fitCurve(c.pts, c.corner, c.knot)
	c.flat, c.flatAt = c.flatten(Flatness * diag)
	c.blocks = boxBlocks(c.flat)
	c.lo, c.hi = c.extremes()
}

func checkNumbers(pts []Point) error {
	for i, p := range pts {
		if !p.InReach() {
			return &CurveError{i, p, fmt.Sprintf("want coordinates within %g mm", float64(MaxCoord))}
		}
	}
	if len(pts) > maxPoints {
		return &CurveError{Point: -1, Msg: fmt.Sprintf("want at most %d points, found %d", maxPoints, len(pts))}
	}
	return nil
}

func checkDistinct(pts []Point, diag float64) error {
	if len(pts) < 3 {
		return &CurveError{Point: -1, Msg: fmt.Sprintf("want at least 3 different points, found %d", len(pts))}
	}
	for i, p := range pts {
		if i > 0 && Dist(pts[i-1], p) <= repeat*diag {
			return &CurveError{i, p, "repeats the point before it"}
		}
	}
	if n := len(pts); Dist(pts[0], pts[n-1]) <= repeat*diag {
		return &CurveError{n - 1, pts[n-1], "repeats the first point once more"}
	}
	far := slices.MaxFunc(pts, func(a, b Point) int {
		return cmp.Compare(Dist(pts[0], a), Dist(pts[0], b))
	})
	for _, p := range pts {
		if math.Abs(Cross(pts[0], far, p)) > repeat*diag*diag {
			return nil
		}
	}
	return &CurveError{Point: -1, Msg: "all points lie on one line"}
}

// checkShape refuses curves that cross themselves. reversed says that the
// points were turned round, so that the point number can be given as found.
func (c *Curve) checkShape(reversed bool) error {
	at, crosses := ringCrossing(c.flat)
	if !crosses {
		return nil
	}
	i := c.interval(c.flatAt[at])
	if n := len(c.pts); reversed {
		i = n - 1 - i
	}
	return &CurveError{Point: i, At: c.flat[at], Msg: "the curve crosses or touches itself between this point and the next"}
}

// ringArea returns the signed area of a closed polygon, mm²; anticlockwise is
// positive.
func ringArea(pts []Point) float64 {
	sum := 0.0
	for i, p := range pts {
		q := pts[(i+1)%len(pts)]
		sum += (p[0]-pts[0][0])*(q[1]-pts[0][1]) - (q[0]-pts[0][0])*(p[1]-pts[0][1])
	}
	return sum / 2
}
