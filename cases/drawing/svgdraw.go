package drawing

import (
	"math"

	"archload/mesh"
)

// draw reads one set of numbers of a command and draws it.
func (s *svgPen) draw(name byte, relative bool) error {
	here := s.here()
	var base mesh.Point
	if relative {
		base = here
	}
	if name == 'A' {
		v, large, sweep, err := s.arcNumbers()
		if err != nil {
			return err
		}
		s.pen().arcTo(svgArc{v[0], v[1], v[2], large, sweep}, mesh.Point{base[0] + v[5], base[1] + v[6]})
		s.last = name
		return nil
	}
	v, err := s.numbers(svgCounts(name))
	if err != nil {
		return err
	}
	to := func(k int) mesh.Point { return mesh.Point{base[0] + v[k], base[1] + v[k+1]} }
	switch name {
	case 'M':
		s.chains = append(s.chains, svgChain{start: to(0)})
	case 'L':
		s.pen().lineTo(to(0))
	case 'H':
		s.pen().lineTo(mesh.Point{base[0] + v[0], here[1]})
	case 'V':
		s.pen().lineTo(mesh.Point{here[0], base[1] + v[0]})
	default:
		s.bend(name, here, to)
	}
	s.last = name
	return nil
}

// bend draws a Bezier curve: cubic (C), cubic and smooth (S), quadratic (Q),
// quadratic and smooth (T). A smooth one begins with the mirror image of the
// control point before it, if that was of its own kind.
func (s *svgPen) bend(name byte, here mesh.Point, to func(int) mesh.Point) {
	c := s.pen()
	mirror := here
	kin := map[byte]string{'S': "CS", 'T': "QT"}[name]
	for i := range len(kin) {
		if kin[i] == s.last {
			mirror = mesh.Point{2*here[0] - s.ctrl[0], 2*here[1] - s.ctrl[1]}
		}
	}
	switch name {
	case 'C':
		c.curveTo(to(0), to(2), to(4))
		s.ctrl = to(2)
	case 'S':
		c.curveTo(mirror, to(0), to(2))
		s.ctrl = to(0)
	case 'Q':
		c.quadTo(to(0), to(2))
		s.ctrl = to(0)
	case 'T':
		c.quadTo(mirror, to(0))
		s.ctrl = mirror
	}
}

// svgCounts is how many numbers a set of each command has.
func svgCounts(name byte) int {
	switch name {
	case 'H', 'V':
		return 1
	case 'C':
		return 6
	case 'S', 'Q':
		return 4
	}
	return 2
}

// quadTo draws a quadratic curve as the cubic that it is: its control points
// lie two thirds of the way to q.
func (c *svgChain) quadTo(q, end mesh.Point) {
	p := c.end()
	third := func(a mesh.Point) mesh.Point {
		return mesh.Point{a[0] + 2*(q[0]-a[0])/3, a[1] + 2*(q[1]-a[1])/3}
	}
	c.curveTo(third(p), third(end), end)
}

// svgArc is an elliptical arc as the path grammar gives it: radii, the turn of
// its x axis, deg, and which of the four arcs between two points is meant.
type svgArc struct {
	rx, ry, turn float64
	large, sweep bool
}

// arcTo draws an arc as cubic curves of at most 30 degrees, which stay within
// 1e-7 of the radius. The centre follows from the ends (SVG 1.1, appendix
// F.6.5); radii too small to reach are enlarged (F.6.6).
func (c *svgChain) arcTo(a svgArc, end mesh.Point) {
	p := c.end()
	rx, ry := math.Abs(a.rx), math.Abs(a.ry)
	if p == end {
		return
	}
	if rx == 0 || ry == 0 {
		c.lineTo(end)
		return
	}
	sin, cos := math.Sincos(a.turn * math.Pi / 180)
	dx, dy := (p[0]-end[0])/2, (p[1]-end[1])/2
	x, y := cos*dx+sin*dy, cos*dy-sin*dx
	if need := x*x/(rx*rx) + y*y/(ry*ry); need > 1 {
		rx, ry = rx*math.Sqrt(need), ry*math.Sqrt(need)
	}
	k := math.Sqrt(max(0, rx*rx*ry*ry/(rx*rx*y*y+ry*ry*x*x)-1))
	if a.large == a.sweep {
		k = -k
	}
	cx, cy := k*rx*y/ry, -k*ry*x/rx
	from := math.Atan2((y-cy)/ry, (x-cx)/rx)
	turn := math.Atan2((-y-cy)/ry, (-x-cx)/rx) - from
	if a.sweep && turn < 0 {
		turn += 2 * math.Pi
	} else if !a.sweep && turn > 0 {
		turn -= 2 * math.Pi
	}
	mx, my := (p[0]+end[0])/2, (p[1]+end[1])/2
	at := func(u, v float64) mesh.Point { // on the unit circle's plane
		u, v = u*rx+cx, v*ry+cy
		return mesh.Point{cos*u - sin*v + mx, sin*u + cos*v + my}
	}
	c.circular(at, from, turn, end)
}

// circular draws an arc of the unit circle as at maps it; end is its end
// exactly. The control points of an arc of t radians lie 4/3 tan(t/4) along
// the tangents.
func (c *svgChain) circular(at func(u, v float64) mesh.Point, from, turn float64, end mesh.Point) {
	const most = math.Pi / 6
	n := max(1, int(math.Ceil(math.Abs(turn)/most-1e-9)))
	step := turn / float64(n)
	k := 4.0 / 3 * math.Tan(step/4)
	for i := range n {
		s0, c0 := math.Sincos(from + step*float64(i))
		s1, c1 := math.Sincos(from + step*float64(i+1))
		q := at(c1, s1)
		if i == n-1 {
			q = end
		}
		c.curveTo(at(c0-k*s0, s0+k*c0), at(c1+k*s1, s1-k*c1), q)
	}
}
