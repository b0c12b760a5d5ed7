package lesson

import (
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"archload/cases"
	"archload/cases/aging"
	"archload/cases/answer"
	"archload/cases/bench/fit"
	"archload/cases/casetest"
	"archload/cases/tree"
	"archload/mesh"
)

// TestLessonSteps wants what a step leaves out to be the step before's, and
// keys set to last until a case is named.
func TestLessonSteps(t *testing.T) {
	text := lessonText(`caption = "One."`, `case = "low/a.toml"`, `set = { "bridge.relief.depth" = 0.1, "bridge.width" = 12 }`, `field = "gap"`, "load = 0.5", `beside = "first"`) +
		"[[step]]\ncaption = \"Two.\"\nset.bridge.relief.depth = 0.2\nview = \"from inside\"\nface = \"inside\"\nplay = true\nsection = \"long\"\n" +
		"[[step]]\ncaption = \"\"\"\nThree\n  on two lines.\"\"\"\ncase = \"low/a.toml\"\nfield = \"sink\"\n"
	l, err := Load(casetest.Files("les/l.toml", text, "les/low/a.toml", casetest.TopText+casetest.RestText), "les/l.toml")
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, s := range l.Steps {
		set := ""
		for _, kv := range s.Set {
			set += " " + kv.Key + "=" + kv.Value.Text
		}
		got = append(got, fmt.Sprint(s.Caption, "|", s.Case, set, "|", s.Beside, "|", s.Load, s.Play, "|", strings.Join([]string{s.Field, s.Face, s.View, s.Section}, ", ")))
	}
	want := []string{
		"One.|les/low/a.toml bridge.relief.depth=0.1 bridge.width=12|first|0.5 false|gap, outside, at an angle, none",
		"Two.|les/low/a.toml bridge.width=12 bridge.relief.depth=0.2||1 true|gap, inside, from inside, long",
		"Three on two lines.|les/low/a.toml||1 false|sink, inside, from inside, long",
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("steps\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// TestLessonSetsTables wants lists, tables and woods to be set as a case on
// top would set them.
func TestLessonSetsTables(t *testing.T) {
	text := lessonText(`caption = "It is {0.5 = key:plate.wood.EL / beside:key:plate.wood.EL in 0.4..0.9}."`, `case = "first"`, `beside = "first"`,
		"[step.set]", `plate.wood = "soft"`, `"wood.soft" = { like = "sitka-spruce", EL = 8000 }`,
		"[[step.set.load]]", "at = [0, 50]", "force = [1, 0, -10]", "name = \"thumb\"")
	l, err := Load(casetest.Files("a.toml", text), "a.toml")
	if err != nil {
		t.Fatal(err)
	}
	c, err := cases.OpenChanged(nil, l.Steps[0].Case, "set", l.Steps[0].Set)
	if err != nil {
		t.Fatal(err)
	}
	card, err := c.Wood("plate.wood")
	if err != nil || card.Wood.EL != 8000 || len(c.Loads) != 1 || c.Loads[0].Force != [3]tree.Force{1, 0, -10} {
		t.Errorf("EL %g MPa, %v, loads %v; want 8000 and one load [1, 0, -10]", card.Wood.EL, err, c.Loads)
	}
}

// A step with two airs holds a design against itself; a bar has the colour of the design that its words
// name, whatever its number asks.
func TestTwoAirs(t *testing.T) {
	text := lessonText(`caption = "C."`, `case = "course-guitar-seasons"`, `set = { title = "T" }`, `field = "foot pressure"`, "air = 75", "beside_air = 25",
		`chart = { title = "mm", rows = ["A, winter {1 = bridge.sink}", "B {2 = bridge.sink / beside:bridge.sink}", "made {3 = bridge.sink}"] }`)
	l, err := Load(casetest.Files("a.toml", text), "a.toml")
	if err != nil {
		t.Fatal(err)
	}
	s := l.Steps[0]
	if s.Beside != s.Case || len(s.Against) != 1 || s.Against[0].Key != "title" || s.Air != 75 || s.AirA != 25 {
		t.Errorf("beside %q %v in %g and %g %%, want the design itself in both airs", s.Beside, s.Against, s.AirA, s.Air)
	}
	for i, want := range []Whose{OfBeside, OfOwn, Neither} {
		if got := s.Chart.Rows[i].Of; got != want {
			t.Errorf("%q has the colour %d, want %d", s.Chart.Rows[i].Words, got, want)
		}
	}
}

func TestLandmarks(t *testing.T) {
	c := casetest.Open(t, "bowed-layout")
	got := map[string]mesh.Point{}
	for _, l := range Landmarks(c) {
		got[l.Name] = l.At
	}
	for _, w := range []struct {
		name string
		want mesh.Point // mm
		tol  float64    // mm
	}{
		{"bridge", mesh.Point{0, 0}, 0},
		{"bass foot", mesh.Point{-32, 0}, 1e-12},
		{"treble foot", mesh.Point{32, 0}, 1e-12},
		{"bass bar", mesh.Point{-33, -5}, 1e-9},
		{"post", mesh.Point{34, -9}, 0},
		{"beside the bass foot", mesh.Point{-32, 13}, 0},
		{"neck block", mesh.Point{0, 310}, 1},
		{"tail block", mesh.Point{0, -200}, 1},
		{"f-hole", mesh.Point{83, 0}, 12},
	} {
		at, ok := got[w.name]
		if !ok || math.Hypot(at[0]-w.want[0], at[1]-w.want[1]) > w.tol {
			t.Errorf("%s: at %v mm, %v, want %v within %g", w.name, at, ok, w.want, w.tol)
		}
	}
	if b, tr := got["bass side"], got["treble side"]; !(b[0] < -150 && tr[0] > 150 && math.Abs(b[0]+tr[0]) < 5) {
		t.Errorf("sides at %v and %v mm, want them opposite each other, wide out", b, tr)
	}
	for _, name := range []string{"bass end of the foot", "middle of the foot", "treble end of the foot"} {
		if _, ok := got[name]; ok {
			t.Errorf("two feet have %q, want only bass foot and treble foot", name)
		}
	}
}

// TestClaims compares words with numbers made up for the purpose.
func TestClaims(t *testing.T) {
	c := casetest.Load(t, casetest.Files("a.toml", casetest.TopText+casetest.RestText), "a.toml")
	report := func(sink float64) *answer.Report {
		return &answer.Report{Bridge: &answer.BridgeReport{Sink: sink, EndSink: [2]float64{0.25, -0.5}, MiddleClosesAt: answer.None(), Share: answer.ShareReport{Middle: 0.3}}, Gauges: []answer.GaugeReport{{Name: "a, b", Sink: 3}}}
	}
	one, err := newAnswer(c, report(0.449))
	if err != nil {
		t.Fatal(err)
	}
	two, err := newAnswer(c, report(0.898))
	if err != nil {
		t.Fatal(err)
	}
	piece := &Answer{trees: map[source]any{}}
	if err := piece.add(ofBench, &fit.Report{Wood: map[string]map[string]fit.Constant{"my board": {"EL": {Value: 12900, SD: 774}}}, Readings: []fit.Reading{{LeftOut: true}}}); err != nil {
		t.Fatal(err)
	}
	if err := two.add(ofSeasons, &aging.SeasonsReport{Seasons: []aging.SeasonReport{{Name: "winter", ArchRise: -1.06}}}); err != nil {
		t.Fatal(err)
	}
	for _, k := range []struct{ text, want string }{
		{"{12.9 GPa = bench:wood[my board].EL.value / 1000}", ""},
		{"{6 % = bench:wood[my board].EL.sd / bench:wood[my board].EL.value}", ""},
		{"{7 % = bench:wood[my board].EL.sd / bench:wood[my board].EL.value}", `"7 %": want bench:wood[my board].EL.sd / bench:wood[my board].EL.value within 6.5..7.5, computed 6`},
		{"{left out = bench:readings[1].left_out in 1..1}", ""},
		{"{-1.1 mm = beside:seasons:seasons[winter].arch_rise}", ""},
		{"{1.1 mm = beside:seasons:seasons[summer].arch_rise}", `"1.1 mm": seasons[summer].arch_rise: no entry "summer"`},
		{"{0.45 mm = bridge.sink}", ""},
		{"{0.44 mm = bridge.sink}", `"0.44 mm": want bridge.sink within 0.435..0.445, computed 0.449`},
		{"{45 % = bridge.sink}", ""},
		{"{0.449 mm = bridge_sink}", ""},
		{"{twice as far = beside:bridge_sink / bridge_sink in 1.9..2.1}", ""},
		{"{30 % = middle_share}", ""},
		{"{31 % = middle_share}", `"31 %": want middle_share within 30.5..31.5, computed 30`},
		{"{3 % = middle_closes_at}", `"3 %": middle of the foot has closed at cannot be had in this design`},
		{"{46 % = bridge.sink}", `"46 %": want bridge.sink within 45.5..46.5, computed 44.9`},
		{"{twice as far = beside:bridge.sink / bridge.sink in 1.9..2.1}", ""},
		{"{about 2 times = beside:bridge.sink / bridge.sink in 1.9..1.95}", `"about 2 times": want beside:bridge.sink / bridge.sink within 1.9..1.95, computed 2`},
		{"{-0.50 mm = bridge.end_sink[2]}", ""},
		{"{0.5 mm = abs(bridge.end_sink[2])}", ""},
		{"{10 = times(2 * (bridge.sink / bridge.sink) * 10)}", ""},
		{"{2.0 = times(6.02 * bridge.sink / bridge.sink)}", ""},
		{"{6 = times(20 * bridge.sink / bridge.sink)}", `"6": want times(20 * bridge.sink / bridge.sink) within 5.5..6.5, computed 10`},
		{"{1.0 = 2 * (bridge.end_sink[1] - bridge.end_sink[2]) - -0.5 - 1}", ""},
		{"{3 mm = gauges[a, b].sink}", ""},
		{"{3 mm = gauges[1].sink}", ""},
		{"{3 mm = gauges[a, c].sink}", `"3 mm": gauges[a, c].sink: no entry "a, c"; did you mean "a, b"?`},
		{"{3 mm = gauges[2].sink}", `"3 mm": gauges[2].sink: no entry "2"`},
		{"{5 mm = key:plate.thickness}", ""},
		{"{100 N = key:strings.each[2].tension}", ""},
		{"{-250 mm = key:plate.outline[1][2]}", `"-250 mm": key plate.outline[1][2] is not a number of the case`},
		{"{3 % = bridge.middle_closes_at}", `"3 %": bridge.middle_closes_at cannot be had in this design`},
		{"{1 = bridge.sink / (1 - 1)}", `"1": want bridge.sink / (1 - 1) within 0.5..1.5, computed +Inf`},
	} {
		_, claims, err := parseClaims(k.text)
		if err != nil || len(claims) != 1 {
			t.Errorf("%s: %d claims, %v, want one", k.text, len(claims), err)
			continue
		}
		got := ""
		if _, err := claims[0].check(answers{design: one, beside: two, bench: piece}); err != nil {
			got = err.Error()
		}
		if got != k.want {
			t.Errorf("%s: %q, want %q", k.text, got, k.want)
		}
	}
}

// A step tells which commands print its numbers, and which design a bar is of.
func TestCommandsAndBars(t *testing.T) {
	text := lessonText(`caption = "{0.8 mm = bridge.sink}, {5 mm = key:plate.thickness}, {0.9 mm = beside:moved:bridge.sink}."`, `case = "first"`, `beside = "first"`, `bench = "spruce-blank"`,
		`chart = { title = "mm", rows = ["B {0.8 = bridge.sink}", "A {0.8 = beside:bridge.sink}", "more {0 = bridge.sink - beside:bridge.sink}", "g {192 = bench:readings[1].value}", "Hz {100 = lowest_tone}"] }`)
	l, err := Load(casetest.Files("a.toml", text), "a.toml")
	if err != nil {
		t.Fatal(err)
	}
	if got, want := fmt.Sprint(l.Steps[0].Commands()), "[archload solve --linear archload solve archload bench archload solve --linear --motion]"; got != want {
		t.Errorf("commands %s, want %s", got, want)
	}
	for i, want := range []Whose{OfOwn, OfBeside, Neither, Neither} {
		if r := l.Steps[0].Chart.Rows[i]; r.Of != want {
			t.Errorf("bar %q is of %d, want %d", r.Words, r.Of, want)
		}
	}
}
