package desk

import (
	"slices"
	"strings"
	"testing"

	"archload/viz/desk/looks"
	"archload/viz/panel"
	"archload/viz/scene"
)

// On the smallest page with the largest letters every word of a sheet can be reached: what has
// no room is scrolled to.
func TestSheetsOnASmallPage(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar-relief"}})
	h.resize(800, 560, looks.MostLetters)
	k := looks.LetterStep(h.d.page.steps)
	for _, sheet := range []struct{ key, area, last string }{{"l", "lessons list", "lesson 8-seasons"}, {"h", "help", ""}} {
		h.in.Keys = []panel.KeyPress{{Key: panel.LetterKey(rune(sheet.key[0]))}}
		h.frame()
		h.frame()
		area, ok := h.d.panel.Find(sheet.area)
		if !ok || area.At.Bottom() > h.d.lay.Page.H {
			t.Fatalf("the sheet of %q lies at %+v on a page %.0f high", sheet.area, area.At, h.d.lay.Page.H)
		}
		h.to(area.At.Centre().X*k, area.At.Centre().Y*k)
		for range 60 {
			h.in.Wheel[1] = -1
			h.frame()
		}
		if p, ok := h.d.panel.Find(sheet.last); sheet.last != "" && (!ok || p.Seen.H < p.At.H) {
			t.Errorf("the wheel does not bring %q into sight", sheet.last)
		}
		if p, ok := h.d.panel.Find("close"); !ok || p.Seen.Bottom() > h.d.lay.Page.H || !p.Seen.Meet(area.At).Empty() {
			t.Errorf("the button that closes lies at %+v over the list at %+v", p.Seen, area.At)
		}
		h.key(panel.KeyEscape)
	}
}

// Enter begins the first lesson, whose button has the keyboard when the sheet opens.
func TestEnterBeginsALesson(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar"}})
	h.key(panel.LetterKey('l'))
	h.frame()
	h.key(panel.KeyEnter)
	if h.d.lesson == nil || h.d.over != noSheet {
		t.Errorf("Enter on the list of lessons: lesson %v, sheet %v", h.d.lesson, h.d.over)
	}
}

// The picture of the load flow has its paths, and the tick says so; of a gap that has closed the
// words over the picture say it; a pin's name cannot be read as a part of its number.
func TestWhatThePictureSays(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar"}})
	h.key(panel.DigitKey(5))
	if p, ok := h.d.panel.Find("flow"); !ok || p.Value != "on" || !p.Off {
		t.Errorf("with the load flow shown the tick of its paths is %+v", p)
	}
	h.key(panel.DigitKey(7))
	if words := h.d.statement(0, h.d.shown.Scenes[0]); !strings.Contains(words, "closed everywhere") {
		t.Errorf("over a closed gap stands %q", words)
	}
	h.key(panel.DigitKey(1))
	h.key(panel.LetterKey('o'))
	c := h.d.lay.View.Centre()
	h.click(c.X, c.Y-90)
	h.settle()
	if !slices.ContainsFunc(h.d.shown.Scenes[0].Labels, func(l scene.Label) bool { return strings.HasPrefix(l.Text, "pin 1: ") }) {
		t.Errorf("no word of the picture names the pin: %+v", h.d.shown.Scenes[0].Labels)
	}
}
