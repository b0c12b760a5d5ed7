package design

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"archload/cases"
	"archload/cases/casetest"
	"archload/cases/shape"
	"archload/cases/tree"
	"archload/mesh"
	"archload/mesh/plane"
)

// plainMarks are the marks of a drawing with the origin at (300, 300), neck up.
const plainMarks = `<circle id="origin" cx="300" cy="300" r="1"/><circle id="neck" cx="300" cy="20" r="1"/><circle id="treble" cx="500" cy="300" r="1"/>`

// page wraps shapes into a drawing of 600 x 600 mm.
func page(shapes string) string {
	return `<svg xmlns="http://www.w3.org/2000/svg" width="600mm" height="600mm" viewBox="0 0 600 600">` + shapes + `</svg>`
}

// Drawn reads the element "outline" of a drawing.
func drawn(t *testing.T, svg string) (*plane.Curve, *cases.Case) {
	t.Helper()
	c := casetest.Load(t, fstest.MapFS{"a.toml": {Data: []byte("format = 1\nbase = \"first\"\nplate.outline = \"top.svg#outline\"\n")}, "top.svg": {Data: []byte(svg)}}, "a.toml")
	curve, err := plane.NewCurve(c.Plate.Outline.Points, c.Plate.Outline.Corner)
	if err != nil {
		t.Fatal(err)
	}
	return curve, c
}

// TestShapes compares area and extent with the formulas for each shape.
func TestShapes(t *testing.T) {
	ring := func(n int, r float64) string {
		var b strings.Builder
		for k := range n {
			s, c := math.Sincos(2 * math.Pi * float64(k) / float64(n))
			fmt.Fprintf(&b, "%.4f,%.4f ", 300+r*c, 300+r*s)
		}
		return b.String()
	}
	for _, c := range []struct {
		shape string
		area  float64 // mm²
		tol   float64 // relative
	}{
		{`<circle id="outline" cx="300" cy="300" r="150"/>`, math.Pi * 150 * 150, 1e-6},
		{`<ellipse id="outline" cx="300" cy="300" rx="150" ry="200"/>`, math.Pi * 150 * 200, 1e-5},
		{`<rect id="outline" x="200" y="100" width="200" height="400"/>`, 80000, 1e-12},
		{`<rect id="outline" x="200" y="100" width="200" height="400" rx="40"/>`, 80000 - (4-math.Pi)*1600, 1e-5},
		{`<polygon id="outline" points="200,100 400,100 400,500 200,500"/>`, 80000, 1e-12},
		{`<polyline id="outline" points="200,100 400,100 400,500 200,500 200,100"/>`, 80000, 1e-12},
		{`<path id="outline" d="M300 100A200 200 0 0 1 300 500A200 200 0 0 1 300 100Z"/>`, math.Pi * 200 * 200, 1e-6},
		{`<path id="outline" d="M200 200H400V400H200Z"/>`, 40000, 1e-12},
		{`<path id="outline" d="M200 200H400A100 100 0 0 1 400 400H200A100 100 0 0 1 200 200Z"/>`, 40000 + math.Pi*1e4, 1e-4},
		{`<polygon id="outline" points="` + ring(72, 150) + `"/>`, math.Pi * 150 * 150, 1e-5},                                                                                                       // a circle as points
		{`<polygon id="outline" points="` + ring(12, 150) + `"/>`, 12.0 / 2 * 150 * 150 / 2, 1e-6},                                                                                                  // a dodecagon: n/2 r² sin(2 pi/n)
		{`<g id="outline" transform="rotate(30 300 300)"><rect x="200" y="200" width="200" height="200" transform="translate(300 300) scale(.5 1.5) translate(-300 -300)"/></g>`, 100 * 300, 2e-11}, // of coordinates rounded to 1e-9 mm
		{`<rect id="outline" x="0" y="0" width="200" height="100" transform="matrix(1 0 1 2 150 100)"/>`, 200 * 100 * 2, 1e-12},
	} {
		curve, _ := drawn(t, page(plainMarks+c.shape))
		if got := curve.Area(); math.Abs(got/c.area-1) > c.tol {
			t.Errorf("%.90s: area %.4f mm², want %.4f within %g", c.shape, got, c.area, c.tol)
		}
	}
}

// TestUnitsOfThePage reads the same rectangle of 10 x 20 in from pages in
// several units.
func TestUnitsOfThePage(t *testing.T) {
	for _, c := range []struct{ width, height, box string }{
		{"508mm", "609.6mm", "0 0 20 24"}, {"50.8cm", "60.96cm", "0 0 20 24"}, {"20in", "24in", "0 0 20 24"},
		{"1440pt", "1728pt", "0 0 20 24"}, {"120pc", "144pc", "0,0,20,24"}, {"508mm", "609.6mm", "-7 3 20 24"},
	} {
		svg := fmt.Sprintf(`<svg width="%s" height="%s" viewBox="%s"><circle id="origin" cx="10" cy="12" r="0.1"/>`+
			`<circle id="tail" cx="10" cy="23" r="0.1"/><circle id="bass" cx="1" cy="12" r="0.1"/>`+
			`<rect id="outline" x="5" y="2" width="10" height="20"/></svg>`, c.width, c.height, c.box)
		curve, _ := drawn(t, svg)
		lo, hi := curve.Bounds()
		if !casetest.Near(lo[0], -127, 1e-9) || !casetest.Near(hi[0], 127, 1e-9) || !casetest.Near(lo[1], -254, 1e-9) || !casetest.Near(hi[1], 254, 1e-9) {
			t.Errorf("%s: from %v to %v mm, want 10 x 20 in about the origin", c.width, lo, hi)
		}
	}
}

// TestEveryWayUp draws one lopsided plate lying in every direction, from
// outside and from inside, and wants the same outline each time.
func TestEveryWayUp(t *testing.T) {
	shape := plainMarks + `<polygon id="outline" points="250,80 360,100 420,500 200,480"/>`
	want := []mesh.Point{{-50, 220}, {60, 200}, {120, -200}, {-100, -180}}
	for turn := 0; turn < 360; turn += 90 {
		for _, side := range []string{"1", "-1"} {
			svg := page(fmt.Sprintf(`<g transform="rotate(%d 300 300) translate(300 300) scale(%s 1) translate(-300 -300)">%s</g>`, turn, side, shape))
			_, c := drawn(t, svg)
			for _, w := range want {
				found := false
				for _, p := range c.Plate.Outline.Points {
					found = found || casetest.Near(p[0], w[0], 1e-9) && casetest.Near(p[1], w[1], 1e-9)
				}
				if !found {
					t.Errorf("turned %d, side %s: no point %v in %v", turn, side, w, c.Plate.Outline.Points)
				}
			}
			if told := strings.Contains(fmt.Sprint(c.Warnings()), "from inside"); told != (side == "-1") {
				t.Errorf("turned %d, side %s: told of the mirror image: %v", turn, side, told)
			}
		}
	}
}

// TestMarksOpposite places the plate by tail and bass alone.
func TestMarksOpposite(t *testing.T) {
	marks := `<path id="origin" d="M299 300h2m-1-1v2"/><rect inkling:label="Tail" x="299" y="590" width="2" height="2"/><g id="bass"><circle cx="60" cy="300" r="3"/></g>`
	svg := strings.Replace(page(marks+`<polygon id="outline" points="250,80 360,100 420,500 200,480"/>`), "<svg ", `<svg xmlns:inkling="urn:x" `, 1)
	_, c := drawn(t, svg)
	if got := c.Plate.Outline.Points[0]; !casetest.Near(got[0], 60, 1e-9) || !casetest.Near(got[1], 200, 1e-9) {
		t.Errorf("first corner at %v, want (60, 200)", got)
	}
}

// TestAsSavedByPrograms reads what drawing programs add: a document type with
// entities, names in attributes of their own, escaped ids, guides, styles of
// text on paths, clones and symbols among the definitions.
func TestAsSavedByPrograms(t *testing.T) {
	svg := `<?xml version="1.0" encoding="utf-8" standalone="no"?>
<!-- saved by a drawing program -->
<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "svg11.dtd" [ <!ENTITY ns_more "urn:more"> ]>
<svg version="1.1" xmlns:more="&ns_more;" xmlns="http://www.w3.org/2000/svg" id="svg5"
   width="600mm" height="600mm" viewBox="0 0 600 600">
  <more:view id="view7" more:units="mm"><more:guide id="neck2"/></more:view>
  <defs><symbol id="old"><path id="outline" d="M0 0"/></symbol></defs>
  <g more:label="marks" id="layer1">` + plainMarks + `</g>
  <g data-name="body shape" id="layer2" transform="translate(-5,-5)">
    <path style="fill:none;text-transform:none;stroke:#000" id="the_x20_outline" d="m 155,105 h 300 v 400 h -300 z" />
    <text id="t"><tspan>outline</tspan></text><use href="#old"/>
  </g>
</svg>`
	c := casetest.Load(t, fstest.MapFS{"a.toml": {Data: []byte("format = 1\nbase = \"first\"\nplate.outline = \"top.svg#the outline\"\n")}, "top.svg": {Data: []byte(svg)}}, "a.toml")
	lo, hi := plane.Bounds(c.Plate.Outline.Points)
	if lo != (mesh.Point{-150, -200}) || hi != (mesh.Point{150, 200}) {
		t.Errorf("outline from %v to %v, want 300 x 400 mm about the origin", lo, hi)
	}
}

// TestCornersOfDrawings wants corners where lines meet sharply and none where
// a curve runs on.
func TestCornersOfDrawings(t *testing.T) {
	_, c := drawn(t, page(plainMarks+`<path id="outline" d="M200 200H400A100 100 0 0 1 400 400H200Z"/>`))
	o := &c.Plate.Outline
	var at []mesh.Point
	for i, p := range o.Points {
		if o.Corner[i] {
			at = append(at, p)
		}
	}
	if len(at) != 2 || at[0] != (mesh.Point{-100, -100}) || at[1] != (mesh.Point{-100, 100}) {
		t.Errorf("corners at %v, want the two of the straight end", at)
	}
}

// TestContoursOfDrawing reads lines, groups, spots and thicknesses.
func TestContoursOfDrawing(t *testing.T) {
	svg := page(plainMarks + `<rect id="outline" x="150" y="100" width="300" height="400" rx="90"/>
<g id="arch"><g id="contour_8_mm"><title>eights</title><circle cx="300" cy="300" r="120"/></g>
<circle id="contour_14" cx="300" cy="300" r="60"/><circle id="apex_17.5_mm" cx="300" cy="290" r="2"/>
<g style="display:none"><circle id="contour_99" cx="300" cy="300" r="10"/></g><text x="3" y="3">contours every 3 mm</text></g>`)
	fsys := fstest.MapFS{"a.toml": {Data: []byte("format = 1\nbase = \"first\"\nplate.outline = \"top.svg#outline\"\nplate.arch.contours = \"top.svg#arch\"\n")}, "top.svg": {Data: []byte(svg)}}
	h := casetest.Load(t, fsys, "a.toml").Plate.Arch.Contours
	count := map[float64]int{}
	for i, z := range h.Height {
		count[z]++
		if r := math.Hypot(h.X[i], h.Y[i]); z == 8 && !casetest.Near(r, 120, 0.01) || z == 14 && !casetest.Near(r, 60, 0.01) || z == 17.5 && (h.X[i] != 0 || !casetest.Near(h.Y[i], 10, 1e-9)) {
			t.Errorf("height %g at (%g, %g)", z, h.X[i], h.Y[i])
		}
	}
	if len(count) != 3 || count[17.5] != 1 || count[8] < 140 || count[8] > 160 {
		t.Errorf("points by height: %v, want 2 pi 120/5 = 151 of 8 mm, half as many of 14, one of 17.5", count)
	}
}

// TestDrawingIsTheTables compares outline, hole and the fitted arch point by
// point.
func TestDrawingIsTheTables(t *testing.T) {
	t.Parallel()
	shape := func(name string) (mesh.Plate, *shape.Geometry) {
		c, err := cases.Open(casetest.Files(), name)
		if err != nil {
			t.Fatal(err)
		}
		g, err := shape.NewGeometry(c)
		if err != nil {
			t.Fatal(err)
		}
		return g.Plate, g
	}
	table, tableNotes := shape("course-guitar")
	drawing, drawnNotes := shape("course-guitar-svg")
	// The arcs' curvature jumps by 1/75 + 1/117 per mm where upper bout and waist
	// meet; a spline through points 26 mm apart rounds that by about an eighth of
	// a quarter of jump times step squared. The hole's points lie 2.5 mm apart.
	const jump, step = 0.0219, 26.0
	for _, k := range []struct {
		what         string
		table, drawn *plane.Curve
		tol          float64 // mm
	}{
		{"outline", tableNotes.Outline, drawnNotes.Outline, jump * step * step / 32},
		{"treble hole", tableNotes.Holes[0], drawnNotes.Holes[0], 0.05}, {"bass hole", tableNotes.Holes[1], drawnNotes.Holes[1], 0.05},
	} {
		far, at := 0.0, mesh.Point{}
		for _, p := range k.drawn.Polyline(0.1) {
			if d := k.table.Distance(p); d > far {
				far, at = d, p
			}
		}
		t.Logf("%s: drawn and table differ by at most %.3f mm, at %s", k.what, far, tree.Spot(at))
		if far > k.tol {
			t.Errorf("%s: drawn and table differ by %.3f mm at %s, want %.3f", k.what, far, tree.Spot(at), k.tol)
		}
	}
	lo, hi := drawnNotes.Outline.Bounds()
	if !casetest.Near(hi[0]-lo[0], 406, 0.02) || !casetest.Near(hi[1]-lo[1], 510, 0.02) {
		t.Errorf("drawn outline %.3f mm wide and %.3f long, want 406 and 510 (course plan)", hi[0]-lo[0], hi[1]-lo[1])
	}
	worst := 0.0
	for x := -190.0; x <= 190; x += 10 {
		for y := -190.0; y <= 300; y += 10 {
			if p := (mesh.Point{x, y}); tableNotes.Outline.Contains(p) {
				worst = max(worst, math.Abs(table.Outer.At(p).Z-drawing.Outer.At(p).Z))
			}
		}
	}
	t.Logf("the arches differ by at most %.3f mm", worst)
	if worst > 0.15 {
		t.Errorf("the arches differ by %.3f mm, want at most 0.15 (the tables' rounding of place and height)", worst)
	}
}

// TestDrawingIsCopied wants a copy of the case to bring its drawing along.
func TestDrawingIsCopied(t *testing.T) {
	list, err := cases.Copy("course-guitar-svg", "mine")
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, f := range list {
		names = append(names, f.Name)
	}
	if !slices.Contains(names, "course-guitar.svg") {
		t.Errorf("files %v, want course-guitar.svg among them", names)
	}
}
