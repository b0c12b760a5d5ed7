package delaunay

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"
)

// ratOrient and ratInCircle evaluate the textbook determinants in rational
// numbers, independently of the code under test.
func ratOrient(a, b, c Point) int {
	x := func(p Point, k int) *big.Rat { return new(big.Rat).SetFloat64(p[k]) }
	sub := func(p, q *big.Rat) *big.Rat { return new(big.Rat).Sub(p, q) }
	mul := func(p, q *big.Rat) *big.Rat { return new(big.Rat).Mul(p, q) }
	l := mul(sub(x(b, 0), x(a, 0)), sub(x(c, 1), x(a, 1)))
	r := mul(sub(x(b, 1), x(a, 1)), sub(x(c, 0), x(a, 0)))
	return l.Cmp(r)
}

func ratInCircle(pts ...Point) int {
	var m [4][4]*big.Rat
	for i, p := range pts {
		x, y := new(big.Rat).SetFloat64(p[0]), new(big.Rat).SetFloat64(p[1])
		xx, yy := new(big.Rat).Mul(x, x), new(big.Rat).Mul(y, y)
		m[i] = [4]*big.Rat{x, y, xx.Add(xx, yy), big.NewRat(1, 1)}
	}
	return ratDet(m, [4]bool{}, 0).Sign()
}

// ratDet expands the determinant along row r over the unused columns.
func ratDet(m [4][4]*big.Rat, used [4]bool, r int) *big.Rat {
	if r == 4 {
		return big.NewRat(1, 1)
	}
	sum, sign := new(big.Rat), int64(1)
	for c := range 4 {
		if used[c] {
			continue
		}
		used[c] = true
		t := ratDet(m, used, r+1)
		used[c] = false
		t.Mul(t, m[r][c])
		sum.Add(sum, t.Mul(t, big.NewRat(sign, 1)))
		sign = -sign
	}
	return sum
}

// nasty makes points that are nearly or exactly degenerate.
func nasty(r *rand.Rand, kind int) [4]Point {
	var p [4]Point
	switch kind {
	case 0: // a small grid: many exact zeros
		for i := range p {
			p[i] = Point{float64(r.IntN(4)), float64(r.IntN(4))}
		}
	case 1: // near the line y = x, a few units in the last place off
		for i := range p {
			t := 0.5 + r.Float64()
			p[i] = Point{t, t + float64(r.IntN(5)-2)*0x1p-53}
		}
	case 2: // on one circle up to rounding
		for i := range p {
			a := 2 * math.Pi * r.Float64()
			p[i] = Point{100 + 7*math.Cos(a), -40 + 7*math.Sin(a)}
		}
	case 3: // wildly different magnitudes
		for i := range p {
			p[i] = Point{math.Ldexp(r.Float64()-0.5, r.IntN(80)-40), math.Ldexp(r.Float64()-0.5, r.IntN(80)-40)}
		}
	case 4: // products underflow or overflow
		e := 600
		if r.IntN(2) == 0 {
			e = -600
		}
		for i := range p {
			p[i] = Point{math.Ldexp(float64(r.IntN(5)), e), math.Ldexp(float64(r.IntN(5)), e)}
		}
	default: // far from the origin, close together
		for i := range p {
			p[i] = Point{1e6 + float64(r.IntN(9))*1e-9, -1e6 + float64(r.IntN(9))*1e-9}
		}
	}
	return p
}

func TestPredicatesAgainstRationals(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	zero := 0
	for n := range 4800 {
		p := nasty(r, n%6)
		got, want := Orient(p[0], p[1], p[2]), ratOrient(p[0], p[1], p[2])
		if got != want {
			t.Fatalf("Orient(%v) = %d, want %d (rational determinant)", p[:3], got, want)
		}
		if want <= 0 {
			if want == 0 {
				zero++
				continue
			}
			p[0], p[1] = p[1], p[0]
		}
		if got, want := InCircle(p[0], p[1], p[2], p[3]), ratInCircle(p[:]...); got != want {
			t.Fatalf("InCircle(%v) = %d, want %d (rational determinant)", p, got, want)
		}
	}
	if zero < 250 {
		t.Errorf("only %d exactly collinear inputs: want at least 250, the test has lost its point", zero)
	}
}

func TestPredicateSigns(t *testing.T) {
	a, b, c := Point{0, 0}, Point{1, 0}, Point{0, 1}
	for _, x := range []struct {
		d    Point
		want int
	}{{Point{0.5, 0.5}, 1}, {Point{1, 1}, 0}, {Point{1, 1 + 0x1p-52}, -1}, {Point{1, 1 - 0x1p-53}, 1}} {
		if got := InCircle(a, b, c, x.d); got != x.want {
			t.Errorf("InCircle(unit corner, %v) = %d, want %d (the circle has its centre at (1/2, 1/2))", x.d, got, x.want)
		}
	}
	if got := Orient(a, b, c); got != 1 {
		t.Errorf("Orient of an anticlockwise triangle = %d, want 1", got)
	}
}
