package delaunay

import (
	"math"
	"math/big"
)

// Point is a place in the plane, mm.
type Point = [2]float64

// Bounds of the rounding error of the floating-point determinants, relative to
// the sum of the magnitudes of their products: (3 + 16e)e and (10 + 96e)e with
// e = 2^-53. Source: J. R. Shewchuk, Discrete & Computational Geometry 18
// (1997), error bounds "A" of orient2d and incircle (from memory).
const (
	orientBound   = 3.3306690738754716e-16
	inCircleBound = 1.1102230246251577e-15
	// underflow is the size of an error bound below which the products may
	// have lost digits to underflow, so that the bound means nothing.
	underflow = 1e-290
)

// Orient returns +1 if a, b, c turn anticlockwise, -1 if clockwise and 0 if
// they lie on one line. The answer is exact for all finite inputs.
func Orient(a, b, c Point) int {
	acx, bcx := a[0]-c[0], b[0]-c[0]
	acy, bcy := a[1]-c[1], b[1]-c[1]
	if (acx == 0 || bcy == 0) && (acy == 0 || bcx == 0) {
		return 0
	}
	l, r := float64(acx*bcy), float64(acy*bcx) // the conversions forbid fusing
	det, bound := l-r, orientBound*(math.Abs(l)+math.Abs(r))
	if bound > underflow && math.Abs(det) > bound && !math.IsInf(bound, 0) {
		return sign(det)
	}
	return orientExact(a, b, c)
}

// InCircle returns +1 if d lies inside the circle through a, b, c (which turn
// anticlockwise), -1 if outside and 0 if on it. The answer is exact for all
// finite inputs.
func InCircle(a, b, c, d Point) int {
	adx, ady := a[0]-d[0], a[1]-d[1]
	bdx, bdy := b[0]-d[0], b[1]-d[1]
	cdx, cdy := c[0]-d[0], c[1]-d[1]
	bc1, bc2 := float64(bdx*cdy), float64(cdx*bdy)
	ca1, ca2 := float64(cdx*ady), float64(adx*cdy)
	ab1, ab2 := float64(adx*bdy), float64(bdx*ady)
	al := float64(adx*adx) + float64(ady*ady)
	bl := float64(bdx*bdx) + float64(bdy*bdy)
	cl := float64(cdx*cdx) + float64(cdy*cdy)
	det := float64(al*(bc1-bc2)) + float64(bl*(ca1-ca2)) + float64(cl*(ab1-ab2))
	bound := inCircleBound * (float64(al*(math.Abs(bc1)+math.Abs(bc2))) +
		float64(bl*(math.Abs(ca1)+math.Abs(ca2))) + float64(cl*(math.Abs(ab1)+math.Abs(ab2))))
	if bound > underflow && math.Abs(det) > bound && !math.IsInf(bound, 0) {
		return sign(det)
	}
	return inCircleExact(a, b, c, d)
}

func sign(x float64) int {
	if x > 0 {
		return 1
	}
	if x < 0 {
		return -1
	}
	return 0
}

func orientExact(a, b, c Point) int {
	v := integers(a, b, c)
	acx, acy := v[0].Sub(v[0], v[4]), v[1].Sub(v[1], v[5])
	bcx, bcy := v[2].Sub(v[2], v[4]), v[3].Sub(v[3], v[5])
	return acx.Mul(acx, bcy).Cmp(acy.Mul(acy, bcx))
}

func inCircleExact(a, b, c, d Point) int {
	v := integers(a, b, c, d)
	for i := range 3 {
		v[2*i].Sub(v[2*i], v[6])
		v[2*i+1].Sub(v[2*i+1], v[7])
	}
	sum, lift, minor, t := new(big.Int), new(big.Int), new(big.Int), new(big.Int)
	for i := range 3 {
		x, y := v[2*i], v[2*i+1]
		j, k := (i+1)%3, (i+2)%3
		minor.Mul(v[2*j], v[2*k+1])
		minor.Sub(minor, t.Mul(v[2*k], v[2*j+1]))
		lift.Mul(x, x)
		lift.Add(lift, t.Mul(y, y))
		sum.Add(sum, t.Mul(lift, minor))
	}
	return sum.Sign()
}

// integers returns all coordinates times one power of two that makes every one
// of them whole, so that differences and products are exact.
func integers(pts ...Point) []*big.Int {
	mant := make([]int64, 0, 8)
	expo := make([]int, 0, 8)
	least := math.MaxInt
	for _, p := range pts {
		for _, x := range p {
			f, e := math.Frexp(x)
			m := int64(f * (1 << 53))
			mant, expo = append(mant, m), append(expo, e)
			if m != 0 {
				least = min(least, e)
			}
		}
	}
	out := make([]*big.Int, len(mant))
	for i, m := range mant {
		out[i] = big.NewInt(m)
		if m != 0 {
			out[i].Lsh(out[i], uint(expo[i]-least))
		}
	}
	return out
}
