package reference

import "math"

// levyFree sums M. Lévy's single series for the square plate with two opposite
// edges (x = 0, a) supported and two free, nu 0.3, under a uniform load: w D/(q a⁴),
// Mx/(q a²), My/(q a²) in the middle.
// Source: Timoshenko and Woinowsky-Krieger, 2nd ed., arts. 30 and 48 (from
// memory; the two constants of each term are solved from the free edge).
func levyFree(nu float64) bent {
	var sum bent
	for m := 1; m <= 199; m += 2 {
		k := float64(m) * math.Pi // a = 1
		al := k / 2               // at the free edge y = 1/2
		sign := 1.0
		if m%4 == 3 {
			sign = -1
		}
		p := 4 / math.Pow(k, 5) // particular part of q = 4/(m pi) sin
		// Y = p + e^-al (A cosh ky + B ky sinh ky), scaled against overflow;
		// Y'' - nu k² Y = 0 and Y''' - (2 - nu) k² Y' = 0 at the edge.
		c, s := (1+math.Exp(-2*al))/2, (1-math.Exp(-2*al))/2
		a11, a12, r1 := (1-nu)*c, (1-nu)*al*s+2*c, nu*p
		a21, a22 := -(1-nu)*s, (1+nu)*s-(1-nu)*al*c
		det := a11*a22 - a12*a21
		ca, cb := r1*a22/det*math.Exp(-al), -r1*a21/det*math.Exp(-al)
		y, y2 := p+ca, k*k*(ca+2*cb)
		sum.w += sign * y
		sum.mx += sign * (k*k*y - nu*y2)
		sum.my += sign * (nu*k*k*y - y2)
	}
	return sum
}
