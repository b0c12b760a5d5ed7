package element

import (
	"fmt"
	"math"
)

// Rectangle is a rectangular beam section of orthotropic wood. Its z axis is
// the height direction, y the width direction, x the beam's axis.
type Rectangle struct {
	Width, Height float64 // along y and z, mm
	E             float64 // Young's modulus along the beam, MPa
	Gxy, Gxz      float64 // shear moduli in the width and the height direction, MPa
}

// Area returns the section's area, mm².
func (r Rectangle) Area() float64 { return r.Width * r.Height }

// Iy returns the second moment about the width axis, b h³/12, mm⁴.
func (r Rectangle) Iy() float64 { return r.Width * r.Height * r.Height * r.Height / 12 }

// Iz returns the second moment about the height axis, h b³/12, mm⁴.
func (r Rectangle) Iz() float64 { return r.Height * r.Width * r.Width * r.Width / 12 }

// Outline returns the four corners, the lower right one first.
func (r Rectangle) Outline() [][2]float64 {
	y, z := r.Width/2, r.Height/2
	return [][2]float64{{y, -z}, {y, z}, {-y, z}, {-y, -z}}
}

// Rigidity returns the section's stiffnesses, with the shear factor 5/6.
func (r Rectangle) Rigidity() Rigidity {
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
func (r Rectangle) TorsionRigidity() float64 {
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

// Check names the first constant that is not a positive finite number.
func (r Rectangle) Check() error {
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
