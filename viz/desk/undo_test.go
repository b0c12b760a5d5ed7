package desk

import (
	"strings"
	"testing"
	"testing/fstest"

	"archload/cases/design"
	"archload/viz/panel"
)

// TestUndo changes a design twice, goes back twice and once forward.
func TestUndo(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar-relief"}})
	sink := func() float64 { return h.d.shown.Designs[0].Bridge.Sink }
	first := sink()
	h.slide("relief.depth", 0.5)
	second := sink()
	h.slide("relief.depth", 0.8)
	third := sink()
	ctrl := func(k rune) {
		h.in.Keys = []panel.KeyPress{{Key: panel.LetterKey(k), Ctrl: true}}
		h.frame()
		h.settle()
	}
	for _, step := range []struct {
		key  rune
		want float64
	}{{'z', second}, {'z', first}, {'y', second}, {'y', third}, {'y', third}} {
		if ctrl(step.key); sink() != step.want {
			t.Errorf("after Ctrl %c the bridge sinks %g mm, want %g", step.key, sink(), step.want)
		}
	}
	if b := h.d.shown.Designs[0].Before; b == nil || b.Bridge.Sink != first {
		t.Errorf("before is %+v, want the design as its file says, %g mm", b, first)
	}
}

// TestTyped types a relief.
func TestTyped(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar-relief"}})
	h.scrollTo("relief.depth/value")
	x, y := h.middle("relief.depth/value")
	h.click(x+20, y)
	h.in.Text = []rune("0.2")
	h.frame()
	h.in.Text = nil
	h.key(panel.KeyEnter)
	h.settle()
	if got := float64(h.d.shown.Designs[0].Live.Case().Bridge.Relief.Depth); got != 0.2 {
		t.Errorf("0.2 was typed, the relief is %g mm", got)
	}
}

// The sink of before a change stands in the plan as dashed lines, until all is taken back.
func TestBeforeInThePlan(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar-relief"}})
	dashes := func() (n int) {
		for _, l := range h.d.shown.Scenes[0].Lines {
			if l.Dash == 7 {
				n += len(l.Points)
			}
		}
		return n
	}
	if n := dashes(); n > 0 {
		t.Errorf("nothing is changed, and %d points of before are drawn", n)
	}
	h.slide("relief.depth", 0.8)
	if n := dashes(); n < 100 || !strings.Contains(h.d.statement(0, h.d.shown.Scenes[0]), "long dashes: as its file says") {
		t.Errorf("after a change %d points of before are drawn, under the words %q", n, h.d.statement(0, h.d.shown.Scenes[0]))
	}
	h.key(panel.LetterKey('z'))
	if n := dashes(); n > 0 {
		t.Errorf("all is taken back, and %d points of before are drawn", n)
	}
}

// What is kept on top of a file that has changed meanwhile is said to be another design.
func TestKeptOnAChangedFile(t *testing.T) {
	const mine = "format = 1\nbase = \"course-guitar-relief\"\n"
	files := fstest.MapFS{"mine.toml": {Data: []byte(mine)}}
	h := newHand(t, Options{Names: []string{"mine.toml"}, FS: files})
	h.slide("relief.depth", 0.5)
	h.key(panel.LetterKey('k'))
	if strings.Contains(h.d.note, "other numbers") || len(h.kept) != 1 {
		t.Errorf("the file is as it was; %d are kept, and it says %q", len(h.kept), h.d.note)
	}
	files["mine.toml"] = &fstest.MapFile{Data: []byte(mine + "plate.thickness = 3\n")}
	h.key(panel.LetterKey('k'))
	if !strings.Contains(h.d.note, "mine.toml; but that file has changed or gone") {
		t.Errorf("the file has changed; it says %q", h.d.note)
	}
	delete(files, "mine.toml")
	h.key(panel.LetterKey('k'))
	if !strings.Contains(h.d.note, "changed or gone") {
		t.Errorf("the file is gone; it says %q", h.d.note)
	}
}

// A picture for a file says under it what its panel would: warnings, numbers with how sure they are, checks, mesh,
// friction, and what was changed.
func TestSavedPictureIsTrue(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar-relief"}, Solve: design.Options{Workers: 2, Refine: 0.25}})
	h.slide("relief.depth", 0.5)
	for !h.d.shown.Ranged() {
		<-h.bell
		h.frame()
	}
	h.d.page.saved = true
	lines, warnings := h.d.footLines(1500)
	all := strings.Join(lines, " ")
	if warnings == 0 {
		t.Errorf("no warning in %q", all)
	}
	for _, part := range []string{"the foot must drag", "bridge sinks 0.", " ± ", "built-in checks passed", "error from the mesh", "nodes", "a friction of", "Changed: Depth at the middle 0.120 mm → 0.250 mm"} {
		if !strings.Contains(all, part) {
			t.Errorf("under the picture there is no %q: %q", part, all)
		}
	}
}
