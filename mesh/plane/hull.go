package plane

import (
	"cmp"
	"slices"
)

// Hull returns the corners of the convex hull of some points, anticlockwise, those
// on a straight side left out; two for points on one line, and as many as there are
// for fewer. Source: A. M. Andrew, Another efficient algorithm for convex hulls in
// two dimensions, Inf. Process. Lett. 9 (1979).
func Hull(pts []Point) []Point {
	sorted := slices.Clone(pts)
	slices.SortFunc(sorted, func(a, b Point) int { return cmp.Or(cmp.Compare(a[0], b[0]), cmp.Compare(a[1], b[1])) })
	sorted = slices.Compact(sorted)
	if len(sorted) < 3 {
		return sorted
	}
	half := func() []Point {
		var chain []Point
		for _, p := range sorted {
			for len(chain) > 1 && Cross(chain[len(chain)-2], chain[len(chain)-1], p) <= 0 {
				chain = chain[:len(chain)-1]
			}
			chain = append(chain, p)
		}
		return chain[:len(chain)-1] // the last is the first of the other half
	}
	lower := half()
	slices.Reverse(sorted)
	return append(lower, half()...)
}

// NearestOnHull returns the place of a hull that is nearest to p: p itself inside of it.
// along is the unit vector of the side it lies on, zero inside and at a corner.
func NearestOnHull(hull []Point, p Point) (q, along Point) {
	least, inside := -1.0, len(hull) > 2
	for i, a := range hull {
		b := hull[(i+1)%len(hull)]
		if Cross(a, b, p) < 0 {
			inside = false
		}
		t, d2 := OnChord(a, b, p)
		if least >= 0 && d2 >= least {
			continue
		}
		least, q, along = d2, Lerp(a, b, t), Point{}
		if l := Dist(a, b); t > 0 && t < 1 {
			along = Point{(b[0] - a[0]) / l, (b[1] - a[1]) / l}
		}
	}
	if inside {
		return p, Point{}
	}
	return q, along
}
