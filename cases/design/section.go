package design

import (
	"archload/mesh"

	"fmt"
	"math"

	"archload/fem/element"
	"archload/materials"
)

// sectionLaw is the stiffness of a wood along x with its rings turned.
type sectionLaw struct{ E, Gxy, Gxz float64 } // MPa; z is upright

// woodLaw gives L along the bridge and the rings turned by ringAngle, deg: 0
// has R upright, 90 has T upright.
func woodLaw(w materials.Orthotropic, ringAngle float64) sectionLaw {
	s := w.Compliance().Between(materials.BridgeAxes(ringAngle), materials.GlobalAxes())
	return sectionLaw{E: w.EL, Gxy: 1 / s[5][5], Gxz: 1 / s[4][4]}
}

// bridgeSection is a section of the base or the saddle beam.
type bridgeSection struct {
	element.Section
	lift float64 // centroid above half the height, mm
}

func (l sectionLaw) solid(width, height float64) bridgeSection {
	return bridgeSection{Section: element.Rectangle{Width: width, Height: height, E: l.E, Gxy: l.Gxy, Gxz: l.Gxz}}
}

// hollowed is a rectangle with a channel cut from below between two walls.
func (l sectionLaw) hollowed(width, height, wall, depth float64) bridgeSection {
	c := channel{law: l, width: width, height: height, wall: wall, depth: depth}
	return bridgeSection{Section: c, lift: c.centroid() - height/2}
}

// channel is an upside-down U: a roof on two walls. Lengths mm.
type channel struct {
	law                        sectionLaw
	width, height, wall, depth float64
}

// Check wants a channel that leaves a roof and lies between the walls.
func (c channel) Check() error {
	if v := c.opening(); !(v > 0) || !(c.wall > 0) || !(c.depth > 0) || !(c.depth < c.height) {
		return fmt.Errorf("hollow: want walls and a roof about it, found %g mm wide and %g mm deep in %g by %g mm", v, c.depth, c.width, c.height)
	}
	return nil
}

// opening is the width between the walls, mm.
func (c channel) opening() float64 { return c.width - 2*c.wall }

// Area returns that of the rectangle less that of the opening, mm².
func (c channel) Area() float64 { return c.width*c.height - c.opening()*c.depth }

// centroid is its height above the underside, mm.
func (c channel) centroid() float64 {
	return (c.width*c.height*c.height/2 - c.opening()*c.depth*c.depth/2) / c.Area()
}

// Outline goes around the U from the lower end of its right wall.
func (c channel) Outline() [][2]float64 {
	y, v, low := c.width/2, c.opening()/2, -c.centroid()
	top, roof := low+c.height, low+c.depth
	return [][2]float64{{y, low}, {y, top}, {-y, top}, {-y, low}, {-v, low}, {-v, roof}, {v, roof}, {v, low}}
}

// Rigidity takes second moments by Steiner's theorem; shear is carried by the
// walls upright and by the roof across; the open section's torsion is
// the sum of its three rectangles' (S. Timoshenko, J. N. Goodier, Theory of
// Elasticity, torsion of rolled sections; from memory).
func (c channel) Rigidity() element.Rigidity {
	l, v, zc := c.law, c.opening(), c.centroid()
	iy := cube(c.height)*c.width/12 + c.width*c.height*Sq(c.height/2-zc) - v*cube(c.depth)/12 - v*c.depth*Sq(c.depth/2-zc)
	iz := c.height*cube(c.width)/12 - c.depth*cube(v)/12
	roof := element.Rectangle{Width: c.width, Height: c.height - c.depth, E: l.E, Gxy: l.Gxy, Gxz: l.Gxz}
	side := element.Rectangle{Width: c.wall, Height: c.depth, E: l.E, Gxy: l.Gxy, Gxz: l.Gxz}
	return element.Rigidity{
		EA: l.E * c.Area(), EIy: l.E * iy, EIz: l.E * iz,
		GAy: materials.ShearFactor * l.Gxy * roof.Area(), GAz: materials.ShearFactor * l.Gxz * 2 * c.wall * c.height,
		GJ: roof.TorsionRigidity() + 2*side.TorsionRigidity(),
	}
}

// roundRod is a solid round rod.
type roundRod struct{ diameter, e float64 } // mm, MPa

// Check wants a diameter and a modulus above zero.
func (r roundRod) Check() error {
	if !(r.diameter > 0) || !(r.e > 0) {
		return fmt.Errorf("round rod: want a diameter and a modulus > 0, found %g mm and %g MPa", r.diameter, r.e)
	}
	return nil
}

// Area returns π d²/4, mm².
func (r roundRod) Area() float64 { return math.Pi * Sq(r.diameter) / 4 }

// Outline returns a ring of twelve points on the circle.
func (r roundRod) Outline() [][2]float64 {
	ring := make([][2]float64, 12)
	for i := range ring {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(len(ring)))
		ring[i] = [2]float64{r.diameter / 2 * c, r.diameter / 2 * s}
	}
	return ring
}

// Rigidity has the shear factor 9/10 (G. R. Cowper 1966 for ν near 0.3; from
// memory).
func (r roundRod) Rigidity() element.Rigidity {
	const poisson, shear = 0.33, 0.9
	a := r.Area()
	i := math.Pi * Sq(Sq(r.diameter)) / 64
	g := r.e / (2 * (1 + poisson))
	return element.Rigidity{EA: r.e * a, GAy: shear * g * a, GAz: shear * g * a, GJ: g * 2 * i, EIy: r.e * i, EIz: r.e * i}
}

// Sq returns x².
func Sq(x float64) float64   { return x * x }
func cube(x float64) float64 { return x * x * x }

func scale(v [3]float64, s float64) [3]float64 { return [3]float64{s * v[0], s * v[1], s * v[2]} }

// rectangle is a beam section with L along, R upright and T across.
func rectangle(width, height float64, w materials.Orthotropic) element.Rectangle {
	return element.Rectangle{Width: width, Height: height, E: w.EL, Gxy: w.GLT, Gxz: w.GLR}
}

// barSwell is the swelling of such wood along a bar, across its width and its height, for each
// percentage point of moisture, 1.
func barSwell(w materials.Water) [3]float64 { return [3]float64{w.Swell[0], w.Swell[2], w.Swell[1]} }

// stretchMass is the mass of a stretch of a bar between two places in plan, tonne: its section
// stands upright.
func stretchMass(s element.Section, p, q mesh.Point, density float64) float64 {
	return s.Area() * math.Hypot(q[0]-p[0], q[1]-p[1]) * density * gramPerMM3 * tonnePerGram
}

// Unit2 is the direction of (x, y), one long; of no use for a point.
func Unit2(x, y float64) [2]float64 {
	l := math.Hypot(x, y)
	return [2]float64{x / l, y / l}
}

// gramPerMM3 turns kg/m³ into g/mm³.
const gramPerMM3 = 1e-6

// tonnePerGram turns g into the tonne of mechanics, which goes with mm, N and s.
const tonnePerGram = 1e-6
