package desk

import (
	"strings"
	"testing"
	"time"

	"archload/cases/tree"
	"archload/viz/desk/layout"
	"archload/viz/panel"
)

// TestScalesHoldUnderTheHand drags the relief to twice what it was: while the
// hand holds the slider movement, legend and the foot's axes are drawn as before,
// and a deeper relief lets the picture sink deeper.
func TestScalesHoldUnderTheHand(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar-relief"}})
	h.settle()
	was, sink := h.d.shown.Scales, h.d.shown.Designs[0].Bridge.Sink
	x, y := h.middle("relief.depth/handle")
	h.to(x, y)
	h.press(panel.LeftButton)
	for _, dx := range []float64{20, 60, 120} {
		h.to(x+dx, y)
		h.settle()
		if !h.d.shown.Want.Held {
			t.Fatal("the hand holds the slider, and the want does not say so")
		}
		if got := h.d.shown.Scales; got != was {
			t.Errorf("while the hand drags: drawn by %+v, before %+v", got, was)
		}
	}
	if got := h.d.shown.Designs[0].Bridge.Sink; !(got > sink) {
		t.Errorf("the bridge sinks %g mm over a deeper relief, before %g", got, sink)
	}
	h.let(panel.LeftButton)
	h.settle()
	after := h.d.shown.Scales
	if after != was && !strings.HasPrefix(h.d.note, "Another scale") {
		t.Errorf("after the drag the scales are %+v, before %+v, and nothing says so", after, was)
	}
	if _, over := h.d.shown.Beyond(); over {
		t.Error("at rest the legend does not reach as far as the values")
	}
}

// Seen from the tail a plate leaves paper above and below: the strip takes it, keeps it while the
// plate is turned by hand, and gives it back to a view that needs it.
func TestStripTakesWhatALevelViewLeaves(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar-relief"}})
	h.key(panel.LetterKey('x'))
	h.key(panel.LetterKey('o'))
	low := h.d.lay.Strip.H
	h.key(panel.LetterKey('t'))
	tall := h.d.lay.Strip.H
	if low != layout.StripHeight || tall < low+40 {
		t.Errorf("the strip is %g points high from outside, %g from the tail", low, tall)
	}
	c := h.d.lay.View.Centre()
	h.drag(panel.RightButton, c.X, c.Y, c.X+60, c.Y-20)
	if got := h.d.lay.Strip.H; got != tall {
		t.Errorf("while it is turned the strip goes from %g to %g", tall, got)
	}
	h.key(panel.LetterKey('o'))
	if got := h.d.lay.Strip.H; got != low {
		t.Errorf("the strip stays %g points high", got)
	}
}

// A word that is pressed changes the picture by the scales it had, without a change of colours; only when nothing newer has
// come for the time of a rest do they change, and that is said. What is asked in between is asked once.
func TestScalesHoldAtAClick(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar-relief"}})
	h.settle()
	was := h.d.shown
	h.d.change([]tree.KeyValue{{Key: "bridge.relief.depth", Value: tree.Valued(0.6)}})
	asked, page := 1, h.d.Frame(h.width, h.height, 1, h.in)
	for _, v := range page.Views {
		if !v.Light {
			t.Error("the page that asks is drawn with care, though another is on its way")
		}
	}
	for last := h.d.asked; ; last = h.d.asked {
		h.frame()
		if h.d.asked != last {
			asked++
		}
		if h.d.shown != was {
			break
		}
		select {
		case <-h.bell:
		case <-time.After(late):
			t.Fatal("no answer")
		}
	}
	if now := h.d.shown.Scales; now != was.Scales {
		t.Errorf("first seen by %+v, before by %+v", now, was.Scales)
	}
	if h.d.was != nil {
		t.Error("the first picture of a change goes over from that before it")
	}
	for range 5 { // frames of a sixtieth of a second
		if h.frame(); !h.d.shown.Want.Held || !h.d.asked.Held {
			t.Fatal("the scales change before the picture has come to rest")
		}
	}
	h.settle()
	if asked != 1 {
		t.Errorf("the change was asked for %d times before it was seen, want once", asked)
	}
	if h.d.shown.Scales == was.Scales || h.d.shown.Want.Held || !strings.HasPrefix(h.d.note, "Another scale") {
		t.Errorf("at rest drawn by %+v, before by %+v; said: %q", h.d.shown.Scales, was.Scales, h.d.note)
	}
	if n := len(h.d.past.before); n != 1 {
		t.Errorf("%d steps can be undone, want the one", n)
	}
}
