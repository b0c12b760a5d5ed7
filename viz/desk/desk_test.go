package desk

import (
	"math"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/lesson"
	"archload/cases/tree"
	"archload/viz/desk/layout"
	"archload/viz/desk/looks"
	"archload/viz/panel"
	"archload/viz/scale"
	"archload/viz/scene"
	"archload/viz/stage"
	"archload/viz/tool"
)

func TestTurnShiftNear(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar-relief"}})
	c := h.d.lay.View.Centre()
	was := h.d.camera
	h.drag(panel.LeftButton, c.X, c.Y, c.X+100, c.Y+40)
	if got := h.d.camera; got.Yaw == was.Yaw || got.Pitch == was.Pitch || got.Distance != was.Distance {
		t.Errorf("a drag turned the camera from %+v to %+v; want another yaw and pitch at the same distance", was, got)
	}
	if n := len(h.d.want.Pins); n != 0 {
		t.Errorf("a drag left %d pins", n)
	}
	was = h.d.camera
	h.drag(panel.RightButton, c.X, c.Y, c.X+50, c.Y)
	if got := h.d.camera; got.Target == was.Target || got.Yaw != was.Yaw {
		t.Errorf("the right button moved the camera from %+v to %+v; want another target alone", was, got)
	}
	was = h.d.camera
	h.in.Wheel[1] = 3
	h.frame()
	if got := h.d.camera; math.Abs(got.Distance-was.Distance/math.Pow(1.1, 3)) > 1e-9*was.Distance {
		t.Errorf("three notches of the wheel: distance %g, want %g", got.Distance, was.Distance/math.Pow(1.1, 3))
	}
	for _, v := range scene.Views() {
		_, keys := looks.ViewWords()
		h.key(panel.LetterKey(rune(keys[slices.IndexFunc(scene.Views(), func(o scene.NamedView) bool { return o.Name == v.Name })][0])))
		if got := h.d.camera; math.Abs(math.Remainder(got.Yaw-v.Yaw, 360)) > 1e-9 || math.Abs(got.Pitch-v.Pitch) > 1e-9 {
			t.Errorf("%s: yaw %g and pitch %g, want %g and %g", v.Name, got.Yaw, got.Pitch, v.Yaw, v.Pitch)
		}
	}
}

func TestFieldsByKeyAndClick(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar-relief"}})
	for i, f := range scene.Fields() {
		h.key(panel.DigitKey(i))
		if got := h.d.shown.Want.Field; got != f {
			t.Errorf("key %d shows %s, want %s", i, got.Name(), f.Name())
		}
		if s := h.d.shown.Scenes[0]; (s.Scale == nil) != (f == scene.Wood) {
			t.Errorf("%s: a legend is there: %v", f.Name(), s.Scale != nil)
		}
	}
	h.push("field/1")
	if got := h.d.shown.Want.Field; got != scene.Sink {
		t.Errorf("a click on the word shows %s, want sink", got.Name())
	}
	h.push("field/2")
	outer := h.d.shown.Scenes[0]
	h.push("inside")
	if inner := h.d.shown.Scenes[0]; !h.d.shown.Want.Inside || slices.Equal(outer.Solids[0].Values, inner.Solids[0].Values) {
		t.Error("the inner face shows the stress of the outer one")
	}
	h.key(panel.LetterKey('j'))
	worst := h.d.shown.Designs[0].Report.Strength
	if c := h.d.camera; h.d.shown.Want.Field != scene.StrengthUsed || c.Distance > nearWorst ||
		math.Hypot(c.Target[0]-float64(worst.X), c.Target[1]-float64(worst.Y)) > 5 {
		t.Errorf("J looks at %v from %g mm in %s; the worst place lies at %g, %g", c.Target, c.Distance, h.d.shown.Want.Field.Name(), float64(worst.X), float64(worst.Y))
	}
	h.push("forces")
	if !slices.ContainsFunc(h.d.shown.Scenes[0].Labels, func(l scene.Label) bool { return l.Kind == scene.Force }) || h.d.shown.Arrow <= 0 {
		t.Errorf("no arrows are drawn; %g mm to a newton", h.d.shown.Arrow)
	}
}

// The numbers on the page are those of the solve at the same load.
func TestNumbersAreTheSolves(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar-relief"}})
	c, err := cases.Open(nil, "course-guitar-relief")
	if err != nil {
		t.Fatal(err)
	}
	s, err := design.Solve(t.Context(), c, design.Options{Refine: coarse, NoError: true})
	if err != nil {
		t.Fatal(err)
	}
	r := answer.Summarize(s)
	a := h.d.shown.Designs[0]
	if d := math.Abs(a.Bridge.Sink - r.Bridge.Sink); d > 1e-9 {
		t.Errorf("the bridge sinks %.9f mm, solve says %.9f", a.Bridge.Sink, r.Bridge.Sink)
	}
	for i, g := range a.Gauges {
		if d := math.Abs(g.Sink - r.Gauges[i].Sink); d > 1e-9 {
			t.Errorf("gauge %s sinks %.9f mm, solve says %.9f", g.Name, g.Sink, r.Gauges[i].Sink)
		}
		if a, b := g.Outer, r.Gauges[i].Outer; math.Abs(a.Along-b.Along) > 1e-9 || math.Abs(a.Across-b.Across) > 1e-9 || math.Abs(a.Shear-b.Shear) > 1e-9 {
			t.Errorf("gauge %s: stress %v MPa, solve says %v", g.Name, a, b)
		}
	}
	for i, row := range h.d.shown.Table.Rows {
		if row.Key == "bridge_sink" && math.Abs(float64(row.Values[0])-r.Bridge.Sink) > 1e-9 {
			t.Errorf("row %d: %s %v, solve says %v", i, row.Name, row.Values[0], r.Bridge.Sink)
		}
	}
}

func TestReliefAndLoad(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar"}})
	tight := h.d.shown.Designs[0].Bridge.Share.Middle
	h.slide("relief.depth", 0.5)
	a := h.d.shown.Designs[0]
	if got := float64(a.Live.Case().Bridge.Relief.Depth); math.Abs(got-0.25) > 0.006 {
		t.Errorf("the handle in the middle makes a relief of %g mm, want 0.25", got)
	}
	if a.Bridge.Share.Middle >= tight {
		t.Errorf("with relief the middle carries %.3f, without %.3f; want less", a.Bridge.Share.Middle, tight)
	}
	h.slide("load", 0.1)
	a = h.d.shown.Designs[0]
	if got := h.d.shown.Want.Load; math.Abs(got-0.1) > 0.011 {
		t.Errorf("load %g, want 0.1", got)
	}
	if a.Bridge.Share.Middle != 0 || a.Bridge.GapLeft < 0.05 {
		t.Errorf("at a tenth of the load the middle carries %.3f over a gap of %.3f mm; want nothing over an open gap", a.Bridge.Share.Middle, a.Bridge.GapLeft)
	}
	h.key(panel.LetterKey('z'))
	if n := len(h.d.shown.Designs[0].Live.Keys()); n != 0 {
		t.Errorf("after taking back, %d keys are set", n)
	}
}

func TestPlay(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar-relief"}})
	h.in.Keys = []panel.KeyPress{{Key: panel.LetterKey('p')}}
	if h.frame(); !h.d.play.on || !h.d.Moving() {
		t.Fatal("P does not play")
	}
	last, steps := -1.0, 0
	for h.d.play.on {
		h.in.Now += 0.2
		h.frame()
		if h.d.want.Load < last {
			t.Fatalf("the load falls from %g to %g", last, h.d.want.Load)
		}
		last = h.d.want.Load
		steps++
	}
	if h.settle(); h.d.shown.Want.Load != 1 || steps < 10 {
		t.Errorf("played to %g in %d steps", h.d.shown.Want.Load, steps)
	}
	events := h.d.shown.Designs[0].Events
	if len(events) < 2 || !strings.Contains(h.d.eventWords(), events[len(events)-1].Words) {
		t.Errorf("at full load the words are %q; events %v", h.d.eventWords(), events)
	}
}

func TestTwoDesigns(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar", "course-guitar-treble"}})
	s := h.d.shown
	if len(s.Scenes) != 2 {
		t.Fatalf("%d scenes, want 2", len(s.Scenes))
	}
	if a, b := s.Scenes[0].Scale, s.Scenes[1].Scale; a.Lo != b.Lo || a.Hi != b.Hi || a.Step != b.Step || a.Kind != b.Kind {
		t.Errorf("scales %+v and %+v, want one", a, b)
	}
	if s.Scenes[0].Enlarge != s.Scenes[1].Enlarge {
		t.Errorf("movements are drawn %g and %g times as large", s.Scenes[0].Enlarge, s.Scenes[1].Enlarge)
	}
	for i := range h.d.shown.Scenes { // no line of words runs over into the other drawing
		for _, line := range append(h.d.heading(i, h.d.lay.Wide).said, h.d.heading(i, h.d.lay.Wide).remark...) {
			if w := h.d.atlas.TextWidth(panel.Small, line); layout.HeadLeft+w > h.d.lay.Heads[i].W {
				t.Errorf("design %d: %q is %.0f points wide, over %.0f", i, line, w, h.d.lay.Heads[i].W)
			}
		}
	}
	h.key(panel.LetterKey('d'))
	s = h.d.shown
	if len(s.Scenes) != 1 || s.Scenes[0].Scale == nil || s.Scenes[0].Scale.Kind != scale.Signed {
		t.Fatalf("the difference: %d scenes, scale %+v", len(s.Scenes), s.Scenes[0].Scale)
	}
	h.push("edit/1")
	h.slide("relief.depth", 0.3)
	if a, b := h.d.shown.Designs[0].Live.Keys(), h.d.shown.Designs[1].Live.Keys(); len(a) != 0 || len(b) != 1 {
		t.Errorf("keys set on A %v, on B %v; want one on B", a, b)
	}
}

func TestSectionAndPins(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar-relief"}})
	h.key(panel.LetterKey('x'))
	cut := h.d.shown.Designs[0].Cut
	if cut == nil || len(cut.Braces) != 2 {
		t.Fatalf("the cross-arch is %+v, want one through two bars", cut)
	}
	h.key(panel.LetterKey('o'))
	c := h.d.lay.View.Centre()
	h.click(c.X, c.Y-90)
	h.settle()
	if len(h.d.want.Pins) != 1 {
		t.Fatalf("%d pins after a click on the plate", len(h.d.want.Pins))
	}
	p := h.d.want.Pins[0]
	got := h.d.shown.Designs[0].Pins[0]
	want, _ := answer.ReadingAt(h.d.shown.Designs[0].Now, p.At)
	if got.Sink != want.Sink || !(got.Sink > 0) {
		t.Errorf("the pin reads %g mm, the place %g", got.Sink, want.Sink)
	}
	h.in.Shift = true
	h.drag(panel.LeftButton, c.X-60, c.Y-80, c.X+60, c.Y-60)
	h.in.Shift = false
	h.settle()
	if k := h.d.shown.Want.Cut; k.Kind != stage.FreeCut || h.d.shown.Designs[0].Cut == nil || k.From[0] > k.To[0] {
		t.Errorf("a line drawn across the plate gives the cut %+v", k)
	}
	h.scrollTo("unpin 0")
	h.push("unpin 0")
	if len(h.d.want.Pins) != 0 {
		t.Error("the pin is still there")
	}
}

func TestHover(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar"}})
	h.key(panel.LetterKey('o'))
	c := h.d.lay.View.Centre()
	h.to(c.X, c.Y-90)
	if h.d.hover == nil || !(h.d.hover.read.Sink > 0) || math.Abs(h.d.hover.wood.Thickness-5) > 1e-9 {
		t.Fatalf("over the plate the pointer reads %+v", h.d.hover)
	}
	h.to(h.d.lay.View.X+4, h.d.lay.View.Bottom()-4)
	if h.d.hover != nil {
		t.Errorf("beside the plate the pointer reads %+v", h.d.hover)
	}
}

// What is kept is a case that answers as the window did.
func TestKeep(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar"}})
	h.key(panel.LetterKey('k'))
	if len(h.kept) != 0 {
		t.Errorf("kept %v although nothing was changed", h.kept)
	}
	h.slide("relief.depth", 0.3)
	h.key(panel.LetterKey('k'))
	data, ok := h.kept["course-guitar-changed.toml"]
	if !ok {
		t.Fatalf("kept %v", h.kept)
	}
	c, err := cases.Load(fstest.MapFS{"k.toml": {Data: data}}, "k.toml")
	if err != nil {
		t.Fatalf("%v in\n%s", err, data)
	}
	s, err := design.Solve(t.Context(), c, design.Options{Refine: coarse, NoError: true, NoFlow: true})
	if err != nil {
		t.Fatal(err)
	}
	if got, want := answer.Summarize(s).Bridge.Sink, h.d.shown.Designs[0].Bridge.Sink; math.Abs(got-want) > 1e-9 {
		t.Errorf("the kept case sinks %.9f mm, the window said %.9f", got, want)
	}
}

func TestLessonFromFirstToLast(t *testing.T) {
	infos, err := lesson.Bundled()
	if err != nil {
		t.Fatal(err)
	}
	h := newHand(t, Options{Lesson: infos[1].Name})
	for k := 1; k <= infos[1].Steps; k++ {
		step := h.d.lesson.Step()
		for h.d.play.on {
			h.in.Now += 0.3
			h.frame()
		}
		h.settle()
		if h.d.fault != "" {
			t.Fatalf("step %d: %s", k, h.d.fault)
		}
		if got := h.d.shown.Want.Field.Word(); got != step.Field {
			t.Errorf("step %d shows %s, want %s", k, got, step.Field)
		}
		if h.d.shown.Want.Load != step.Load {
			t.Errorf("step %d at load %g, want %g", k, h.d.shown.Want.Load, step.Load)
		}
		if k < infos[1].Steps {
			h.push("step on")
		}
	}
	if h.d.lesson.At != infos[1].Steps-1 {
		t.Errorf("the lesson ended at step %d of %d", h.d.lesson.At+1, infos[1].Steps)
	}
	h.key(panel.KeyEscape)
	if h.d.lesson != nil {
		t.Error("Esc does not end the lesson")
	}
}

// A fault leaves picture and numbers as they were, and says why.
func TestFaultKeepsThePicture(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar"}})
	was := h.d.shown
	h.d.change([]tree.KeyValue{{Key: "bridge.saddle_height", Value: tree.Valued(2.0)}})
	h.settle()
	if !strings.Contains(h.d.fault, "the height of the base at its middle") {
		t.Errorf("the fault reads %q", h.d.fault)
	}
	if h.d.shown != was || len(h.d.want.Designs[0].Keys) != 0 {
		t.Errorf("the picture or the controls changed; keys %v", h.d.want.Designs[0].Keys)
	}
	h.key(panel.LetterKey('z'))
	if h.d.fault != "" {
		t.Errorf("after taking back the fault is still %q", h.d.fault)
	}
}

func TestSheetsAndLeaving(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar"}})
	h.key(panel.LetterKey('h'))
	if h.d.over != helpSheet {
		t.Error("H does not open the help")
	}
	h.push("close")
	if h.d.over != noSheet {
		t.Error("the sheet does not close")
	}
	h.in.Keys = []panel.KeyPress{{Key: panel.LetterKey('q'), Ctrl: true}}
	h.frame()
	if !h.d.Done() {
		t.Error("Ctrl Q does not leave")
	}
}

// Every shortcut has words, and no key means two things.
func TestShortcuts(t *testing.T) {
	seen := map[panel.KeyPress]string{}
	for _, s := range shortcuts() {
		k := panel.KeyPress{Key: s.key, Ctrl: s.ctrl}
		if was, twice := seen[k]; twice || s.key == panel.NoKey {
			t.Errorf("key %q (%s) is also %q", s.name, s.words, was)
		}
		seen[k] = s.words
	}
}

// The words by which a lesson asks for a field or a view are those of the scene,
// in the same order.
func TestLessonWords(t *testing.T) {
	if got, want := lesson.Fields(), looks.FieldWords(); !slices.Equal(got, want) {
		t.Errorf("lessons know the fields %q, the scene %q", got, want)
	}
	if got, want := len(lesson.Views()), len(scene.Views()); got != want {
		t.Errorf("lessons know %d views, the scene %d", got, want)
	}
	for _, v := range lesson.Views() {
		if err := looks.KnownView(v); err != nil {
			t.Error(err)
		}
	}
}

// A bar that is left out is drawn no more and counts no more.
func TestBarLeftOut(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar"}})
	bars := func() (n int) {
		for _, s := range h.d.shown.Scenes[0].Solids {
			if strings.HasSuffix(s.Name, " bar") {
				n++
			}
		}
		return n
	}
	sink, was := h.d.shown.Designs[0].Bridge.Sink, bars()
	h.push("fold " + tool.Top)
	h.scrollTo("brace[1].fitted/1")
	h.push("brace[1].fitted/1")
	if got := h.d.shown.Designs[0].Bridge.Sink; !(got > sink) {
		t.Errorf("without the bass bar the bridge sinks %g mm, with it %g; want more", got, sink)
	}
	if was != 2 || bars() != 1 {
		t.Errorf("%d bars are drawn, then %d; want 2 and 1", was, bars())
	}
}

// The end of a lesson by its button, in the middle of drawing its words.
func TestLessonEndsByItsButton(t *testing.T) {
	h := newHand(t, Options{Lesson: "2-relief"})
	for h.d.play.on {
		h.in.Now += 0.3
		h.frame()
	}
	h.push("end lesson")
	if h.d.lesson != nil {
		t.Error("the lesson goes on")
	}
}
