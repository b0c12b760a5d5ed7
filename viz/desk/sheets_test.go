package desk

import (
	"image"
	"math"
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
		if sheet.key == "l" {
			h.appears("lesson 1-arch")
		}
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
	h.appears("lesson 1-arch")
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

// On the page to choose from, and before there is a picture, every key of the window does nothing
// that needs a design.
func TestKeysWithoutADesign(t *testing.T) {
	for _, names := range [][]string{nil, {"course-guitar-relief"}} {
		d, err := New(Options{Names: names, Keep: func(string, []byte) (string, error) { t.Error("something is kept"); return "", nil },
			Picture: func(f *Frame) (image.Image, error) { return Software(f), nil }})
		if err != nil {
			t.Fatal(err)
		}
		for range 2 {
			for _, s := range shortcuts() {
				if s.words == "leaves" {
					continue
				}
				d.Frame(pageWidth, pageHeight, 1, panel.Input{X: 400, Y: 300, Keys: []panel.KeyPress{{Key: s.key, Ctrl: s.ctrl}}})
				d.Frame(pageWidth, pageHeight, 1, panel.Input{X: 400, Y: 300})
			}
		}
		if names == nil && (d.play.on || d.want.Load != 1) {
			t.Errorf("without a design the load is at %g, and plays: %v", d.want.Load, d.play.on)
		}
		for _, k := range []panel.Key{panel.KeyLeft, panel.KeyUp, panel.KeyPlus, panel.KeyMinus} {
			d.Frame(300, 200, 1, panel.Input{Keys: []panel.KeyPress{{Key: k}}})
		}
		if d.camera != (scene.Camera{}) && names == nil || math.IsNaN(d.camera.Distance) || math.IsNaN(d.camera.Target[0]) {
			t.Errorf("without a picture the keys take the camera to %+v", d.camera)
		}
	}
}
