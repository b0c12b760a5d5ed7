package scene

import (
	"math"
	"slices"

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

// Faces tells whether any triangle of the solid turns its face to the eye: only then is anything
// of an opaque one seen.
func (o *Solid) Faces(c Camera) bool {
	eye := c.Eye()
	for _, t := range o.Tris {
		a := o.Points[t[0]]
		n := vec3.Cross(vec3.Sub(o.Points[t[1]], a), vec3.Sub(o.Points[t[2]], a))
		if !(vec3.Dot(n, vec3.Sub(eye, a)) <= 0) {
			return true
		}
	}
	return false
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

// Hides tells of each of some places of the scene, mm, whether an opaque solid stands between it
// and the eye. What lies within a few millimetres of a place does not
// count: a word at the rim is not hidden by the rim. Names: of solids, which alone count then.
func (s *Scene) Hides(c Camera, places []vec, names ...string) []bool {
	out := make([]bool, len(places))
	if len(places) == 0 {
		return out
	}
	near, _ := c.Clip()
	from := newLook(c.Eye(), places[0], near)
	rays := make([]ray, len(places))
	for i, p := range places {
		rays[i] = from.ray(p)
	}
	var seen [][2]float64
	for _, o := range s.Solids {
		if o.Paint.A < 255 || len(names) > 0 && !slices.Contains(names, o.Name) {
			continue
		}
		seen = seen[:0]
		for _, p := range o.Points {
			seen = append(seen, from.place(p))
		}
		for _, t := range o.Tris {
			lo, hi := span(seen[t[0]], seen[t[1]], seen[t[2]])
			for i := range rays {
				if r := &rays[i]; !out[i] && !r.misses(lo, hi) {
					out[i] = r.stopped(from, o, t)
				}
			}
		}
	}
	return out
}

// look is an eye with a direction and two across it.
type look struct {
	eye, ahead, a, b vec
	near             float64
}

func newLook(eye, at vec, near float64) look {
	ahead := unit(vec3.Sub(at, eye))
	least := 0
	for k := range ahead {
		if math.Abs(ahead[k]) < math.Abs(ahead[least]) {
			least = k
		}
	}
	var e vec
	e[least] = 1
	a := unit(vec3.Cross(ahead, e))
	return look{eye: eye, ahead: ahead, a: a, b: vec3.Cross(ahead, a), near: near}
}

// place is where a place is seen, in parts of its distance ahead; not numbers if it is not ahead.
func (k look) place(p vec) [2]float64 {
	r := vec3.Sub(p, k.eye)
	far := vec3.Dot(r, k.ahead)
	if far < k.near {
		return [2]float64{math.NaN(), math.NaN()}
	}
	return [2]float64{vec3.Dot(r, k.a) / far, vec3.Dot(r, k.b) / far}
}

// ray is the way from the eye to a place.
type ray struct {
	at  [2]float64
	dir vec
	far float64
}

func (k look) ray(p vec) ray {
	way := vec3.Sub(p, k.eye)
	return ray{at: k.place(p), dir: unit(way), far: vec3.Norm(way)}
}

// span is the rectangle about three places as they are seen; of one that is not ahead, everything.
func span(a, b, c [2]float64) (lo, hi [2]float64) {
	for k := range lo {
		lo[k], hi[k] = min(a[k], b[k], c[k]), max(a[k], b[k], c[k])
	}
	return lo, hi
}

// misses says that the ray passes beside a rectangle.
func (r *ray) misses(lo, hi [2]float64) bool {
	return r.at[0] < lo[0] || r.at[0] > hi[0] || r.at[1] < lo[1] || r.at[1] > hi[1]
}

// stopped says whether a triangle of a solid stands on the ray, well before its end.
func (r *ray) stopped(from look, o *Solid, t [3]int32) bool {
	const atIt = 6.0 // mm
	d, _, _ := meet(from.eye, r.dir, o.Points[t[0]], o.Points[t[1]], o.Points[t[2]])
	return d > from.near && d < r.far-atIt
}
