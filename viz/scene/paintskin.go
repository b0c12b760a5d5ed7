package scene

import (
	"math"

	"archload/fem/vec3"
)

// corner is a point of a solid on the page.
type corner struct {
	x, y  float64 // samples
	near  float64 // 1/depth, 1/mm
	light float64 // factor
	value float64 // in steps of the legend from its lower end; NaN: none
}

// skin is a solid on the page.
type skin struct {
	of      *Solid
	corners []corner
	behind  []bool // points before the near plane; nil: none
	spans   [][2]float32
}

// lightOn is how much light a point of a solid gets, 1: all.
func (p *painter) lightOn(o *Solid, i int) float64 {
	switch {
	case o.Soft:
		return o.Dim[i]
	case p.o.Unlit || o.Normals == nil:
		return 1
	}
	light := Shade(vec3.Dot(o.Normals[i], p.light))
	if p.wood(o) {
		light += sheen(o.Normals[i], p.half, o.Along)
	}
	if o.Dim != nil {
		light *= o.Dim[i]
	}
	return light
}

// wood tells whether a solid is drawn as wood.
func (p *painter) wood(o *Solid) bool { return o.Across != nil && (o.Values == nil || !p.field.shown) }

// valueAt is the field's value at a point of a solid, in steps of the legend if there are any, or how far wood lies
// from the joint, mm; NaN where none is shown.
func (p *painter) valueAt(o *Solid, i int) float64 {
	switch {
	case p.wood(o):
		return o.Across[i]
	case o.Values == nil || !p.field.shown:
		return math.NaN()
	case p.field.step > 0:
		return (o.Values[i] - p.field.lo) / p.field.step
	}
	return o.Values[i]
}

// skin projects a solid.
func (p *painter) skin(o *Solid) skin {
	s := skin{of: o, corners: make([]corner, len(o.Points))}
	for i, q := range o.Points {
		c := &s.corners[i]
		x, y, depth, ok := p.lens.project(q)
		c.x, c.y, c.near = x, y, 1/depth
		c.light, c.value = p.lightOn(o, i), p.valueAt(o, i)
		if !ok {
			if s.behind == nil {
				s.behind = make([]bool, len(o.Points))
			}
			s.behind[i] = true
		}
	}
	s.spans = make([][2]float32, len(o.Tris))
	for i, t := range o.Tris {
		a, b, c := s.corners[t[0]].y, s.corners[t[1]].y, s.corners[t[2]].y
		s.spans[i] = [2]float32{float32(math.Min(a, math.Min(b, c))) - 1, float32(math.Max(a, math.Max(b, c))) + 1}
		if s.behind != nil && (s.behind[t[0]] || s.behind[t[1]] || s.behind[t[2]]) {
			s.spans[i] = [2]float32{float32(math.Inf(-1)), float32(math.Inf(1))}
		}
	}
	return s
}

// paintSkin paints the solid's part in the strip. Faces turned away are left
// out, but for translucent skins.
func (p *painter) paintSkin(s *skin) {
	f := facePaint{p: p, paint: packed(s.of.Paint), alpha: uint32(s.of.Paint.A), wood: p.wood(s.of), soft: s.of.Soft}
	if f.alpha == 255 {
		f.alpha = 256
	}
	top, bottom := float32(p.first), float32(p.first+p.rows)
	for i, t := range s.of.Tris {
		if r := s.spans[i]; r[1] < top || r[0] > bottom {
			continue
		}
		if s.behind == nil || !(s.behind[t[0]] || s.behind[t[1]] || s.behind[t[2]]) {
			f.triangle(&s.corners[t[0]], &s.corners[t[1]], &s.corners[t[2]])
			continue
		}
		poly := p.clipped(s, t)
		for k := 2; k < len(poly); k++ {
			f.triangle(&poly[0], &poly[k-1], &poly[k])
		}
	}
}

// clipped returns the corners of the part of a triangle that lies beyond the
// near plane.
func (p *painter) clipped(s *skin, t [3]int32) []corner {
	var out []corner
	for k := range t {
		i, j := t[k], t[(k+1)%3]
		if !s.behind[i] {
			out = append(out, s.corners[i])
		}
		if s.behind[i] != s.behind[j] {
			out = append(out, p.between(s, i, j))
		}
	}
	return out
}

// between is the place where the edge i j meets the near plane.
func (p *painter) between(s *skin, i, j int32) corner {
	a, b := s.of.Points[i], s.of.Points[j]
	da, db := -vec3.Dot(vec3.Sub(a, p.lens.eye), p.lens.back), -vec3.Dot(vec3.Sub(b, p.lens.eye), p.lens.back)
	u := (p.lens.near*(1+1e-9) - da) / (db - da)
	c := s.corners[i]
	x, y, depth, _ := p.lens.project(plus(a, u, vec3.Sub(b, a)))
	c.x, c.y, c.near = x, y, 1/depth
	c.light += u * (s.corners[j].light - c.light)
	c.value += u * (s.corners[j].value - c.value)
	return c
}

// facePaint paints triangles of one solid.
type facePaint struct {
	p     *painter
	paint uint32
	alpha uint32 // in 256ths; 256: opaque
	wood  bool   // values are mm from the joint
	soft  bool   // light is a factor of the opacity
}

// plane is a quantity over the page, linear.
type plane struct{ at0, dx, dy float64 }

func (q plane) at(x, y float64) float64 { return q.at0 + q.dx*x + q.dy*y }

// planeOf is the plane through the values at three corners; det is twice the
// triangle's area.
func planeOf(a, b, c *corner, va, vb, vc, det float64) plane {
	q := plane{
		dx: ((vb-va)*(c.y-a.y) - (vc-va)*(b.y-a.y)) / det,
		dy: ((vc-va)*(b.x-a.x) - (vb-va)*(c.x-a.x)) / det,
	}
	q.at0 = va - q.dx*a.x - q.dy*a.y
	return q
}

// triangle paints one triangle. y runs down the page, so that a triangle seen
// from outside has a negative area.
func (f *facePaint) triangle(a, b, c *corner) {
	det := (b.x-a.x)*(c.y-a.y) - (c.x-a.x)*(b.y-a.y)
	if det >= 0 && f.alpha == 256 || det == 0 || math.IsNaN(det) {
		return
	}
	p := f.p
	y0 := max(p.first, int(math.Ceil(math.Min(a.y, math.Min(b.y, c.y))-0.5)))
	y1 := min(p.first+p.rows-1, int(math.Floor(math.Max(a.y, math.Max(b.y, c.y))-0.5)))
	if y0 > y1 || math.Max(a.x, math.Max(b.x, c.x)) < 0 || math.Min(a.x, math.Min(b.x, c.x)) > float64(p.w) {
		return
	}
	t := f.ready(a, b, c, det)
	if det > 0 {
		b, c = c, b
	}
	edges := [3][2]*corner{{a, b}, {b, c}, {c, a}}
	for y := y0; y <= y1; y++ {
		lo, hi := 0.0, float64(p.w)
		yc := float64(y) + 0.5
		for _, e := range edges {
			lo, hi = bound(e[0], e[1], yc, lo, hi)
		}
		x0, x1 := int(math.Ceil(lo-0.5)), int(math.Ceil(hi-0.5))
		if x0 < x1 {
			f.row(&t, y, x0, x1)
		}
	}
}

// bound narrows the stretch lo..hi of a row by an edge; both triangles at an
// edge compute the same place, so that no sample is left out or painted twice.
func bound(a, b *corner, y, lo, hi float64) (float64, float64) {
	if a.y == b.y {
		return lo, hi
	}
	if a.y < b.y { // wood lies to the right: seen from outside, y down
		x := a.x + (y-a.y)*(b.x-a.x)/(b.y-a.y)
		return math.Max(lo, x), hi
	}
	x := b.x + (y-b.y)*(a.x-b.x)/(a.y-b.y)
	return lo, math.Min(hi, x)
}

// face is a triangle made ready.
type face struct {
	near, light, value plane
	valued             bool
	slope              float64 // of the value, steps to a sample
}

func (f *facePaint) ready(a, b, c *corner, det float64) face {
	t := face{near: planeOf(a, b, c, a.near, b.near, c.near, det), light: planeOf(a, b, c, a.light, b.light, c.light, det)}
	if v := a.value + b.value + c.value; !math.IsNaN(v) && !math.IsInf(v, 0) {
		t.valued = true
		t.value = planeOf(a, b, c, a.value, b.value, c.value, det)
		t.slope = math.Hypot(t.value.dx, t.value.dy)
	}
	return t
}

// row paints the samples x0 to x1 (not included) of a row.
func (f *facePaint) row(t *face, y, x0, x1 int) {
	p := f.p
	xc, yc := float64(x0)+0.5, float64(y)+0.5
	near, light, value := t.near.at(xc, yc), 256*t.light.at(xc, yc), t.value.at(xc, yc)
	first := (y - p.first) * p.w
	depth, sample := p.near[first+x0:first+x1], p.sample[first+x0:first+x1]
	for i := range depth {
		if float32(near) > depth[i] {
			c, alpha := f.colour(t, value, uint32(max(0, light)), x0+i, y)
			if f.alpha == 256 {
				depth[i], sample[i] = float32(near), c
			} else {
				sample[i] = blend(sample[i], c, alpha)
			}
		}
		near += t.near.dx
		light += 256 * t.light.dx
		value += t.value.dx
	}
}

// colour is that of a place of a triangle, in so much light, and its opacity, both in 256ths.
func (f *facePaint) colour(t *face, value float64, light uint32, x, y int) (c, alpha uint32) {
	switch {
	case f.soft:
		return f.paint, f.alpha * min(256, light) / 256
	case !t.valued:
		return lit(f.paint, light), f.alpha
	case f.wood:
		return woodLit(f.paint, lateMean(value, t.slope), light), f.alpha
	case math.Abs(t.value.dy) > math.Abs(t.value.dx):
		return f.p.field.at(value, t.slope, light, x, y), f.alpha
	}
	return f.p.field.at(value, t.slope, light, y, x), f.alpha
}

// at is the colour of a value, in steps from the legend's lower end, that
// rises by slope from a sample to the next; light in 256ths; along is the sample across the view
// of a line that runs across, down the view of one that runs down, and beside the other one.
func (f *fieldPaint) at(v, slope float64, light uint32, along, beside int) uint32 {
	i := 0
	if f.step > 0 {
		i = int(min(tones, max(0, v*(tones/f.bands)+0.5)))
	}
	c := lit(f.tone[i], light)
	if !f.contours {
		return c
	}
	if f.side*(v-f.zero) > 0 {
		if a := f.hatch[(along+beside)%len(f.hatch)]; a > 0 {
			c = blend(c, f.ink[i], a)
		}
	}
	k := math.Floor(v + 0.5)
	off := math.Abs(v-k) - slope*f.half[1] - slope
	if off > 0 || k < 1 || k > f.bands-1 || slope < 1e-9 {
		return c
	}
	half := f.half[0]
	if k == f.zero {
		half = f.half[1]
	}
	cover := half + 0.5 - math.Abs(v-k)/slope
	if cover <= 0 || k < f.zero && f.broken(along) {
		return c
	}
	ink := contourInk * min(1, cover) * min(1, 1/(slope*f.fade))
	return blend(c, f.ink[i], uint32(256*ink))
}

// broken tells whether a line below zero leaves out a sample at a place along it.
func (f *fieldPaint) broken(along int) bool {
	return f.cell > 0 && int((float64(along)+0.5)/f.cell)%2 != 0
}
