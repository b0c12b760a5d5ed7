package desk

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"archload/viz/panel"
	"archload/viz/scene"
)

// twoSteps is a lesson on the smallest design.
const twoSteps = `
format = 1
title = "T"
about = "A."
[[step]]
ask = "Where?"
caption = "There."
case = "first"
field = "sink"
play = true
[[step]]
caption = "Thinner; rolling shear."
set = { "plate.thickness" = 4.5 }
beside = "first"
view = "from the tail"
`

// A question shows the bare wood; a click answers it, is marked, and lets the load rise. On
// the way the camera flies and one picture goes over into the next; the load halts at
// what happens at the foot.
func TestQuestionThenAnswer(t *testing.T) {
	h := newHand(t, Options{Lesson: "l.toml", FS: fstest.MapFS{"l.toml": {Data: []byte(twoSteps)}}})
	if !h.d.lesson.Asking || h.d.shown.Want.Field != scene.Wood || h.d.shown.Want.Load != 0 {
		t.Fatalf("the first step shows %+v, want bare wood without load", h.d.shown.Want)
	}
	c := h.d.lay.View.Centre()
	h.click(c.X, c.Y)
	if h.d.lesson.Asking || !h.d.play.on || h.d.lesson.Guess == nil {
		t.Fatalf("a click does not answer: asking %v, play %v", h.d.lesson.Asking, h.d.play.on)
	}
	h.await("the answer", func() bool { return h.d.shown.Want.Field == scene.Sink })
	if w := h.d.shown.Want; len(w.Pins) != 1 || w.Pins[0].At != *h.d.lesson.Guess {
		t.Errorf("the answer shows %+v, want the place that was clicked", w)
	}
	h.d.play.on = false
	pitch := h.d.camera.Pitch
	h.click(h.middle("step on"))
	if h.frame(); !h.d.fly.On || h.d.camera.Pitch == h.d.aim.Pitch {
		t.Errorf("the camera is at a pitch of %g, before %g, and wants %g; want it on its way", h.d.camera.Pitch, pitch, h.d.aim.Pitch)
	}
	h.await("a picture that goes over into the next", func() bool { return h.d.was != nil && len(h.d.shown.Designs) == 2 })
	if s := h.d.shown; len(s.Designs) != 2 || h.d.edit != 1 || len(s.Designs[0].Live.Keys()) != 0 || len(s.Designs[1].Live.Keys()) != 1 {
		t.Error("want the old design as A and the step's own as B, in hand")
	}
	for h.d.fly.On || h.d.was != nil {
		h.frame()
	}
	words := h.d.atlas.Wrap(panel.Body, "Thinner; ", 1e3)[0]
	h.to(h.d.lay.Caption.X+14+h.d.atlas.TextWidth(panel.Body, words)+30, h.d.lay.Caption.Y+8+panel.SmallBold.LineHeight()+2+8)
	for range 60 {
		h.frame()
	}
	if tip := h.d.panel.TipShown(); !strings.Contains(tip, "roll over each other") {
		t.Errorf("where the pointer rests on a word of the glossary it tells %q", tip)
	}
	if h.d.camera != h.d.aim {
		t.Errorf("the camera ends at %+v, want %+v", h.d.camera, h.d.aim)
	}
}

// await shows frames until something is so.
func (h *hand) await(what string, so func() bool) {
	h.t.Helper()
	for !so() {
		if !h.d.again && !h.d.Moving() {
			select {
			case <-h.bell:
			case <-time.After(late):
				h.t.Fatalf("no %s", what)
			}
		}
		h.frame()
	}
}

// pointing is a lesson that points at the bridge, and then at what another design has more.
const pointing = `
format = 1
title = "T"
about = "A."
[[step]]
caption = "It sinks."
case = "first"
field = "sink"
view = "from the tail"
point = { at = "bridge", words = "sinks" }
[[step]]
caption = "Thinner."
set = { "plate.thickness" = 4.5 }
beside = "first"
beside_set = { title = "As it was" }
difference = true
view = "from outside"
point = { at = "bridge", words = "sinks" }
`

// A step's words point at its picture, also at that of a difference, whose legend is its own; the
// design beside has keys of its own.
func TestLessonOfADifference(t *testing.T) {
	h := newHand(t, Options{Lesson: "l.toml", FS: fstest.MapFS{"l.toml": {Data: []byte(pointing)}}})
	for step, designs := range []int{1, 2} {
		h.await("the step", func() bool { return len(h.d.shown.Designs) == designs && !h.d.fly.On && h.d.was == nil })
		s := h.d.shown.Scenes[0]
		if _, beyond := h.d.shown.Beyond(); beyond || len(h.d.shown.Scenes) != 1 {
			t.Errorf("step %d: %d pictures, values beyond the legend: %v; want one, and none", step+1, len(h.d.shown.Scenes), beyond)
		}
		if !slices.ContainsFunc(s.Labels, func(w scene.Label) bool { return w.Text == "sinks" && w.Kind == scene.Part }) {
			t.Errorf("step %d: nothing points at the bridge", step+1)
		}
		if step == 0 {
			h.click(h.middle("step on"))
		} else if d := h.d.shown.Want.Designs[0].Keys; len(d) != 1 {
			t.Errorf("keys %v are set on the design beside, want its title", d)
		}
	}
}

// After a lesson that shows other fields in other air than the design was made in, they are again of that.
func TestAirEndsWithTheLesson(t *testing.T) {
	text := strings.Replace(twoSteps, `beside = "first"`, "field = \"foot pressure\"\nair = 70\nbeside_air = 30", 1)
	h := newHand(t, Options{Lesson: "l.toml", FS: fstest.MapFS{"l.toml": {Data: []byte(text)}}})
	h.d.walk(1) // to the answer
	h.d.walk(1)
	if w := h.d.want; !w.InAir || w.Air != 70 || w.AirA != 30 || len(w.Designs) != 2 || !w.Designs[0].Same(w.Designs[1]) {
		t.Fatalf("the step wants %+v, want one design twice, in air of 30 and 70 %%", w)
	}
	if h.d.escape(); h.d.lesson != nil || h.d.want.InAir || h.d.want.AirA != 0 {
		t.Errorf("after the lesson the window wants %+v", h.d.want.Display)
	}
}
