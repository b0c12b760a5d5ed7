package desk

import (
	"math"
	"strings"
	"testing"
	"testing/fstest"

	"archload/cases/answer"
	"archload/viz/panel"
)

// With two designs side by side the pointer on one reads the other at the same place, too, and the
// difference is that of B less A whichever it is on.
func TestPointerReadsBoth(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar", "course-guitar-treble"}})
	h.key(panel.LetterKey('o'))
	for i := range 2 {
		c := h.d.lay.Views[i].Centre()
		h.to(c.X+30, c.Y-60)
		r := h.d.hover
		if r == nil || r.other == nil || r.onB != (i == 1) {
			t.Fatalf("over design %d the pointer reads %+v", i, r)
		}
		want, _ := answer.ReadingAt(h.d.shown.Designs[1-i].Now, r.place)
		if r.other.Sink != want.Sink || r.read.Sink == want.Sink {
			t.Errorf("over design %d: %g and %g mm, the other design has %g there", i, r.read.Sink, r.other.Sink, want.Sink)
		}
	}
}

// The start page lists the case files of the folder, and opens one; a number says what it tells where the pointer
// rests on it.
func TestOpenAFileOfTheFolder(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar"}, FS: fstest.MapFS{
		"mine.toml":  {Data: []byte("format = 1\nbase = \"course-guitar\"\nplate.thickness = 4.5\n")},
		"other.toml": {Data: []byte("a = 1\n")}, "notes.txt": {},
	}})
	h.in.Keys = []panel.KeyPress{{Key: panel.LetterKey('n'), Ctrl: true}}
	h.frame()
	h.appears("file mine.toml")
	if _, ok := h.d.panel.Find("file other.toml"); ok {
		t.Error("a file that is no case can be opened")
	}
	h.push("file mine.toml")
	if got := float64(h.d.shown.Designs[0].Live.Case().Plate.Thickness.Const); math.Abs(got-4.5) > 1e-9 {
		t.Errorf("the file that was opened is %g mm thick, want 4.5", got)
	}
	h.to(h.d.lay.Side.X+60, h.d.lay.Side.Y+118)
	for range 60 {
		h.frame()
	}
	if tip := h.d.panel.TipShown(); !strings.Contains(tip, "from slack strings to pitch") {
		t.Errorf("where the pointer rests on the sink, it explains itself as %q", tip)
	}
}
