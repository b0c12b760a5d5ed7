package scene

import (
	"math"

	"archload/fem/vec3"
)

// Camera is where the scene is seen from: it looks at Target from a distance,
// turned by yaw and pitch. The zero value is not usable; Scene.Seen makes one.
//
// Yaw 0 looks from the tail toward the neck, 90 from the treble side toward
// the bass. Pitch 0 is level, 90 straight down on the outside, negative from
// inside the body. Outward (z) is up on the page; at pitch 90 and yaw 0, and
// at pitch -90 and yaw 180, the neck is up.
type Camera struct {
	Yaw, Pitch float64    // deg
	Distance   float64    // mm, of the eye from Target
	Target     [3]float64 // mm
	Lens       float64    // deg, opening from the lower to the upper edge of the view
}

// Limits of the camera.
const (
	nearest  = 20   // mm, least distance
	farthest = 2e4  // mm, greatest distance
	nearPart = 0.02 // of the distance: what lies nearer to the eye is not drawn
	beyond   = 6000 // mm behind the target that are drawn at least
)

// Axes returns the page's directions in the scene, unit vectors: to the right,
// up, and back toward the eye.
func (c Camera) Axes() (right, up, back [3]float64) {
	sy, cy := math.Sincos(c.Yaw * math.Pi / 180)
	sp, cp := math.Sincos(c.Pitch * math.Pi / 180)
	back = vec{sy * cp, -cy * cp, sp}
	right = vec{cy, sy, 0}
	return right, vec3.Cross(back, right), back
}

// Eye returns where the camera stands, mm.
func (c Camera) Eye() [3]float64 {
	_, _, back := c.Axes()
	return plus(c.Target, c.Distance, back)
}

// focal is the distance of the page from the eye in pixels, for a view h
// pixels high.
func (c Camera) focal(h int) float64 {
	return float64(h) / 2 / math.Tan(c.Lens*math.Pi/360)
}

// Orbited returns the camera turned about its target, deg. The pitch stays
// within ±90 and the yaw within ±180.
func (c Camera) Orbited(dYaw, dPitch float64) Camera {
	c.Yaw = math.Remainder(c.Yaw+dYaw, 360)
	c.Pitch = math.Max(-90, math.Min(90, c.Pitch+dPitch))
	return c
}

// Moved returns the camera shifted so that the scene follows the pointer by
// dx, dy pixels (right, down) in a view h pixels high.
func (c Camera) Moved(dx, dy float64, h int) Camera {
	right, up, _ := c.Axes()
	s := c.Distance / c.focal(h)
	c.Target = plus(plus(c.Target, -s*dx, right), s*dy, up)
	return c
}

// Zoomed returns the camera nearer by a factor (2: everything twice as
// large). What lies under the pixel x, y of a view of w by h, in the plane of
// the target, stays there.
func (c Camera) Zoomed(factor, x, y float64, w, h int) Camera {
	right, up, _ := c.Axes()
	s := c.Distance / c.focal(h)
	p := plus(plus(c.Target, s*(x-float64(w)/2), right), -s*(y-float64(h)/2), up)
	return c.ZoomedAbout(factor, p)
}

// ZoomedAbout is Zoomed about a place of the scene, mm, which stays where it
// is on the page.
func (c Camera) ZoomedAbout(factor float64, p [3]float64) Camera {
	factor = c.Distance / math.Max(nearest, math.Min(farthest, c.Distance/factor))
	c.Target = plus(p, 1/factor, vec3.Sub(c.Target, p))
	c.Distance /= factor
	return c
}

// Project returns the pixel of a place p, mm, from the top left of a view of
// w by h pixels, and its depth, mm in front of the eye along the line of
// sight. ok is false for a place behind the eye or too near to be drawn.
func (c Camera) Project(p [3]float64, w, h int) (x, y, depth float64, ok bool) {
	l := c.lens(w, h)
	return l.project(p)
}

// Ray returns the line of sight through the pixel x, y of a view of w by h
// pixels: where it starts, mm, and its direction, a unit vector.
func (c Camera) Ray(x, y float64, w, h int) (from, dir [3]float64) {
	right, up, back := c.Axes()
	f := c.focal(h)
	d := plus(plus(vec3.Scale(back, -f), x-float64(w)/2, right), -(y - float64(h)/2), up)
	return c.Eye(), unit(d)
}

// Clip returns the nearest and the farthest depth that are drawn, mm.
func (c Camera) Clip() (near, far float64) {
	return nearPart * c.Distance, 4*c.Distance + beyond
}

// Matrix takes a place in mm to clip space as OpenGL has it: column by column,
// right-handed, z from -1 (nearest) to 1.
func (c Camera) Matrix(w, h int) [16]float64 {
	right, up, back := c.Axes()
	eye := c.Eye()
	near, far := c.Clip()
	fy := 1 / math.Tan(c.Lens*math.Pi/360)
	fx := fy * float64(h) / float64(w)
	a, b := (far+near)/(near-far), 2*far*near/(near-far)
	var m [16]float64
	for k := range 3 {
		m[4*k], m[4*k+1] = fx*right[k], fy*up[k]
		m[4*k+2], m[4*k+3] = a*back[k], -back[k]
	}
	m[12], m[13] = -fx*vec3.Dot(right, eye), -fy*vec3.Dot(up, eye)
	m[14], m[15] = -a*vec3.Dot(back, eye)+b, vec3.Dot(back, eye)
	return m
}

// lens is a camera made ready for many points.
type lens struct {
	right, up, back, eye vec
	focal, cx, cy, near  float64
}

func (c Camera) lens(w, h int) lens {
	l := lens{eye: c.Eye(), focal: c.focal(h), cx: float64(w) / 2, cy: float64(h) / 2}
	l.right, l.up, l.back = c.Axes()
	l.near, _ = c.Clip()
	return l
}

func (l *lens) project(p vec) (x, y, depth float64, ok bool) {
	d := vec3.Sub(p, l.eye)
	depth = -vec3.Dot(d, l.back)
	if depth < l.near {
		return 0, 0, depth, false
	}
	s := l.focal / depth
	return l.cx + s*vec3.Dot(d, l.right), l.cy - s*vec3.Dot(d, l.up), depth, true
}
