package delaunay

import (
	"math"
)

// Rules steer Refine.
type Rules struct {
	Size      func(Point) float64                  // wanted edge length, mm, > 0
	Split     func(s Segment, t float64) (p Point) // the curve's point at parameter t, mm
	MaxPoints int                                  // refinement stops here
}

// Limits of refinement. MaxRadius: a triangle is too big if its circumradius
// exceeds that many times the wanted size there (0.76 makes the median edge
// equal to the size, measured). leastAngle is the aim for the least angle;
// the two floors, in sizes, keep refinement from cascading into small corners.
const (
	maxRadius    = 0.76
	leastAngle   = 27.5 * math.Pi / 180
	shortestEdge = 0.35 // a triangle is not split for its angle if an edge is shorter
	shortestSeg  = 0.5  // a segment shorter than that is never split
)

// refiner is the work in progress.
type refiner struct {
	*Triangulation
	Rules
	ratio float64 // circumradius over shortest edge above which a triangle is bad
	queue []entry
	head  int
	sharp []bool  // by vertex: segments meet there at less than 60 degrees
	onSeg []bool  // by vertex
	tris  []int32 // work space of conflict
	seen  []int32 // work space of conflict: round in which a triangle was seen
	round int32
}

// entry is a triangle to be looked at, stale if its corners have changed.
type entry struct {
	t int32
	v [3]int32
}

// Refine inserts points until every triangle of the domain has the wanted size
// and least angle, except where short segments or sharp corners forbid it. It
// returns false if it stopped at MaxPoints.
func (tr *Triangulation) Refine(rules Rules) bool {
	r := &refiner{Triangulation: tr, Rules: rules, ratio: 1 / (2 * math.Sin(leastAngle))}
	r.sharp, r.onSeg = tr.sharpCorners()
	for t := range tr.T {
		r.push(int32(t))
	}
	for ; r.head < len(r.queue); r.head++ {
		if len(tr.P) >= r.MaxPoints {
			return false
		}
		e := r.queue[r.head]
		if tr.T[e.t].V == e.v {
			r.improve(e.t)
		}
		if r.head > 1<<16 && 2*r.head > len(r.queue) {
			r.queue = append(r.queue[:0], r.queue[r.head+1:]...)
			r.head = -1
		}
	}
	return true
}

func (r *refiner) push(t int32) {
	if r.T[t].In {
		r.queue = append(r.queue, entry{t, r.T[t].V})
	}
}

// pushStar queues what an insertion at v has changed: the triangles round v.
func (r *refiner) pushStar(v int32) {
	r.star(v, func(t int32, _ int) bool {
		r.push(t)
		return true
	})
}

// improve looks at one triangle and inserts at most one point for it (several
// if segments are in the way).
func (r *refiner) improve(t int32) {
	a, b, c := r.corners(t)
	h := r.Size(Point{(a[0] + b[0] + c[0]) / 3, (a[1] + b[1] + c[1]) / 3})
	if r.splitEncroached(t, h) {
		return
	}
	p, bad := r.newPoint(t, h)
	if !bad {
		return
	}
	at, blocked := r.walk(t, p)
	if blocked != None {
		if r.splitIfLong(blocked) {
			r.push(t)
		}
		return
	}
	if at.corner >= 0 || at.tri == None {
		return
	}
	if hit := r.conflict(at.tri, p); len(hit) > 0 {
		done := false
		for _, k := range hit {
			done = r.splitIfLong(k) || done
		}
		if done {
			if r.T[t].In {
				r.push(t)
			}
			return
		}
	}
	if at.edge >= 0 && r.T[at.tri].S[at.edge] != None {
		return
	}
	v := r.insertAt(at, p)
	r.sharp, r.onSeg = append(r.sharp, false), append(r.onSeg, false)
	r.pushStar(v)
}

// splitEncroached splits a segment of t whose diameter circle holds the
// opposite corner.
func (r *refiner) splitEncroached(t int32, h float64) bool {
	o := r.T[t]
	for i, k := range o.S {
		if k == None || !sees(r.P[o.V[(i+1)%3]], r.P[o.V[(i+2)%3]], r.P[o.V[i]]) {
			continue
		}
		if r.sharp[o.V[(i+1)%3]] || r.sharp[o.V[(i+2)%3]] {
			if r.onSeg[o.V[i]] {
				continue
			}
		}
		if dist(r.P[o.V[(i+1)%3]], r.P[o.V[(i+2)%3]]) > shortestSeg*h && r.splitIfLong(k) {
			return true
		}
	}
	return false
}

// sees tells whether ab appears from p under more than 90 degrees.
func sees(a, b, p Point) bool {
	return (a[0]-p[0])*(b[0]-p[0])+(a[1]-p[1])*(b[1]-p[1]) < 0
}

// newPoint decides whether t is bad and where a point would mend it.
func (r *refiner) newPoint(t int32, h float64) (Point, bool) {
	a, b, c := r.corners(t)
	cc, rad := circumcentre(a, b, c)
	// Turn the triangle so that ab is its shortest edge.
	i := 2
	if la, lb, lc := dist(b, c), dist(c, a), dist(a, b); la <= lb && la <= lc {
		a, b, i = b, c, 0
	} else if lb <= lc {
		a, b, i = c, a, 1
	}
	l := dist(a, b)
	if rad > maxRadius*h {
		return cc, true
	}
	if rad <= r.ratio*l || l < shortestEdge*h || r.inSharpCorner(t, i) {
		return cc, false
	}
	m := mid(a, b)
	d := dist(m, cc)
	if off := l * (r.ratio + math.Sqrt(r.ratio*r.ratio-0.25)); d > off {
		cc = Point{m[0] + (cc[0]-m[0])*off/d, m[1] + (cc[1]-m[1])*off/d}
	}
	return cc, true
}

// inSharpCorner tells whether the corner of t opposite its shortest edge i is
// a sharp one between two segments: that angle cannot be mended.
func (r *refiner) inSharpCorner(t int32, i int) bool {
	v := &r.T[t].V
	return r.sharp[v[i]] && r.onSeg[v[(i+1)%3]] && r.onSeg[v[(i+2)%3]]
}

// circumcentre returns the centre and radius of the circle through a, b, c.
func circumcentre(a, b, c Point) (Point, float64) {
	x, y, ok := toCentre(a, b, c)
	if !ok {
		return mid(a, b), math.Inf(1)
	}
	return Point{a[0] + x, a[1] + y}, math.Hypot(x, y)
}

// toCentre leads from a to the centre of the circle through a, b, c; ok is false if
// they are flat or clockwise.
func toCentre(a, b, c Point) (x, y float64, ok bool) {
	bx, by, cx, cy := b[0]-a[0], b[1]-a[1], c[0]-a[0], c[1]-a[1]
	d := 2 * (bx*cy - by*cx)
	if d <= 0 {
		return 0, 0, false
	}
	b2, c2 := bx*bx+by*by, cx*cx+cy*cy
	return (cy*b2 - by*c2) / d, (bx*c2 - cx*b2) / d, true
}

// walk goes from the middle of t straight to p. It returns where p lies, or
// the segment that stands in the way.
func (r *refiner) walk(t int32, p Point) (place, int32) {
	a, b, c := r.corners(t)
	g := Point{(a[0] + b[0] + c[0]) / 3, (a[1] + b[1] + c[1]) / 3}
	for range 1000 {
		i := r.exit(t, g, p)
		if i < 0 {
			return r.placeIn(t, p), None
		}
		if k := r.T[t].S[i]; k != None {
			return place{}, k
		}
		t = r.T[t].N[i]
		if t == None {
			break
		}
	}
	return place{tri: None}, None
}

// exit returns the edge of t through which the line from g leaves towards p,
// or -1 if p is in t.
func (r *refiner) exit(t int32, g, p Point) int {
	o := &r.T[t]
	for i := range 3 {
		a, b := r.P[o.V[(i+1)%3]], r.P[o.V[(i+2)%3]]
		if Orient(a, b, p) < 0 && Orient(g, p, a) <= 0 && Orient(g, p, b) >= 0 {
			return i
		}
	}
	return -1
}

// conflict lists the segments that p would encroach upon: they bound the
// triangles whose circle holds p, and p sees them under more than 90 degrees.
func (r *refiner) conflict(t int32, p Point) []int32 {
	r.round++
	for len(r.seen) < len(r.T) {
		r.seen = append(r.seen, 0)
	}
	var hit []int32
	r.tris = append(r.tris[:0], t)
	r.seen[t] = r.round
	for len(r.tris) > 0 {
		o := &r.T[r.tris[len(r.tris)-1]]
		r.tris = r.tris[:len(r.tris)-1]
		for i, u := range o.N {
			if k := o.S[i]; k != None {
				if sees(r.P[o.V[(i+1)%3]], r.P[o.V[(i+2)%3]], p) {
					hit = append(hit, k)
				}
				continue
			}
			if u == None || r.seen[u] == r.round {
				continue
			}
			a, b, c := r.corners(u)
			if InCircle(a, b, c, p) > 0 {
				r.seen[u] = r.round
				r.tris = append(r.tris, u)
			}
		}
	}
	return hit
}

// splitIfLong splits segment k in its middle, or at a power of two from a
// sharp end, unless it is short for its place already.
func (r *refiner) splitIfLong(k int32) bool {
	s := r.Segs[k]
	m := mid(r.P[s.A], r.P[s.B])
	l := dist(r.P[s.A], r.P[s.B])
	if l <= shortestSeg*r.Size(m) {
		return false
	}
	f := 0.5
	if r.sharp[s.A] != r.sharp[s.B] {
		f = math.Exp2(math.Round(math.Log2(l/2))) / l
		if r.sharp[s.B] {
			f = 1 - f
		}
	}
	t := s.TA + f*(s.TB-s.TA)
	v := r.SplitSegment(k, r.Split(s, t), t)
	if v == None {
		return false
	}
	r.sharp, r.onSeg = append(r.sharp, false), append(r.onSeg, true)
	r.pushStar(v)
	return true
}

// sharpCorners finds the vertices on segments, and those where two segments
// meet at less than 60 degrees.
func (tr *Triangulation) sharpCorners() (sharp, onSeg []bool) {
	sharp, onSeg = make([]bool, len(tr.P)), make([]bool, len(tr.P))
	for _, s := range tr.Segs {
		onSeg[s.A], onSeg[s.B] = true, true
	}
	for v := int32(supers); v < int32(len(tr.P)); v++ {
		if onSeg[v] {
			sharp[v] = tr.isSharp(v)
		}
	}
	return sharp, onSeg
}

// isSharp measures the angles between neighbouring segments at v, inside the
// domain.
func (tr *Triangulation) isSharp(v int32) bool {
	found, have := false, false
	var sum, first float64
	tr.star(v, func(t int32, k int) bool {
		o := &tr.T[t]
		if o.S[(k+2)%3] != None { // the edge from v to the next corner
			found = found || have && sum < math.Pi/3
			if !have {
				first = sum
			}
			have, sum = true, 0
		}
		if !o.In {
			sum = math.Inf(1)
		}
		sum += angleAt(tr.P[v], tr.P[o.V[(k+1)%3]], tr.P[o.V[(k+2)%3]])
		return true
	})
	return found || have && sum+first < math.Pi/3
}

// angleAt returns the angle at v between the directions to a and b, radians.
func angleAt(v, a, b Point) float64 {
	ax, ay, bx, by := a[0]-v[0], a[1]-v[1], b[0]-v[0], b[1]-v[1]
	return math.Atan2(math.Abs(ax*by-ay*bx), ax*bx+ay*by)
}
