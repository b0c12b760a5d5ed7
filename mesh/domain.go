package mesh

import (
	"fmt"

	"archload/mesh/plane"
)

// Domain is what Triangulate fills with triangles. Only Outline is needed.
type Domain struct {
	Outline *plane.Curve
	Holes   []*plane.Curve // cut out
	Lines   [][]Point      // polylines that become chains of edges: braces, mm
	Seams   [][]Point      // the same, but no chain of them is asked for: their order and direction do not matter
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

// PlaceError says which part of a Domain cannot be meshed, and where. Seams are
// told as lines behind the others.
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

// curves lists the outline and the holes.
func (d *Domain) curves() []*plane.Curve {
	return append([]*plane.Curve{d.Outline}, d.Holes...)
}

// inWood tells whether p lies in the plate and in no hole.
func (d *Domain) inWood(p Point) bool {
	if !d.Outline.Contains(p) {
		return false
	}
	for _, h := range d.Holes {
		if h.Contains(p) {
			return false
		}
	}
	return true
}
