package viz

import "math"

// block is a turned rectangle on the page: a line of text that starts at its
// baseline's left end, or a mark.
type block struct {
	at       pt      // start of the baseline, points
	w        float64 // along the baseline, points
	up, down float64 // above and below it, points
	angle    float64 // radians, anticlockwise
}

// upright returns the block of a rectangle.
func upright(r rect) block {
	return block{at: pt{r.X0, r.Y0}, w: r.width(), up: r.height()}
}

// around returns a block about the straight piece from a to b, half is its
// half width, points.
func around(a, b pt, half float64) block {
	return block{at: a, w: math.Hypot(b.X-a.X, b.Y-a.Y), up: half, down: half, angle: math.Atan2(b.Y-a.Y, b.X-a.X)}
}

// grown returns the block with d points more on every side.
func (b block) grown(d float64) block {
	s, c := math.Sincos(b.angle)
	b.at = b.at.add(-d*c, -d*s)
	b.w += 2 * d
	b.up += d
	b.down += d
	return b
}

func (b block) corners() [4]pt {
	s, c := math.Sincos(b.angle)
	at := func(u, v float64) pt { return pt{b.at.X + u*c - v*s, b.at.Y + u*s + v*c} }
	return [4]pt{at(0, -b.down), at(b.w, -b.down), at(b.w, b.up), at(0, b.up)}
}

// clip returns the part of the straight piece a b inside r.
func clip(a, b pt, r rect) (p, q pt, ok bool) {
	lo, hi := 0.0, 1.0
	dx, dy := b.X-a.X, b.Y-a.Y
	for _, c := range [4][2]float64{{-dx, a.X - r.X0}, {dx, r.X1 - a.X}, {-dy, a.Y - r.Y0}, {dy, r.Y1 - a.Y}} {
		switch {
		case c[0] == 0 && c[1] < 0:
			return p, q, false
		case c[0] < 0:
			lo = math.Max(lo, c[1]/c[0])
		case c[0] > 0:
			hi = math.Min(hi, c[1]/c[0])
		}
	}
	return a.add(lo*dx, lo*dy), a.add(hi*dx, hi*dy), lo < hi
}

// holds tells whether q lies in the block.
func (b block) holds(q pt) bool {
	s, c := math.Sincos(b.angle)
	x, y := q.X-b.at.X, q.Y-b.at.Y
	u, v := x*c+y*s, y*c-x*s
	return u >= 0 && u <= b.w && v >= -b.down && v <= b.up
}

// overlaps tells whether two blocks share some area (separating axes).
func (b block) overlaps(o block) bool {
	p, q := b.corners(), o.corners()
	for _, angle := range []float64{b.angle, b.angle + math.Pi/2, o.angle, o.angle + math.Pi/2} {
		s, c := math.Sincos(angle)
		plo, phi := span(p, c, s)
		qlo, qhi := span(q, c, s)
		if phi <= qlo+1e-6 || qhi <= plo+1e-6 {
			return false
		}
	}
	return true
}

// span projects corners on the direction (c, s).
func span(p [4]pt, c, s float64) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, v := range p {
		d := v.X*c + v.Y*s
		lo, hi = math.Min(lo, d), math.Max(hi, d)
	}
	return lo, hi
}
