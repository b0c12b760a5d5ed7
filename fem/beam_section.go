package fem

import (
	"fmt"
	"math"
)

// RectSection is a rectangular beam section of orthotropic wood. Its z axis is
// the height direction, y the width direction, x the beam's axis.
type RectSection struct {
	Width, Height float64 // along y and z, mm
	E             float64 // Young's modulus along the beam, MPa
	Gxy, Gxz      float64 // shear moduli in the width and the height direction, MPa
}

// Rigidity holds a beam section's stiffnesses about its own axis.
type Rigidity struct {
	EA       float64 // N
	GAy, GAz float64 // shear, with the shear factor, N
	GJ       float64 // torsion, N mm²
	EIy, EIz float64 // bending in the xz plane (about y) and in the xy plane, N mm²
}

// Area returns the section's area, mm².
func (r RectSection) Area() float64 { return r.Width * r.Height }

// Iy returns the second moment about the width axis, b h³/12, mm⁴.
func (r RectSection) Iy() float64 { return r.Width * r.Height * r.Height * r.Height / 12 }

// Iz returns the second moment about the height axis, h b³/12, mm⁴.
func (r RectSection) Iz() float64 { return r.Height * r.Width * r.Width * r.Width / 12 }

// Rigidity returns the section's stiffnesses.
func (r RectSection) Rigidity() Rigidity {
	a := r.Area()
	return Rigidity{
		EA: r.E * a, GAy: shearFactor * r.Gxy * a, GAz: shearFactor * r.Gxz * a,
		GJ: r.TorsionRigidity(), EIy: r.E * r.Iy(), EIz: r.E * r.Iz(),
	}
}

// TorsionRigidity returns the St Venant torsional rigidity, N mm². The stress
// function obeys phi,yy/Gxz + phi,zz/Gxy = -2; with y' = y sqrt(Gxz) and
// z' = z sqrt(Gxy) this is the isotropic problem of another rectangle, so
// GJ = J(b sqrt(Gxz), h sqrt(Gxy)) / sqrt(Gxz Gxy). Source: Lekhnitskii, Theory
// of Elasticity of an Anisotropic Body (torsion of an orthotropic bar).
func (r RectSection) TorsionRigidity() float64 {
	p, q := math.Sqrt(r.Gxz), math.Sqrt(r.Gxy)
	return rectTorsion(r.Width*p, r.Height*q) / (p * q)
}

// rectTorsion returns J of an isotropic rectangle with sides a and b:
// a b³ [1/3 - (64/pi⁵)(b/a) sum over odd n of tanh(n pi a/(2b))/n⁵], b <= a.
// Source: Timoshenko and Goodier, Theory of Elasticity, torsion of rectangular
// bars (from memory; tested against the square's 0.1406 and the strip's 1/3).
func rectTorsion(a, b float64) float64 {
	if a < b {
		a, b = b, a
	}
	var sum float64
	for n := 1.0; n < 40; n += 2 {
		sum += math.Tanh(n*math.Pi*a/(2*b)) / (n * n * n * n * n)
	}
	return a * b * b * b * (1.0/3 - 64/math.Pow(math.Pi, 5)*b/a*sum)
}

// check names the first constant that is not a positive finite number.
func (r RectSection) check() error {
	for _, c := range []struct {
		name  string
		value float64
	}{{"width", r.Width}, {"height", r.Height}, {"E", r.E}, {"Gxy", r.Gxy}, {"Gxz", r.Gxz}} {
		if !(c.value > 0) || math.IsInf(c.value, 1) {
			return fmt.Errorf("beam section: %s: want > 0, found %g", c.name, c.value)
		}
	}
	return nil
}
