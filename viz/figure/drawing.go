package figure

import (
	"math"

	"archload/mesh"
	"archload/viz/canvas"
)

// Drawing is what is drawn over a field in plan. All points are mm, x across
// (treble positive), y along (neck positive). Every part may be empty.
type Drawing struct {
	Outline  []mesh.Point   // the plate's edge, closed, not repeated
	Holes    [][]mesh.Point // sound holes, closed
	Braces   []Strip        // on the underside, drawn dashed
	Feet     [][]mesh.Point // bearing areas of the bridge, closed
	Strings  [][]mesh.Point // centre lines
	Flow     [][]mesh.Point // lines of equal force
	FlowNote string         // what one of them carries: "each line carries 5 N"
	Sand     [][]mesh.Point // lines that stay still in a tone
	Rim      *RimHold       // what holds the edge up; nil: not shown
	Gauges   []Mark
	Grain    float64 // turn of the grain from the centre line, degrees, anticlockwise seen from outside
}

// Strip is a brace in plan.
type Strip struct {
	Name string
	Line []mesh.Point // centre line, mm
	Half []float64    // half width, mm: one value, or one per point of Line
}

// ribbon returns the edge of a brace in plan, mm.
func ribbon(b Strip) []mesh.Point {
	n := len(b.Line)
	if n < 2 || len(b.Half) == 0 {
		return b.Line
	}
	out := make([]mesh.Point, 2*n)
	for i, q := range b.Line {
		p, r := b.Line[max(i-1, 0)], b.Line[min(i+1, n-1)]
		l := math.Hypot(r[0]-p[0], r[1]-p[1])
		if l == 0 {
			l = 1
		}
		h := b.Half[min(i, len(b.Half)-1)]
		nx, ny := -h*(r[1]-p[1])/l, h*(r[0]-p[0])/l
		out[i] = mesh.Point{q[0] + nx, q[1] + ny}
		out[2*n-1-i] = mesh.Point{q[0] - nx, q[1] - ny}
	}
	return out
}

// Mark is a place with a reading: a dial gauge, or the worst place.
type Mark struct {
	Name     string
	At       mesh.Point // mm
	Value    float64    // in Unit; NaN: none
	Unit     string
	Measured *float64 // reading on the bench, in Unit; nil: none
	Worst    bool     // drawn as a triangle: the place of the greatest value
	Post     bool     // drawn as a square: a post between top and back
}

// RimHold is what holds the plate's edge up, N, and how it is spread along the
// edge.
type RimHold struct {
	Neck, Tail, Bass, Treble float64 // N
	Load                     float64 // N, of which they are the shares
	Bars                     []EdgeForce
}

// EdgeForce is the upward hold at one place of the edge.
type EdgeForce struct {
	At     mesh.Point // mm; anticlockwise from one to the next
	PerMM  float64    // N/mm of edge
	Sector string     // the part of the edge it belongs to
}

// PlanInput is what PlanView draws.
type PlanInput struct {
	Caption canvas.Caption
	Plan    *mesh.Plan // needed if there is a field
	Field   *Field     // nil: the bare plate
	Drawing Drawing
}
