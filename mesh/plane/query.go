package plane

import (
	"math"
	"slices"
)

// blockChords is the number of chords in one block.
const blockChords = 16

func boxBlocks(ring []Point) []box {
	n := len(ring)
	var out []box
	for i := 0; i < n; i += blockChords {
		lo, hi := Bounds(ring[i:min(i+blockChords, n)])
		end := ring[(i+blockChords)%n]
		if i+blockChords >= n {
			end = ring[0]
		}
		for k := range 2 {
			lo[k], hi[k] = min(lo[k], end[k]), max(hi[k], end[k])
		}
		out = append(out, box{lo, hi})
	}
	return out
}

// distance2 returns the squared distance of p from the box, mm².
func (b *box) distance2(p Point) float64 {
	dx := max(b.lo[0]-p[0], 0, p[0]-b.hi[0])
	dy := max(b.lo[1]-p[1], 0, p[1]-b.hi[1])
	return dx*dx + dy*dy
}

// chord returns the ends of chord i of the fine polyline.
func (c *Curve) chord(i int) (a, b Point) {
	if i+1 == len(c.flat) {
		return c.flat[i], c.flat[0]
	}
	return c.flat[i], c.flat[i+1]
}

// Contains tells whether p lies inside the curve, to within a millionth of its
// size.
func (c *Curve) Contains(p Point) bool {
	if p[0] < c.lo[0] || p[0] > c.hi[0] || p[1] < c.lo[1] || p[1] > c.hi[1] {
		return false
	}
	in := false
	for k := range c.blocks {
		if b := &c.blocks[k]; p[1] < b.lo[1] || p[1] > b.hi[1] || p[0] > b.hi[0] {
			continue
		}
		for i := k * blockChords; i < min((k+1)*blockChords, len(c.flat)); i++ {
			a, b := c.chord(i)
			if (a[1] > p[1]) != (b[1] > p[1]) && (Cross(a, b, p) > 0) == (b[1] > a[1]) {
				in = !in
			}
		}
	}
	return in
}

// Distance returns the distance of p from the curve, mm, never negative.
func (c *Curve) Distance(p Point) float64 {
	_, _, d := c.Nearest(p)
	return d
}

// Nearest returns parameter, mm, place and distance, mm, of the point of the
// curve nearest to p: the nearest chord, then Newton's method on its piece of
// the spline.
func (c *Curve) Nearest(p Point) (u float64, q Point, d float64) {
	first, least := 0, math.Inf(1)
	for k := range c.blocks {
		if d2 := c.blocks[k].distance2(p); d2 < least {
			first, least = k, d2
		}
	}
	at, frac, best := c.nearestInBlock(first, p, math.Inf(1))
	for k := range c.blocks {
		if c.blocks[k].distance2(p) < best {
			if i, t, d2 := c.nearestInBlock(k, p, best); d2 < best {
				at, frac, best = i, t, d2
			}
		}
	}
	u, q, d = c.nearestOn(at, frac, p)
	n := len(c.flat)
	switch { // just beside a point of the polyline the foot may lie beyond it
	case frac < 0.01:
		at, frac = (at+n-1)%n, 1
	case frac > 0.99:
		at, frac = (at+1)%n, 0
	default:
		return u, q, d
	}
	if u2, q2, d2 := c.nearestOn(at, frac, p); d2 < d {
		return u2, q2, d2
	}
	return u, q, d
}

// nearestOn returns parameter, place and distance of the point nearest to p on
// the stretch of chord i, starting at a fraction of it.
func (c *Curve) nearestOn(i int, frac float64, p Point) (u float64, q Point, d float64) {
	lo, hi := c.flatAt[i], c.Total()
	if i+1 < len(c.flat) {
		hi = c.flatAt[i+1]
	}
	u = c.newton(p, lo, hi, lo+frac*(hi-lo))
	q = c.At(u)
	return u, q, Dist(p, q)
}

// nearestInBlock returns the chord of block k nearest to p, the fraction along
// it and the squared distance, if that is below best.
func (c *Curve) nearestInBlock(k int, p Point, best float64) (at int, frac, d2 float64) {
	for i := k * blockChords; i < min((k+1)*blockChords, len(c.flat)); i++ {
		a, b := c.chord(i)
		if t, d := OnChord(a, b, p); d < best {
			at, frac, best = i, t, d
		}
	}
	return at, frac, best
}

// newton improves the parameter of the point nearest to p within [lo, hi].
func (c *Curve) newton(p Point, lo, hi, u float64) float64 {
	i := c.interval((lo + hi) / 2)
	q, t0 := &c.cubic[i], c.knot[i]
	for range 4 {
		x := q.at(u - t0)
		d, dd := q.slopes(u - t0)
		rx, ry := x[0]-p[0], x[1]-p[1]
		g := rx*d[0] + ry*d[1]
		gg := d[0]*d[0] + d[1]*d[1] + rx*dd[0] + ry*dd[1]
		if gg <= 0 {
			return u
		}
		u = min(max(u-g/gg, lo), hi)
	}
	return u
}

// Area returns the area inside the curve, mm², exact for the spline: the
// integrand of the boundary integral is a quintic, which three Gauss points
// integrate exactly.
func (c *Curve) Area() float64 {
	node, weight := [3]float64{-math.Sqrt(0.6), 0, math.Sqrt(0.6)}, [3]float64{5. / 9, 8. / 9, 5. / 9}
	o, sum := c.pts[0], 0.0
	for i := range c.cubic {
		h := (c.knot[i+1] - c.knot[i]) / 2
		for g := range 3 {
			t := h * (1 + node[g])
			x := c.cubic[i].at(t)
			d, _ := c.cubic[i].slopes(t)
			sum += h * weight[g] * ((x[0]-o[0])*d[1] - (x[1]-o[1])*d[0]) / 2
		}
	}
	return sum
}

// Length returns the length of the curve, mm, by three Gauss points on each
// chord of the fine polyline.
func (c *Curve) Length() float64 {
	node, weight := [3]float64{-math.Sqrt(0.6), 0, math.Sqrt(0.6)}, [3]float64{5. / 9, 8. / 9, 5. / 9}
	sum := 0.0
	for j, u := range c.flatAt {
		end := c.Total()
		if j+1 < len(c.flatAt) {
			end = c.flatAt[j+1]
		}
		i, h := c.interval(u), (end-u)/2
		for g := range 3 {
			d, _ := c.cubic[i].slopes(u + h*(1+node[g]) - c.knot[i])
			sum += h * weight[g] * math.Hypot(d[0], d[1])
		}
	}
	return sum
}

// extremes bounds the curve: ends of the cubics and zeros of their slopes.
func (c *Curve) extremes() (lo, hi Point) {
	lo, hi = Bounds(c.pts)
	for i := range c.cubic {
		h := c.knot[i+1] - c.knot[i]
		for k := range 2 {
			q := &c.cubic[i][k]
			for _, t := range quadraticRoots(3*q[3], 2*q[2], q[1]) {
				if t > 0 && t < h {
					x := c.cubic[i].at(t)[k]
					lo[k], hi[k] = min(lo[k], x), max(hi[k], x)
				}
			}
		}
	}
	return lo, hi
}

// quadraticRoots returns the real roots of a t² + b t + c; roots that do not
// exist are NaN or infinite.
func quadraticRoots(a, b, c float64) [2]float64 {
	q := -(b + math.Copysign(math.Sqrt(b*b-4*a*c), b)) / 2
	return [2]float64{q / a, c / q}
}

// BoxNear tells whether p lies in the curve's bounding box widened by d, mm.
func (c *Curve) BoxNear(p Point, d float64) bool {
	return p[0] > c.lo[0]-d && p[0] < c.hi[0]+d && p[1] > c.lo[1]-d && p[1] < c.hi[1]+d
}

// Polyline returns points on the curve, anticlockwise, the first not repeated:
// all given points and as many between as keep the chord error within tol, mm.
// A tol of 0 or less means a millionth of the curve's size.
func (c *Curve) Polyline(tol float64) []Point {
	if !(tol > 0) {
		return slices.Clone(c.flat)
	}
	pts, _ := c.flatten(tol)
	return pts
}

// Bounds returns the least and greatest coordinates on the curve, mm.
func (c *Curve) Bounds() (lo, hi Point) { return c.lo, c.hi }
