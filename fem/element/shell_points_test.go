package element

import (
	"math"
	"testing"

	"archload/fem/vec3"
	"archload/materials"
)

// motionAt returns the displacement of a point by RowsAt.
func motionAt(s *Shell, u *[18]float64, l [3]float64, zeta float64) (d [3]float64) {
	for k, row := range s.RowsAt(l, zeta) {
		d[k] = form(&row, u)
	}
	return d
}

// TestRowsAtRigid: every point, at any height, follows a rigid motion.
func TestRowsAtRigid(t *testing.T) {
	s := oneShell(t, tw1(), 6, 4, true)
	shift, spin := [3]float64{0.3, -0.2, 0.5}, [3]float64{0.01, 0.02, -0.03}
	var u [18]float64
	for i, x := range s.frame.corn {
		d := vec3.Add(shift, vec3.Cross(spin, x))
		copy(u[6*i:], d[:])
		copy(u[6*i+3:], spin[:])
	}
	for _, zeta := range []float64{-1, 0, 0.5, 1} {
		l := [3]float64{0.2, 0.5, 0.3}
		x := vec3.Scale(s.frame.axes[2], zeta*s.Thickness()/2)
		for i, c := range s.frame.corn {
			x = vec3.Add(x, vec3.Scale(c, l[i]))
		}
		got, want := motionAt(&s, &u, l, zeta), vec3.Add(shift, vec3.Cross(spin, x))
		if vec3.Norm(vec3.Sub(got, want)) > 1e-13 {
			t.Errorf("zeta %g: got %v mm, want %v mm", zeta, got, want)
		}
	}
}

// TestRowsAtCurve: linked interpolation meets a quadratic deflection exactly,
// and the faces move along the surface by zeta H/2 b.
func TestRowsAtCurve(t *testing.T) {
	s := oneShell(t, tw1(), 6, 4, false)
	w := func(x, y float64) float64 { return 1e-3 * (2*x*x - 3*y*y + x*y) }
	var u [18]float64
	f := &s.frame
	for i, p := range f.xy {
		bx, by := -1e-3*(4*p[0]+p[1]), -1e-3*(-6*p[1]+p[0])
		u[6*i+2], u[6*i+3], u[6*i+4] = w(p[0], p[1]), -by, bx
	}
	for b := 0; b < 18; b += 3 { // to global
		var g [3]float64
		for k := range 3 {
			g = vec3.Add(g, vec3.Scale(f.axes[k], u[b+k]))
		}
		copy(u[b:], g[:])
	}
	l := [3]float64{0.2, 0.5, 0.3}
	x := l[1]*f.xy[1][0] + l[2]*f.xy[2][0]
	y := l[1]*f.xy[1][1] + l[2]*f.xy[2][1]
	got := f.local(motionAt(&s, &u, l, 1))
	want := [3]float64{-2 * 1e-3 * (4*x + y), -2 * 1e-3 * (-6*y + x), w(x, y)}
	if vec3.Norm(vec3.Sub(got, want)) > 1e-14 {
		t.Errorf("got %v mm, want %v mm", got, want)
	}
}

// TestShellPressed: a pressed facet has the same laws, in its own frame, as the
// flat blank it was bent from; the carved one has not.
func TestShellPressed(t *testing.T) {
	slope := rotation(0, 0.2, 0.15)
	for _, c := range []struct {
		name  string
		ring  float64 // angle of R out of the blank, rad
		blank [3]float64
	}{
		{"quarter-cut", 0, [3]float64{}},
		{"flat-cut", math.Pi / 2, [3]float64{}},
		{"rings at 40 degrees", 40 * degree, [3]float64{0, 0, 1}},
	} {
		sn, cs := math.Sincos(c.ring)
		flat := ShellInput{H: 4, Wood: tw1().Compliance(),
			Axes:    materials.Axes{{0, 1, 0}, {cs, 0, sn}, {sn, 0, -cs}},
			Pressed: true, Blank: c.blank,
			X: [3][3]float64{{0, 0, 0}, {6, 1, 0}, {2, 5, 0}}}
		sloped := flat
		for i := range flat.X {
			sloped.X[i] = turn(slope, flat.X[i])
		}
		a, errA := NewShell(flat)
		b, errB := NewShell(sloped)
		carved := sloped
		carved.Pressed = false
		d, errD := NewShell(carved)
		if errA != nil || errB != nil || errD != nil {
			t.Fatal(errA, errB, errD)
		}
		within(t, c.name+" bending along the grain", b.bend[0][0], a.bend[0][0], 1e-12)
		within(t, c.name+" bending across", b.bend[1][1], a.bend[1][1], 1e-12)
		if d.bend[0][0] > 0.95*a.bend[0][0] {
			t.Errorf("%s: carved slope: D11 %g, want well below the blank's %g", c.name, d.bend[0][0], a.bend[0][0])
		}
	}
}

func TestShellRefuses(t *testing.T) {
	good := ShellInput{H: 4, Wood: tw1().Compliance(), Axes: xyzAxes,
		X: [3][3]float64{{0, 0, 0}, {6, 1, 0}, {2, 5, 0}}}
	for _, c := range []struct {
		name  string
		spoil func(in *ShellInput)
	}{
		{"no thickness", func(in *ShellInput) { in.H = 0 }},
		{"thickness not a number", func(in *ShellInput) { in.H = math.NaN() }},
		{"no area", func(in *ShellInput) { in.X[2] = [3]float64{12, 2, 0} }},
		{"corner not a number", func(in *ShellInput) { in.X[1][1] = math.NaN() }},
		{"normal turned over", func(in *ShellInput) { in.N[1] = [3]float64{0, 0, -1} }},
		{"no axes", func(in *ShellInput) { in.Axes = materials.Axes{} }},
		{"compliance zero", func(in *ShellInput) { in.Wood = materials.Compliance{} }},
		{"shear compliance negative", func(in *ShellInput) { in.Wood[4][4] *= -1 }},
	} {
		in := good
		c.spoil(&in)
		if _, err := NewShell(in); err == nil {
			t.Errorf("%s: want an error, found none", c.name)
		}
	}
	if _, err := NewShell(good); err != nil {
		t.Error(err)
	}
}

// TestShellStressInPlane: the mid-plane shear stress is 1.5 Q/h and the faces
// have none, for wood in the plane.
func TestShellStressInPlane(t *testing.T) {
	in := ShellInput{H: 4, Wood: tw1().Compliance(), Axes: xyzAxes,
		X: [3][3]float64{{0, 0, 0}, {6, 1, 0}, {2, 5, 0}}}
	s, err := NewShell(in)
	if err != nil {
		t.Fatal(err)
	}
	var u [18]float64
	u[8], u[14] = 1e-3, -2e-3
	q := s.Resultants(&u).Q
	mid, face := s.Stress(&u, 0), s.Stress(&u, 1)
	within(t, "LT in the middle", mid[4], 1.5*q[0]/4, 1e-12)
	within(t, "RT in the middle", mid[3], 1.5*q[1]/4, 1e-12)
	if face[3] != 0 || face[4] != 0 {
		t.Errorf("shear stress at the face: RT %g, LT %g MPa, want 0", face[3], face[4])
	}
}
