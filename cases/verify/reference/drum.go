package reference

import "math"

// Drum is a round plate on the top of a cylindrical side whose lower edge is
// held in translation, with a force in the plate's middle: all of it thin;
// the plate isotropic with Young's modulus and, in the plate alone, Poisson's ratio. A
// ring may run around inside the side, under the plate. Lengths mm, forces N,
// moduli MPa.
type Drum struct {
	Radius, Plate, E, Nu float64    // plate: radius, thickness, moduli
	Side, Height         float64    // side: thickness and height; Poisson's ratio 0
	Around, Up, Shear    float64    // its moduli around and upright, and in shear out of its plane
	Ring                 [2]float64 // width and height of the ring, of the side's modulus around; 0: none
	Force                float64    // downward
}

// Sink is the plate's sink at r from its middle, which may not be 0.
//
// The plate: a clamped plate's w = F/(16 pi D) (a² - r² + 2 r² ln(r/a)), its edge
// turned by phi, w = phi (a² - r²)/(2 a), its shear strain, F ln(a/r)/(2 pi k G h),
// and the side's shortening. Edge: radial stiffness E h/((1 - nu) a) and turning
// stiffness (1 + nu) D/a per length; the force turns it by F/(4 pi) per length.
// Source: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 2nd
// ed., arts. 16 to 19 (from memory; the equations follow from equilibrium).
func (m Drum) Sink(r float64) float64 {
	a, f := m.Radius, m.Force
	d := m.E * m.Plate * m.Plate * m.Plate / 12 / (1 - m.Nu*m.Nu)
	k := m.side()
	k[0][0] += m.E * m.Plate / ((1 - m.Nu) * a)
	k[1][1] += (1 + m.Nu) * d / a
	m.addRing(&k)
	phi := f / (4 * math.Pi) / (k[1][1] - k[0][1]*k[1][0]/k[0][0])
	w := f / (16 * math.Pi * d) * (a*a - r*r + 2*r*r*math.Log(r/a))
	w += phi * (a*a - r*r) / (2 * a)
	w += f * math.Log(a/r) / (2 * math.Pi * 5 / 6 * m.E / (2 * (1 + m.Nu)) * m.Plate)
	return w + f/(2*math.Pi*a)*m.Height/(m.Up*m.Side)
}

// addRing adds the ring's stiffness: a ring of radius c turned by phi moves out
// by u + e phi at its middle, e below the plate's, and strains by that over c.
func (m Drum) addRing(k *[2][2]float64) {
	w, h := m.Ring[0], m.Ring[1]
	c, e := m.Radius-(m.Side+w)/2, (m.Plate+h)/2
	ea, ei := m.Around*w*h/(c*m.Radius), m.Around*w*h*h*h/12/(c*m.Radius)
	k[0][0] += ea
	k[0][1] += ea * e
	k[1][0] += ea * e
	k[1][1] += ea*e*e + ei
}

// side is the stiffness of the side's upper edge per length: radial force and
// moment for the radial movement u outward and the turn phi, by which what lies
// below the edge moves outward. The side is a beam of unit width, D and k G t,
// on the foundation E t/a² (S. Timoshenko, S. Woinowsky-Krieger, ch. 15, with
// shear strain); its equations
//
//	u' = psi + Q/S, psi' = M/D, M' = -Q, Q' = (E t/a²) u
//
// are stepped up from the lower edge, where u = M = 0, by Runge and Kutta.
func (m Drum) side() (k [2][2]float64) {
	t, a := m.Side, m.Radius
	d, s, bed := m.Up*t*t*t/12, 5.0/6*m.Shear*t, m.Around*t/(a*a)
	slope := func(v [4]float64) [4]float64 { return [4]float64{v[1] + v[3]/s, v[2] / d, -v[3], bed * v[0]} }
	var top [2][4]float64
	for i, v := range [2][4]float64{{0, 1, 0, 0}, {0, 0, 0, s / 1000}} {
		const steps = 4000
		h := m.Height / steps
		for range steps {
			v = step(v, h, slope)
		}
		top[i] = v
	}
	// u and -psi (outward below the edge) at the top against Q and -M there.
	u, p := [2]float64{top[0][0], top[1][0]}, [2]float64{-top[0][1], -top[1][1]}
	q, n := [2]float64{top[0][3], top[1][3]}, [2]float64{-top[0][2], -top[1][2]}
	det := u[0]*p[1] - u[1]*p[0]
	for i, f := range [2][2]float64{q, n} {
		k[i][0] = (f[0]*p[1] - f[1]*p[0]) / det
		k[i][1] = (f[1]*u[0] - f[0]*u[1]) / det
	}
	return k
}

// step is one step of the classical fourth-order rule.
func step(v [4]float64, h float64, slope func([4]float64) [4]float64) [4]float64 {
	along := func(k [4]float64, f float64) (out [4]float64) {
		for i := range out {
			out[i] = v[i] + f*k[i]
		}
		return out
	}
	k1 := slope(v)
	k2 := slope(along(k1, h/2))
	k3 := slope(along(k2, h/2))
	k4 := slope(along(k3, h))
	for i := range v {
		v[i] += h / 6 * (k1[i] + 2*k2[i] + 2*k3[i] + k4[i])
	}
	return v
}
