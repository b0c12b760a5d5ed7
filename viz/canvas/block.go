package canvas

import "math"

// Block is a turned rectangle on the page: a line of text that starts at its
// baseline's left end, or a mark.
type Block struct {
	At       Point   // start of the baseline, points
	W        float64 // along the baseline, points
	Up, down float64 // above and below it, points
	angle    float64 // radians, anticlockwise
}

// Upright returns the block of a rectangle.
func Upright(r Rect) Block {
	return Block{At: Point{r.X0, r.Y0}, W: r.Width(), Up: r.Height()}
}

// Around returns a block about the straight piece from a to b, half is its
// half width, points.
func Around(a, b Point, half float64) Block {
	return Block{At: a, W: math.Hypot(b.X-a.X, b.Y-a.Y), Up: half, down: half, angle: math.Atan2(b.Y-a.Y, b.X-a.X)}
}

// Grown returns the block with d points more on every side.
func (b Block) Grown(d float64) Block {
	s, c := math.Sincos(b.angle)
	b.At = b.At.Add(-d*c, -d*s)
	b.W += 2 * d
	b.Up += d
	b.down += d
	return b
}

// Corners are the four corners on the page, anticlockwise from the start of the
// lower edge.
func (b Block) Corners() [4]Point {
	s, c := math.Sincos(b.angle)
	at := func(u, v float64) Point { return Point{b.At.X + u*c - v*s, b.At.Y + u*s + v*c} }
	return [4]Point{at(0, -b.down), at(b.W, -b.down), at(b.W, b.Up), at(0, b.Up)}
}

// holds tells whether q lies in the Block.
func (b Block) holds(q Point) bool {
	s, c := math.Sincos(b.angle)
	x, y := q.X-b.At.X, q.Y-b.At.Y
	u, v := x*c+y*s, y*c-x*s
	return u >= 0 && u <= b.W && v >= -b.down && v <= b.Up
}

// Overlaps tells whether two blocks share some area (separating axes).
func (b Block) Overlaps(o Block) bool {
	p, q := b.Corners(), o.Corners()
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
func span(p [4]Point, c, s float64) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, v := range p {
		d := v.X*c + v.Y*s
		lo, hi = math.Min(lo, d), math.Max(hi, d)
	}
	return lo, hi
}
