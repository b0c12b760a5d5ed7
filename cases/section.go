package cases

import (
	"math"

	"archload/fem"
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
	rect fem.RectSection
	own  fem.Rigidity // instead of the rectangle's; zero for a solid one
	area float64      // mm²
	lift float64      // centroid above half the height, mm
}

func (l sectionLaw) solid(width, height float64) bridgeSection {
	r := fem.RectSection{Width: width, Height: height, E: l.E, Gxy: l.Gxy, Gxz: l.Gxz}
	return bridgeSection{rect: r, area: r.Area()}
}

// hollowed is a rectangle with a channel of the given depth cut from below
// between two walls: an upside-down U. Second moments by Steiner's theorem;
// shear is carried by the walls upright and by the roof across; the
// open section's torsion is the sum of its three rectangles' (S. Timoshenko,
// J. N. Goodier, Theory of Elasticity, torsion of rolled sections; from
// memory).
func (l sectionLaw) hollowed(width, height, wall, depth float64) bridgeSection {
	s := l.solid(width, height)
	v := width - 2*wall // width of the channel
	a := width*height - v*depth
	zc := (width*height*height/2 - v*depth*depth/2) / a
	iy := cube(height)*width/12 + width*height*sq(height/2-zc) - v*cube(depth)/12 - v*depth*sq(depth/2-zc)
	iz := height*cube(width)/12 - depth*cube(v)/12
	roof := fem.RectSection{Width: width, Height: height - depth, E: l.E, Gxy: l.Gxy, Gxz: l.Gxz}
	side := fem.RectSection{Width: wall, Height: depth, E: l.E, Gxy: l.Gxy, Gxz: l.Gxz}
	s.own = fem.Rigidity{
		EA: l.E * a, EIy: l.E * iy, EIz: l.E * iz,
		GAy: materials.ShearFactor * l.Gxy * roof.Area(), GAz: materials.ShearFactor * l.Gxz * 2 * wall * height,
		GJ: roof.TorsionRigidity() + 2*side.TorsionRigidity(),
	}
	s.area, s.lift = a, zc-height/2
	return s
}

// round is a solid round rod: shear factor 9/10 (G. R. Cowper 1966 for ν near
// 0.3; from memory).
func round(diameter, E float64) fem.Rigidity {
	const poisson, shear = 0.33, 0.9
	a := math.Pi * sq(diameter) / 4
	i := math.Pi * sq(sq(diameter)) / 64
	g := E / (2 * (1 + poisson))
	return fem.Rigidity{EA: E * a, GAy: shear * g * a, GAz: shear * g * a, GJ: g * 2 * i, EIy: E * i, EIz: E * i}
}

func sq(x float64) float64   { return x * x }
func cube(x float64) float64 { return x * x * x }

func scale(v [3]float64, s float64) [3]float64 { return [3]float64{s * v[0], s * v[1], s * v[2]} }
