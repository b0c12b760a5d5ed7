package element

import "archload/fem/vec3"

// Arm is a rigid arm v, mm, that turns with a node.
type Arm struct {
	turn    attitude
	was, is [3]float64
}

// NewArm turns an arm by a rotation vector below a full turn, rad.
func NewArm(theta, v [3]float64) Arm {
	a := Arm{turn: newAttitude(theta), was: v}
	a.is = vec3.Add(v, a.turn.shift(v))
	return a
}

// Shift is the movement of the arm's end against its root, R v - v, mm.
func (a *Arm) Shift() [3]float64 { return vec3.Sub(a.is, a.was) }

// Moment is the derivative of f · R v by the rotation vector, N·mm: what a force f, N, at the
// arm's end is to the node's freedoms. Where nothing has turned it is v × f.
func (a *Arm) Moment(f [3]float64) [3]float64 { return a.turn.byVector(vec3.Cross(a.is, f)) }

// Rows are the derivatives of R v by the rotation vector, a row for each component, mm.
func (a *Arm) Rows() (rows [3][3]float64) {
	for k := range 3 {
		var e [3]float64
		e[k] = 1
		rows[k] = a.Moment(e)
	}
	return rows
}

// Bend is the second derivative of f · R v by the rotation vector, N·mm, symmetric.
func (a *Arm) Bend(f [3]float64) [3][3]float64 {
	m := a.turn.bend(vec3.Cross(a.is, f))
	t, size := a.turn.spin(), vec3.Dot(f, a.is)
	var s, st [3][3]float64 // of f · ω × (ω × R v), in spins ω
	for i := range 3 {
		for j := range 3 {
			s[i][j] = (f[i]*a.is[j] + a.is[i]*f[j]) / 2
		}
		s[i][i] -= size
	}
	for i := range 3 {
		for j := range 3 {
			st[i][j] = s[i][0]*t[0][j] + s[i][1]*t[1][j] + s[i][2]*t[2][j]
		}
	}
	for i := range 3 {
		for j := range 3 {
			m[i][j] += t[0][i]*st[0][j] + t[1][i]*st[1][j] + t[2][i]*st[2][j]
		}
	}
	return m
}

// byVector is the moment conjugate to the rotation vector of one in space, Tᵀ m.
func (t *attitude) byVector(m [3]float64) [3]float64 {
	w := vec3.Cross(t.theta, m)
	return vec3.Add(vec3.Sub(m, vec3.Scale(w, t.b)), vec3.Scale(vec3.Cross(t.theta, w), t.c))
}

// Twisting is what a moment in space, N·mm, is to the freedoms of a node turned by theta.
func Twisting(theta, moment [3]float64) [3]float64 {
	t := newAttitude(theta)
	return t.byVector(moment)
}
