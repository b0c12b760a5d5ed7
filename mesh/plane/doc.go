// Package plane is the geometry of a plan: points, closed curves, and which of
// many straight pieces lie near each other. It knows neither heights nor
// triangles. Lengths are mm; x runs across (treble positive), y along the
// centre line (neck positive), seen from outside.
//
// # Curves
//
// An outline or a sound hole is read off as points, some of them corners.
// [NewCurve] lays a cubic spline through them over the chord length u:
//
//	x(u) = c0 + c1 t + c2 t² + c3 t³,  t = u − u_i,
//
// for each coordinate, with a continuous second derivative m between corners:
//
//	h₁ m₁ + 2 (h₁ + h₂) m₂ + h₂ m₃ = 6 ((x₃−x₂)/h₂ − (x₂−x₁)/h₁).
//
// At a corner the second derivative is that of the next point (parabolic
// run-out), so two points make a straight line and three a parabola; without
// corners the equations are cyclic (C. de Boor, A Practical Guide to Splines,
// chapter IV, from memory). Faulty points are refused as a *[CurveError] that
// names the point.
//
//	c, err := plane.NewCurve(pts, corners)
//	c.Area(), c.Length()       // mm², mm
//	c.Contains(p)              // by crossings of a fine polyline
//	u, q, d := c.Nearest(p)    // parameter, place, distance
//	c.Polyline(0.01)           // straight pieces within 0.01 mm of the curve
//
// # Straight pieces
//
// [Grid] sorts straight pieces into square cells; [Meet] and [Fold] are exact,
// on the predicates of package delaunay (J. R. Shewchuk's adaptive arithmetic,
// there cited), so that no rounding decides whether two curves cross.
//
// Nothing here changes after it was made: a Curve and a Grid may be shared
// between goroutines.
package plane
