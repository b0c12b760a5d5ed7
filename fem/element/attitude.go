package element

import (
	"math"

	"archload/fem/vec3"
)

// attitude is the finite rotation of a node by the vector theta, its axis times its angle:
// R = 1 + a θ× + b θ×θ×, a = sin|θ|/|θ|, b = (1 - cos|θ|)/|θ|².
//
// A change δ of theta turns the node by ω = T δ + ½ Q(δ, δ) more, R(θ + δ) = exp(ω) R(θ), with
// T = 1 + b θ× + c θ×θ×, c = (1 - a)/|θ|², and Q(δ, δ) the derivative of T δ along δ (T is the
// left Jacobian of the exponential map; derived by hand, tested against differences). It serves
// below a full turn, where T has no inverse.
type attitude struct {
	theta   [3]float64
	a, b, c float64
	db, dc  float64 // derivatives of b and c by |θ|²
}

func newAttitude(theta [3]float64) attitude {
	t := attitude{theta: theta}
	s := vec3.Dot(theta, theta)
	if s < 0.01 { // series: the closed forms lose digits
		t.b = 0.5 - s/24*(1-s/30*(1-s/56*(1-s/90)))
		t.c = 1.0/6 - s/120*(1-s/42*(1-s/72*(1-s/110)))
		t.a = 1 - s*t.c
		t.db = -1.0/24 + s/360*(1-s*3/112*(1-s*4/270))
		t.dc = -1.0/120 + s/2520*(1-s/48*(1-s*4/330))
		return t
	}
	angle := math.Sqrt(s)
	sin, cos := math.Sincos(angle)
	t.a, t.b = sin/angle, (1-cos)/s
	t.c = (1 - t.a) / s
	t.db, t.dc = (t.a-2*t.b)/(2*s), (t.b-3*t.c)/(2*s)
	return t
}

// shift returns R v - v.
func (t *attitude) shift(v [3]float64) [3]float64 {
	w := vec3.Cross(t.theta, v)
	return vec3.Add(vec3.Scale(w, t.a), vec3.Scale(vec3.Cross(t.theta, w), t.b))
}

// shifts returns R v - v of three vectors.
func (t *attitude) shifts(v [3][3]float64) [3][3]float64 {
	return [3][3]float64{t.shift(v[0]), t.shift(v[1]), t.shift(v[2])}
}

// spin returns T.
func (t *attitude) spin() (m [3][3]float64) {
	for k := range 3 { // column k is T e_k
		var e [3]float64
		e[k] = 1
		w := vec3.Cross(t.theta, e)
		v := vec3.Add(e, vec3.Add(vec3.Scale(w, t.b), vec3.Scale(vec3.Cross(t.theta, w), t.c)))
		for i := range 3 {
			m[i][k] = v[i]
		}
	}
	return m
}

// bend returns the symmetric matrix of the form moment · Q(δ, δ).
func (t *attitude) bend(moment [3]float64) (m [3][3]float64) {
	s, p := vec3.Dot(t.theta, t.theta), vec3.Dot(moment, t.theta)
	w := vec3.Scale(vec3.Cross(moment, t.theta), 2*t.db)
	w = vec3.Add(w, vec3.Scale(t.theta, 2*t.dc*p))
	w = vec3.Sub(w, vec3.Scale(moment, 2*t.dc*s+t.c))
	for i := range 3 {
		m[i][i] = t.c * p
		for j := range 3 {
			m[i][j] += (t.theta[i]*w[j] + w[i]*t.theta[j]) / 2
		}
	}
	return m
}
