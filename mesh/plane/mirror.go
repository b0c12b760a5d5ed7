package plane

import (
	"cmp"
	"math"
	"slices"
)

// Mirrored returns the point reflected in the y axis (x to -x).
func (p Point) Mirrored() Point { return Point{0 - p[0], p[1]} }

// perGrain is the number of steps to which coordinates are rounded, 1/mm: far below anything
// that can be measured, far above the rounding of a conversion, so that 0.5 in
// and 12.7 mm are one number.
const perGrain = 1e9

// Rounded returns the point on the nearest whole multiples of 1e-9 mm.
func (p Point) Rounded() Point {
	return Point{math.Round(p[0]*perGrain) / perGrain, math.Round(p[1]*perGrain) / perGrain}
}

// Mirrored returns the curve reflected in the y axis (x to -x), again
// anticlockwise.
func (c *Curve) Mirrored() *Curve {
	n := len(c.pts)
	m := &Curve{pts: make([]Point, n), corner: make([]bool, n)}
	for i, p := range c.pts {
		j := (n - i) % n // the first point stays the first
		m.pts[j], m.corner[j] = p.Mirrored(), c.corner[i]
	}
	lo, hi := Bounds(m.pts)
	m.build(Dist(lo, hi))
	return m
}

// Normal returns the same curve in the form that does not depend on where its
// points began or in which direction they ran: the first is the one of least x,
// among these of least y.
func (c *Curve) Normal() *Curve {
	first := 0
	for i, p := range c.pts {
		if slices.Compare(p[:], c.pts[first][:]) < 0 {
			first = i
		}
	}
	if first == 0 {
		return c
	}
	m := &Curve{
		pts:    slices.Concat(c.pts[first:], c.pts[:first]),
		corner: slices.Concat(c.corner[first:], c.corner[:first]),
	}
	lo, hi := Bounds(m.pts)
	m.build(Dist(lo, hi))
	return m
}

// Compare orders curves by their points as given, then by their corners.
func Compare(a, b *Curve) int {
	flag := func(a, b bool) int {
		switch {
		case a == b:
			return 0
		case b:
			return -1
		}
		return 1
	}
	return cmp.Or(
		slices.CompareFunc(a.pts, b.pts, func(p, q Point) int { return slices.Compare(p[:], q[:]) }),
		slices.CompareFunc(a.corner, b.corner, flag),
	)
}

// MirrorImage tells whether the points of b are those of a reflected in the y
// axis to within tol, mm, and the same are corners.
func MirrorImage(a, b *Curve, tol float64) bool {
	n := len(a.pts)
	if n != len(b.pts) {
		return false
	}
	near := func(i, j int) bool {
		i, j = i%n, (j+n)%n
		return a.corner[i] == b.corner[j] && Dist(a.pts[i].Mirrored(), b.pts[j]) <= tol
	}
	for j := range n {
		if !near(0, j) {
			continue
		}
		same := true
		for i := range n {
			same = same && near(i, j-i)
		}
		if same {
			return true
		}
	}
	return false
}

// OnAxis returns the y of the places where the curve crosses the line x = 0, mm,
// rising. The curve is bisected there to rounding.
func (c *Curve) OnAxis() []float64 {
	var out []float64
	for i, a := range c.flat {
		lo, hi, b := c.flatAt[i], c.Total(), c.flat[(i+1)%len(c.flat)]
		if i+1 < len(c.flat) {
			hi = c.flatAt[i+1]
		}
		switch {
		case a[0] == 0:
			out = append(out, a[1])
			continue
		case b[0] == 0 || (a[0] > 0) == (b[0] > 0):
			continue
		}
		for range 60 {
			mid := (lo + hi) / 2
			if (c.At(mid)[0] > 0) == (a[0] > 0) {
				lo = mid
			} else {
				hi = mid
			}
		}
		out = append(out, c.At(lo)[1])
	}
	slices.Sort(out)
	return out
}

// Points returns copies of the points through which the curve was laid,
// anticlockwise, and which of them are corners.
func (c *Curve) Points() (pts []Point, corner []bool) {
	return slices.Clone(c.pts), slices.Clone(c.corner)
}
