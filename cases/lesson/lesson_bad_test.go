package lesson

import (
	"errors"
	"strings"
	"testing"
	"testing/fstest"

	"archload/cases/casetest"
	"archload/cases/tree"
)

// lessonText is a lesson of one step, with more lines for it.
func lessonText(lines ...string) string {
	return "format = 1\ntitle = \"T\"\nabout = \"A.\"\n[[step]]\n" + strings.Join(lines, "\n") + "\n"
}

func TestBadLessons(t *testing.T) {
	const ok = "caption = \"C.\"\ncase = \"first\""
	long := strings.Repeat("word ", 60)
	for _, c := range []struct{ name, text, want string }{
		{"empty", "# nothing\n", "a.toml:1: want a lesson (format = 1, title, about, [[step]] ...), found no keys"},
		{"syntax", "format = 1\ntitle = \n", "a.toml:2: not valid TOML: unexpected character U+000A at start of value"},
		{"no parts", "format = 1\n", "a.toml:1: about: missing, want one sentence on what it shows\n" +
			"a.toml:1: step: missing, want at least one [[step]]\na.toml:1: title: missing, want the lesson's title"},
		{"format", strings.Replace(lessonText(ok), "format = 1", "format = 2", 1), "a.toml:1: format: want 1, the lesson format this program reads, found 2"},
		{"no steps", "format = 1\ntitle = \"T\"\nabout = \"A.\"\nstep = []\n", "a.toml:4: step: want at least one [[step]], found none"},
		{"unknown key", lessonText(ok, "feild = \"sink\""), `a.toml:7: step[1].feild: unknown key; did you mean "field"?`},
		{"misplaced key", lessonText(ok, "about = \"x\""), "a.toml:7: step[1].about: unknown key; known here: caption, caution, case, set, beside, beside_set, bench, ask, load, play, field, face, view, section, difference, enlarge, forces, strip, tone, state, air, beside_air, sketch, point, chart"},
		{"no caption", lessonText(`case = "first"`), "a.toml:4: step[1].caption: missing, want one or two sentences"},
		{"no case", lessonText(`caption = "C."`), "a.toml:4: step[1].case: missing in the first step, want the case it shows"},
		{"case's name", lessonText(`caption = "C."`, `case = "frist"`), `a.toml:6: step[1].case: "frist": no bundled case of this name; did you mean "first"?`},
		{"case's file", lessonText(`caption = "C."`, `case = "mine.toml"`), `a.toml:6: step[1].case: "mine.toml": no such file; did you mean "fine.toml"?`},
		{"beside", lessonText(ok, `beside = "flatplate"`), `a.toml:7: step[1].beside: "flatplate": no bundled case of this name; did you mean "flat-plate"?`},
		{"keys beside nothing", lessonText(ok, "beside_set.plate.thickness = 4"), "a.toml:7: step[1].beside_set: no second design is shown; want beside = ... in the step"},
		{"difference from nothing", lessonText(ok, "difference = true"), "a.toml:7: step[1].difference: no second design is shown; want beside = ... in the step"},
		{"a wrong value beside", lessonText(ok, `beside = "first"`, "[step.beside_set]", `"plate.thickness" = 5`, `"bridge.relief.depth" = -0.2`),
			"a.toml:10: step[1].beside_set: bridge.relief.depth: want >= 0 mm, found -0.2"},
		{"claim of a point", lessonText(ok, `point = { at = "bridge", words = "sinks {0.4 mm = bridge.sinks}" }`),
			`a.toml:7: step[1].point.words: "0.4 mm": bridge.sinks: no "sinks" in the report; did you mean "sink"?`},
		{"claim of the moved shape", lessonText(`caption = "It sinks {0.4 mm = moved:bridge.sinks}."`, `case = "first"`),
			`a.toml:5: step[1].caption: "0.4 mm": bridge.sinks: no "sinks" in the report; did you mean "sink"?`},
		{"field", lessonText(ok, `field = "sinc"`), `a.toml:7: step[1].field: want one of none, sink, stress along, stress across, strength used, load flow, foot pressure, gap, tone, humidity, found "sinc"; did you mean "sink"?`},
		{"face", lessonText(ok, `face = "insides"`), `a.toml:7: step[1].face: want one of outside, inside, found "insides"; did you mean "inside"?`},
		{"view", lessonText(ok, `view = "from the tale"`), `a.toml:7: step[1].view: want one of from outside, from the tail, from the treble side, from inside, at an angle, from behind, found "from the tale"; did you mean "from the tail"?`},
		{"section", lessonText(ok, `section = "diagonal"`), `a.toml:7: step[1].section: want one of none, cross, long, found "diagonal"`},
		{"load", lessonText(ok, "load = 1.5"), "a.toml:7: step[1].load: want 0 to 1, found 1.5"},
		{"play", lessonText(ok, `play = "yes"`), `a.toml:7: step[1].play: want true or false, found "yes"`},
		{"set is no table", lessonText(ok, "set = 3"), `a.toml:7: step[1].set: want a table of keys, as in set = { "bridge.relief.depth" = 0.2 }, found 3`},
		{"set a wrong value", lessonText(ok, "[step.set]", `"plate.thickness" = 5`, `"bridge.relief.depth" = -0.2`),
			"a.toml:9: step[1].set: bridge.relief.depth: want >= 0 mm, found -0.2"},
		{"set an unknown key", lessonText(ok, "set.bridge.widht = 12"), `a.toml:7: step[1].set: bridge.widht: unknown key; did you mean "width"? (archload keys explains all)`},
		{"point's name", lessonText(ok, `point = { at = "neckblock" }`),
			`a.toml:7: step[1].point.at: no part of this name in the case; did you mean "neck block"?; there are bass side, treble side, neck block, tail block, bridge, ` +
				"bass end of the foot, middle of the foot, treble end of the foot"},
		{"point's words", lessonText(ok, `point = [{ at = "bridge" }, { at = [0, 0] }]`), "a.toml:7: step[1].point[2]: want words beside a place that has no name"},
		{"point's place", lessonText(ok, `point = { at = [0, 0, 1], words = "here" }`), "a.toml:7: step[1].point.at: want 2 numbers [x, y], found a list of 3"},
		{"swings without an arrow", lessonText(ok, `point = { at = "bridge", above = 20, swings = true }`), "a.toml:7: step[1].point: above and swings are of an arrow; want arrow = [x, y, z] in mm with them"},
		{"point is no place", lessonText(ok, `point = { at = true, words = "here" }`), "a.toml:7: step[1].point.at: want the name of a part of the case, or a place [x, y] in mm, found true"},
		{"long words", lessonText(ok, `point = { at = "bridge", words = "`+long+`" }`), "a.toml:7: step[1].point.words: want at most 48 characters, found 299"},
		{"long caption", lessonText(`caption = "`+long+`"`, `case = "first"`), "a.toml:5: step[1].caption: want at most 260 characters, found 299"},
		{"open brace", lessonText(`caption = "It sinks {0.4 mm."`, `case = "first"`),
			`a.toml:5: step[1].caption: want every { to be closed by a }, as in {0.45 mm = bridge.sink}, found "It sinks {0.4 mm."`},
		{"claim without a number", lessonText(`caption = "It sinks {little = bridge.sink}."`, `case = "first"`),
			`a.toml:5: step[1].caption: "little": want one number in the words, or a range behind them as in {a fifth more = ... in 1.15..1.25}`},
		{"claim without a source", lessonText(`caption = "It sinks {0.4 mm}."`, `case = "first"`),
			"a.toml:5: step[1].caption: want {WORDS = NUMBER}, as in {0.45 mm = bridge.sink}, found {0.4 mm}"},
		{"claim's range", lessonText(`caption = "It sinks {little = bridge.sink in 2..1}."`, `case = "first"`),
			`a.toml:5: step[1].caption: "little": want a rising range FROM..TO behind in, found "2..1"`},
		{"claim's number", lessonText(`caption = "It sinks {0.4 mm = bridge.sinks}."`, `case = "first"`),
			`a.toml:5: step[1].caption: "0.4 mm": bridge.sinks: no "sinks" in the report; did you mean "sink"?`},
		{"claim's key", lessonText(`caption = "It is {5 mm = key:plate.thicknes} thick."`, `case = "first"`),
			`a.toml:5: step[1].caption: "5 mm": plate.thicknes: no number of the case; did you mean "plate.thickness"?`},
		{"claim's other design", lessonText(`caption = "It sinks {0.4 mm = beside:bridge.sink}."`, `case = "first"`),
			`a.toml:5: step[1].caption: "0.4 mm": bridge.sink: no second design is shown; want beside = ... in the step`},
		{"claim's bench file", lessonText(`caption = "It weighs {192 g = bench:readings[1].value}."`, `case = "first"`),
			`a.toml:5: step[1].caption: "192 g": readings[1].value: no bench file is named; want bench = ... in the step`},
		{"claim's seasons", lessonText(`caption = "It falls {1 mm = seasons:seasons[1].arch_rise}."`, `case = "first"`),
			`a.toml:5: step[1].caption: "1 mm": seasons[1].arch_rise: the case has no seasons; want a table [season] in it, or set in the step`},
		{"claim's number of the seasons", lessonText(`caption = "It falls {1 mm = seasons:seasons[1].arch_rises}."`, `case = "course-guitar-seasons"`),
			`a.toml:5: step[1].caption: "1 mm": seasons[1].arch_rises: no "arch_rises" in the report; did you mean "arch_rise"?`},
		{"bench file", lessonText(ok, `bench = "spruce-blnk"`), `a.toml:7: step[1].bench: spruce-blnk:1: no such file`},
		{"point on no other design", lessonText(ok, `point = { at = "bridge", beside = true }`), "a.toml:7: step[1].point.beside: no second design is shown; want beside = ... in the step"},
		{"long question", lessonText(ok, `ask = "`+long+`"`), "a.toml:7: step[1].ask: want at most 120 characters, found 299"},
		{"sketch of nothing known", lessonText(ok, `sketch.of = "neckk"`), `a.toml:7: step[1].sketch.of: want one of air, air over a post, cloth, driven, faces, hinge, hinge and sides, lean, neck, octave, post, rolling shear, shrunk, swinging string, tones, found "neckk"; did you mean "neck"?`},
		{"sketch without notes", lessonText(ok, `sketch.of = "rolling shear"`, `sketch.notes = ["one"]`), `a.toml:8: step[1].sketch.notes: want 3 for "rolling shear", found 1`},
		{"sketch beside a section", lessonText(ok, `section = "cross"`, `sketch.of = "rolling shear"`, `sketch.notes = ["one", "two", "three"]`), `a.toml:8: step[1].sketch.of: a section stands in its place; want section = "none" with a sketch`},
		{"chart without rows", lessonText(ok, `chart = { title = "mm" }`), "a.toml:7: step[1].chart.rows: missing, want one text for each bar, as in \"by the card {10.9 = key:plate.wood.EL / 1000}\""},
		{"row without a number", lessonText(ok, `chart = { title = "mm", rows = ["much"] }`), `a.toml:7: step[1].chart.rows: want a number in braces, and at most one more for its scatter, found "much"`},
		{"claim's formula", lessonText(`caption = "It sinks {0.4 mm = (bridge.sink + }."`, `case = "first"`),
			`a.toml:5: step[1].caption: want a number of the report, as in bridge.sink or bridge.sink / beside:bridge.sink, found "(bridge.sink +"`},
		{"two faults", lessonText(`caption = "C."`, `case = "first"`, `view = "above"`, `load = -1`),
			"a.toml:7: step[1].view: want one of from outside, from the tail, from the treble side, from inside, at an angle, from behind, found \"above\"\n" +
				"a.toml:8: step[1].load: want 0 to 1, found -1"},
		{"a faulty case", lessonText(`caption = "C."`, `case = "fine.toml"`), "a.toml:6: step[1].case: fine.toml:5: plate.thickness: want > 0 mm, found -5"},
	} {
		_, err := Load(casetest.Files("a.toml", c.text, "fine.toml", strings.Replace(casetest.TopText, "= 5", "= -5", 1)+casetest.RestText), "a.toml")
		if err == nil {
			t.Errorf("%s: no fault found, want\n%s", c.name, c.want)
			continue
		}
		if got := err.Error(); got != c.want {
			t.Errorf("%s: got\n%s\nwant\n%s", c.name, got, c.want)
		}
	}
}

func TestOpenLesson(t *testing.T) {
	fsys := casetest.Files("1-arch.toml", lessonText(`caption = "C."`, `case = "first"`))
	if l, err := Open(fsys, "1-arch.toml"); err != nil || len(l.Steps) != 1 {
		t.Errorf("Open(1-arch.toml): %v, want the file", err)
	}
	if l, err := Open(fsys, "1-arch"); err != nil || len(l.Steps) < 4 {
		t.Errorf("Open(1-arch): %v, want the bundled lesson", err)
	}
	for _, c := range []struct{ name, want string }{
		{"1-arc", `1-arc:1: no bundled lesson of this name; did you mean "1-arch"?`},
		{"nothing-like-it", "nothing-like-it:1: no bundled lesson of this name; there are 1-arch, 2-relief, 3-apex, 4-bowed, 5-swing, 6-body, 7-bench, 8-seasons"},
		{"1-arc.toml", `1-arc.toml:1: no such file; did you mean "1-arch.toml"?`},
	} {
		if _, err := Open(fsys, c.name); err == nil || err.Error() != c.want {
			t.Errorf("Open(%s): %v, want %s", c.name, err, c.want)
		}
	}
}

// FuzzLesson wants an error with its place or a whole lesson from any text,
// and never a panic.
func FuzzLesson(f *testing.F) {
	for _, seed := range []string{
		lessonText(`caption = "It sinks {0.45 mm = bridge.sink}."`, `case = "first"`, `set = { "bridge.relief.depth" = 0.2 }`, `point = { at = "bridge" }`),
		lessonText(`caption = "C."`, `case = "first"`, `bench = "spruce-blank"`, `ask = "Where?"`, `chart = { title = "T", rows = ["a {192 = bench:readings[1].value} {1 = bench:readings[1].sd}"] }`),
		lessonText(`caption = "{a third = abs(bridge.end_sink[1] - 1.5) / beside:gauges[a, b].sink in 0..1}"`, `case = "b.toml"`, `beside = "first"`, "load = 0.5"),
		lessonText(`caption = "{5 mm = key:plate.thickness}"`, `case = "first"`, `[step.set.wood.soft]`, `like = "ebony"`, "[[step]]", `caption = "x"`, `view = "from inside"`),
		"format = 1\nstep = [[1]]\n", "step.point = [1, { at = [2] }]\n",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		l, err := Load(fstest.MapFS{"a.toml": {Data: text}, "b.toml": {Data: []byte(casetest.TopText + casetest.RestText)}}, "a.toml")
		var faults tree.Faults
		switch {
		case err == nil:
			for _, s := range l.Steps {
				if s.Case == "" || s.Field == "" || s.Face == "" || s.View == "" || s.Section == "" || s.Load < 0 || s.Load > 1 {
					t.Errorf("a step is not resolved: %+v", s)
				}
			}
		case !errors.As(err, &faults) || len(faults) == 0 || faults[0].Line < 1:
			t.Errorf("error %v carries no place", err)
		}
	})
}
