package desk

import (
	"testing"

	"archload/viz/desk/looks"
	"archload/viz/panel"
	"archload/viz/scene"
)

// resize gives the page another size, in pixels, and letters so many steps larger.
func (h *hand) resize(width, height, letters int) {
	h.width, h.height = width, height
	h.d.looks.Letters = letters
	h.frame()
	h.settle()
}

// On every page that the window allows, with letters of every size, the drawing keeps the
// greater part of what controls leave, and no control lies outside the page.
func TestEverySizeKeepsAPicture(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar-relief"}})
	for _, size := range [][2]int{{800, 560}, {1024, 768}, {1280, 800}, {1920, 1080}} {
		for letters := range looks.MostLetters + 1 {
			h.resize(size[0], size[1], letters)
			l := h.d.lay
			if v := l.views[0]; v.W < 260 || v.H-l.head.all() < 100 || v.W*v.H < 0.35*l.page.W*l.page.H {
				t.Errorf("%d x %d, letters %d: a page of %.0f x %.0f points has a drawing of %.0f x %.0f under %.0f of words",
					size[0], size[1], letters, l.page.W, l.page.H, v.W, v.H, l.head.all())
			}
			for _, p := range h.d.panel.Places() {
				if p.At.Right() > l.page.W+0.5 || p.At.X < -0.5 {
					t.Errorf("%d x %d, letters %d: %q reaches from %.0f to %.0f on a page %.0f wide", size[0], size[1], letters, p.ID, p.At.X, p.At.Right(), l.page.W)
				}
			}
		}
	}
}

// Where the bar has no room its words are lists that open, and the panel comes when it is
// asked for.
func TestFoldedBar(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar-relief"}})
	h.resize(800, 600, 2)
	if h.d.lay.form != barFolded || !h.d.lay.side.Empty() {
		t.Fatalf("a page of %.0f points has the bar %d and a panel %.0f wide", h.d.lay.page.W, h.d.lay.form, h.d.lay.side.W)
	}
	push := func(id string) {
		t.Helper()
		x, y := h.middle(id)
		k := looks.LetterStep(h.d.page.steps)
		h.click(x*k, y*k)
		h.settle()
	}
	push("menu field")
	push("field/4")
	if h.d.over != noSheet || h.d.shown.Want.Field != scene.StrengthUsed {
		t.Errorf("the list of fields leads to %s; open: %v", h.d.shown.Want.Field.Name(), h.d.over)
	}
	push("menu view")
	push("view/1")
	if h.d.looks.View != "from outside" {
		t.Errorf("the list of views leads %s", h.d.looks.View)
	}
	push("menu drawn")
	push("flow")
	if !h.d.want.Flow || h.d.over != drawnMenu {
		t.Errorf("a tick in the list: paths %v, list %v", h.d.want.Flow, h.d.over)
	}
	v := h.d.lay.view
	h.click(looks.LetterStep(2)*(v.Right()-60), looks.LetterStep(2)*(v.Bottom()-30))
	if h.d.over != noSheet {
		t.Error("a press beside the list leaves it open")
	}
	push("fold side")
	if h.d.lay.side.Empty() || h.d.looks.NoSide {
		t.Error("the tab does not bring the panel")
	}
	h.key(panel.LetterKey('f'))
	if !h.d.lay.side.Empty() {
		t.Error("F does not fold it away")
	}
}

// Letters grow as far as the window has room for them.
func TestLettersByHand(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar-relief"}})
	h.push("larger letters")
	if h.d.page.steps != 1 || h.d.lay.page.W != pageWidth/1.25 {
		t.Errorf("one step: %d, page %.0f points wide", h.d.page.steps, h.d.lay.page.W)
	}
	h.resize(800, 600, 1)
	for range looks.MostLetters {
		h.in.Keys = []panel.KeyPress{{Key: panel.KeyPlus, Ctrl: true}}
		h.frame()
	}
	if h.d.page.steps != h.d.page.mostSteps || h.d.lay.page.W < 440 || h.d.note == "" {
		t.Errorf("letters grew by %d steps of %d to a page %.0f points wide; said %q", h.d.page.steps, h.d.page.mostSteps, h.d.lay.page.W, h.d.note)
	}
}

// A step of a lesson keeps its picture on small pages and with large letters, its words beside
// or below it, each of its parts on the page.
func TestLessonOnASmallPage(t *testing.T) {
	h := newHand(t, Options{Lesson: "2-relief"})
	for _, letters := range []int{0, 3} {
		h.resize(800, 600, letters)
		l := h.d.lay
		v, c := l.views[0], l.caption
		if v.H-l.head.all() < 60 || !v.Meet(c).Empty() || c.Right() > l.page.W+0.5 || c.Bottom() > l.ruler.Y+0.5 {
			t.Errorf("letters %d: a drawing of %.0f x %.0f under %.0f of words, the step's words at %+v on a page of %.0f x %.0f", letters, v.W, v.H, l.head.all(), c, l.page.W, l.page.H)
		}
		for _, id := range []string{"step back", "step on", "end lesson"} {
			if p, ok := h.d.panel.Find(id); !ok || p.Seen.W < p.At.W || p.Seen.H < p.At.H || p.At.Right() > c.Right() || p.At.Bottom() > c.Bottom() {
				t.Errorf("letters %d: %q lies at %+v, the words at %+v", letters, id, p.At, c)
			}
		}
	}
}
