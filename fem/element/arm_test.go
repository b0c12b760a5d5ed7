package element

import (
	"math"
	"testing"

	"archload/fem/vec3"
)

// TestArm compares the derivatives of f · R v with differences, at turns from none to large.
func TestArm(t *testing.T) {
	v, f := [3]float64{3, -5, 40}, [3]float64{20, 7, -11}
	for _, theta := range [][3]float64{{}, {0.01, 0.02, -0.005}, {0.8, -1.1, 0.4}} {
		a := NewArm(theta, v)
		if l := vec3.Norm(vec3.Add(v, a.Shift())); math.Abs(l/vec3.Norm(v)-1) > 1e-14 {
			t.Errorf("turn %v: the arm is %.15g mm long, want %.15g", theta, l, vec3.Norm(v))
		}
		moment, bend, rows := a.Moment(f), a.Bend(f), a.Rows()
		const h = 1e-5
		for k := range 3 {
			up, down := theta, theta
			up[k], down[k] = theta[k]+h, theta[k]-h
			p, q := NewArm(up, v), NewArm(down, v)
			if got, want := moment[k], vec3.Dot(f, vec3.Sub(p.Shift(), q.Shift()))/(2*h); math.Abs(got-want) > 1e-7*1000 {
				t.Errorf("turn %v: moment %d is %.9g, by differences %.9g", theta, k, got, want)
			}
			mp, mq := p.Moment(f), q.Moment(f)
			for j := range 3 {
				if want := (mp[j] - mq[j]) / (2 * h); math.Abs(bend[j][k]-want) > 1e-7*1000 {
					t.Errorf("turn %v: second derivative %d %d is %.9g, by differences %.9g", theta, j, k, bend[j][k], want)
				}
			}
			if sum := f[0]*rows[0][k] + f[1]*rows[1][k] + f[2]*rows[2][k]; math.Abs(sum-moment[k]) > 1e-11*1000 {
				t.Errorf("turn %v: rows give the moment %.15g, want %.15g", theta, sum, moment[k])
			}
		}
	}
}

// TestLean compares rows, moments and second derivatives of a leaning section with differences; where it
// does not lean against the plate it turns with it.
func TestLean(t *testing.T) {
	axis, m := [3]float64{0.6, 0.64, 0.48}, [3]float64{20, 7, -11}
	for _, at := range [][4]float64{{}, {0.01, 0.02, -0.005, 0.03}, {0.8, -1.1, 0.4, 0.2}} {
		leaning := func(q [4]float64) Lean { return NewLean([3]float64(q[:3]), axis, q[3]) }
		l := leaning(at)
		moment, bend, rows := l.Moment(m), l.Bend(m), l.Rows()
		const h = 1e-5
		for k := range 4 {
			up, down := at, at
			up[k], down[k] = at[k]+h, at[k]-h
			p, q := leaning(up), leaning(down)
			diff := vec3.Scale(vec3.Sub(p.Vector(), q.Vector()), 1/(2*h))
			if want := vec3.Dot(m, diff); math.Abs(moment[k]-want) > 1e-7*20 {
				t.Errorf("at %v: moment %d is %.9g, by differences %.9g", at, k, moment[k], want)
			}
			mp, mq := p.Moment(m), q.Moment(m)
			for j := range 4 {
				if want := (mp[j] - mq[j]) / (2 * h); math.Abs(bend[j][k]-want) > 1e-7*20 {
					t.Errorf("at %v: second derivative %d %d is %.9g, by differences %.9g", at, j, k, bend[j][k], want)
				}
			}
			for i := range 3 {
				if math.Abs(rows[i][k]-diff[i]) > 1e-7 {
					t.Errorf("at %v: row %d %d is %.9g, by differences %.9g", at, i, k, rows[i][k], diff[i])
				}
			}
		}
	}
	theta := [3]float64{0.8, -1.1, 0.4}
	still := NewLean(theta, axis, vec3.Dot(axis, theta))
	if d := vec3.Norm(vec3.Sub(still.Vector(), theta)); d > 1e-15 {
		t.Errorf("without a lean of its own the section is %.2g off the plate's turn", d)
	}
}
