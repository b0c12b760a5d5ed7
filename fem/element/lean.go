package element

import (
	"math"

	"archload/fem/vec3"
)

// Lean is the attitude of a section that turns with a plate by the rotation vector theta and leans
// against it about an axis of its own, 1: R(theta) exp(m axis×), m = lean - axis · theta. To first
// order its rotation vector is theta with its part along the axis replaced by the lean.
type Lean struct {
	plate, section attitude
	axis, is       [3]float64 // before and after the plate's turn
}

// NewLean turns a section; theta and lean in rad.
func NewLean(theta, axis [3]float64, lean float64) Lean {
	l := Lean{plate: newAttitude(theta), axis: axis}
	l.is = vec3.Add(axis, l.plate.shift(axis))
	l.section = newAttitude(after(theta, vec3.Scale(axis, lean-vec3.Dot(axis, theta))))
	return l
}

// after is the rotation vector of a turn by p after one by q, below a full turn: the product of
// their quaternions.
func after(p, q [3]float64) [3]float64 {
	half := func(v [3]float64) (c float64, s [3]float64) {
		angle := vec3.Norm(v)
		if angle == 0 {
			return 1, s
		}
		sin, cos := math.Sincos(angle / 2)
		return cos, vec3.Scale(v, sin/angle)
	}
	a, u := half(p)
	b, v := half(q)
	w := vec3.Add(vec3.Cross(u, v), vec3.Add(vec3.Scale(v, a), vec3.Scale(u, b)))
	sin := vec3.Norm(w)
	if sin == 0 {
		return w
	}
	return vec3.Scale(w, 2*math.Atan2(sin, a*b-vec3.Dot(u, v))/sin)
}

// Vector is the section's rotation vector.
func (l *Lean) Vector() [3]float64 { return l.section.theta }

// spins are the derivatives of the section's spin by theta and lean.
func (l *Lean) spins() (w [3][4]float64) {
	t := l.plate.spin()
	for i := range 3 {
		for j := range 3 {
			w[i][j] = t[i][j] - l.is[i]*l.axis[j]
		}
		w[i][3] = l.is[i]
	}
	return w
}

// Rows are the derivatives of the section's rotation vector by theta and lean.
func (l *Lean) Rows() (d [3][4]float64) {
	t, w := inverse(l.section.spin()), l.spins()
	for i := range 3 {
		for j := range 4 {
			d[i][j] = t[i][0]*w[0][j] + t[i][1]*w[1][j] + t[i][2]*w[2][j]
		}
	}
	return d
}

// inSpace is the moment in space that is conjugate to the section's rotation vector as m is.
func (l *Lean) inSpace(m [3]float64) (s [3]float64) {
	t := inverse(l.section.spin())
	for j := range 3 {
		s[j] = t[0][j]*m[0] + t[1][j]*m[1] + t[2][j]*m[2]
	}
	return s
}

// Moment is what a moment conjugate to the section's rotation vector is to theta and lean.
func (l *Lean) Moment(m [3]float64) (out [4]float64) {
	s, w := l.inSpace(m), l.spins()
	for j := range 4 {
		out[j] = w[0][j]*s[0] + w[1][j]*s[1] + w[2][j]*s[2]
	}
	return out
}

// Bend is the second derivative of m · vector by theta and lean, symmetric. With spins
// ω = T δ + is δm + ½ Q(δ, δ) + ½ T δ × is δm of the section (the product of the two turns to the second
// order) and m · vector = s · ω - ½ ωᵀ B ω, B the bend of the section's own vector.
func (l *Lean) Bend(m [3]float64) (k [4][4]float64) {
	s, d := l.inSpace(m), l.Rows()
	own, turn := l.section.bend(s), l.plate.bend(s)
	p := l.plate.byVector(vec3.Cross(l.is, s))
	for i := range 4 {
		for j := range 4 {
			for a := range 3 {
				for b := range 3 {
					k[i][j] -= d[a][i] * own[a][b] * d[b][j]
				}
			}
			if i < 3 && j < 3 {
				k[i][j] += turn[i][j] - (p[i]*l.axis[j]+l.axis[i]*p[j])/2
			}
		}
		if i < 3 {
			k[i][3] += p[i] / 2
			k[3][i] += p[i] / 2
		}
	}
	return k
}

// inverse of a matrix near a rotation.
func inverse(m [3][3]float64) (out [3][3]float64) {
	rows := [3][3]float64{vec3.Cross(m[1], m[2]), vec3.Cross(m[2], m[0]), vec3.Cross(m[0], m[1])}
	det := vec3.Dot(m[0], rows[0])
	for i := range 3 {
		for j := range 3 {
			out[i][j] = rows[j][i] / det
		}
	}
	return out
}
