package drawing

import (
	"math"

	"archload/mesh"
	"archload/mesh/plane"
)

// How a drawn line becomes points of a curve.
const (
	drawnTurn   = 8.0  // deg between neighbouring points of a Bezier curve, at most
	drawnStep   = 8.0  // mm between them, at most
	drawnCorner = 20.0 // deg: a sharper turn is a corner
	drawnBulge  = 1.0  // mm: a chain of straight lines that would bulge farther keeps its corners
	drawnGap    = 0.1  // mm: ends that near are meant to meet
	drawnTiny   = 1e-3 // mm: nearer points are one
	drawnMost   = 20000
)

// moved returns the chain under a map, without pieces of no length.
func (c *svgChain) moved(at func(mesh.Point) mesh.Point) svgChain {
	out := svgChain{start: at(c.start), closed: c.closed}
	here := out.start
	for _, s := range c.segs {
		for k := range s.p {
			s.p[k] = at(s.p[k])
		}
		s.p[0] = here
		if s.reach() < drawnTiny {
			continue
		}
		here = s.p[3]
		out.segs = append(out.segs, s)
	}
	return out
}

// reach is the length of the control polygon, mm.
func (s *svgSegment) reach() float64 {
	return plane.PathLength(s.p[:])
}

// joined closes a chain whose ends meet, or that is closed by its command; ok
// is false if it is open.
func (c *svgChain) joined() bool {
	n := len(c.segs)
	if n == 0 {
		return false
	}
	gap := math.Hypot(c.end()[0]-c.start[0], c.end()[1]-c.start[1])
	switch {
	case gap <= drawnGap && n > 1, gap <= drawnGap && !c.segs[0].line:
		c.segs[n-1].p[3] = c.start
		if c.segs[n-1].line {
			c.segs[n-1].p[2] = c.start
		}
	case c.closed:
		c.lineTo(c.start)
	default:
		return false
	}
	return true
}

// leaves and arrives are the directions of the curve at its ends, from the
// first control point that lies elsewhere.
func (s *svgSegment) leaves() mesh.Point {
	for _, q := range s.p[1:] {
		if d := toward(s.p[0], q); d != (mesh.Point{}) {
			return d
		}
	}
	return mesh.Point{}
}

func (s *svgSegment) arrives() mesh.Point {
	for k := 2; k >= 0; k-- {
		if d := toward(s.p[k], s.p[3]); d != (mesh.Point{}) {
			return d
		}
	}
	return mesh.Point{}
}

// toward is the unit vector from p to q; zero if they are one.
func toward(p, q mesh.Point) mesh.Point {
	d := math.Hypot(q[0]-p[0], q[1]-p[1])
	if d < drawnTiny {
		return mesh.Point{}
	}
	return mesh.Point{(q[0] - p[0]) / d, (q[1] - p[1]) / d}
}

// turnBetween is the angle between two unit vectors, deg.
func turnBetween(a, b mesh.Point) float64 {
	return math.Abs(math.Atan2(a[0]*b[1]-a[1]*b[0], a[0]*b[0]+a[1]*b[1])) * 180 / math.Pi
}

// cornerAt reports whether the closed chain turns sharply between segment i
// and the next.
func (c *svgChain) cornerAt(i int) bool {
	s, next := &c.segs[i], &c.segs[(i+1)%len(c.segs)]
	turn := turnBetween(s.arrives(), next.leaves())
	bulge := 0.0
	if s.line && next.line {
		bulge = min(s.reach(), next.reach()) * turn * math.Pi / 180 / 8
	}
	return turn > drawnCorner || bulge > drawnBulge
}

// points returns points of a closed chain through which a smooth curve with
// corners follows what is drawn; ok is false if there are too many.
func (c *svgChain) points() (pts []mesh.Point, corner []bool, ok bool) {
	n := len(c.segs)
	sharp := make([]bool, n) // at the end of each segment
	for i := range sharp {
		sharp[i] = c.cornerAt(i)
	}
	for i := range c.segs {
		s := &c.segs[i]
		before, after := &c.segs[(i+n-1)%n], &c.segs[(i+1)%n]
		from := len(pts)
		switch {
		case !s.line:
			pts = s.sample(pts, 0)
		case !before.line && !sharp[(i+n-1)%n], !after.line && !sharp[i]:
			pts = s.divide(pts)
		default:
			pts = append(pts, s.p[3])
		}
		for range pts[from:] {
			corner = append(corner, false)
		}
		corner[len(corner)-1] = sharp[i]
		if len(pts) > drawnMost {
			return nil, nil, false
		}
	}
	pts, corner = distinct(pts, corner)
	return pts, corner, true
}

// sample adds points of a Bezier curve behind its start, halving it until each
// piece is short and turns little.
func (s *svgSegment) sample(pts []mesh.Point, depth int) []mesh.Point {
	const deepest = 10
	turn := turnBetween(toward(s.p[0], s.p[1]), toward(s.p[1], s.p[2])) + turnBetween(toward(s.p[1], s.p[2]), toward(s.p[2], s.p[3]))
	if depth == deepest || depth > 0 && turn <= drawnTurn && s.reach() <= drawnStep || len(pts) > drawnMost {
		return append(pts, s.p[3])
	}
	a, b := s.halves()
	return b.sample(a.sample(pts, depth+1), depth+1)
}

// halves parts a Bezier curve in its middle (P. de Casteljau).
func (s *svgSegment) halves() (a, b svgSegment) {
	mid := func(p, q mesh.Point) mesh.Point { return mesh.Point{(p[0] + q[0]) / 2, (p[1] + q[1]) / 2} }
	p01, p12, p23 := mid(s.p[0], s.p[1]), mid(s.p[1], s.p[2]), mid(s.p[2], s.p[3])
	p012, p123 := mid(p01, p12), mid(p12, p23)
	m := mid(p012, p123)
	return svgSegment{p: [4]mesh.Point{s.p[0], p01, p012, m}}, svgSegment{p: [4]mesh.Point{m, p123, p23, s.p[3]}}
}

// divide adds points of a straight line behind its start, so that a curve that
// runs into it finds it straight.
func (s *svgSegment) divide(pts []mesh.Point) []mesh.Point {
	a, b := s.p[0], s.p[3]
	n := max(2, int(math.Ceil(min(math.Hypot(b[0]-a[0], b[1]-a[1])/drawnStep, drawnMost))))
	for k := 1; k < n; k++ {
		u := float64(k) / float64(n)
		pts = append(pts, mesh.Point{a[0] + u*(b[0]-a[0]), a[1] + u*(b[1]-a[1])})
	}
	return append(pts, b)
}

// distinct drops points that lie on the one before them, round the ring; a
// corner stays one.
func distinct(pts []mesh.Point, corner []bool) ([]mesh.Point, []bool) {
	var out []mesh.Point
	var marks []bool
	for i, p := range pts {
		if n := len(out); n > 0 && math.Hypot(p[0]-out[n-1][0], p[1]-out[n-1][1]) < drawnTiny {
			marks[n-1] = marks[n-1] || corner[i]
			continue
		}
		out, marks = append(out, p), append(marks, corner[i])
	}
	if n := len(out); n > 1 && math.Hypot(out[0][0]-out[n-1][0], out[0][1]-out[n-1][1]) < drawnTiny {
		marks[0] = marks[0] || marks[n-1]
		out, marks = out[:n-1], marks[:n-1]
	}
	return out, marks
}
