package reference

import "math"

// pressure is a load on a simply supported plate as its double sine series.
type pressure func(m, n float64) float64

// evenly is a uniform load: 16 q/(pi² m n) for odd m and n.
func evenly(q float64) pressure {
	return func(m, n float64) float64 { return 16 * q / (math.Pi * math.Pi * m * n) }
}

// patch is a force spread over a rectangle c x d about (x0, y0) of a plate
// a x b: the uniform load's terms times the sines of the rectangle.
func patch(force, a, b, x0, y0, c, d float64) pressure {
	return func(m, n float64) float64 {
		sx := math.Sin(m*math.Pi*x0/a) * math.Sin(m*math.Pi*c/(2*a))
		sy := math.Sin(n*math.Pi*y0/b) * math.Sin(n*math.Pi*d/(2*b))
		return 16 * force / (c * d) / (math.Pi * math.Pi * m * n) * sx * sy
	}
}

// point is a force at (x0, y0).
func point(force, a, b, x0, y0 float64) pressure {
	return func(m, n float64) float64 {
		return 4 * force / (a * b) * math.Sin(m*math.Pi*x0/a) * math.Sin(n*math.Pi*y0/b)
	}
}

// bent is a deflection and its moments, positive with the load.
type bent struct{ w, mx, my float64 }

// navier sums the double sine series of a simply supported plate a x b at (x, y).
// Each term solves the three equations of the shear-deformable orthotropic
// plate for deflection and rotations; without shear strain they become
// w = q/(D11 A⁴ + 2 (D12 + 2 D66) A² B² + D22 B⁴), A = m pi/a, B = n pi/b.
// Sources: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells,
// 2nd ed., ch. 11; J. N. Reddy, Mechanics of Laminated Composite Plates and
// Shells, 2nd ed., ch. 5 (both from memory; the equations follow from the
// energy and were derived again).
func navier(p Law, a, b, x, y float64, load pressure, terms int) (sum bent) {
	for m := 1.0; m <= float64(terms); m++ {
		for n := 1.0; n <= float64(terms); n++ {
			q := load(m, n)
			if q == 0 {
				continue
			}
			la, lb := m*math.Pi/a, n*math.Pi/b
			w, bx, by := p.term(la, lb, q)
			s := math.Sin(la*x) * math.Sin(lb*y)
			sum.w += w * s
			sum.mx += (p.d11*la*bx + p.d12*lb*by) * s
			sum.my += (p.d12*la*bx + p.d22*lb*by) * s
		}
	}
	return sum
}

// term solves for one pair of waves: w, and the rotations that replace w,x and
// w,y.
func (p Law) term(la, lb, q float64) (w, bx, by float64) {
	if math.IsInf(p.s13, 1) {
		w = q / (p.d11*la*la*la*la + 2*(p.d12+2*p.d66)*la*la*lb*lb + p.d22*lb*lb*lb*lb)
		return w, la * w, lb * w
	}
	// [L11 -L12 -L13; -L12 L22 L23; -L13 L23 L33] {w, bx, by} = {q, 0, 0}
	l11, l12, l13 := p.s13*la*la+p.s23*lb*lb, p.s13*la, p.s23*lb
	l22, l33 := p.d11*la*la+p.d66*lb*lb+p.s13, p.d66*la*la+p.d22*lb*lb+p.s23
	l23 := (p.d12 + p.d66) * la * lb
	det := l22*l33 - l23*l23
	gx, gy := (l33*l12-l23*l13)/det, (l22*l13-l23*l12)/det // bx, by for w = 1
	w = q / (l11 - l12*gx - l13*gy)
	return w, gx * w, gy * w
}

// oddOnly drops the terms that vanish for a load that is even about the middle.
func oddOnly(load pressure) pressure {
	return func(m, n float64) float64 {
		if int(m)%2 == 0 || int(n)%2 == 0 {
			return 0
		}
		return load(m, n)
	}
}
