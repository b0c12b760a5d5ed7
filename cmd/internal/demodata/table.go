package main

import (
	"bytes"
	"fmt"

	"archload/mesh"
	"archload/mesh/surface"
)

// table is one CSV file.
type table struct {
	name string
	data []byte
}

// The arches: heights of the outer surface above the rim's gluing surface.
const (
	rimHeight    = 5.0  // mm
	apexHeight   = 22.0 // mm
	apexY        = 10.0 // mm
	apexAside    = 22.0 // mm to the treble, of the second arch
	recurveDepth = 1.6  // mm taken off by the trough; its floor then lies about 1.2 below the rim
	contourStep  = 3.0  // mm
	profileCount = 16
	profileStep  = 4.0  // mm between the spots of a profile
	profileEnd   = 48.0 // mm from the outline
)

// pointTable writes x and y.
func pointTable(pts []mesh.Point) []byte {
	var b bytes.Buffer
	b.WriteString("x_mm,y_mm\n")
	for _, p := range pts {
		fmt.Fprintf(&b, "%g,%g\n", p[0], p[1])
	}
	return b.Bytes()
}

// contourTable writes contour lines and spots.
func contourTable(lines []surface.ContourLine) []byte {
	var b bytes.Buffer
	b.WriteString("line,height_mm,x_mm,y_mm\n")
	for _, l := range lines {
		for _, p := range l.Points {
			fmt.Fprintf(&b, "%s,%g,%g,%g\n", l.ID, l.Height, p[0], p[1])
		}
	}
	return b.Bytes()
}
