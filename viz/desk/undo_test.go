package desk

import (
	"testing"

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
