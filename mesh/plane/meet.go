package plane

import "archload/mesh/delaunay"

// Meet tells whether the straight pieces ab and cd have a point in
// common, exactly.
func Meet(a, b, c, d Point) bool {
	if max(a[0], b[0]) < min(c[0], d[0]) || max(c[0], d[0]) < min(a[0], b[0]) ||
		max(a[1], b[1]) < min(c[1], d[1]) || max(c[1], d[1]) < min(a[1], b[1]) {
		return false
	}
	return delaunay.Orient(a, b, c)*delaunay.Orient(a, b, d) <= 0 &&
		delaunay.Orient(c, d, a)*delaunay.Orient(c, d, b) <= 0
}

// Fold tells whether bc runs back over ab.
func Fold(a, b, c Point) bool {
	return (b[0]-a[0])*(c[0]-b[0])+(b[1]-a[1])*(c[1]-b[1]) < 0 && delaunay.Orient(a, b, c) == 0
}
