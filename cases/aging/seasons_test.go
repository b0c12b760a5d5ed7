package aging

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"
	"testing/fstest"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/casetest"
	"archload/cases/design"
	"archload/cases/stability"
	"archload/materials"
)

// opened loads a case from its text, which may have bundled bases.
func opened(t *testing.T, text string) *cases.Case {
	t.Helper()
	c, err := cases.Open(fstest.MapFS{"case.toml": {Data: []byte(text)}}, "case.toml")
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func run(t *testing.T, c *cases.Case) *SeasonsReport {
	t.Helper()
	r, err := Seasons(context.Background(), c, Wish{}, design.Options{Workers: 2, NoError: true, Refine: 0.5})
	if err != nil {
		t.Fatal(err)
	}
	if bad := r.Failed(); len(bad) > 0 {
		t.Errorf("built-in checks failed: %v", bad)
	}
	return r
}

// even is a wood that swells alike in all directions.
const even = `
[wood.even]
like = "sitka-spruce"
swell_L = 0.002
swell_R = 0.002
swell_T = 0.002
`

// ownWood is a wood of a case with nothing but what a solve wants.
const ownWood = `[wood.own]
density = 400
EL = 10000
ER = 800
ET = 500
GLR = 640
GLT = 610
GRT = 30
nuLR = 0.37
nuLT = 0.4
nuRT = 0.4
`

// TestAllAlike lets a free plate with braces swell alike in all directions: it grows by e in every
// measure, and nothing is stressed, the braces' glue included.
func TestAllAlike(t *testing.T) {
	r := run(t, opened(t, `format = 1
[plate]
wood = "even"
thickness = 4
outline = [[0, -250], [150, -222], [203, -130], [165, -35], [126, 45], [142, 150], [95, 225], [0, 240], [-95, 225], [-142, 150], [-126, 45], [-165, -35], [-203, -130], [-150, -222]]
arch.formula = { height = 24, apex = [0, 10] }
[[brace]]
wood = "even"
line = [[-50, -120], [-30, 20], [-40, 130]]
width = 8
height = [[0, 4], [0.5, 14], [1, 5]]
[rim]
support = "free"
[season]
moisture = 2
[[gauge]]
at = [0, 10]
[[gauge]]
at = [110, -140]
`+even))
	s := r.Seasons[0]
	for _, g := range s.Gauges {
		z := 24.0
		if g.X != 0 {
			z = g.Displacement[2] / 0.004
		}
		for k, want := range [3]float64{0.004 * g.X, 0.004 * g.Y, 0.004 * z} {
			if math.Abs(g.Displacement[k]-want) > 1e-8 {
				t.Errorf("gauge at (%g, %g) moves by %v, want %g along axis %d", g.X, g.Y, g.Displacement, want, k)
			}
		}
	}
	if s.Energy.Total > 1e-12 {
		t.Errorf("it bears %g N·mm, want nothing", s.Energy.Total)
	}
}

// TestMadeAir wants a season in the air of the made state to change nothing, and a drier one to lower arch
// and strings and a wetter one to lift them.
func TestMadeAir(t *testing.T) {
	r := run(t, opened(t, `format = 1
base = "course-guitar-relief"
[season]
made = { humidity = 45 }
to = [{ name = "made", humidity = 45 }, { name = "dry", humidity = 35 }, { humidity = 55 }]
`))
	same := &r.Seasons[0]
	if math.Abs(same.ArchRise) > 1e-10 || math.Abs(same.Bridge.ActionChange) > 1e-10 {
		t.Errorf("the made air: arch %g, action %g mm, want 0", same.ArchRise, same.Bridge.ActionChange)
	}
	for i, c := range same.Bridge.Contact {
		if !casetest.Near(c.Force+1, r.Made.Bridge.Contact[i].Force+1, 1e-8) {
			t.Fatalf("point %d of the foot carries %g N in the made air, %g N when made", i, c.Force, r.Made.Bridge.Contact[i].Force)
		}
	}
	if dry, wet := &r.Seasons[1], &r.Seasons[2]; dry.ArchRise >= 0 || wet.ArchRise <= 0 || dry.Bridge.ActionChange <= 0 || wet.Bridge.ActionChange >= 0 {
		t.Errorf("dry: arch %+.3f, action %+.3f; wet: arch %+.3f, action %+.3f mm", dry.ArchRise, dry.Bridge.ActionChange, wet.ArchRise, wet.Bridge.ActionChange)
	}
	if name := r.Seasons[2].Name; name != "season 3" {
		t.Errorf("a season without a name is called %q", name)
	}
}

// TestUnknownSwelling names the wood whose swelling is not known, and what to write.
func TestUnknownSwelling(t *testing.T) {
	c := opened(t, `format = 1
base = "bench-plate"
[plate]
wood = "own"
[season]
moisture = -2
`+ownWood+"swell_L = 0.0001\n")
	_, err := Seasons(context.Background(), c, Wish{}, design.Options{NoError: true})
	if err == nil || !strings.Contains(err.Error(), `case.toml:4: plate.wood: the swelling of "own" is not known; want swell_R, swell_T`) {
		t.Errorf("error %v, want the wood and its missing keys", err)
	}
	if _, err := Seasons(context.Background(), opened(t, "format = 1\nbase = \"bench-plate\"\n"), Wish{}, design.Options{}); err == nil || !strings.Contains(err.Error(), "no seasons") {
		t.Errorf("error %v, want that there are no seasons", err)
	}
}

// TestRoughFoot takes a foot with friction through a season and back to the made air without one: with
// a great coefficient it is a foot that grips, and nothing changes where nothing swells.
func TestRoughFoot(t *testing.T) {
	text := func(hold string) string {
		return "format = 1\nbase = \"course-guitar\"\n[bridge]\n" + hold + "\n[season]\nmade = { humidity = 45 }\nto = [{ humidity = 45 }, { humidity = 40 }]\n"
	}
	rough := run(t, opened(t, text("hold = \"friction\"\nfriction = 0.4")))
	grip := run(t, opened(t, text("hold = \"grip\"")))
	if same := &rough.Seasons[0]; math.Abs(same.ArchRise) > 1e-8 || math.Abs(same.Bridge.ActionChange) > 1e-8 {
		t.Errorf("the made air: arch %g, action %g mm, want 0", same.ArchRise, same.Bridge.ActionChange)
	}
	if a, b := rough.Seasons[1].ArchRise, grip.Seasons[1].ArchRise; !casetest.Near(a, b, 0.05) {
		t.Errorf("drier, the arch moves by %g mm with friction and %g with grip", a, b)
	}
	if bad := rough.Seasons[1].Bridge; bad.Share.Middle < 0 || bad.Share.Middle > 1 {
		t.Errorf("share of the middle %g", bad.Share.Middle)
	}
}

// TestStringsKeepLength compares strings that keep their length with strings tuned to the same tensions: without
// friction, and with wood as stiff as before, the foot stands alike. Drier wood sinks and slackens them.
func TestStringsKeepLength(t *testing.T) {
	text := func(each, keep string) string {
		return "format = 1\nbase = \"first\"\n[strings]\nscale = 640\neach = [" + each + "]\n[bridge]\nhold = \"slip\"\n[season]\nmoisture = -2\nstrings = \"" + keep + "\"\n"
	}
	keepsLength(t, text)
}

// TestBodyKeepsLength is that of a body, at whose blocks the strings pull and whose blocks come nearer in drier wood.
func TestBodyKeepsLength(t *testing.T) {
	text := func(each, keep string) string {
		return "format = 1\nbase = \"course-guitar-body\"\n[strings]\nscale = 640\neach = [" + each + "]\n[bridge]\nhold = \"slip\"\n[season]\nmoisture = -2\nstrings = \"" + keep + "\"\n"
	}
	keepsLength(t, text)
}

func keepsLength(t *testing.T, text func(each, keep string) string) {
	t.Helper()
	kept := run(t, opened(t, text("{ tension = 110 }, { tension = 100 }, { tension = 90 }", "length"))).Seasons[0]
	var each []string
	for _, s := range kept.Strings {
		if s.Change >= 0 {
			t.Errorf("string %s changes by %+.3f N in drier wood, want less tension", s.Name, s.Change)
		}
		each = append(each, fmt.Sprintf("{ tension = %.9f }", s.Tension))
	}
	tuned := run(t, opened(t, text(strings.Join(each, ", "), "tension"))).Seasons[0]
	for i, p := range tuned.Bridge.Contact {
		if math.Abs(kept.Bridge.Contact[i].Force-p.Force) > 1e-5 {
			t.Fatalf("point %d carries %.7f N, want %.7f", i, kept.Bridge.Contact[i].Force, p.Force)
		}
	}
}

// TestCycle takes a foot without friction through two seasons and back: the way does not matter, and the made air is
// the made state again. A foot that grips keeps what the way did to it.
func TestCycle(t *testing.T) {
	text := func(hold, cycle string) string {
		return "format = 1\nbase = \"course-guitar-relief\"\n[bridge]\nhold = \"" + hold + "\"\n[season]\nmade = { humidity = 45 }\nto = [{ name = \"dry\", humidity = 35 }, { name = \"wet\", humidity = 60 }]\ncycle = " + cycle + "\n"
	}
	each, cycle := run(t, opened(t, text("slip", "false"))), run(t, opened(t, text("slip", "true")))
	for i, s := range each.Seasons {
		if a, b := cycle.Seasons[i].Bridge, s.Bridge; math.Abs(a.Sink-b.Sink) > 1e-8 || math.Abs(a.Share.Middle-b.Share.Middle) > 1e-8 {
			t.Errorf("%s: sinks %.9f mm in the cycle, %.9f from the made state", s.Name, a.Sink, b.Sink)
		}
	}
	if last := cycle.Seasons[2]; last.Name != "made again" || math.Abs(last.ArchRise) > 1e-8 {
		t.Errorf("%s: the arch is off by %g mm, want 0", last.Name, last.ArchRise)
	}
	if grip := run(t, opened(t, text("grip", "true"))).Seasons[2]; math.Abs(grip.ArchRise) > 0.2 || grip.ArchRise == 0 {
		t.Errorf("a foot that grips leaves the arch %g mm off, want a little", grip.ArchRise)
	}
}

// TestSecondOrder takes a design through seasons on its moved shape: the made state is what a solve tells of it
// there, the made air changes nothing, and a top that is pressed up rises further than by linear theory.
func TestSecondOrder(t *testing.T) {
	const air = "[season]\nmade = { humidity = 45 }\nto = [{ name = \"same\", humidity = 45 }, { name = \"damp\", humidity = 75 }]\n"
	o := design.Options{Workers: 2, NoError: true, NoFlow: true, Refine: 0.25}
	for _, hold := range []string{"slip", "friction"} {
		c := opened(t, "format = 1\nbase = \"first\"\n[bridge]\nhold = \""+hold+"\"\n"+air)
		r, err := Seasons(t.Context(), c, Wish{SecondOrder: true}, o)
		if err != nil {
			t.Fatal(err)
		}
		if bad := r.Failed(); len(bad) > 0 {
			t.Errorf("%s: built-in checks failed: %v", hold, bad)
		}
		solved, err := stability.Solve(t.Context(), c.WithCards(at(materials.Moisture(45, 21.1))), o)
		if err != nil {
			t.Fatal(err)
		}
		if got, want := r.Made.Bridge.Sink, answer.BridgeNow(solved.Solution).Sink; !casetest.Near(got, want, 1e-9) {
			t.Errorf("%s: sinks %.9f mm when made, a solve says %.9f", hold, got, want)
		}
		same, damp := &r.Seasons[0], &r.Seasons[1]
		if math.Abs(same.ArchRise) > 1e-7 || math.Abs(same.Bridge.ActionChange) > 1e-7 {
			t.Errorf("%s: the made air: arch %g, action %g mm, want 0", hold, same.ArchRise, same.Bridge.ActionChange)
		}
		if damp.ArchRise < 1.02*damp.Linear.ArchRise || damp.ArchRise > 1.1*damp.Linear.ArchRise {
			t.Errorf("%s: in damp air the arch rises %.4f mm, by linear theory %.4f", hold, damp.ArchRise, damp.Linear.ArchRise)
		}
	}
}
