package cases

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"testing/fstest"

	"archload/mesh"
)

// chainsOf parses path data that has no faults.
func chainsOf(t *testing.T, d string) []svgChain {
	t.Helper()
	c, err := parsePath(d)
	if err != nil {
		t.Fatalf("%q: %v", d, err)
	}
	return c
}

// controls lists every control point of a path, to a millionth.
func controls(t *testing.T, d string) string {
	t.Helper()
	var b strings.Builder
	for _, c := range chainsOf(t, d) {
		fmt.Fprintf(&b, "[closed %v", c.closed)
		for _, s := range c.segs {
			for _, p := range s.p {
				fmt.Fprintf(&b, " %.6f,%.6f", p[0]+0, p[1]+0)
			}
		}
		b.WriteString("]")
	}
	return b.String()
}

// TestPathGrammar sets path data beside the same written out: SVG 1.1, section
// 8.3.
func TestPathGrammar(t *testing.T) {
	for _, c := range []struct{ got, want, rule string }{
		{"m1 2 3 4", "M 1 2 L 4 6", "a relative moveto that begins a path is absolute; further pairs are lines"},
		{"M1,2L3,4 5,6", "M 1 2 L 3 4 L 5 6", "a command letter may be left out when repeated"},
		{"M1 2h3v-4H0V0", "M 1 2 L 4 2 L 4 -2 L 0 -2 L 0 0", "horizontal and vertical lines"},
		{"M.5.5-1-1e1", "M 0.5 0.5 L -1 -10", "numbers need no break where a sign or a second point parts them"},
		{"M0 0zm5 5l1 0", "M0 0 Z M 5 5 L 6 5", "after closing, the current point is the start of the subpath"},
		{"M2 3h4v5zl1 1", "M 2 3 L 6 3 L 6 8 Z M 2 3 L 3 4", "drawing goes on from there as a new subpath"},
		{"M0 0c1 2 3 4 5 6s1 1 2 2", "M 0 0 C 1 2 3 4 5 6 C 7 8 6 7 7 8", "a smooth curve mirrors the control point before it"},
		{"M0 0l5 6s1 1 2 2", "M 0 0 L 5 6 C 5 6 6 7 7 8", "after another command it begins at the current point"},
		{"M0 0q3 3 6 0t6 0", "M 0 0 Q 3 3 6 0 Q 9 -3 12 0", "the same for quadratic curves"},
		{"M0 0q3 3 6 0", "M 0 0 C 2 2 4 2 6 0", "a quadratic curve is the cubic with two thirds of the way"},
		{"M0 0l1 1t2 0", "M0 0 L 1 1 Q 1 1 3 1", "a smooth quadratic without one before it"},
		{"M0 0a5 5 0 1110 0", "M 0 0 A 5 5 0 1 1 10 0", "flags need no break behind them"},
		{"M0 0a5 5 0 00.5.5", "M 0 0 A 5 5 0 0 0 0.5 0.5", "nor do they before a point"},
		{"M0 0A0 5 0 0 1 3 4", "M 0 0 L 3 4", "an arc without radius is a line"},
		{"M0 0A-5 5 0 0 1 10 0", "M 0 0 A 5 5 0 0 1 10 0", "the sign of a radius does not count"},
	} {
		if got, want := controls(t, c.got), controls(t, c.want); got != want {
			t.Errorf("%s: %q\n got %s\nwant %s", c.rule, c.got, got, want)
		}
	}
}

func TestPathFaults(t *testing.T) {
	for _, c := range []struct{ path, want string }{
		{"", "an empty path"},
		{"L 1 1", `character 1: want M, which begins a path, found "L 1 1"`},
		{"M 1", "character 4: want a number, found its end"},
		{"M 1 1 L 2", "character 10: want a number, found its end"},
		{"M 1 1 L 2 x", `character 11: want a number, found "x"`},
		{"M 1 1 L 2 2,", "character 13: want a number, found its end"},
		{"M 1 1 B 2 2", `character 7: want a command (one of M L H V C S Q T A Z), found "B 2 2"`},
		{"M 0 0 A 5 5 0 2 1 10 0", `character 15: want 0 or 1, a flag of the arc, found "2 1 10 0"`},
		{"M 0 0 L 1e30 0", `character 9: want a number of at most 1e+07, found "1e30 0"`},
		{"M 0 0 L nan 0", `character 9: want a number, found "nan 0"`},
	} {
		if _, err := parsePath(c.path); err == nil || !strings.HasSuffix(err.Error(), c.want) {
			t.Errorf("%q: %v, want %s", c.path, err, c.want)
		}
	}
}

// TestArcs checks the four arcs between two points of an ellipse turned by 30
// degrees: every point satisfies the ellipse's equation, and the arc's middle
// lies on the side that the flags ask for.
func TestArcs(t *testing.T) {
	const rx, ry, turn = 50.0, 20.0, 30.0
	sin, cos := math.Sincos(turn * math.Pi / 180)
	on := func(u float64) mesh.Point {
		return mesh.Point{100 + cos*rx*math.Cos(u) - sin*ry*math.Sin(u), 40 + sin*rx*math.Cos(u) + cos*ry*math.Sin(u)}
	}
	p, q := on(0.3), on(1.5) // the short way is counted upward: sweep 1
	for _, large := range []int{0, 1} {
		for _, sweep := range []int{0, 1} {
			d := fmt.Sprintf("M %v %v A %g %g %g %d %d %v %v", p[0], p[1], rx, ry, turn, large, sweep, q[0], q[1])
			c := chainsOf(t, d)[0]
			var pts []mesh.Point
			for i := range c.segs {
				pts = c.segs[i].sample(pts, 0)
			}
			centre := mesh.Point{100, 40} // the arcs of the given centre: short with sweep 1, long with sweep 0
			if large == sweep {           // the other centre, the middle of the ends mirrored
				centre = mesh.Point{p[0] + q[0] - 100, p[1] + q[1] - 40}
			}
			length := 0.0
			for i, s := range pts {
				x, y := s[0]-centre[0], s[1]-centre[1]
				u, v := (cos*x+sin*y)/rx, (cos*y-sin*x)/ry
				if e := math.Abs(u*u + v*v - 1); e > 1e-6 {
					t.Fatalf("large %d, sweep %d: point %v off its ellipse by %.1e", large, sweep, s, e)
				}
				if i > 0 {
					length += math.Hypot(s[0]-pts[i-1][0], s[1]-pts[i-1][1])
				}
			}
			whole := 231.0 // about: perimeter of the ellipse, pi (3(a+b) - sqrt((3a+b)(a+3b)))
			if got := length > whole/2; got != (large == 1) {
				t.Errorf("large %d, sweep %d: %.1f mm long of %.0f", large, sweep, length, whole)
			}
		}
	}
	if c := chainsOf(t, "M 0 0 A 1 1 0 0 1 10 0")[0]; c.segs[len(c.segs)/2-1].p[3] != (mesh.Point{5, -5}) && math.Abs(c.segs[len(c.segs)/2-1].p[3][1]+5) > 1e-9 {
		t.Errorf("radii too small: half way at %v, want (5, -5) of a half circle of radius 5", c.segs[len(c.segs)/2-1].p[3])
	}
}

func TestTransforms(t *testing.T) {
	for _, c := range []struct {
		text string
		want mesh.Point // of (3, 4)
		why  string
	}{
		{"", mesh.Point{3, 4}, "none"},
		{"translate(10)", mesh.Point{13, 4}, "one number: along x"},
		{"translate(10,-2)", mesh.Point{13, 2}, "two"},
		{"scale(2)", mesh.Point{6, 8}, "one number: both ways"},
		{"scale(1 -1)", mesh.Point{3, -4}, "upside down"},
		{"rotate(90)", mesh.Point{-4, 3}, "x to y"},
		{"rotate(90 3 0)", mesh.Point{-1, 0}, "about (3, 0)"},
		{"skewX(45)", mesh.Point{7, 4}, "x + y tan 45"},
		{"skewY(45)", mesh.Point{3, 7}, "y + x tan 45"},
		{"matrix(1 2 3 4 5 6)", mesh.Point{20, 28}, "3 + 12 + 5, 6 + 16 + 6"},
		{"translate(10,0) scale(2)", mesh.Point{16, 8}, "the last one first"},
		{"scale(2), translate(10,0)", mesh.Point{26, 8}, "with a comma between"},
	} {
		m, err := parseTransform(c.text)
		if got := m.at(mesh.Point{3, 4}); err != nil || !near(got[0], c.want[0], 1e-12) || !near(got[1], c.want[1], 1e-12) {
			t.Errorf("%s: %v, %v, want %v (%s)", c.text, got, err, c.want, c.why)
		}
	}
	for _, text := range []string{"rotate", "rotate(", "rotate(1 2)", "scale(0)", "perspective(3)", "matrix(1 2 3)", "translate(1 2 3)", "scale(1 x)", "translate()"} {
		if _, err := parseTransform(text); err == nil {
			t.Errorf("%s: want an error", text)
		}
	}
}

func TestHeightInName(t *testing.T) {
	const none, fault = -1, -2
	for _, c := range []struct {
		name string
		want float64 // mm
	}{
		{"arch 12 mm", 12}, {"arch_12_mm", 12}, {"contour_12", 12}, {"contour12", 12}, {"contour-12", 12}, {"Contour 12,5", 12.5},
		{"height 12.5mm", 12.5}, {"arch contour 9 mm b", 9}, {"spot_5.3_mm_p1.4", 5.3}, {"spot 5.3 b", 5.3}, {"12", 12}, {"12 mm", 12},
		{"apex 0.85 in", 21.59}, {"level 1 cm", 10}, {"thickness 4.5", 4.5},
		{"contours", none}, {"contours 3 mm", none}, {"every 3 mm", none}, {"path12", none}, {"path-12-5", none}, {"layer1", none}, {"_12", none},
		{"line 3", none}, {"", none}, {"arch", none}, {"g8-2", none},
		{"contour_12_5", fault}, {"contour_12-5", fault}, {"contour -12", fault}, {"-3 mm", fault}, {"arch 12.5.3", fault}, {"arch 12 mm 9", fault},
		{"arch 12 furlong2", fault}, {"arch 250 mm", fault}, {"arch 12b", fault}, {"arch 5 m", fault},
	} {
		got, ok, err := nameHeight(c.name, true)
		switch {
		case err != nil:
			got = fault
		case !ok:
			got = none
		}
		if !near(got, c.want, 1e-12) {
			t.Errorf("%q: height %g, %v, want %g (%d: none, %d: refused)", c.name, got, err, c.want, none, fault)
		}
	}
	if _, _, err := nameHeight("arch 0.5", false); err == nil {
		t.Error("a bare number on a page in inches: want it refused")
	}
	if got := unescaped("arch_x5F_12_x20_mm"); got != "arch_12 mm" {
		t.Errorf("unescaped %q, want arch_12 mm", got)
	}
}

// plainMarks are the marks of a drawing with the origin at (300, 300), neck up.
const plainMarks = `<circle id="origin" cx="300" cy="300" r="1"/><circle id="neck" cx="300" cy="20" r="1"/><circle id="treble" cx="500" cy="300" r="1"/>`

// page wraps shapes into a drawing of 600 x 600 mm.
func page(shapes string) string {
	return `<svg xmlns="http://www.w3.org/2000/svg" width="600mm" height="600mm" viewBox="0 0 600 600">` + shapes + `</svg>`
}

// drawn reads the element "outline" of a drawing.
func drawn(t *testing.T, svg string) (*mesh.Curve, *Case) {
	t.Helper()
	c := mustLoad(t, fstest.MapFS{"a.toml": {Data: []byte("format = 1\nbase = \"first\"\nplate.outline = \"top.svg#outline\"\n")}, "top.svg": {Data: []byte(svg)}}, "a.toml")
	curve, err := mesh.NewCurve(c.Plate.Outline.Points, c.Plate.Outline.Corner)
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
		{`<polygon id="outline" points="` + ring(72, 150) + `"/>`, math.Pi * 150 * 150, 1e-5},      // a circle as points
		{`<polygon id="outline" points="` + ring(12, 150) + `"/>`, 12.0 / 2 * 150 * 150 / 2, 1e-6}, // a dodecagon: n/2 r² sin(2 pi/n)
		{`<g id="outline" transform="rotate(30 300 300)"><rect x="200" y="200" width="200" height="200" transform="translate(300 300) scale(.5 1.5) translate(-300 -300)"/></g>`, 100 * 300, 1e-12},
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
		if !near(lo[0], -127, 1e-9) || !near(hi[0], 127, 1e-9) || !near(lo[1], -254, 1e-9) || !near(hi[1], 254, 1e-9) {
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
					found = found || near(p[0], w[0], 1e-9) && near(p[1], w[1], 1e-9)
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
	if got := c.Plate.Outline.Points[0]; !near(got[0], 60, 1e-9) || !near(got[1], 200, 1e-9) {
		t.Errorf("first corner at %v, want (60, 200)", got)
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
	h := mustLoad(t, fsys, "a.toml").Plate.Arch.Contours
	count := map[float64]int{}
	for i, z := range h.Height {
		count[z]++
		if r := math.Hypot(h.X[i], h.Y[i]); z == 8 && !near(r, 120, 0.01) || z == 14 && !near(r, 60, 0.01) || z == 17.5 && (h.X[i] != 0 || !near(h.Y[i], 10, 1e-9)) {
			t.Errorf("height %g at (%g, %g)", z, h.X[i], h.Y[i])
		}
	}
	if len(count) != 3 || count[17.5] != 1 || count[8] < 140 || count[8] > 160 {
		t.Errorf("points by height: %v, want 2 pi 120/5 = 151 of 8 mm, half as many of 14, one of 17.5", count)
	}
}
