package say

import (
	"math"
	"strings"
	"testing"

	"archload/cases"
	"archload/cases/pull"

	"archload/cases/casetest"
	"archload/cases/shape"
)

// flatText is a flat plate, its outer surface 5 mm above the rim, with two
// strings whose way is to be added.
var flatText = strings.Replace(casetest.TopText, "height = 20", "height = 5", 1) + `[bridge]
saddle_height = 24
[strings]
scale = 640
spread = 52
each = [{ name = "a", tension = 100 }, { name = "b", tension = 80 }, { name = "c", tension = 120 }]
[strings.path]
anchor_height = 8
anchor_distance = 150
`

// fromPath loads the flat plate with further keys of [strings.path].
func fromPath(t *testing.T, keys string) *cases.Case {
	t.Helper()
	return casetest.Load(t, casetest.Files("a.toml", flatText+keys), "a.toml")
}

func mustGeometry(t *testing.T, c *cases.Case) *shape.Geometry {
	t.Helper()
	g, err := shape.NewGeometry(c)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

// TestPathAngles compares with a drawing by hand: the saddle 29 mm above the
// rim, the nut 28 below it, the anchor 8 above and 150 behind.
func TestPathAngles(t *testing.T) {
	deg := 180 / math.Pi
	for _, c := range []struct {
		keys        string
		x           float64 // of the string looked at, mm
		front, back float64 // deg
		source      string
	}{
		{"nut_height = -28", 0, 5.10968, 7.96961, "asin(57/640), atan(21/150)"},
		{"nut_height = -28", 26, 5.10968, 7.96961, "a level saddle: the same for all strings"},
		{"nut_height = -28\nsaddle_radius = 300", 26, math.Asin((57-1.12879)/640) * deg, math.Atan((21-1.12879)/150) * deg, "300 - sqrt(300² - 26²) = 1.12879 lower"},
		{"neck_angle = 4\nfret_plane = 24", 0, 4 - math.Asin(0.5/640)*deg, 7.96961, "saddle in the fret plane, 0.5 mm (the default) off it at the nut"},
		{"neck_angle = 4\nfret_plane = 19\nnut_action = 0", 0, 4 + math.Asin(5*math.Cos(4/deg)/640)*deg, 7.96961, "5 mm over the fret plane, upright"},
	} {
		for _, f := range mustGeometry(t, fromPath(t, c.keys)).StringForces() {
			if f.X == c.x && (!casetest.Near(f.FrontAngle, c.front, 2e-5) || !casetest.Near(f.BackAngle, c.back, 2e-5)) {
				t.Errorf("%q: angles %.5f and %.5f deg at x = %g, want %.5f and %.5f (%s)", c.keys, f.FrontAngle, f.BackAngle, c.x, c.front, c.back, c.source)
			}
		}
	}
}

// TestNeckAngleByCoordinates walks along the set neck until the string has its
// length, and wants the same angle.
func TestNeckAngleByCoordinates(t *testing.T) {
	deg := 180 / math.Pi
	const neck, plane, action, h, scale = 5.5, 17.0, 0.8, 24.0, 640.0
	sin, cos := math.Sincos(neck / deg)
	nut := func(u float64) (y, z float64) { return u*cos + action*sin, plane - u*sin + action*cos }
	lo, hi := 0.0, 2*scale
	for range 60 {
		mid := (lo + hi) / 2
		if y, z := nut(mid); math.Hypot(y, z-h) < scale {
			lo = mid
		} else {
			hi = mid
		}
	}
	y, z := nut(lo)
	want := math.Atan2(h-z, y) * deg
	c := fromPath(t, "neck_angle = 5.5\nfret_plane = 17\nnut_action = 0.8")
	if got := mustGeometry(t, c).StringForces()[1].FrontAngle; !casetest.Near(got, want, 1e-9) {
		t.Errorf("front angle %.9f deg, want %.9f (nut at %.3f, %.3f mm)", got, want, y, z)
	}
}

// TestPathOverArch wants the arch's own height under the bridge in the path.
func TestPathOverArch(t *testing.T) {
	text := strings.Replace(flatText, "height = 5 ", "height = 20, apex = [0, 0] ", 1) + "nut_height = -20"
	c := casetest.Load(t, casetest.Files("a.toml", text), "a.toml")
	top := mustGeometry(t, c).Plate.Outer.At(c.Bridge.At).Z
	want := math.Asin((top+24+20)/640) * 180 / math.Pi
	if got := mustGeometry(t, c).StringForces()[1].FrontAngle; !casetest.Near(got, want, 1e-9) || !casetest.Near(top, 20, 0.05) {
		t.Errorf("front angle %.6f deg, want %.6f with the top at %.3f mm", got, want, top)
	}
}

// TestNeckReplacesNut wants a case to change the way the front is described.
func TestNeckReplacesNut(t *testing.T) {
	c := casetest.Load(t, casetest.Files("a.toml", flatText+"nut_height = -28", "b.toml", "format = 1\nbase = \"a.toml\"\n[strings.path]\nneck_angle = 4\nfret_plane = 19\n"), "b.toml")
	if p := c.Strings.Path; p.NutHeight != nil || *p.NutAction != 0.5 {
		t.Errorf("nut_height %v, nut_action %v, want none and %g", p.NutHeight, *p.NutAction, 0.5)
	}
}

// TestStringChanges compares each change with the case in which the key is
// written larger.
func TestStringChanges(t *testing.T) {
	keys := "neck_angle = 4\nfret_plane = 19\nnut_action = 0.6\nsaddle_radius = 300"
	c := fromPath(t, keys)
	table, err := pull.StringTableOf(c)
	if err != nil {
		t.Fatal(err)
	}
	before := mustGeometry(t, c).StringSum()
	for _, w := range []struct{ key, from, to string }{
		{"bridge.saddle_height", "saddle_height = 24", "saddle_height = 25"},
		{"neck_angle", "neck_angle = 4", "neck_angle = 5"},
		{"fret_plane", "fret_plane = 19", "fret_plane = 20"},
		{"nut_action", "nut_action = 0.6", "nut_action = 1.6"},
		{"anchor_height", "anchor_height = 8", "anchor_height = 9"},
		{"anchor_distance", "anchor_distance = 150", "anchor_distance = 151"},
	} {
		after := mustGeometry(t, casetest.Load(t, casetest.Files("a.toml", strings.Replace(flatText+keys, w.from, w.to, 1)), "a.toml")).StringSum()
		found := false
		for _, got := range table.Changes {
			if got.Key != w.key {
				continue
			}
			found = true
			want := [3]float64{after.Downforce - before.Downforce, after.Along - before.Along, after.Rocking - before.Rocking}
			for k, g := range []float64{got.Downforce, got.Along, got.Shift} {
				if !casetest.Near(g, want[k], 1e-12) {
					t.Errorf("%s + 1: change %v, want %v", w.key, got, want)
				}
			}
		}
		if !found {
			t.Errorf("no change of %s in the table", w.key)
		}
	}
	if again := mustGeometry(t, c).StringSum(); again != before {
		t.Errorf("the table changed the case: %v, want %v", again, before)
	}
}

// TestAngleChange compares with dT(sin) = T cos a da, per degree.
func TestAngleChange(t *testing.T) {
	c := casetest.Load(t, casetest.Files("a.toml", casetest.TopText+casetest.RestText), "a.toml") // 200 N, 5 and 9 deg
	table, err := pull.StringTableOf(c)
	if err != nil {
		t.Fatal(err)
	}
	per := math.Pi / 180
	for i, want := range [][2]float64{ // N; second order in the angle is left out
		{200 * math.Cos(5*per) * per, -200 * math.Sin(5*per) * per},
		{200 * math.Cos(9*per) * per, 200 * math.Sin(9*per) * per},
	} {
		got := table.Changes[i]
		if second := 200 * per * per / 2; !casetest.Near(got.Downforce, want[0], second) || !casetest.Near(got.Along, want[1], second) {
			t.Errorf("%s + 1 deg: %.4f N down, %.4f N along, want %.4f, %.4f within %.3f", got.Key, got.Downforce, got.Along, want[0], want[1], second)
		}
	}
}

// TestRocking sums push times height by hand.
func TestRocking(t *testing.T) {
	c := fromPath(t, "nut_height = -28\nsaddle_radius = 300")
	table, err := pull.StringTableOf(c)
	if err != nil {
		t.Fatal(err)
	}
	moment := 0.0
	for _, e := range table.Each {
		moment += e.Along * (24 - (300 - math.Sqrt(300*300-e.X*e.X)))
	}
	r := table.Rocking
	if !casetest.Near(r.Moment, moment, 1e-9) || !casetest.Near(r.Shift, moment/table.Downforce, 1e-9) || !casetest.Near(r.Used, math.Abs(moment/table.Downforce)/6.5, 1e-9) {
		t.Errorf("rocking %+v, want a moment of %.4f N mm over %.2f N and 6.5 mm", r, moment, table.Downforce)
	}
}

// TestStringTableText looks for what a maker reads first.
func TestStringTableText(t *testing.T) {
	c := casetest.Load(t, casetest.Files("a.toml", flatText+"nut_height = -28\n", "b.toml", "format = 1\nbase = \"a.toml\"\nstrings.saddle_friction = 0.1\n"), "b.toml")
	table, err := pull.StringTableOf(c)
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	if err := WriteStrings(&b, table); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"29.0 mm above the rim", "in all", "friction lets the push lie", "% of tipping (at most", "anchor_height + 1 mm"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no %q in\n%s", want, b.String())
		}
	}
	if _, err := pull.StringTableOf(casetest.Load(t, casetest.Files("a.toml", casetest.TopText+"[[load]]\nat = [0, 0]\nforce = [0, 0, -10]\n"), "a.toml")); err == nil {
		t.Error("a case without strings: want a fault")
	}
}
