package cutout

import (
	"cmp"
	"math"
	"slices"

	"archload/viz/scene"
)

type vec = [3]float64

// plane keeps what has sign * x <= to.
type plane struct{ sign, to float64 }

// beyond is how far outside a place lies, mm.
func (p plane) beyond(q vec) float64 { return p.sign*q[0] - p.to }

// corner is a point of a skin with what belongs to it.
type corner struct {
	p, n  vec
	value [3]float64 // of the field, factor of light, place across the grain
}

// columns are what a skin has at its points besides place and normal; nil: it has none.
func columns(o *scene.Solid) [3]*[]float64 { return [3]*[]float64{&o.Values, &o.Dim, &o.Across} }

// cornerOf is a point of a skin.
func cornerOf(o *scene.Solid, n int32) corner {
	c := corner{p: o.Points[n], n: o.Normals[n]}
	for k, column := range columns(o) {
		if *column != nil {
			c.value[k] = (*column)[n]
		}
	}
	return c
}

// mid is the place between two corners at a part of the way.
func mid(a, b corner, u float64) corner {
	var c corner
	for k := range c.p {
		c.value[k] = a.value[k] + u*(b.value[k]-a.value[k])
		c.p[k], c.n[k] = a.p[k]+u*(b.p[k]-a.p[k]), a.n[k]+u*(b.n[k]-a.n[k])
	}
	return c
}

// kept is what of a convex polygon lies within a plane (I. E. Sutherland, G. W. Hodgman, 1974).
func (p plane) kept(poly []corner) (out []corner) {
	for i, b := range poly {
		a := poly[(i+len(poly)-1)%len(poly)]
		da, db := p.beyond(a.p), p.beyond(b.p)
		if (da > 0) != (db > 0) {
			out = append(out, mid(a, b, da/(da-db)))
		}
		if db <= 0 {
			out = append(out, b)
		}
	}
	return out
}

// clipped is what of a skin lies within both planes.
func clipped(o *scene.Solid, planes [2]plane) *scene.Solid {
	c := *o
	c.Points, c.Normals, c.Tris = nil, nil, nil
	from, to := columns(o), columns(&c)
	for k := range to {
		*to[k] = nil
	}
	for _, t := range o.Tris {
		poly := []corner{cornerOf(o, t[0]), cornerOf(o, t[1]), cornerOf(o, t[2])}
		for _, p := range planes {
			poly = p.kept(poly)
		}
		first := int32(len(c.Points))
		for i, q := range poly {
			c.Points, c.Normals = append(c.Points, q.p), append(c.Normals, q.n)
			for k := range to {
				if *from[k] != nil {
					*to[k] = append(*to[k], q.value[k])
				}
			}
			if i > 1 {
				c.Tris = append(c.Tris, [3]int32{first, first + int32(i) - 1, first + int32(i)})
			}
		}
	}
	return &c
}

// skin is where a skin of the scene is cut at x: its line over y, from the tail to the neck.
func skin(s *scene.Scene, name string, x float64) (line []vec) {
	for _, o := range s.Solids {
		if o.Name != name {
			continue
		}
		for _, t := range o.Tris {
			for i := range t {
				a, b := o.Points[t[i]], o.Points[t[(i+1)%3]]
				if (a[0] > x) != (b[0] > x) {
					u := (x - a[0]) / (b[0] - a[0])
					line = append(line, vec{x, a[1] + u*(b[1]-a[1]), a[2] + u*(b[2]-a[2])})
				}
			}
		}
	}
	slices.SortFunc(line, func(a, b vec) int { return cmp.Compare(a[1], b[1]) })
	return slices.CompactFunc(line, func(a, b vec) bool { return math.Abs(a[1]-b[1]) < 1e-9 })
}

// parts are the stretches of a line within half of x0.
func parts(l *scene.Line, x0, half float64) (out []*scene.Line) {
	var run []vec
	flush := func() {
		if len(run) > 1 {
			c := *l
			c.Points = run
			out = append(out, &c)
		}
		run = nil
	}
	for i := 1; i < len(l.Points); i++ {
		a, b := l.Points[i-1], l.Points[i]
		from, to := 0.0, 1.0 // of the way from a to b that lies within
		for _, sign := range []float64{-1, 1} {
			da, db := sign*(a[0]-x0)-half, sign*(b[0]-x0)-half // beyond the plane
			switch {
			case da > 0 && db > 0:
				from, to = 1, 0
			case da > 0:
				from = math.Max(from, da/(da-db))
			case db > 0:
				to = math.Min(to, da/(da-db))
			}
		}
		if from >= to {
			flush()
			continue
		}
		if from > 0 || len(run) == 0 {
			flush()
			run = append(run, between(a, b, from))
		}
		run = append(run, between(a, b, to))
		if to < 1 {
			flush()
		}
	}
	flush()
	return out
}

// between is the place at a part of the way from a to b.
func between(a, b vec, u float64) (p vec) {
	for k := range p {
		p[k] = a[k] + u*(b[k]-a[k])
	}
	return p
}
