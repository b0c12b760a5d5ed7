package surface

import (
	"cmp"
	"slices"

	"archload/mesh/plane"
)

// segment is one edge of a chain of points.
type segment struct {
	a, b  plane.Point
	chain int   // which chain
	from  int   // index of a in it
	row   int32 // row of a in the user's table
}

// segmentsOf returns the edges of a chain that have a length.
func segmentsOf(pts []plane.Point, closed bool, chain int) []segment {
	var out []segment
	for i := range pts {
		j := i + 1
		if j == len(pts) {
			if !closed {
				break
			}
			j = 0
		}
		if pts[i] != pts[j] {
			out = append(out, segment{a: pts[i], b: pts[j], chain: chain, from: i})
		}
	}
	return out
}

// meets returns the crossing of two segments.
func (s *segment) meets(t *segment) (at plane.Point, ok bool) {
	ux, uy := s.b[0]-s.a[0], s.b[1]-s.a[1]
	vx, vy := t.b[0]-t.a[0], t.b[1]-t.a[1]
	wx, wy := t.a[0]-s.a[0], t.a[1]-s.a[1]
	det := ux*vy - uy*vx
	if det == 0 {
		return at, false
	}
	p, q := (wx*vy-wy*vx)/det, (wx*uy-wy*ux)/det
	if p < 0 || p > 1 || q < 0 || q > 1 {
		return at, false
	}
	return plane.Point{s.a[0] + p*ux, s.a[1] + p*uy}, true
}

// firstCrossing returns a pair of crossing segments that matters, found by
// sweeping along x.
func firstCrossing(segs []segment, matters func(a, b *segment) bool) (s, t segment, at plane.Point, found bool) {
	left := func(s *segment) float64 { return min(s.a[0], s.b[0]) }
	slices.SortStableFunc(segs, func(a, b segment) int { return cmp.Compare(left(&a), left(&b)) })
	for i := range segs {
		a := &segs[i]
		right := max(a.a[0], a.b[0])
		for j := i + 1; j < len(segs) && left(&segs[j]) <= right; j++ {
			b := &segs[j]
			if max(a.a[1], a.b[1]) < min(b.a[1], b.b[1]) || max(b.a[1], b.b[1]) < min(a.a[1], a.b[1]) {
				continue
			}
			if at, ok := a.meets(b); ok && matters(a, b) {
				return *a, *b, at, true
			}
		}
	}
	return s, t, at, false
}
