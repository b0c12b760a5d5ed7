package desk

import (
	"math"
	"strings"
	"testing"

	"archload/viz/panel"
	"archload/viz/scene"
)

// grip is where the hand sees something that can be taken, once the pointer is over the drawing.
func (h *hand) grip(id string) panel.Point {
	h.t.Helper()
	h.to(h.d.lay.View.Centre().X, h.d.lay.View.Centre().Y)
	for _, p := range h.d.grips.Places() {
		if p.ID == id {
			return p.Point
		}
	}
	h.t.Fatalf("no grip %q; there are %v", id, h.d.grips.Places())
	return panel.Point{}
}

// perMM is how many points of the page a millimetre of the plan takes at a place, to the treble and to the neck.
func (h *hand) perMM(at [3]float64) (x, y float64) {
	r := h.d.lay.Views[0]
	x0, y0, _ := h.d.project(r, at)
	x1, _, _ := h.d.project(r, [3]float64{at[0] + 1, at[1], at[2]})
	_, y1, _ := h.d.project(r, [3]float64{at[0], at[1] + 1, at[2]})
	return x1 - x0, y1 - y0
}

// An end of a bar is taken in the picture and moved: by what the pointer goes, in one step that is undone
// at once; the pointer looks like a hand over it, and the words say how far it goes.
func TestBarEndIsDragged(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar"}})
	h.key(panel.LetterKey('o'))
	end := h.grip("brace[1].line 1")
	was := h.d.shown.Designs[0].Live.Case().Braces[0].Line
	sink := h.d.shown.Designs[0].Bridge.Sink
	h.to(end.X+2, end.Y+1)
	if h.d.cursor() != Pointing || h.d.hover != nil {
		t.Errorf("over the end of a bar the cursor is %d and the plate is read: %v", h.d.cursor(), h.d.hover != nil)
	}
	yaw := h.d.camera
	px, py := h.perMM([3]float64{was[1][0], was[1][1], 15})
	h.press(panel.LeftButton)
	h.to(end.X+2+5*px, end.Y+1)
	if h.d.cursor() != Moving || !h.d.want.Held {
		t.Errorf("with a bar's end in the hand the cursor is %d, scales held: %v", h.d.cursor(), h.d.want.Held)
	}
	h.to(end.X+2+12*px, end.Y+1-8*py)
	h.let(panel.LeftButton)
	h.settle()
	line := h.d.shown.Designs[0].Live.Case().Braces[0].Line
	if dx, dy := line[1][0]-was[1][0], line[1][1]-was[1][1]; line[0] != was[0] || math.Abs(dx-12) > 0.5 || math.Abs(dy+8) > 0.5 {
		t.Errorf("the bar went from %v to %v; want its neck end 12 mm to the treble and 8 mm to the tail", was, line)
	}
	if h.d.camera != yaw || len(h.d.want.Pins) != 0 {
		t.Error("the drag turned the camera or left a pin")
	}
	if h.d.shown.Designs[0].Bridge.Sink == sink {
		t.Error("the bridge sinks as before")
	}
	h.in.Keys = []panel.KeyPress{{Key: panel.LetterKey('z'), Ctrl: true}}
	h.frame()
	h.settle()
	if got := h.d.shown.Designs[0]; got.Bridge.Sink != sink || len(got.Live.Keys()) != 0 {
		t.Errorf("one step back: the bridge sinks %g mm with %v, want %g as the file says", got.Bridge.Sink, got.Live.Keys(), sink)
	}
	h.click(end.X, end.Y)
	h.settle()
	if len(h.d.want.Pins) != 1 || len(h.d.want.Designs[0].Keys) != 0 {
		t.Error("a click on the end pins no place, or moves it")
	}
}

// The apex and a post go where they are dragged, from whichever side they are seen; a place that cannot be
// leaves the design as it was, and no step.
func TestApexAndPostAreDragged(t *testing.T) {
	h := newHand(t, Options{Names: []string{"bowed-layout"}})
	id := "plate.arch.apex_shift"
	for _, view := range []rune{'a', 't'} {
		h.key(panel.LetterKey(view))
		was := h.d.shown.Designs[0].Live.Case().Plate.Arch.ApexShift
		p := h.grip(id)
		px, _ := h.perMM([3]float64{0, 0, 20})
		h.drag(panel.LeftButton, p.X, p.Y, p.X+6*px, p.Y)
		h.settle()
		got := h.d.shown.Designs[0].Live.Case().Plate.Arch.ApexShift
		if math.Abs(got[0]-was[0]-6) > 1 || math.Abs(got[1]-was[1]) > 4 {
			t.Errorf("view %c: the apex is shifted from %v to %v; want 6 mm to the treble", view, was, got)
		}
	}
	h.key(panel.LetterKey('o'))
	post := h.d.shown.Designs[0].Live.Case().Posts[0].At
	p := h.grip("post[1].at")
	px, py := h.perMM([3]float64{post[0], post[1], 10})
	h.drag(panel.LeftButton, p.X, p.Y, p.X+3*px, p.Y-5*py)
	h.settle()
	if got := h.d.shown.Designs[0].Live.Case().Posts[0].At; math.Abs(got[0]-post[0]-3) > 0.5 || math.Abs(got[1]-post[1]+5) > 0.5 {
		t.Errorf("the post went from %v to %v; want 3 mm to the treble and 5 to the tail", post, got)
	}
	steps, keys := len(h.d.past.before), h.d.want.Designs[0].Keys
	p = h.grip(id)
	h.drag(panel.LeftButton, p.X, p.Y, h.d.lay.View.X+2, p.Y)
	h.settle()
	if h.d.fault == "" || len(h.d.past.before) != steps || !sameDesigns(h.d.want.Designs, h.d.shown.Want.Designs) || len(h.d.want.Designs[0].Keys) != len(keys) {
		t.Errorf("an apex beside the plate: fault %q, %d steps, want a fault and %d", h.d.fault, len(h.d.past.before), steps)
	}
}

// The camera flies to the worst place; the hand stops it on its way.
func TestGoThereFlies(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar-relief"}})
	from := h.d.camera
	h.in.Keys = []panel.KeyPress{{Key: panel.LetterKey('j')}}
	h.frame()
	h.in.Now += 0.5
	h.frame()
	if c := h.d.camera; !h.d.fly.On || c.Distance >= from.Distance || c.Distance <= nearWorst*1.02 {
		t.Errorf("half a second after J the camera stands %g mm off; want between %g and %g", c.Distance, from.Distance, float64(nearWorst))
	}
	h.key(panel.KeyLeft)
	if h.d.fly.On {
		t.Error("an arrow key does not stop the flight")
	}
	h.key(panel.LetterKey('j'))
	s := h.d.shown.Scenes[0]
	if h.d.camera.Distance != nearWorst || h.d.shown.Want.Field != scene.StrengthUsed {
		t.Errorf("J leads to %g mm off in %s", h.d.camera.Distance, h.d.shown.Want.Field.Name())
	}
	marked := false
	for _, l := range s.Labels {
		marked = marked || strings.HasPrefix(l.Text, "most: ") && math.Hypot(l.At[0]-h.d.camera.Target[0], l.At[1]-h.d.camera.Target[1]) < 3
	}
	if !marked {
		t.Errorf("no mark at %v", h.d.camera.Target)
	}
}
