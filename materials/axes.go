package materials

import "math"

// Axes holds three orthogonal unit vectors as rows, in global x y z: L, R, T
// of a wood, or e1, e2, n of a frame. The functions below return right-handed
// axes, T = L x R. An orthotropic wood does not know the sign of an axis, so
// "R across" may point to either side.
type Axes [3][3]float64

// GlobalAxes returns x, y, z themselves.
func GlobalAxes() Axes { return Axes{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}} }

// seen returns the axes to expressed in the axes a, both given in global
// coordinates: the argument that Turned and TurnStress want.
func (a Axes) seen(to Axes) Axes {
	var q Axes
	for i := range q {
		for k := range q {
			q[i][k] = to[i][0]*a[k][0] + to[i][1]*a[k][1] + to[i][2]*a[k][2]
		}
	}
	return q
}

// Cut says how a plate lies in the log.
type Cut struct {
	Flat       bool    // flat-cut: R through the plate; otherwise quarter-cut: R across it
	RingAngle  float64 // degrees, turns the rings from the named cut toward the other one, reached at 90
	GrainAngle float64 // degrees, turns the grain about z, anticlockwise seen from outside
}

// PlateAxes returns the billet axes of a top: L = y turned by the grain angle
// about z; quarter-cut: R across (-x), T = z; flat-cut: R = z, T across (x).
func PlateAxes(c Cut) Axes {
	phi := c.RingAngle
	if c.Flat {
		phi = 90 - c.RingAngle
	}
	sg, cg := sincosDegrees(c.GrainAngle)
	sp, cp := sincosDegrees(phi)
	along := [3]float64{-sg, cg, 0}
	radial := [3]float64{-cg * cp, -sg * cp, sp}
	return Axes{along, radial, cross(along, radial)}
}

// BridgeAxes returns L = x and R upright, turned about x by ringAngle in
// degrees: at 90 T is upright.
func BridgeAxes(ringAngle float64) Axes {
	s, c := sincosDegrees(ringAngle)
	along := [3]float64{1, 0, 0}
	radial := [3]float64{0, -s, c}
	return Axes{along, radial, cross(along, radial)}
}

// sincosDegrees returns sine and cosine of an angle in degrees, exact at the
// multiples of 90.
func sincosDegrees(deg float64) (sin, cos float64) {
	rest := math.Remainder(deg, 90)
	s, c := math.Sincos(rest * math.Pi / 180)
	switch quarter := math.Remainder((deg-rest)/90, 4); quarter {
	case 1, -3:
		return c, -s
	case 2, -2:
		return -s, -c
	case 3, -1:
		return -c, s
	default:
		return s, c
	}
}

func cross(a, b [3]float64) [3]float64 {
	return [3]float64{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}
