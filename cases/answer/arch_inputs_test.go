package answer

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"testing/fstest"

	"archload/cases"
	"archload/cases/casetest"
	"archload/cases/design"
	"archload/cases/shape"
	"archload/mesh"
	"archload/mesh/plane"
	"archload/mesh/surface"
)

// formulaText is the course guitar with the arch from which its tables were
// read.
const formulaText = `format = 1
base = "course-guitar"
plate.arch.formula = { height = 22, apex = [0, 10], recurve_depth = 1.6 }
`

// sinkOf solves a case on triangles of 1/0.7 times the usual size and returns
// how far its bridge sinks, mm.
func sinkOf(t *testing.T, c *cases.Case) float64 {
	t.Helper()
	s, err := design.Solve(context.Background(), c, design.Options{Workers: 2, Refine: 0.7, NoError: true})
	if err != nil {
		t.Fatal(err)
	}
	return Sink(s)
}

// courseArch returns the outline and the arch of the formula case.
func courseArch(t *testing.T) (*cases.Case, *plane.Curve, surface.Surface) {
	t.Helper()
	c := casetest.Load(t, casetest.Files("f.toml", formulaText), "f.toml")
	g, err := shape.NewGeometry(c)
	if err != nil {
		t.Fatal(err)
	}
	return c, g.Outline, g.Plate.Outer
}

// templateTable samples five cross arches, the long arch and sixteen edge
// profiles, rounded to 0.1 mm as a maker reads them.
func templateTable(t *testing.T, outline *plane.Curve, arch surface.Surface) string {
	t.Helper()
	var b strings.Builder
	b.WriteString("station,x_mm,y_mm,height_mm\n")
	row := func(name string, p mesh.Point) {
		fmt.Fprintf(&b, "%s,%.1f,%.1f,%.1f\n", name, p[0], p[1], arch.At(p).Z)
	}
	for _, y := range []float64{-130, -60, 10, 128, 230} {
		for x := -200.0; x <= 200; x += 5 {
			if p := (mesh.Point{x, y}); outline.Contains(p) {
				row(fmt.Sprintf("cross arch at %g", y), p)
			}
		}
	}
	for y := -195.0; y <= 305; y += 5 {
		row("long arch", mesh.Point{0, y})
	}
	spots := []float64{4, 8, 12, 16, 20, 24, 28, 32, 36, 40, 44, 48}
	lines, err := surface.EdgeProfiles(arch, outline, 16, spots, surface.ContourOptions{Round: 0.1})
	if err != nil {
		t.Fatal(err)
	}
	for i, l := range lines {
		row(fmt.Sprintf("edge profile %d", i/len(spots)+1), l.Points[0])
	}
	return b.String()
}

// pointTable samples 1500 places at random with a noise of 0.1 mm.
func pointTable(outline *plane.Curve, arch surface.Surface) string {
	rng := rand.New(rand.NewPCG(7, 11))
	var b strings.Builder
	b.WriteString("x_mm,y_mm,height_mm\n")
	for n := 0; n < 1500; {
		p := mesh.Point{-205 + 410*rng.Float64(), -200 + 510*rng.Float64()}
		if outline.Contains(p) {
			fmt.Fprintf(&b, "%.2f,%.2f,%.3f\n", p[0], p[1], arch.At(p).Z+0.1*rng.NormFloat64())
			n++
		}
	}
	return b.String()
}

// TestSameSinkFromTemplatesAndPoints wants the same sink within 1.5 % from an
// arch read off with templates, and from one measured at random with noise.
func TestSameSinkFromTemplatesAndPoints(t *testing.T) {
	t.Parallel()
	c, outline, arch := courseArch(t)
	want := sinkOf(t, c)
	for _, k := range []struct{ keys, table string }{
		{"plate.arch.templates = \"a.csv\"\n", templateTable(t, outline, arch)},
		{"plate.arch.points = \"a.csv\"\nplate.arch.noise = 0.1\n", pointTable(outline, arch)},
	} {
		c := casetest.Load(t, casetest.Files("c.toml", "format = 1\nbase = \"course-guitar\"\n"+k.keys, "a.csv", k.table), "c.toml")
		got := sinkOf(t, c)
		t.Logf("%.30s: sink %.4f mm, from the formula %.4f (%+.2f %%)", k.keys, got, want, 100*(got/want-1))
		if math.Abs(got/want-1) > 0.015 {
			t.Errorf("%s sink %.4f mm, want %.4f within 1.5 %%", k.keys, got, want)
		}
	}
}

// TestThicknessFromTemplates reads a graduation from 5 mm in the middle to 3.5
// at the edge off two crossing templates and profiles between them.
func TestThicknessFromTemplates(t *testing.T) {
	thick := func(p mesh.Point) float64 { return 5 - 1.5*math.Min(1, (p[0]*p[0]+p[1]*p[1])/4e4) }
	var b strings.Builder
	b.WriteString("station,x_mm,y_mm,height_mm\n")
	for k := range 8 {
		s, c := math.Sincos(math.Pi * float64(k) / 8)
		for u := -200.0; u <= 200; u += 10 {
			p := mesh.Point{u * c, u * s}
			if math.Abs(p[0]) < 115 {
				fmt.Fprintf(&b, "template %d,%.2f,%.2f,%.2f\n", k, p[0], p[1], thick(p))
			}
		}
	}
	text := strings.Replace(casetest.TopText, "thickness = 5", `thickness = { templates = "t.csv" }`, 1) + casetest.RestText
	c := casetest.Load(t, fstest.MapFS{"a.toml": {Data: []byte(text)}, "t.csv": {Data: []byte(b.String())}}, "a.toml")
	g, err := shape.NewGeometry(c)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range []mesh.Point{{0, 0}, {60, 20}, {-40, 110}, {10, -150}} {
		if got := g.Plate.Thickness.At(p).Z; !casetest.Near(got, thick(p), 0.05) {
			t.Errorf("thickness at %v = %.3f mm, want %.3f", p, got, thick(p))
		}
	}
}

// TestSameSinkFromDrawing wants the drawn course guitar to sink as the one in
// tables does, within 1 %.
func TestSameSinkFromDrawing(t *testing.T) {
	t.Parallel()
	var sink [2]float64
	for i, name := range []string{"course-guitar", "course-guitar-svg"} {
		c, err := cases.Open(casetest.Files(), name)
		if err != nil {
			t.Fatal(err)
		}
		if w := c.Warnings(); len(w) > 0 {
			t.Errorf("%s: %v", name, w)
		}
		sink[i] = sinkOf(t, c)
	}
	t.Logf("sink %.5f mm from tables, %.5f mm from the drawing (%+.2f %%)", sink[0], sink[1], 100*(sink[1]/sink[0]-1))
	if math.Abs(sink[1]/sink[0]-1) > 0.01 {
		t.Errorf("sink %.5f mm from the drawing, want %.5f within 1 %%", sink[1], sink[0])
	}
}
