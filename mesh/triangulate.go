package mesh

import (
	"cmp"
	"errors"
	"fmt"
	"math"

	"archload/mesh/delaunay"
)

// Domain is what Triangulate fills with triangles. Only Outline is needed.
type Domain struct {
	Outline *Curve
	Holes   []*Curve  // cut out
	Lines   [][]Point // polylines that become chains of edges: braces, mm
	Fine    []Fine
	Size    float64 // wanted edge length away from features, mm; 0 means 6
	Scale   float64 // multiplies every wanted length, 1; 0 means 1, 0.5 halves all edges

	// Curvature returns the largest unsigned curvature of the surface at a
	// place, averaged over some 15 mm, 1/mm. Edges there are at most
	// 0.1/curvature, but not below half of Size. It may be nil.
	Curvature func(Point) float64
}

// Fine asks for smaller triangles near a place.
type Fine struct {
	Along  []Point // polyline or single point, mm
	Radius float64 // mm
	Size   float64 // edge length wanted within Radius of Along, mm
}

// PlaceError says which part of a Domain cannot be meshed, and where.
type PlaceError struct {
	Part  string // "outline", "hole", "line" or "size"
	Index int    // which hole or line, from 0
	At    Point  // mm
	Msg   string
}

// Error counts holes and lines from 1.
func (e *PlaceError) Error() string {
	if e.Part == "size" {
		return "mesh size: " + e.Msg
	}
	return fmt.Sprintf("%s, near (%.2f, %.2f) mm: %s", e.part(), e.At[0], e.At[1], e.Msg)
}

func (e *PlaceError) part() string {
	if e.Part == "outline" {
		return e.Part
	}
	return fmt.Sprintf("%s %d", e.Part, e.Index+1)
}

// Limits of Triangulate.
const (
	defaultSize  = 6.0    // mm
	maxTriangles = 400000 // more than a solver on one machine should be asked for
	maxLinePts   = 5000   // points of all lines together
	maxLineNodes = 20000  // the same after cutting at crossings
	maxLineRims  = 50.0   // length of all lines, in lengths of the outline
	maxHoles     = 200
	maxFinePts   = 1000
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

// checkDomain refuses impossible numbers and curves that touch each other. It
// limits the size to a quarter of the plate's diagonal.
func checkDomain(d *Domain) error {
	if d.Outline == nil {
		return &PlaceError{Part: "outline", Msg: "missing"}
	}
	for i, h := range d.Holes {
		if h == nil {
			return &PlaceError{Part: "hole", Index: i, Msg: "missing"}
		}
	}
	if err := checkSizes(d); err != nil {
		return err
	}
	lo, hi := d.Outline.Bounds()
	most := pointDist(lo, hi) / 4
	d.Size = min(d.Size, most)
	d.Scale = min(d.Scale, most/d.Size)
	if len(d.Holes) > maxHoles {
		return &PlaceError{Part: "hole", Index: maxHoles, Msg: fmt.Sprintf("want at most %d holes, found %d", maxHoles, len(d.Holes))}
	}
	return checkHoles(d)
}

func checkSizes(d *Domain) error {
	bad := func(x float64) bool { return !(x > 0) || math.IsInf(x, 0) }
	if bad(d.Size) || bad(d.Scale) || bad(d.Size*d.Scale) {
		return &PlaceError{Part: "size", Msg: fmt.Sprintf("want an edge length and a scale above 0, found %g mm and %g", d.Size, d.Scale)}
	}
	for _, f := range d.Fine {
		if bad(f.Size) || !(f.Radius >= 0) || math.IsInf(f.Radius, 0) || len(f.Along) == 0 || len(f.Along) > maxFinePts {
			return &PlaceError{Part: "size", Msg: fmt.Sprintf("want a fine zone with 1 to %d points, a radius of at least 0 and an edge length above 0, found %d points, %g mm and %g mm", maxFinePts, len(f.Along), f.Radius, f.Size)}
		}
		for _, p := range f.Along {
			if checkNumbers([]Point{p}) != nil {
				return &PlaceError{Part: "size", At: p, Msg: fmt.Sprintf("a fine zone has a point at (%g, %g) mm", p[0], p[1])}
			}
		}
	}
	return nil
}

// asPlace turns the error of the triangulation into one about the domain.
func (s *arcSet) asPlace(err error) error {
	var cross *delaunay.CrossError
	if errors.As(err, &cross) {
		a, b := &s.arcs[cross.New.Curve], &s.arcs[cross.Old.Curve]
		return a.fault(cross.At, fmt.Sprintf("too close to %s to be meshed", b.name()))
	}
	return &PlaceError{Part: "size", Msg: err.Error()}
}
