package surface

import (
	"fmt"
	"math"
	"sort"

	"archload/mesh/plane"
)

// rimLine is a closed polyline with quick distance and inside questions: a
// tree of boxes over its edges. The fit asks them some 20 000 times.
type rimLine struct {
	pts    []plane.Point
	along  []float64 // arc length at each corner, mm; one longer than pts
	boxes  []rimBox  // binary tree: the children of k are 2k+1 and 2k+2
	lo, hi plane.Point
}

// rimBox bounds the edges from to to−1.
type rimBox struct {
	lo, hi   plane.Point
	from, to int
}

// foot is the nearest point of a rimLine.
type foot struct {
	at     plane.Point
	dist   float64     // mm, unsigned
	along  float64     // arc length, mm
	inside bool        // the point asked about lies inside
	inward plane.Point // unit vector: gradient of the distance, positive inside
}

const leafEdges = 4

// newRimLine builds the tree over the closed polyline pts.
func newRimLine(pts []plane.Point) *rimLine {
	r := &rimLine{pts: pts, along: make([]float64, len(pts)+1)}
	for i := range pts {
		a, b := r.edge(i)
		r.along[i+1] = r.along[i] + math.Hypot(b[0]-a[0], b[1]-a[1])
	}
	r.build(0, 0, len(pts))
	r.lo, r.hi = r.boxes[0].lo, r.boxes[0].hi
	return r
}

// edge returns the ends of edge i.
func (r *rimLine) edge(i int) (a, b plane.Point) { return r.pts[i], r.pts[(i+1)%len(r.pts)] }

// length returns the length of the whole line, mm.
func (r *rimLine) length() float64 { return r.along[len(r.pts)] }

// build fills box k of the tree.
func (r *rimLine) build(k, from, to int) {
	for len(r.boxes) <= k {
		r.boxes = append(r.boxes, rimBox{})
	}
	box := rimBox{plane.Point{math.Inf(1), math.Inf(1)}, plane.Point{math.Inf(-1), math.Inf(-1)}, from, to}
	for i := from; i < to; i++ {
		a, b := r.edge(i)
		for c := range 2 {
			box.lo[c] = min(box.lo[c], a[c], b[c])
			box.hi[c] = max(box.hi[c], a[c], b[c])
		}
	}
	r.boxes[k] = box
	if to-from > leafEdges {
		mid := (from + to) / 2
		r.build(2*k+1, from, mid)
		r.build(2*k+2, mid, to)
	}
}

// away2 returns the squared distance of p from the box, mm².
func (b *rimBox) away2(p plane.Point) float64 {
	dx := max(b.lo[0]-p[0], 0, p[0]-b.hi[0])
	dy := max(b.lo[1]-p[1], 0, p[1]-b.hi[1])
	return dx*dx + dy*dy
}

// nearest returns the nearest point of the line.
func (r *rimLine) nearest(p plane.Point) foot { return r.nearestWithin(p, math.Inf(1)) }

// nearestWithin is nearest where that point is known to be nearer than most, mm.
func (r *rimLine) nearestWithin(p plane.Point, most float64) foot {
	best, edge, at := most*most, 0, 0.0
	r.search(0, p, &best, &edge, &at)
	a, b := r.edge(edge)
	f := foot{
		at:     plane.Point{a[0] + at*(b[0]-a[0]), a[1] + at*(b[1]-a[1])},
		along:  r.along[edge] + at*(r.along[edge+1]-r.along[edge]),
		dist:   math.Sqrt(best),
		inside: r.contains(p),
	}
	f.inward = r.inwardOf(p, f, edge)
	return f
}

// search narrows the nearest edge down, the nearer child first.
func (r *rimLine) search(k int, p plane.Point, best *float64, edge *int, at *float64) {
	box := &r.boxes[k]
	if box.away2(p) >= *best {
		return
	}
	if box.to-box.from > leafEdges {
		near, far := 2*k+1, 2*k+2
		if r.boxes[far].away2(p) < r.boxes[near].away2(p) {
			near, far = far, near
		}
		r.search(near, p, best, edge, at)
		r.search(far, p, best, edge, at)
		return
	}
	for i := box.from; i < box.to; i++ {
		a, b := r.edge(i)
		ux, uy := b[0]-a[0], b[1]-a[1]
		s := ((p[0]-a[0])*ux + (p[1]-a[1])*uy) / (ux*ux + uy*uy)
		s = min(max(s, 0), 1)
		dx, dy := p[0]-a[0]-s*ux, p[1]-a[1]-s*uy
		if d2 := dx*dx + dy*dy; d2 < *best {
			*best, *edge, *at = d2, i, s
		}
	}
}

// inwardOf returns the gradient of the signed distance at p.
func (r *rimLine) inwardOf(p plane.Point, f foot, edge int) plane.Point {
	if f.dist > 1e-6 {
		s := 1 / f.dist
		if !f.inside {
			s = -s
		}
		return plane.Point{(p[0] - f.at[0]) * s, (p[1] - f.at[1]) * s}
	}
	a, b := r.edge(edge)
	l := math.Hypot(b[0]-a[0], b[1]-a[1])
	return plane.Point{-(b[1] - a[1]) / l, (b[0] - a[0]) / l} // left of an anticlockwise edge
}

// contains tells whether p lies inside: crossings of the ray toward +x.
func (r *rimLine) contains(p plane.Point) bool { return r.crossings(0, p)%2 == 1 }

// crossings counts the edges below box k that cross the ray from p toward +x.
func (r *rimLine) crossings(k int, p plane.Point) int {
	box := &r.boxes[k]
	if p[1] < box.lo[1] || p[1] > box.hi[1] || p[0] > box.hi[0] {
		return 0
	}
	if box.to-box.from > leafEdges {
		return r.crossings(2*k+1, p) + r.crossings(2*k+2, p)
	}
	n := 0
	for i := box.from; i < box.to; i++ {
		a, b := r.edge(i)
		if (a[1] > p[1]) != (b[1] > p[1]) && p[0] < a[0]+(p[1]-a[1])/(b[1]-a[1])*(b[0]-a[0]) {
			n++
		}
	}
	return n
}

// signed returns the distance of the foot, negative outside, mm.
func (f foot) signed() float64 {
	if f.inside {
		return f.dist
	}
	return -f.dist
}

// pointAt returns the point at an arc length between 0 and the whole length.
func (r *rimLine) pointAt(s float64) plane.Point {
	p, _ := r.placeAt(s)
	return p
}

// placeAt returns the point at an arc length and the unit normal toward the
// inside there.
func (r *rimLine) placeAt(s float64) (at, inward plane.Point) {
	k := sort.SearchFloat64s(r.along, s)
	k = min(max(k-1, 0), len(r.pts)-1)
	a, b := r.edge(k)
	l := r.along[k+1] - r.along[k]
	u := (s - r.along[k]) / l
	return plane.Point{a[0] + u*(b[0]-a[0]), a[1] + u*(b[1]-a[1])}, plane.Point{-(b[1] - a[1]) / l, (b[0] - a[0]) / l}
}

// rimOf returns the outline as a fine closed polyline.
func rimOf(r plane.Region) (*rimLine, error) {
	const tol = 0.005 // mm, chord error
	pts := r.Polyline(tol)
	var clean []plane.Point
	for i, p := range pts {
		if !finite(p[0], p[1]) {
			return nil, &DataError{Set: "outline", Line: int32(i), At: p, Msg: "want finite numbers"}
		}
		if p != pts[(i+1)%len(pts)] {
			clean = append(clean, p)
		}
	}
	if len(clean) < 3 {
		return nil, &DataError{Set: "outline", Line: -1, Msg: fmt.Sprintf("want at least 3 points, found %d", len(clean))}
	}
	return newRimLine(clean), nil
}
