package scene

import (
	"math"
	"math/rand"
	"testing"

	"archload/fem/vec3"
)

// cameras of all kinds, with a fixed seed.
func cameras(n int) []Camera {
	r := rand.New(rand.NewSource(7))
	out := make([]Camera, n)
	for i := range out {
		out[i] = Camera{Yaw: 360*r.Float64() - 180, Pitch: 180*r.Float64() - 90, Distance: 50 + 2000*r.Float64(),
			Target: vec{100 * r.NormFloat64(), 100 * r.NormFloat64(), 20 * r.NormFloat64()}, Lens: 15 + 40*r.Float64()}
	}
	return out
}

// TestRayMeetsProject sends a ray through the pixel of a place and wants it to
// pass through that place.
func TestRayMeetsProject(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	for _, c := range cameras(200) {
		right, up, back := c.Axes()
		d := c.Distance
		p := plus(plus(plus(c.Target, 0.2*d*r.NormFloat64(), right), 0.2*d*r.NormFloat64(), up), 0.5*d*(r.Float64()-0.7), back)
		x, y, depth, ok := c.Project(p, 1280, 800)
		if !ok {
			t.Fatalf("%+v does not see %v at depth %g", c, p, depth)
		}
		from, dir := c.Ray(x, y, 1280, 800)
		off := vec3.Sub(p, from)
		if got := vec3.Norm(vec3.Sub(off, vec3.Scale(dir, vec3.Dot(off, dir)))); got > 1e-9*d {
			t.Errorf("%+v: the ray passes %g mm from %v", c, got, p)
		}
		if got := vec3.Dot(off, vec3.Scale(back, -1)); math.Abs(got-depth) > 1e-9*d {
			t.Errorf("depth %g, want %g", depth, got)
		}
	}
}

// TestMatrixMeetsProject wants the clip matrix to put places at the pixels of
// Project, the nearest depth at -1 and the farthest at 1.
func TestMatrixMeetsProject(t *testing.T) {
	for _, c := range cameras(100) {
		const w, h = 1000, 700
		m := c.Matrix(w, h)
		_, _, back := c.Axes()
		near, far := c.Clip()
		right, _, _ := c.Axes()
		for _, k := range []struct{ depth, z float64 }{{near * (1 + 1e-9), -1}, {c.Distance, math.NaN()}, {far, 1}} {
			p := plus(plus(c.Eye(), -k.depth, back), 0.1*k.depth, right)
			var q [4]float64
			for i := range q {
				q[i] = m[i]*p[0] + m[4+i]*p[1] + m[8+i]*p[2] + m[12+i]
			}
			x, y, _, _ := c.Project(p, w, h)
			gx, gy := (q[0]/q[3]+1)*w/2, (1-q[1]/q[3])*h/2
			if math.Hypot(gx-x, gy-y) > 1e-6 {
				t.Errorf("clip at pixel %g, %g, want %g, %g", gx, gy, x, y)
			}
			if z := q[2] / q[3]; math.Abs(z-k.z) > 1e-6 {
				t.Errorf("clip depth %g at %g mm, want %g", z, k.depth, k.z)
			}
		}
	}
}

// TestDirections fixes what yaw and pitch mean.
func TestDirections(t *testing.T) {
	for _, c := range []struct {
		name           string
		yaw, pitch     float64
		toEye, up, rgt vec
	}{
		{"from the tail", 0, 0, vec{0, -1, 0}, vec{0, 0, 1}, vec{1, 0, 0}},
		{"from the treble side", 90, 0, vec{1, 0, 0}, vec{0, 0, 1}, vec{0, 1, 0}},
		{"from outside", 0, 90, vec{0, 0, 1}, vec{0, 1, 0}, vec{1, 0, 0}},
		{"from inside", 180, -90, vec{0, 0, -1}, vec{0, 1, 0}, vec{-1, 0, 0}},
	} {
		right, up, back := Camera{Yaw: c.yaw, Pitch: c.pitch}.Axes()
		for _, k := range []struct {
			what      string
			got, want vec
		}{{"eye", back, c.toEye}, {"up", up, c.up}, {"right", right, c.rgt}} {
			if vec3.Norm(vec3.Sub(k.got, k.want)) > 1e-12 {
				t.Errorf("%s: %s lies along %v, want %v", c.name, k.what, k.got, k.want)
			}
		}
	}
}

// TestZoomKeepsThePointer wants what lies under the pointer to stay there.
func TestZoomKeepsThePointer(t *testing.T) {
	for _, c := range cameras(50) {
		const w, h, x, y = 1280, 800, 333.0, 612.0
		from, dir := c.Ray(x, y, w, h)
		_, _, back := c.Axes()
		p := plus(from, vec3.Dot(vec3.Sub(c.Target, from), back)/vec3.Dot(dir, back), dir) // in the plane of the target
		z := c.Zoomed(1.4, x, y, w, h)
		gx, gy, _, _ := z.Project(p, w, h)
		if math.Hypot(gx-x, gy-y) > 1e-6 {
			t.Errorf("%+v: the place moves to %g, %g, want %g, %g", c, gx, gy, x, y)
		}
		if got := c.Distance / z.Distance; math.Abs(got-1.4) > 1e-12 {
			t.Errorf("distance shrinks by %g, want 1.4", got)
		}
		q := plus(p, 31, vec{0.3, 0.5, 0.8})
		x0, y0, _, _ := c.Project(q, w, h)
		x1, y1, _, _ := c.ZoomedAbout(0.7, q).Project(q, w, h)
		if math.Hypot(x1-x0, y1-y0) > 1e-6 {
			t.Errorf("about a place: it moves by %g, %g", x1-x0, y1-y0)
		}
	}
	if got := (Camera{Distance: 25, Lens: 22}).Zoomed(10, 0, 0, 100, 100).Distance; got != nearest {
		t.Errorf("nearest distance %g, want %d", got, nearest)
	}
}

// TestMovedFollows wants the target to go with the pointer.
func TestMovedFollows(t *testing.T) {
	for _, c := range cameras(20) {
		x, y, _, _ := c.Moved(40, -25, 800).Project(c.Target, 1280, 800)
		if math.Abs(x-680) > 1e-6 || math.Abs(y-375) > 1e-6 {
			t.Errorf("the target goes to %g, %g, want 680, 375", x, y)
		}
	}
}

func TestOrbited(t *testing.T) {
	c := Camera{Yaw: 170, Pitch: 80}.Orbited(30, 30)
	if c.Yaw != -160 || c.Pitch != 90 {
		t.Errorf("yaw %g, pitch %g, want -160, 90", c.Yaw, c.Pitch)
	}
}
