package plane

import (
	"math"
	"testing"
)

// mustCurve is NewCurve for points that are known to be sound.
func mustCurve(tb testing.TB, pts []Point, corner []bool) *Curve {
	tb.Helper()
	c, err := NewCurve(pts, corner)
	if err != nil {
		tb.Fatal(err)
	}
	return c
}

// allCorners marks n points as corners.
func allCorners(n int) []bool {
	corner := make([]bool, n)
	for i := range corner {
		corner[i] = true
	}
	return corner
}

// polar returns n points of the curve r(angle) about a place.
func polar(at Point, n int, r func(float64) float64) []Point {
	pts := make([]Point, n)
	for i := range pts {
		a := 2 * math.Pi * float64(i) / float64(n)
		pts[i] = Point{at[0] + r(a)*math.Cos(a), at[1] + r(a)*math.Sin(a)}
	}
	return pts
}

// waisted is a smooth curve 410 x 510 mm or so with a narrow waist and one
// wide end.
func waisted(a float64) float64 { return 175 - 65*math.Cos(2*a) - 25*math.Sin(a) }
