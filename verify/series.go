package verify

import (
	"math"

	"archload/materials"
)

// lawOf is what an orthotropic plate is to a series: N·mm and N/mm.
type lawOf struct {
	d11, d22, d12, d66 float64
	s13, s23           float64 // shear stiffness k G h, k = 5/6; +Inf for Kirchhoff
}

// plateLaw returns the rigidities of a plate with the grain along x and the
// rings across y: D11 = E1 h³/(12 (1 - nu12 nu21)) and so on.
func plateLaw(w materials.Orthotropic, h float64) lawOf {
	nu21 := w.NuLR * w.ER / w.EL
	c := h * h * h / 12 / (1 - w.NuLR*nu21)
	return lawOf{d11: c * w.EL, d22: c * w.ER, d12: c * w.NuLR * w.ER, d66: w.GLR * h * h * h / 12,
		s13: 5.0 / 6 * w.GLT * h, s23: 5.0 / 6 * w.GRT * h}
}

// thin returns the law without shear strain.
func (p lawOf) thin() lawOf {
	p.s13, p.s23 = math.Inf(1), math.Inf(1)
	return p
}

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
func navier(p lawOf, a, b, x, y float64, load pressure, terms int) (sum bent) {
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
func (p lawOf) term(la, lb, q float64) (w, bx, by float64) {
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

// series sums anew the values that the tables hold for supported plates; only
// odd terms count in the middle.
func series() (readings, error) {
	out := readings{}
	wood := testWood()
	const a, b = woodLong, woodWide
	put := func(name string, v bent) {
		out[name+" w"], out[name+" Mx"], out[name+" My"] = v.w, v.mx, v.my
	}
	thin, thick := plateLaw(wood, 4), plateLaw(wood, 30)
	put("thin", navier(thin.thin(), a, b, a/2, b/2, oddOnly(evenly(1e-3)), 399))
	put("sheared", navier(thin, a, b, a/2, b/2, oddOnly(evenly(1e-3)), 399))
	put("thick", navier(thick, a, b, a/2, b/2, oddOnly(evenly(1e-3)), 399))
	put("point", navier(thin.thin(), a, b, a/2, b/2, oddOnly(point(100, a, b, a/2, b/2)), 999))
	iso := plateLaw(isotropic(12*(1-0.09), 0.3), 1).thin()
	put("square", navier(iso, 1, 1, 0.5, 0.5, oddOnly(evenly(1)), 999))
	put("square point", navier(iso, 1, 1, 0.5, 0.5, oddOnly(point(1, 1, 1, 0.5, 0.5)), 999))
	put("two free edges", levyFree(0.3))
	put("long", navier(iso, 1, 5, 0.5, 2.5, oddOnly(evenly(1)), 399))
	for _, c := range []struct {
		name    string
		slender float64
	}{{"laminate 10", 10}, {"laminate 20", 20}, {"laminate 100", 100}} {
		lam := materials.Orthotropic{EL: 25, ER: 1, ET: 1, GLR: 0.5, GLT: 0.5, GRT: 0.2, NuLR: 0.25, NuLT: 0.25, NuRT: 0.25}
		v := navier(plateLaw(lam, 1/c.slender), 1, 1, 0.5, 0.5, oddOnly(evenly(1)), 399)
		out[c.name+" w"] = 100 * v.w / math.Pow(c.slender, 3)
	}
	return out, nil
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
