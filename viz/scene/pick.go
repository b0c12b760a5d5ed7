package scene

import (
	"math"

	"archload/fem/vec3"
)

// Hit is where a line of sight meets a solid.
type Hit struct {
	Solid *Solid
	Tri   int        // of the solid
	Bary  [3]float64 // weights of the triangle's corners, sum 1
	At    [3]float64 // mm, as drawn
	Value float64    // of the field there, in its unit; NaN: none
}

// Pick returns the nearest place under the pixel x, y of a view of w by h
// pixels on a solid that the pointer can read, seen from either side. An
// opaque solid that cannot be read hides what lies behind it: ok is false.
func (s *Scene) Pick(c Camera, x, y float64, w, h int) (Hit, bool) {
	from, dir := c.Ray(x, y, w, h)
	near, _ := c.Clip()
	best := math.Inf(1)
	var hit Hit
	for _, o := range s.Solids {
		if !o.Picks && o.Paint.A < 255 {
			continue
		}
		for i, t := range o.Tris {
			d, u, v := meet(from, dir, o.Points[t[0]], o.Points[t[1]], o.Points[t[2]])
			if d > near && d < best {
				best = d
				hit = Hit{Solid: o, Tri: i, Bary: [3]float64{1 - u - v, u, v}}
			}
		}
	}
	if hit.Solid == nil || !hit.Solid.Picks {
		return Hit{}, false
	}
	hit.At = plus(from, best, dir)
	hit.Value = hit.Solid.valueAt(hit.Tri, hit.Bary)
	return hit, true
}

// valueAt is the field's value on a triangle; NaN without one.
func (o *Solid) valueAt(tri int, bary [3]float64) float64 {
	if o.Values == nil {
		return math.NaN()
	}
	v := 0.0
	for k, n := range o.Tris[tri] {
		v += bary[k] * o.Values[n]
	}
	return v
}

// meet returns the distance along a line of sight to the triangle a, b, c, and
// the weights of b and c there; a negative distance if they do not meet.
// Source: T. Möller, B. Trumbore, "Fast, minimum storage ray/triangle
// intersection", 1997.
func meet(from, dir, a, b, c vec) (d, u, v float64) {
	e, f := vec3.Sub(b, a), vec3.Sub(c, a)
	p := vec3.Cross(dir, f)
	det := vec3.Dot(e, p)
	if det == 0 {
		return -1, 0, 0
	}
	t := vec3.Sub(from, a)
	u = vec3.Dot(t, p) / det
	if u < 0 || u > 1 {
		return -1, 0, 0
	}
	q := vec3.Cross(t, e)
	v = vec3.Dot(dir, q) / det
	if v < 0 || u+v > 1 {
		return -1, 0, 0
	}
	return vec3.Dot(f, q) / det, u, v
}

// Hides tells whether an opaque solid stands between the eye and a place of
// the scene, mm. What lies within a few millimetres of the place does not
// count: a word at the rim is not hidden by the rim.
func (s *Scene) Hides(c Camera, p [3]float64) bool {
	const atIt = 6.0 // mm
	eye := c.Eye()
	way := vec3.Sub(p, eye)
	far := vec3.Norm(way)
	dir := unit(way)
	near, _ := c.Clip()
	for _, o := range s.Solids {
		if o.Paint.A < 255 {
			continue
		}
		for _, t := range o.Tris {
			if d, _, _ := meet(eye, dir, o.Points[t[0]], o.Points[t[1]], o.Points[t[2]]); d > near && d < far-atIt {
				return true
			}
		}
	}
	return false
}
