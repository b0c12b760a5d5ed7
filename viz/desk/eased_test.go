package desk

import (
	"strings"
	"testing"
	"time"

	"archload/cases/tree"
)

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
