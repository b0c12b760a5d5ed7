package scene

import (
	"math"
	"slices"

	"archload/fem/vec3"
)

// NamedView is a direction that a maker asks for by name.
type NamedView struct {
	Name       string
	Yaw, Pitch float64 // deg
}

// Behind is the view of a body from behind: its back is then as solid as the top, and
// has the colours of the field.
const Behind = "from behind"

// Views lists the named views, the usual one first.
func Views() []NamedView {
	return []NamedView{
		{"at an angle", 28, 34},
		{"from outside", 0, 90},
		{"from the tail", 0, 9},
		{"from the treble side", 90, 9},
		{"from inside", 166, -60},
		{Behind, 180, -82},
	}
}

// The usual lens and the margin that a fitted scene leaves at each edge.
const (
	usualLens = 22   // deg: long, so that the arch is not distorted
	margin    = 0.05 // of the view
)

// Seen returns the camera of a named view that shows the whole scene in a view
// of w by h pixels. A name that Views does not list takes the first view.
func (s *Scene) Seen(name string, w, h int) Camera {
	v := Views()[0]
	for _, o := range Views() {
		if o.Name == name {
			v = o
		}
	}
	c := Camera{Yaw: v.Yaw, Pitch: v.Pitch, Lens: usualLens, Target: s.Centre}
	return s.Fitted(c, w, h)
}

// Fitted returns the camera moved, not turned, so that the whole scene fills a
// view of w by h pixels.
func (s *Scene) Fitted(c Camera, w, h int) Camera { return s.FittedTo(c, w, h) }

// FittedTo is Fitted to the solids of the given names alone: "base" and "foot"
// fill the view with the bridge. Without names it is Fitted.
func (s *Scene) FittedTo(c Camera, w, h int, names ...string) Camera {
	right, up, back := c.Axes()
	ty := math.Tan(c.Lens*math.Pi/360) * (1 - 2*margin)
	tx := ty * float64(w) / float64(h)
	c.Target = s.Centre
	// Each edge of the view is a plane through the eye. The eye must stand
	// behind the four planes that touch the scene.
	var most [4]float64
	for k := range most {
		most[k] = math.Inf(-1)
	}
	s.eachOutermost(names, func(p vec) {
		q := vec3.Sub(p, s.Centre)
		x, y, z := vec3.Dot(q, right), vec3.Dot(q, up), vec3.Dot(q, back)
		for k, v := range [4]float64{x + tx*z, -x + tx*z, y + ty*z, -y + ty*z} {
			most[k] = math.Max(most[k], v)
		}
	})
	if math.IsInf(most[0], -1) {
		c.Distance = 2 * nearest
		return c
	}
	dx, dy := (most[0]+most[1])/(2*tx), (most[2]+most[3])/(2*ty)
	c.Target = plus(plus(s.Centre, (most[0]-most[1])/2, right), (most[2]-most[3])/2, up)
	c.Distance = math.Max(math.Max(dx, dy), nearest)
	return c
}

// eachOutermost calls f with the points that must be in view: those of the
// solids named, or of all solids and the places of labels.
func (s *Scene) eachOutermost(names []string, f func(p vec)) {
	for _, o := range s.Solids {
		if names == nil && o.Name == Shadow || names != nil && !slices.Contains(names, o.Name) {
			continue
		}
		for _, p := range o.Points {
			f(p)
		}
	}
	for _, l := range s.Labels {
		if names == nil {
			f(l.At)
		}
	}
}

// bound fills Centre and Radius.
func (s *Scene) bound() {
	lo := vec{math.Inf(1), math.Inf(1), math.Inf(1)}
	hi := vec3.Scale(lo, -1)
	s.eachOutermost(nil, func(p vec) {
		for k := range p {
			lo[k], hi[k] = math.Min(lo[k], p[k]), math.Max(hi[k], p[k])
		}
	})
	if lo[0] > hi[0] {
		return
	}
	s.Centre = vec3.Scale(vec3.Add(lo, hi), 0.5)
	s.Radius = vec3.Norm(vec3.Sub(hi, lo)) / 2
}
