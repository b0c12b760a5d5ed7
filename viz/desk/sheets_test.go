package desk

import (
	"testing"

	"archload/viz/panel"
)

// On the smallest page with the largest letters every word of a sheet can be reached: what has
// no room is scrolled to.
func TestSheetsOnASmallPage(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar-relief"}})
	h.resize(800, 560, mostLetters)
	k := letterStep(h.d.page.steps)
	for _, sheet := range []struct{ key, area, last string }{{"l", "lessons list", "lesson 8-seasons"}, {"h", "help", ""}} {
		h.in.Keys = []panel.KeyPress{{Key: panel.LetterKey(rune(sheet.key[0]))}}
		h.frame()
		h.frame()
		area, ok := h.d.panel.Find(sheet.area)
		if !ok || area.At.Bottom() > h.d.lay.page.H {
			t.Fatalf("the sheet of %q lies at %+v on a page %.0f high", sheet.area, area.At, h.d.lay.page.H)
		}
		h.to(area.At.Centre().X*k, area.At.Centre().Y*k)
		for range 60 {
			h.in.Wheel[1] = -1
			h.frame()
		}
		if p, ok := h.d.panel.Find(sheet.last); sheet.last != "" && (!ok || p.Seen.H < p.At.H) {
			t.Errorf("the wheel does not bring %q into sight", sheet.last)
		}
		if p, ok := h.d.panel.Find("close"); !ok || p.Seen.Bottom() > h.d.lay.page.H || !p.Seen.Meet(area.At).Empty() {
			t.Errorf("the button that closes lies at %+v over the list at %+v", p.Seen, area.At)
		}
		h.key(panel.KeyEscape)
	}
}
