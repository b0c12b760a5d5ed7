package mesh

import (
	"cmp"
	"slices"

	"archload/mesh/delaunay"
)

// Triangulate fills the domain with triangles. Outline, hole edges and lines
// become chains of edges whose nodes lie on the true curves. The same domain
// always gives the same plan. All errors are *PlaceError.
//
// A line must stay inside the plate; an end within 0.5 mm of an edge or of
// another line is moved onto it (less on plates below 200 mm). Ends, crossings
// and bends above 15 degrees become nodes; between them nodes are spaced along
// the polyline.
//
// Coordinates count to 1e-9 mm. A domain and its mirror image in the y axis (x to
// -x) give plans that are mirror images to the last bit, wherever their curves
// begin and in whichever direction they run. If outline, holes and lines are their
// own mirror image, so is the plan.
func Triangulate(d Domain) (*Plan, error) {
	d.Size, d.Scale = cmp.Or(d.Size, defaultSize), cmp.Or(d.Scale, 1)
	if err := checkDomain(&d); err != nil {
		return nil, err
	}
	here, there := d.normal(), d.mirrored()
	if compareDomains(&here, &there) <= 0 {
		return here.seamed()
	}
	plan, err := there.seamed()
	if err != nil {
		return nil, mirroredFault(err)
	}
	return plan.mirrored(), nil
}

// seamed fills a domain in normal form; its seams are lines behind the others.
func (d *Domain) seamed() (*Plan, error) {
	whole := *d
	whole.Lines, whole.Seams = slices.Concat(d.Lines, d.Seams), nil
	plan, err := whole.triangulate()
	if err == nil {
		plan.Lines = plan.Lines[:len(d.Lines)]
	}
	return plan, err
}

// triangulate fills a domain in normal form: by halves if that can be done, else
// as a whole.
func (d *Domain) triangulate() (*Plan, error) {
	if hole, ok := d.symmetry(); ok {
		if plan, ok := d.triangulateHalf(hole); ok {
			return plan, nil
		}
	}
	arcs, field, err := d.prepare()
	if err != nil {
		return nil, err
	}
	tr, err := arcs.fill(field.at)
	if err != nil {
		return nil, err
	}
	p, chains, err := arcs.plan(tr)
	if err != nil {
		return nil, err
	}
	arcs.assemble(p, chains)
	return p, arcs.checkPlan(p)
}

// triangulateHalf fills the half x >= 0 of a symmetric domain and mirrors it; ok
// is false where that fails.
func (d *Domain) triangulateHalf(hole []int) (plan *Plan, ok bool) {
	whole, axis := d.evened(), d.axis()
	whole.Lines = slices.Concat(d.Lines, axis)
	arcs, field, err := whole.prepare()
	if err != nil {
		return nil, false
	}
	half, ok := arcs.rightHalf(hole, len(axis))
	if !ok {
		return nil, false
	}
	tr, err := half.right.fill(field.bothSides)
	if err != nil {
		return nil, false
	}
	p, chains, err := half.right.plan(tr)
	if err != nil {
		return nil, false
	}
	if p, err = half.unfold(p, chains); err != nil {
		return nil, false
	}
	p.Lines = p.Lines[:len(d.Lines)]
	return p, true
}

// prepare cuts the input curves into arcs and lays out the wanted edge length.
func (d *Domain) prepare() (*arcSet, *sizeField, error) {
	net, err := newLineNet(d)
	if err != nil {
		return nil, nil, err
	}
	if err := net.checkInside(d); err != nil {
		return nil, nil, err
	}
	arcs := newArcSet(d, net)
	field, err := newSizeField(d, arcs)
	return arcs, field, err
}

// fill triangulates the inside of the arcs' boundary with edges of the wanted
// length.
func (s *arcSet) fill(size func(Point) float64) (*delaunay.Triangulation, error) {
	chords, err := s.resample(size)
	if err != nil {
		return nil, err
	}
	tr, err := s.connect(chords)
	if err != nil {
		return nil, err
	}
	wanted := func(p delaunay.Point) float64 { return size(p) }
	done := tr.Refine(delaunay.Rules{
		Size:      wanted,
		Split:     func(g delaunay.Segment, t float64) delaunay.Point { return s.arcs[g.Curve].at(t) },
		MaxPoints: maxTriangles*6/10 + 1000,
	})
	if !done {
		return nil, tooMany(maxTriangles, s.domain)
	}
	tr.Smooth(wanted)
	return tr, nil
}
