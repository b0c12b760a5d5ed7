package plane

import (
	"fmt"
)

// Curve is a closed plan curve, anticlockwise: straight or smooth between its
// corners. Between corners it is a cubic spline with continuous second
// derivative over the chord length (C2); without corners it closes smoothly.
// A Curve does not change after NewCurve and may be shared.
type Curve struct {
	pts    []Point // given points, anticlockwise, mm
	corner []bool
	knot   []float64 // parameter at each point, mm of chord; one more than points
	cubic  []cubic

	flat   []Point   // fine polyline, see flatness; first point not repeated
	flatAt []float64 // parameter at each point of flat
	blocks []box
	lo, hi Point
}

// cubic is x(t) = c0 + c1 t + c2 t² + c3 t³ for each coordinate, t from the
// knot at its start, mm.
type cubic [2][4]float64

// CurveError is a fault of the points of a curve.
type CurveError struct {
	Point int   // index of the point at fault as given, or -1
	At    Point // mm
	Msg   string
}

// Error gives the place in mm; points are counted from 1.
func (e *CurveError) Error() string {
	if e.Point < 0 {
		return "curve: " + e.Msg
	}
	return fmt.Sprintf("curve: point %d at (%.6g, %.6g) mm: %s", e.Point+1, e.At[0], e.At[1], e.Msg)
}

// Corner is a point at which a curve may turn sharply.
type Corner struct {
	At Point   // mm
	U  float64 // its parameter, mm of chord
}

// Corners returns the corners of the curve in its direction.
func (c *Curve) Corners() []Corner {
	var out []Corner
	for i, p := range c.pts {
		if c.corner[i] {
			out = append(out, Corner{p, c.knot[i]})
		}
	}
	return out
}

// box bounds a block of chords of the fine polyline.
type box struct{ lo, hi Point }
