package surface

import (
	"fmt"
	"math"

	"archload/mesh/plane"
)

// patch is the midpoint of one quadrature square on or near the plate.
type patch struct {
	p     plane.Point
	d     float64 // distance from the outline, negative outside, mm
	first int     // first spline of its cell
	kind  int     // which of the places within a cell
}

// projector brings functions onto a spline by least squares over patches,
// with a faint roughness that smooths over some 2 mm.
type projector struct {
	sys     *system
	factor  factor
	patches []patch
	values  [quadPerCell * quadPerCell]stencil // height at each kind of place
}

const projectWeight = 10 // of the roughness, mm⁴: over patches 3 mm apart (10·9)^(1/6) = 2.1 mm

func newProjector(rim *rimLine, size float64) (*projector, error) {
	g := gridOver(rim.lo, rim.hi, size)
	sys, err := newSystem(g)
	if err != nil {
		return nil, err
	}
	f := &projector{sys: sys, patches: g.patchesOn(rim)}
	for k := range f.values {
		f.values[k] = g.valueAt(g.placeOf(0, 0, k))
	}
	f.sys.addRoughness(roughness{rim: rim, flat: flatWeight})
	for _, c := range f.patches {
		st := f.values[c.kind]
		st.first = c.first
		f.sys.addRow(&st, 0, 1)
	}
	var ok bool
	if f.factor, ok = f.sys.factor(projectWeight, factor{}); !ok {
		return nil, fmt.Errorf("arch formula: projection onto splines is singular, want an outline wider than %g mm", size)
	}
	return f, nil
}

// placeOf returns the kind-th quadrature midpoint of cell (i, j).
func (g grid) placeOf(i, j, kind int) plane.Point {
	return plane.Point{
		g.x0 + g.size*(float64(i)+(float64(kind%quadPerCell)+0.5)/quadPerCell),
		g.y0 + g.size*(float64(j)+(float64(kind/quadPerCell)+0.5)/quadPerCell),
	}
}

// patchesOn returns the patches inside the outline and a little beyond.
func (g grid) patchesOn(rim *rimLine) []patch {
	var out []patch
	for j := range g.ny {
		for i := range g.nx {
			for kind := range quadPerCell * quadPerCell {
				p := g.placeOf(i, j, kind)
				if d := rim.nearest(p).signed(); d > -outerMargin {
					out = append(out, patch{p, d, g.index(i, j), kind})
				}
			}
		}
	}
	return out
}

// moments returns Σ value(patch) · stencil, a right-hand side.
func (s *system) moments(patches []patch, stencils []stencil, value func(*patch) float64) []float64 {
	rhs := make([]float64, s.total())
	for i := range patches {
		c := &patches[i]
		v := value(c)
		for k, w := range stencils[c.kind].w {
			rhs[s.unknown[c.first+s.offset(k)]] += v * w
		}
	}
	return rhs
}

// project returns the spline nearest to a function of place and distance.
func (f *projector) project(value func(p plane.Point, d float64) float64) *Spline {
	rhs := f.sys.moments(f.patches, f.values[:], func(c *patch) float64 { return value(c.p, c.d) })
	return &Spline{grid: f.sys.grid, coef: f.factor.solve(rhs)}
}

// dome solves Poisson's equation on the plate in the spline space, by least
// squares: the Laplacian at the patches, zero on the outline.
type dome struct {
	fit      *projector
	factor   factor
	laplaces [quadPerCell * quadPerCell]stencil
	span     float64 // square root of the plate's area, mm
}

// newDome prepares the solution for any source.
func newDome(rim *rimLine, size float64) (*dome, error) {
	const rimRows, smooth = 3.0, 1e-4 // mm between rows on the outline; weight of the roughness
	fit, err := newProjector(rim, size)
	if err != nil {
		return nil, err
	}
	g := fit.sys.grid
	d := &dome{fit: fit}
	sys := fit.sys.empty()
	for k := range d.laplaces {
		d.laplaces[k] = g.laplaceAt(g.placeOf(0, 0, k))
	}
	for _, c := range fit.patches {
		st := d.laplaces[c.kind]
		st.first = c.first
		sys.addRow(&st, 0, 1)
		if c.d > 0 {
			d.span += size * size / (quadPerCell * quadPerCell) // the area so far
		}
	}
	d.span = math.Sqrt(d.span)
	n := int(math.Ceil(rim.length() / rimRows))
	for i := range n {
		st := g.valueAt(rim.pointAt(rim.length() * float64(i) / float64(n)))
		sys.addRow(&st, 0, 1)
	}
	var ok bool
	if d.factor, ok = sys.factor(smooth, factor{}); !ok {
		return nil, fmt.Errorf("arch formula: the Poisson equation is singular on this outline")
	}
	return d, nil
}

// solve returns u with −Δu = source.
func (d *dome) solve(source func(plane.Point) float64) *Spline {
	g := d.fit.sys.grid
	rhs := d.fit.sys.moments(d.fit.patches, d.laplaces[:], func(c *patch) float64 { return -source(c.p) })
	return &Spline{grid: g, coef: d.factor.solve(rhs)}
}

// with returns a solution that is highest at the apex: the widest source with
// which that can be had.
func (d *dome) with(apex plane.Point) (*Spline, error) {
	for _, width := range []float64{0.5, 0.35, 0.25, 0.18, 0.12} { // R over the plate's span
		if u, ok := d.tilted(apex, width*d.span); ok {
			return u, nil
		}
	}
	return nil, fmt.Errorf("arch formula: apex (%g, %g): no smooth arch over this outline is highest there, "+
		"want an apex nearer to the middle of its wide part", apex[0], apex[1])
}

// tilted looks for the tilt α of a source of width r that brings the maximum
// to the apex, by Newton's method: u depends linearly on the source.
func (d *dome) tilted(apex plane.Point, r float64) (*Spline, bool) {
	const steps, longest, closeEnough = 15, 0.01, 0.02 // 1, 1/mm, mm
	var a plane.Point
	source := func(p plane.Point) float64 {
		x, y := p[0]-apex[0], p[1]-apex[1]
		return math.Exp(min(a[0]*x+a[1]*y-(x*x+y*y)/(2*r*r), 40))
	}
	for range steps {
		u := d.solve(source)
		j := u.At(apex)
		if det := j.Zxx*j.Zyy - j.Zxy*j.Zxy; det > 0 && j.Zxx < 0 && plane.Dist(summit(u, apex), apex) < closeEnough {
			return u, d.highest(u, j.Z)
		}
		jx := d.solve(func(p plane.Point) float64 { return (p[0] - apex[0]) * source(p) }).At(apex)
		jy := d.solve(func(p plane.Point) float64 { return (p[1] - apex[1]) * source(p) }).At(apex)
		det := jx.Zx*jy.Zy - jy.Zx*jx.Zy
		if det == 0 {
			return nil, false
		}
		dx, dy := -(jy.Zy*j.Zx-jy.Zx*j.Zy)/det, -(jx.Zx*j.Zy-jx.Zy*j.Zx)/det
		if l := math.Hypot(dx, dy); l > longest {
			dx, dy = dx*longest/l, dy*longest/l
		}
		a = plane.Point{a[0] + dx, a[1] + dy}
	}
	return nil, false
}

// highest tells whether no patch lies above the height given.
func (d *dome) highest(u *Spline, top float64) bool {
	for i := range d.fit.patches {
		if c := &d.fit.patches[i]; c.d > 0 && u.At(c.p).Z > top*(1+1e-6) {
			return false
		}
	}
	return true
}

// summit returns the local maximum near p: Newton's method on the gradient.
func summit(s Surface, p plane.Point) plane.Point {
	for range 20 {
		j := s.At(p)
		det := j.Zxx*j.Zyy - j.Zxy*j.Zxy
		if !(det > 0) || j.Zxx >= 0 {
			return p
		}
		dx, dy := -(j.Zyy*j.Zx-j.Zxy*j.Zy)/det, -(j.Zxx*j.Zy-j.Zxy*j.Zx)/det
		if l := math.Hypot(dx, dy); l > 10 { // mm: no wild steps
			dx, dy = dx*10/l, dy*10/l
		}
		p = plane.Point{p[0] + dx, p[1] + dy}
		if math.Hypot(dx, dy) < 1e-9 {
			break
		}
	}
	return p
}
