package desk

import (
	"fmt"
	"strings"
	"testing"

	"archload/cases/design"
	"archload/viz/desk/layout"
	"archload/viz/desk/legend"
	"archload/viz/desk/looks"
	"archload/viz/panel"
	"archload/viz/scene"
	"archload/viz/stage"
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
			if v := l.Views[0]; v.W < 260 || v.H-l.Head.All() < 100 || v.W*v.H < 0.35*l.Page.W*l.Page.H {
				t.Errorf("%d x %d, letters %d: a page of %.0f x %.0f points has a drawing of %.0f x %.0f under %.0f of words",
					size[0], size[1], letters, l.Page.W, l.Page.H, v.W, v.H, l.Head.All())
			}
			for _, p := range h.d.panel.Places() {
				if p.At.Right() > l.Page.W+0.5 || p.At.X < -0.5 {
					t.Errorf("%d x %d, letters %d: %q reaches from %.0f to %.0f on a page %.0f wide", size[0], size[1], letters, p.ID, p.At.X, p.At.Right(), l.Page.W)
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
	if h.d.lay.Form != layout.Folded || !h.d.lay.Side.Empty() {
		t.Fatalf("a page of %.0f points has the bar %d and a panel %.0f wide", h.d.lay.Page.W, h.d.lay.Form, h.d.lay.Side.W)
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
	v := h.d.lay.View
	h.click(looks.LetterStep(2)*(v.Right()-60), looks.LetterStep(2)*(v.Bottom()-30))
	if h.d.over != noSheet {
		t.Error("a press beside the list leaves it open")
	}
	push("fold side")
	if h.d.lay.Side.Empty() || h.d.looks.NoSide {
		t.Error("the tab does not bring the panel")
	}
	h.key(panel.LetterKey('f'))
	if !h.d.lay.Side.Empty() {
		t.Error("F does not fold it away")
	}
}

// Letters grow as far as the window has room for them.
func TestLettersByHand(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar-relief"}})
	h.push("larger letters")
	if h.d.page.steps != 1 || h.d.lay.Page.W != pageWidth/1.25 {
		t.Errorf("one step: %d, page %.0f points wide", h.d.page.steps, h.d.lay.Page.W)
	}
	h.resize(800, 600, 1)
	for range looks.MostLetters {
		h.in.Keys = []panel.KeyPress{{Key: panel.KeyPlus, Ctrl: true}}
		h.frame()
	}
	if h.d.page.steps != h.d.page.mostSteps || h.d.lay.Page.W < 440 || h.d.note == "" {
		t.Errorf("letters grew by %d steps of %d to a page %.0f points wide; said %q", h.d.page.steps, h.d.page.mostSteps, h.d.lay.Page.W, h.d.note)
	}
}

// A step of a lesson keeps its picture on small pages and with large letters, its words beside
// or below it, each of its parts on the page.
func TestLessonOnASmallPage(t *testing.T) {
	h := newHand(t, Options{Lesson: "2-relief"})
	for _, letters := range []int{0, 3} {
		h.resize(800, 600, letters)
		l := h.d.lay
		v, c := l.Views[0], l.Caption
		if v.H-l.Head.All() < 60 || !v.Meet(c).Empty() || c.Right() > l.Page.W+0.5 || c.Bottom() > l.Ruler.Y+0.5 {
			t.Errorf("letters %d: a drawing of %.0f x %.0f under %.0f of words, the step's words at %+v on a page of %.0f x %.0f", letters, v.W, v.H, l.Head.All(), c, l.Page.W, l.Page.H)
		}
		for _, id := range []string{"step back", "step on", "end lesson"} {
			if p, ok := h.d.panel.Find(id); !ok || p.Seen.W < p.At.W || p.Seen.H < p.At.H || p.At.Right() > c.Right() || p.At.Bottom() > c.Bottom() {
				t.Errorf("letters %d: %q lies at %+v, the words at %+v", letters, id, p.At, c)
			}
		}
	}
}

// smallPages are the pages of the windows that are small, with the steps of their largest letters.
func smallPages() [][3]int { return [][3]int{{800, 600, 3}, {1024, 768, 5}, {1280, 800, 6}} }

// unreadable lists the words of a watched page that are cut, covered, or lie over each other.
func (h *hand) unreadable() (out []string) {
	written := h.d.panel.List().Written()
	for i, w := range written {
		at := panel.Point{X: w.At.X, Y: w.At.Y}
		scrolled := h.d.lay.Side.Holds(at) // a line at the edge may be half in sight
		switch {
		case w.Text != w.Whole:
			out = append(out, fmt.Sprintf("%q stands as %q", w.Whole, w.Text))
		case w.Seen.W < w.At.W-1 || !scrolled && (w.Under || w.Seen.H < w.At.H-1):
			out = append(out, fmt.Sprintf("%q is cut or covered at %.0f, %.0f", w.Text, at.X, at.Y))
		}
		for _, o := range written[:i] {
			if m := w.Seen.Meet(o.Seen); m.W > 1.5 && m.H > 1.5 {
				out = append(out, fmt.Sprintf("%q lies over %q", w.Text, o.Text))
			}
		}
	}
	return out
}

// everyPage shows fields from one view after another on the small pages, with the least, middle
// and largest letters, and reports what cannot be read and where the drawing is too small.
func (h *hand) everyPage(fields []scene.Field, leastAcross float64) {
	h.d.panel.Watch()
	cuts := []stage.CutKind{stage.NoCut, stage.CrossArch, stage.LongArch}
	for k, f := range fields {
		h.d.see(f)
		h.d.want.Cut.Kind, h.d.want.Forces = cuts[k%len(cuts)], k%2 == 1
		h.d.look(scene.Views()[k%len(scene.Views())].Name)
		h.settle()
		h.d.moving, h.d.note = false, ""
		for _, s := range smallPages() {
			for _, letters := range []int{0, (s[2] + 1) / 2, s[2]} {
				h.width, h.height, h.d.looks.Letters = s[0], s[1], letters
				h.frame()
				h.frame() // areas know how high they are
				where := fmt.Sprintf("%d x %d, letters %d, %s %s, cut %d", s[0], s[1], letters, f.Name(), h.d.looks.View, h.d.want.Cut.Kind)
				if across := h.d.across(h.d.shown.Scenes[0], h.d.lay.Views[0].H); across < leastAcross {
					h.t.Errorf("%s: the scene is drawn %.0f points across", where, across)
				}
				for _, u := range h.unreadable() {
					h.t.Errorf("%s: %s", where, u)
				}
			}
		}
	}
}

// On every small page, with letters of every size, each field can be read: no word is cut, none
// covers another, and the drawing has room.
func TestEverySmallPageCanBeRead(t *testing.T) {
	newHand(t, Options{Names: []string{"course-guitar-relief"}}).everyPage(scene.Fields(), 130)
}

// So can two designs.
func TestTwoDesignsOnSmallPages(t *testing.T) {
	fields := []scene.Field{scene.LoadFlow, scene.Sink, scene.StressAlong, scene.RemainingGap}
	newHand(t, Options{Names: []string{"course-guitar-relief", "course-guitar"}}).everyPage(fields, 65)
}

// On the smallest page two designs are named by what is their own, in one line, and the colours keep their legend,
// from whatever side the plates are seen.
func TestTwoDesignsOnTheSmallestPage(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar-relief", "course-guitar-treble"}})
	for _, view := range []string{"from outside", "from the tail"} {
		h.d.want.Cut.Kind = stage.CrossArch
		h.d.look(view)
		h.settle()
		h.resize(800, 600, 3)
		if got := h.d.heading(0, h.d.lay.Wide).title; len(got) != 1 || got[0] != "A: foot relieved by 0.12 mm" {
			t.Errorf("%s: A is named %q", view, got)
		}
		if tip := h.d.rest(0); !strings.HasPrefix(tip, "A: Course guitar, foot relieved by 0.12 mm. sink") {
			t.Errorf("%s: the whole name is told as %q", view, tip)
		}
		if s := h.d.legendStrip(); s.H < legend.Least || s.Bottom() > h.d.lay.Legend.Bottom() {
			t.Errorf("%s: the legend stands at %+v of %+v", view, s, h.d.lay.Legend)
		}
	}
}

// On large pages, with the least and the largest letters, the plate takes a good share of the page from every side, beside
// a section, and all words can be read; two designs are named in letters of one size.
func TestLargePagesFillThePlate(t *testing.T) {
	for names, least := range map[string]float64{"course-guitar-relief": 0.4, "course-guitar-relief course-guitar": 0.3} {
		h := newHand(t, Options{Names: strings.Fields(names), Solve: design.Options{Workers: 2, Refine: 0.25}})
		h.d.panel.Watch()
		for _, cut := range []stage.CutKind{stage.CrossArch, stage.LongArch} {
			h.d.want.Cut.Kind, h.d.want.Forces = cut, cut == stage.CrossArch
			h.settle()
			h.d.note = ""
			for i, v := range scene.Views() {
				s := [][3]int{{1920, 1080, 0}, {2560, 1440, looks.MostLetters}, {1920, 1080, looks.MostLetters}, {2560, 1440, 0}}[(i+int(cut))%4]
				h.width, h.height, h.d.looks.Letters = s[0], s[1], s[2]
				h.d.look(v.Name)
				h.in.Now += 10 // the camera has arrived
				h.frame()
				h.frame()
				where := fmt.Sprintf("%s, %d x %d, letters %d, %s, cut %d", names, s[0], s[1], s[2], v.Name, cut)
				if share := h.d.across(h.d.shown.Scenes[0], h.d.lay.Views[0].H) / h.d.lay.Page.H; share < least {
					t.Errorf("%s: the scene is drawn over %.2f of the page's height", where, share)
				}
				for _, u := range h.unreadable() {
					t.Errorf("%s: %s", where, u)
				}
				if n := len(h.d.shown.Scenes) - 1; h.d.heading(0, h.d.lay.Wide).face != h.d.heading(n, h.d.lay.Wide).face {
					t.Errorf("%s: the titles' letters differ", where)
				}
			}
		}
	}
}
