package scene

import (
	"image"
	"math"
)

// Covered is which part of a view a scene covers, in squares: where words would stand over what
// they speak of.
type Covered struct {
	cell       float64 // pixels
	wide, tall int     // squares
	on         []bool
}

// thinnest is the opacity of a solid below which words may stand over it: sides and back of a
// body.
const thinnest = 128

// insideSkin is the plate's inner face, which covers what the outer one does.
const insideSkin = "plate inside"

// Covered finds what solids and lines cover of a view of w by h pixels, in squares of cell pixels.
// Names: of solids, which alone count then.
func (s *Scene) Covered(c Camera, w, h int, cell float64, names ...string) *Covered {
	v := &Covered{cell: cell, wide: int(math.Ceil(float64(w) / cell)), tall: int(math.Ceil(float64(h) / cell))}
	v.on = make([]bool, max(0, v.wide*v.tall))
	l := c.lens(w, h)
	only := map[string]bool{}
	for _, n := range names {
		only[n] = true
	}
	for _, o := range s.Solids {
		if len(names) > 0 && !only[o.Name] || len(names) == 0 && o.Paint.A < thinnest || o.Name == Shadow || o.Name == insideSkin {
			continue
		}
		at := make([][2]float64, len(o.Points))
		for i, p := range o.Points {
			x, y, _, ok := l.project(p)
			if !ok {
				x = math.NaN()
			}
			at[i] = [2]float64{x / cell, y / cell}
		}
		for _, t := range o.Tris {
			v.triangle(at[t[0]], at[t[1]], at[t[2]])
		}
	}
	for _, line := range s.Lines {
		if len(names) == 0 {
			v.line(&l, line)
		}
	}
	return v
}

// mark covers the square about a place, in squares.
func (v *Covered) mark(x, y float64) {
	if i, j := int(math.Floor(x)), int(math.Floor(y)); i >= 0 && j >= 0 && i < v.wide && j < v.tall {
		v.on[j*v.wide+i] = true
	}
}

// triangle covers what lies under a triangle: its corners, and the middles of squares within.
func (v *Covered) triangle(a, b, c [2]float64) {
	if math.IsNaN(a[0] + b[0] + c[0]) {
		return
	}
	v.mark(a[0], a[1])
	v.mark(b[0], b[1])
	v.mark(c[0], c[1])
	lo := [2]float64{math.Max(0, math.Min(a[0], math.Min(b[0], c[0]))), math.Max(0, math.Min(a[1], math.Min(b[1], c[1])))}
	hi := [2]float64{math.Min(float64(v.wide), math.Max(a[0], math.Max(b[0], c[0]))), math.Min(float64(v.tall), math.Max(a[1], math.Max(b[1], c[1])))}
	turned := func(p, q [2]float64, x, y float64) float64 { return (q[0]-p[0])*(y-p[1]) - (q[1]-p[1])*(x-p[0]) }
	sense := turned(a, b, c[0], c[1])
	for y := math.Floor(lo[1]) + 0.5; y < hi[1]; y++ {
		for x := math.Floor(lo[0]) + 0.5; x < hi[0]; x++ {
			if sense*turned(a, b, x, y) >= 0 && sense*turned(b, c, x, y) >= 0 && sense*turned(c, a, x, y) >= 0 {
				v.mark(x, y)
			}
		}
	}
}

// line covers what lies under a polyline.
func (v *Covered) line(l *lens, line *Line) {
	var was [2]float64
	joined := false
	for _, p := range line.Points {
		x, y, _, ok := l.project(p)
		if !ok {
			joined = false
			continue
		}
		at := [2]float64{x / v.cell, y / v.cell}
		n := 1.0
		if joined {
			n = math.Min(float64(2*(v.wide+v.tall)), math.Ceil(2*math.Hypot(at[0]-was[0], at[1]-was[1])))
		}
		for k := 1.0; k <= n; k++ {
			v.mark(at[0]+(was[0]-at[0])*(1-k/n), at[1]+(was[1]-at[1])*(1-k/n))
		}
		was, joined = at, true
	}
}

// Meets tells whether anything covers a rectangle of the view, in pixels.
func (v *Covered) Meets(x0, y0, x1, y1 float64) bool {
	for j := max(0, int(y0/v.cell)); j < min(v.tall, int(math.Ceil(y1/v.cell))); j++ {
		for i := max(0, int(x0/v.cell)); i < min(v.wide, int(math.Ceil(x1/v.cell))); i++ {
			if v.on[j*v.wide+i] {
				return true
			}
		}
	}
	return false
}

// Reach is the rectangle of a view of w by h pixels that the scene covers, shadows aside, with room for its
// lines and the beads on them at so many pixels to a point; all of the view if a part lies beside or behind
// the eye.
func (s *Scene) Reach(c Camera, w, h int, density float64) image.Rectangle {
	l, all := c.lens(w, h), image.Rect(0, 0, w, h)
	lo, hi := [2]float64{float64(w), float64(h)}, [2]float64{}
	ahead := true
	add := func(p vec) {
		x, y, _, ok := l.project(p)
		ahead = ahead && ok
		lo, hi = [2]float64{min(lo[0], x), min(lo[1], y)}, [2]float64{max(hi[0], x), max(hi[1], y)}
	}
	for _, o := range s.Solids {
		if o.Soft {
			continue
		}
		for _, p := range o.Points {
			add(p)
		}
	}
	wide := 2.0 * beadRadius
	for _, line := range s.Lines {
		wide = max(wide, line.Width/2+haloWidth)
		for _, p := range line.Points {
			if !math.IsNaN(p[0] + p[1] + p[2]) {
				add(p)
			}
		}
	}
	if !ahead {
		return all
	}
	room := wide*density + 2
	at := func(v float64) int { return int(max(-1, min(1e6, v))) }
	return image.Rect(at(lo[0]-room), at(lo[1]-room), at(hi[0]+room)+1, at(hi[1]+room)+1).Intersect(all)
}
