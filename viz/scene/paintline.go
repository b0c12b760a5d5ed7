package scene

import (
	"math"

	"archload/fem/vec3"
)

// ribbon is a line on the page.
type ribbon struct {
	of       *Line
	over     bool
	pts      []ribbonPoint
	half     float64 // width, samples
	halo     float64 // half width with the halo; 0: none
	beads    []ribbonPoint
	bead     float64 // radius, samples
	paint    uint32
	alpha    float64
	top, low float64 // rows that it reaches, samples
}

// ribbonPoint is a point of a line on the page.
type ribbonPoint struct {
	x, y float64 // samples
	near float64 // 1/depth, 1/mm
	s    float64 // length of the line up to here, mm
	gap  bool    // no stretch leads here
}

// Sizes of lines, points.
const (
	haloWidth   = 1.3 // beyond each edge
	beadRadius  = 2.3
	beadSpacing = 36.0 // mm
	haloInk     = 0.7  // opacity
	beadEdge    = 0.6  // light edge, of the bead's radius less half the line's width
	beadEdgeInk = 0.9  // opacity
)

// ribbon projects a line, cut at the near plane.
func (p *painter) ribbon(l *Line) ribbon {
	d := p.o.density() * float64(p.per)
	r := ribbon{of: l, over: l.Over, half: l.Width * d / 2, bead: beadRadius * d, paint: packed(l.Paint), alpha: float64(l.Paint.A) / 255,
		top: math.Inf(1), low: math.Inf(-1)}
	if l.Halo {
		r.halo = r.half + haloWidth*d
	}
	length := 0.0
	for i := range l.Points {
		if i > 0 {
			r.stretch(p, l.Points[i-1], l.Points[i], length)
			length += vec3.Norm(vec3.Sub(l.Points[i], l.Points[i-1]))
		}
	}
	if l.Beads && p.o.Phase > 0 {
		for s := math.Mod(p.o.Phase, 1) * beadSpacing; s < length; s += beadSpacing {
			r.beads = append(r.beads, r.along(s)...)
		}
	}
	for _, q := range r.pts {
		r.top, r.low = math.Min(r.top, q.y), math.Max(r.low, q.y)
	}
	reach := math.Max(r.half, math.Max(r.halo, r.bead)) + haloWidth*d + 1
	r.top, r.low = r.top-reach, r.low+reach
	return r
}

// stretch adds the part of a b beyond the near plane; s is the line's length
// up to a.
func (r *ribbon) stretch(p *painter, a, b vec, s float64) {
	da, db := -vec3.Dot(vec3.Sub(a, p.lens.eye), p.lens.back), -vec3.Dot(vec3.Sub(b, p.lens.eye), p.lens.back)
	limit := p.lens.near * (1 + 1e-9)
	if da < limit && db < limit || math.IsNaN(da+db) {
		return
	}
	u, v := 0.0, 1.0
	if da < limit {
		u = (limit - da) / (db - da)
	}
	if db < limit {
		v = (limit - da) / (db - da)
	}
	d, long := vec3.Sub(b, a), vec3.Norm(vec3.Sub(b, a))
	n := len(r.pts)
	from, to := r.point(p, plus(a, u, d), s+u*long), r.point(p, plus(a, v, d), s+v*long)
	if n == 0 || r.pts[n-1] != from {
		from.gap = true
		r.pts = append(r.pts, from)
	}
	r.pts = append(r.pts, to)
}

func (r *ribbon) point(p *painter, q vec, s float64) ribbonPoint {
	x, y, depth, _ := p.lens.project(q)
	return ribbonPoint{x: x, y: y, near: 1 / math.Max(depth-p.bias, p.lens.near/2), s: s}
}

// along finds the place at a length of the line; none in a part that is not
// drawn.
func (r *ribbon) along(s float64) []ribbonPoint {
	for i := 1; i < len(r.pts); i++ {
		a, b := r.pts[i-1], r.pts[i]
		if b.gap || s < a.s || s >= b.s {
			continue
		}
		t := (s - a.s) / (b.s - a.s)
		return []ribbonPoint{{x: a.x + t*(b.x-a.x), y: a.y + t*(b.y-a.y), near: a.near + t*(b.near-a.near)}}
	}
	return nil
}

// haloPaint is the light edge of lines.
const haloPaint = 0xfffaf2

// paintRibbon paints the line's part in the strip: its halo, itself, its beads.
func (p *painter) paintRibbon(r *ribbon) {
	if r.low < float64(p.first) || r.top > float64(p.first+p.rows) {
		return
	}
	dash := r.of.Dash
	if r.halo > 0 {
		p.stroke(r, r.halo, dash)
		p.ink(haloPaint, haloInk*r.alpha)
	}
	p.stroke(r, r.half, dash)
	p.ink(r.paint, r.alpha)
	if len(r.beads) == 0 {
		return
	}
	edge := r.bead - r.half
	for _, radius := range [2]float64{r.bead + beadEdge*edge, r.bead} {
		for _, b := range r.beads {
			p.capsule(r, b, b, radius, 0)
		}
		if radius > r.bead {
			p.ink(haloPaint, beadEdgeInk)
		} else {
			p.ink(r.paint, 1)
		}
	}
}

func (p *painter) stroke(r *ribbon, half, dash float64) {
	for i := 1; i < len(r.pts); i++ {
		if !r.pts[i].gap {
			p.capsule(r, r.pts[i-1], r.pts[i], half, dash)
		}
	}
}

// ink lays a colour over the covered samples and clears the cover.
func (p *painter) ink(paint uint32, alpha float64) {
	k := uint32(math.Round(256 * alpha))
	for _, i := range p.touched {
		a := uint32(p.cover[i]) * k / 255
		p.sample[i] = blend(p.sample[i], paint, a)
		p.cover[i] = 0
	}
	p.touched = p.touched[:0]
}

// capsule covers the samples within half of the stretch a b. Thin lines are
// never narrower than a sample, but fainter.
func (p *painter) capsule(r *ribbon, a, b ribbonPoint, half, dash float64) {
	strength := 255.0
	if half < 0.5 {
		strength, half = strength*2*half, 0.5
	}
	reach := half + 0.5
	y0 := max(p.first, int(math.Ceil(math.Min(a.y, b.y)-reach-0.5)))
	y1 := min(p.first+p.rows-1, int(math.Floor(math.Max(a.y, b.y)+reach-0.5)))
	dx, dy := b.x-a.x, b.y-a.y
	long := math.Hypot(dx, dy)
	left, right := math.Max(0, math.Min(a.x, b.x)-reach), math.Min(float64(p.w), math.Max(a.x, b.x)+reach)
	for y := y0; y <= y1; y++ {
		lo, hi, yc := left, right, float64(y)+0.5
		if math.Abs(dy) > 1e-3*long { // where the row crosses the stretch's band
			x, w := a.x+(yc-a.y)*dx/dy, reach*long/math.Abs(dy)
			lo, hi = math.Max(lo, x-w), math.Min(hi, x+w)
		}
		row := (y - p.first) * p.w
		for x := max(0, int(math.Ceil(lo-0.5))); x < min(p.w, int(math.Floor(hi+0.5))); x++ {
			ex, ey, t := float64(x)+0.5-a.x, yc-a.y, 0.0
			if long > 0 {
				t = math.Max(0, math.Min(1, (ex*dx+ey*dy)/(long*long)))
			}
			c := reach - math.Hypot(ex-t*dx, ey-t*dy)
			if c <= 0 || dash > 0 && math.Mod(a.s+t*(b.s-a.s), 2*dash) >= dash {
				continue
			}
			p.touch(row+x, r, a.near+t*(b.near-a.near), strength*math.Min(1, c))
		}
	}
}

// touch covers a sample, unless something nearer hides it.
func (p *painter) touch(i int, r *ribbon, near, cover float64) {
	if !r.over && float32(near) < p.near[i] {
		return
	}
	c := uint8(cover)
	if c > p.cover[i] {
		if p.cover[i] == 0 {
			p.touched = append(p.touched, int32(i))
		}
		p.cover[i] = c
	}
}
