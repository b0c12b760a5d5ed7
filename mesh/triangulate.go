package mesh

import (
	"cmp"

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
func Triangulate(d Domain) (*Plan, error) {
	d.Size, d.Scale = cmp.Or(d.Size, defaultSize), cmp.Or(d.Scale, 1)
	if err := checkDomain(&d); err != nil {
		return nil, err
	}
	net, err := newLineNet(&d)
	if err != nil {
		return nil, err
	}
	if err := net.checkInside(&d); err != nil {
		return nil, err
	}
	arcs := newArcSet(&d, net)
	field, err := newSizeField(&d, arcs)
	if err != nil {
		return nil, err
	}
	chords, err := arcs.resample(field)
	if err != nil {
		return nil, err
	}
	tr, err := arcs.connect(chords)
	if err != nil {
		return nil, err
	}
	done := tr.Refine(delaunay.Rules{
		Size:      func(p delaunay.Point) float64 { return field.at(p) },
		Split:     func(s delaunay.Segment, t float64) delaunay.Point { return arcs.arcs[s.Curve].at(t) },
		MaxPoints: maxTriangles*6/10 + 1000,
	})
	if !done {
		return nil, tooMany(maxTriangles, &d)
	}
	tr.Smooth(func(p delaunay.Point) float64 { return field.at(p) })
	return arcs.plan(tr)
}
