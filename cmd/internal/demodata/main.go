// Command demodata writes the tables of the bundled course guitar: outline,
// f-hole and the contour lines of two arches. All of it is invented for a
// lutherie course and follows from the few numbers in this program; run it
// again after changing them:
//
//	go run ./cmd/internal/demodata -o cases/bundled
//
// outline.csv holds the body outline, f-hole.csv the treble f-hole;
// arch-contours.csv is an arch with its apex on the centre line,
// arch-contours-treble.csv the same with the apex 22 mm to the treble;
// course-guitar.svg is the first of them, with outline and f-hole, as a
// drawing. An arch
// is given as a maker would take it off a finished one: contour lines every
// 3 mm, the apex, and sixteen edge profiles square to the outline.
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"

	"archload/mesh"
	"archload/mesh/plane"
	"archload/mesh/surface"
)

func main() {
	dir := flag.String("o", ".", "folder to write the tables to")
	flag.Parse()
	if err := run(*dir); err != nil {
		fmt.Fprintln(os.Stderr, "demodata:", err)
		os.Exit(1)
	}
}

// run writes all tables to dir.
func run(dir string) error {
	files, err := tables()
	if err != nil {
		return err
	}
	for _, f := range files {
		if err := os.WriteFile(filepath.Join(dir, f.name), f.data, 0o644); err != nil {
			return err
		}
	}
	return nil
}

// tables makes all tables.
func tables() ([]table, error) {
	body := bodyOutline()
	hole, err := fHole()
	if err != nil {
		return nil, err
	}
	out := []table{{"outline.csv", pointTable(body)}, {"f-hole.csv", pointTable(hole)}}
	curve, err := plane.NewCurve(body, nil)
	if err != nil {
		return nil, err
	}
	for _, a := range []struct {
		name string
		apex mesh.Point
	}{
		{"arch-contours.csv", mesh.Point{0, apexY}},
		{"arch-contours-treble.csv", mesh.Point{apexAside, apexY}},
	} {
		lines, err := archLines(curve, a.apex)
		if err != nil {
			return nil, err
		}
		out = append(out, table{a.name, contourTable(lines)})
		if a.apex[0] == 0 {
			svg, err := drawing(hole, lines)
			if err != nil {
				return nil, err
			}
			out = append(out, table{"course-guitar.svg", svg})
		}
	}
	mandola, err := mandolaTables()
	if err != nil {
		return nil, err
	}
	return append(out, mandola...), nil
}

// arch returns the surface from which the tables are read.
func arch(outline plane.Region, apex mesh.Point) (surface.Surface, error) {
	return surface.NewFormula(surface.FormulaSpec{
		Outline: outline, Height: apexHeight, Rim: rimHeight, Apex: apex, RecurveDepth: recurveDepth,
	})
}

// archLines reads contour lines, the apex and edge profiles off the arch,
// rounded to 0.1 mm.
func archLines(outline plane.Region, apex mesh.Point) ([]surface.ContourLine, error) {
	s, err := arch(outline, apex)
	if err != nil {
		return nil, err
	}
	var levels, spots []float64
	for z := 2 * contourStep; z < apexHeight; z += contourStep {
		levels = append(levels, z)
	}
	for d := profileStep; d <= profileEnd; d += profileStep {
		spots = append(spots, d)
	}
	o := surface.ContourOptions{Round: 0.1}
	lines, err := surface.Contours(s, outline, levels, o)
	if err != nil {
		return nil, err
	}
	profiles, err := surface.EdgeProfiles(s, outline, profileCount, spots, o)
	if err != nil {
		return nil, err
	}
	top := surface.ContourLine{ID: "apex", Height: apexHeight, Points: []mesh.Point{apex}}
	return slices.Concat(lines, []surface.ContourLine{top}, profiles), nil
}
