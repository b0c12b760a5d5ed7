package mesh

import (
	"cmp"
	"errors"
	"slices"

	"archload/mesh/plane"
)

// normal returns the domain in the form that does not depend on where its curves
// begin or in which direction they run, with all coordinates rounded to 1e-9 mm.
func (d *Domain) normal() Domain {
	return d.with((*plane.Curve).Normal, plane.Point.Rounded)
}

// mirrored returns the normal form of the domain reflected in the y axis (x to
// -x).
func (d *Domain) mirrored() Domain {
	m := d.with(func(c *plane.Curve) *plane.Curve { return c.Mirrored().Normal() }, func(p Point) Point { return p.Mirrored().Rounded() })
	if bend := d.Curvature; bend != nil {
		m.Curvature = func(p Point) float64 { return bend(p.Mirrored()) }
	}
	return m
}

// with returns a domain whose curves and points are those of d, changed; the fine
// zones and the seams stand in an order of their own.
func (d *Domain) with(curve func(*plane.Curve) *plane.Curve, point func(Point) Point) Domain {
	chain := func(pts []Point) []Point {
		out := make([]Point, len(pts))
		for i, p := range pts {
			out[i] = point(p)
		}
		return out
	}
	m := *d
	m.Outline = curve(d.Outline)
	m.Holes, m.Lines, m.Fine = nil, nil, nil
	for _, h := range d.Holes {
		m.Holes = append(m.Holes, curve(h))
	}
	for _, l := range d.Lines {
		m.Lines = append(m.Lines, chain(l))
	}
	forward := func(pts []Point) []Point {
		along := chain(pts)
		if n := len(along); n > 0 && slices.Compare(along[n-1][:], along[0][:]) < 0 {
			slices.Reverse(along)
		}
		return along
	}
	for _, f := range d.Fine {
		m.Fine = append(m.Fine, Fine{Along: forward(f.Along), Radius: f.Radius, Size: f.Size})
	}
	slices.SortStableFunc(m.Fine, compareFine)
	m.Seams = nil
	for _, l := range d.Seams {
		m.Seams = append(m.Seams, forward(l))
	}
	slices.SortFunc(m.Seams, comparePoints)
	return m
}

// compareDomains orders domains in normal form by their coordinates.
func compareDomains(a, b *Domain) int {
	return cmp.Or(
		plane.Compare(a.Outline, b.Outline),
		slices.CompareFunc(a.Holes, b.Holes, plane.Compare),
		slices.CompareFunc(a.Lines, b.Lines, comparePoints),
		slices.CompareFunc(a.Fine, b.Fine, compareFine),
		slices.CompareFunc(a.Seams, b.Seams, comparePoints),
	)
}

func comparePoints(p, q []Point) int {
	return slices.CompareFunc(p, q, func(p, q Point) int { return slices.Compare(p[:], q[:]) })
}

func compareFine(f, g Fine) int {
	return cmp.Or(comparePoints(f.Along, g.Along), cmp.Compare(f.Radius, g.Radius), cmp.Compare(f.Size, g.Size))
}

// mirrored returns the plan reflected in the y axis: the same nodes, triangles
// and lines in the same order, all loops anticlockwise again.
func (p *Plan) mirrored() *Plan {
	m := &Plan{Lines: p.Lines}
	for _, q := range p.Points {
		m.Points = append(m.Points, q.Mirrored())
	}
	for _, t := range p.Tris {
		m.Tris = append(m.Tris, [3]int32{t[0], t[2], t[1]})
	}
	back := func(loop []int32) []int32 {
		loop = slices.Clone(loop)
		slices.Reverse(loop)
		return loop
	}
	m.Rim = back(p.Rim)
	for _, h := range p.Holes {
		m.Holes = append(m.Holes, back(h))
	}
	return m
}

// mirroredFault returns a *PlaceError reflected in the y axis.
func mirroredFault(err error) error {
	var pe *PlaceError
	if errors.As(err, &pe) {
		m := *pe
		m.At = pe.At.Mirrored()
		return &m
	}
	return err
}
