package shape

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"archload/cases/casetest"
	"archload/mesh"
	"archload/mesh/plane"
)

// graduated is the geometry of a plate with a table of thicknesses.
func graduated(t *testing.T, kind, rows string) *Geometry {
	t.Helper()
	text := strings.Replace(casetest.TopText, "thickness = 5", `thickness = { `+kind+` = "t.csv" }`, 1) + casetest.RestText
	g, err := NewGeometry(casetest.Load(t, casetest.Files("a.toml", text, "t.csv", rows), "a.toml"))
	if err != nil {
		t.Fatal(err)
	}
	return g
}

// TestGraduationHeld measures rings of thickness that stop short of the edge, and the
// thin side of a slope: nowhere is the plate thinner or thicker than measured, and
// beyond the last reading it stays what it was there.
func TestGraduationHeld(t *testing.T) {
	points, contours := "x_mm,y_mm,thickness_mm\n0,5,6.2\n", "line,thickness_mm,x_mm,y_mm\n"
	for k, z := range []float64{6, 5.2, 4.4, 4} {
		for i := range 24 {
			s, c := math.Sincos(2 * math.Pi * float64(i) / 24)
			r := 30 + 28*float64(k)
			points += fmt.Sprintf("%.0f,%.0f,%g\n", r*c, 1.2*r*s, z)
			contours += fmt.Sprintf("%d,%g,%.1f,%.1f\n", k, z, r*c, 1.2*r*s)
		}
	}
	for _, c := range []struct {
		kind, rows string
		least      float64
		most       float64
	}{{"points", points, 4, 6.2}, {"contours", contours, 4, 6}} {
		g := graduated(t, c.kind, c.rows)
		for x := -195.0; x <= 195; x += 5 {
			for y := -245.0; y <= 235; y += 5 {
				if z := g.Plate.Thickness.At(mesh.Point{x, y}).Z; z < c.least || z > c.most {
					t.Fatalf("%s: %.3f mm at (%g, %g), measured %g to %g", c.kind, z, x, y, c.least, c.most)
				}
			}
		}
		if again, err := FitGeometry(g.Case, g, []string{"plate.wood"}); err != nil || again.Plate != g.Plate {
			t.Errorf("%s: another plate in other wood (%v), want the same", c.kind, err)
		}
		at := func(x, y float64) float64 { return g.Plate.Thickness.At(mesh.Point{x, y}).Z }
		if a, b := at(0, 136.8), at(0, 230); math.Abs(a-b) > 1e-9 || math.Abs(a-4) > 0.15 {
			t.Errorf("%s: %.3f mm at the last reading and %.3f beyond it, want 4 and the same", c.kind, a, b)
		}
	}
}

// TestGraduationJet holds the derivatives to differences, inside the hull of the data,
// beside a side of it and where it is held.
func TestGraduationJet(t *testing.T) {
	g := &graduation{fit: bowl(300), least: 0.7, most: 12, hull: plane.Hull([]mesh.Point{{-80, -60}, {80, -50}, {60, 70}, {-60, 70}})}
	for _, p := range []mesh.Point{{20, 30}, {0, 90}, {110, 10}, {150, 150}, {1, 2}, {5, -80}} {
		const h = 1e-4
		j := g.At(p)
		x1, x0 := g.At(mesh.Point{p[0] + h, p[1]}), g.At(mesh.Point{p[0] - h, p[1]})
		y1, y0 := g.At(mesh.Point{p[0], p[1] + h}), g.At(mesh.Point{p[0], p[1] - h})
		for k, v := range [][2]float64{{j.Zx, (x1.Z - x0.Z) / (2 * h)}, {j.Zy, (y1.Z - y0.Z) / (2 * h)},
			{j.Zxx, (x1.Zx - x0.Zx) / (2 * h)}, {j.Zxy, (y1.Zx - y0.Zx) / (2 * h)}, {j.Zyy, (y1.Zy - y0.Zy) / (2 * h)}} {
			if math.Abs(v[0]-v[1]) > 1e-6 {
				t.Errorf("at %v: derivative %d is %.8f, by differences %.8f", p, k, v[0], v[1])
			}
		}
	}
}

// TestGraduationMisfits measures one place much thicker than all around it: the row
// is named with what is used there.
func TestGraduationMisfits(t *testing.T) {
	rows := "x_mm,y_mm,thickness_mm\n0,0,5.4\n"
	for i := range 12 {
		s, c := math.Sincos(2 * math.Pi * float64(i) / 12)
		rows += fmt.Sprintf("%.0f,%.0f,4\n%.0f,%.0f,4\n", 60*c, 60*s, 120*c, 120*s)
	}
	var got []string
	for _, w := range graduated(t, "points", rows).Warnings {
		got = append(got, w.Error())
	}
	if text := strings.Join(got, "\n"); !strings.Contains(text, "t.csv:2: thickness: ") || !strings.Contains(text, "where 5.4 was measured") {
		t.Errorf("warnings %q, want row 2 named with 5.4 mm", text)
	}
}
