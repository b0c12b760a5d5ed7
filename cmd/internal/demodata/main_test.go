package main

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"archload/mesh"
	"archload/mesh/plane"
	"archload/mesh/surface"
)

const bundled = "../../../cases/bundled"

func TestBundledTablesAreWhatThisProgramWrites(t *testing.T) {
	files, err := tables()
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		want, err := os.ReadFile(filepath.Join(bundled, f.name))
		if err != nil {
			t.Fatal(err)
		}
		if err := sameTable(f.data, want); err != nil {
			t.Errorf("%s: %v; run the program again", f.name, err)
		}
	}
}

// sameTable compares two tables; numbers may differ by one step of their
// rounding, since machines differ in the last bits.
func sameTable(got, want []byte) error {
	g, w := strings.Split(string(got), "\n"), strings.Split(string(want), "\n")
	if len(g) != len(w) {
		return fmt.Errorf("got %d lines, want %d", len(g), len(w))
	}
	for i := range g {
		a, b := strings.FieldsFunc(g[i], cellBreak), strings.FieldsFunc(w[i], cellBreak)
		for k := range min(len(a), len(b)) {
			x, errX := strconv.ParseFloat(a[k], 64)
			y, errY := strconv.ParseFloat(b[k], 64)
			numbers := errX == nil && errY == nil
			if numbers && math.Abs(x-y) > 0.101 || !numbers && a[k] != b[k] || len(a) != len(b) {
				return fmt.Errorf("line %d: got %q, want %q", i+1, g[i], w[i])
			}
		}
	}
	return nil
}

// cellBreak parts the numbers of a table or a drawing.
func cellBreak(r rune) bool { return strings.ContainsRune(", \"", r) }

// parts are the curves of the course guitar, made from the tables' points.
func parts(t *testing.T) (outline, hole *plane.Curve) {
	t.Helper()
	outline, err := plane.NewCurve(bodyOutline(), nil)
	if err != nil {
		t.Fatal(err)
	}
	pts, err := fHole()
	if err != nil {
		t.Fatal(err)
	}
	if hole, err = plane.NewCurve(pts, nil); err != nil {
		t.Fatal(err)
	}
	return outline, hole
}

func TestBodyMeasures(t *testing.T) {
	outline, hole := parts(t)
	lo, hi := outline.Bounds()
	holeLo, holeHi := hole.Bounds()
	for _, c := range []struct {
		what           string
		got, want, tol float64 // mm
		source         string
	}{
		{"lower bout", hi[0] - lo[0], 406, 1, "16 inches"},
		{"length", hi[1] - lo[1], 510, 0.5, "course plan"},
		{"tail", lo[1], -200, 0.3, "course plan"},
		{"f-hole length", holeHi[1] - holeLo[1], 130, 5, "course plan"},
	} {
		if math.Abs(c.got-c.want) > c.tol {
			t.Errorf("%s = %.2f mm, want %g ± %g (%s)", c.what, c.got, c.want, c.tol, c.source)
		}
	}
}

func TestBodyIsSymmetric(t *testing.T) {
	has := map[mesh.Point]bool{}
	for _, p := range bodyOutline() {
		has[p] = true
	}
	for p := range has {
		if !has[mesh.Point{-p[0] + 0, p[1]}] {
			t.Errorf("point %v has no mirror image", p)
		}
	}
}

// barHalf is half the width of the tone bars, mm.
const barHalf = 3.5

// between returns points along a straight line, about 1 mm apart.
func between(a, b mesh.Point) []mesh.Point {
	n := int(math.Hypot(b[0]-a[0], b[1]-a[1])) + 1
	out := make([]mesh.Point, n+1)
	for i := range out {
		u := float64(i) / float64(n)
		out[i] = mesh.Point{a[0] + u*(b[0]-a[0]), a[1] + u*(b[1]-a[1])}
	}
	return out
}

func clearance(c *plane.Curve, pts []mesh.Point) float64 {
	d := math.Inf(1)
	for _, p := range pts {
		d = min(d, c.Distance(p))
	}
	return d
}

func TestClearances(t *testing.T) {
	outline, hole := parts(t)
	bar := between(mesh.Point{36, 120}, mesh.Point{44, -135})
	edge := hole.Polyline(0.02)
	foot := between(mesh.Point{66, -6.5}, mesh.Point{66, 6.5})
	for _, c := range []struct {
		what        string
		got, atLeas float64 // mm
	}{
		{"f-hole to outline", clearance(outline, edge), 4},
		{"f-hole to edge of tone bar", clearance(hole, bar) - barHalf, 4},
		{"tone bar to outline", clearance(outline, bar), 4},
		{"f-hole to bridge foot", clearance(hole, foot), 6},
	} {
		t.Logf("%s: %.1f mm", c.what, c.got)
		if c.got <= c.atLeas {
			t.Errorf("%s = %.2f mm, want more than %g", c.what, c.got, c.atLeas)
		}
	}
	for _, p := range append(edge, bar...) {
		if !outline.Contains(p) {
			t.Fatalf("point %v lies outside the body", p)
		}
	}
}

func TestArchTablesGiveTheArchBack(t *testing.T) {
	outline, _ := parts(t)
	for _, apex := range []mesh.Point{{0, apexY}, {apexAside, apexY}} {
		want, err := arch(outline, apex)
		if err != nil {
			t.Fatal(err)
		}
		lines, err := archLines(outline, apex)
		if err != nil {
			t.Fatal(err)
		}
		rim := rimHeight
		got, report, err := surface.Fit(surface.Data{Outline: outline, Lines: lines, Rim: &rim})
		if err != nil {
			t.Fatal(err)
		}
		if len(report.Warnings) > 0 || !report.Trough {
			t.Errorf("apex %v: warnings %v, trough %v; want none and a trough", apex, report.Warnings, report.Trough)
		}
		worst, floor, steep := 0.0, rimHeight, 0.0
		for x := -200.0; x <= 200; x += 5 {
			for y := -195.0; y <= 305; y += 5 {
				p := mesh.Point{x, y}
				if !outline.Contains(p) || outline.Distance(p) < 3 {
					continue
				}
				w, g := want.At(p), got.At(p)
				worst = max(worst, math.Abs(w.Z-g.Z))
				floor = min(floor, w.Z)
				steep = max(steep, math.Atan(math.Hypot(w.Zx, w.Zy))*180/math.Pi)
			}
		}
		t.Logf("apex %v: fit off by at most %.2f mm, trough floor %.2f mm, steepest %.1f°", apex, worst, floor, steep)
		if worst > 0.5 {
			t.Errorf("apex %v: fit off by %.2f mm, want at most 0.5", apex, worst)
		}
		if d := rimHeight - floor; d < 1 || d > 2 {
			t.Errorf("apex %v: trough %.2f mm below the rim, want 1 to 2", apex, d)
		}
	}
}

func TestCourseGuitarCanBeMeshed(t *testing.T) {
	outline, hole := parts(t)
	plan, err := mesh.Triangulate(mesh.Domain{
		Outline: outline,
		Holes:   []*plane.Curve{hole, hole.Mirrored()},
		Lines:   [][]mesh.Point{{{-36, 120}, {-44, -135}}, {{36, 120}, {44, -135}}},
		Size:    8,
	})
	if err != nil {
		t.Fatal(err)
	}
	shape, err := arch(outline, mesh.Point{0, apexY})
	if err != nil {
		t.Fatal(err)
	}
	m := mesh.Lift(plan, mesh.Plate{Outer: shape, Thickness: surface.Flat(5)})
	inPlan := 5 * (outline.Area() - 2*hole.Area()) // mm³, of a flat plate
	if r := m.Volume() / inPlan; r < 1.005 || r > 1.05 {
		t.Errorf("volume = %.4f of the flat plate's, want 1.005 to 1.05 (slopes up to 16°)", r)
	}
}
