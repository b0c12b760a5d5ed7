package main

import (
	"bytes"
	"fmt"
	"math"

	"archload/mesh"
	"archload/mesh/plane"
	"archload/mesh/surface"
)

// The course's octave mandola: pear-shaped, the bridge at the origin, 150 mm
// from the tail.
const (
	pearHalf   = 160.0 // mm, half the width at mid-length
	pearSwell  = 0.28  // how much the tail half is fuller than the neck half
	pearTail   = -150.0
	pearNeck   = 240.0
	pearPoints = 36

	pearRim     = 5.0  // mm, height of the outer surface at the outline
	pearApex    = 18.0 // mm
	pearApexY   = 10.0 // mm
	pearRecurve = 1.2  // mm taken off by the trough
	pearTrough  = 18.0 // mm from the outline
	stationStep = 5.0  // mm between the points of a template
	profilePear = 16
)

// pearOutline is anticlockwise from the tail: x = W sin t (1 + s cos t).
func pearOutline() []mesh.Point {
	mid, half := (pearTail+pearNeck)/2, (pearNeck-pearTail)/2
	pts := make([]mesh.Point, pearPoints)
	for i := range pts {
		s, c := math.Sincos(2 * math.Pi * float64(i) / pearPoints)
		pts[i] = mesh.Point{rounded(pearHalf*s*(1+pearSwell*c), 10), rounded(mid-half*c, 10)}
	}
	return pts
}

// mandolaTables writes the outline and the arch as templates: five cross
// arches, the long arch and sixteen edge profiles.
func mandolaTables() ([]table, error) {
	body := pearOutline()
	curve, err := plane.NewCurve(body, nil)
	if err != nil {
		return nil, err
	}
	s, err := surface.NewFormula(surface.FormulaSpec{Outline: curve, Height: pearApex, Rim: pearRim,
		Apex: mesh.Point{0, pearApexY}, RecurveDepth: pearRecurve, RecurveAt: pearTrough})
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	b.WriteString("station,x_mm,y_mm,height_mm\n")
	row := func(name string, p mesh.Point) {
		fmt.Fprintf(&b, "%s,%g,%g,%g\n", name, p[0], p[1], rounded(s.At(p).Z, 10))
	}
	for _, y := range []float64{-100, -50, 0, 60, 130} {
		for x := -200.0; x <= 200; x += stationStep {
			if p := (mesh.Point{x, y}); curve.Contains(p) {
				row(fmt.Sprintf("cross arch at %g", y), p)
			}
		}
	}
	for y := pearTail + stationStep; y < pearNeck; y += stationStep {
		row("long arch", mesh.Point{0, y})
	}
	var spots []float64
	for d := profileStep; d <= 40; d += profileStep {
		spots = append(spots, d)
	}
	lines, err := surface.EdgeProfiles(s, curve, profilePear, spots, surface.ContourOptions{Round: 0.1})
	if err != nil {
		return nil, err
	}
	for k, l := range lines {
		name := fmt.Sprintf("edge profile %d", k/len(spots)+1)
		for _, p := range l.Points {
			fmt.Fprintf(&b, "%s,%g,%g,%g\n", name, p[0], p[1], l.Height)
		}
	}
	return []table{{"mandola-outline.csv", pointTable(body)}, {"mandola-templates.csv", b.Bytes()}}, nil
}
