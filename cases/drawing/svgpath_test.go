package drawing

import (
	"fmt"
	"math"
	"strings"
	"testing"

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
		{"arch 12 inches", fault}, {"arch 12 millimetres", fault}, {"arch 12 recurve", 12}, {"arch 250 mm", fault}, {"arch 12b", fault}, {"arch 5 m", fault},
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

// near reports whether got is want to within tol.
func near(got, want, tol float64) bool { return math.Abs(got-want) <= tol }
