package teach

import (
	"testing"

	"archload/cases/lesson"
	"archload/mesh"
	"archload/viz/panel"
	"archload/viz/scene"
)

func twoSteps() *lesson.Lesson {
	return &lesson.Lesson{Title: "T", Steps: []lesson.Step{
		{Caption: "One.", Case: "new", Load: 1, Field: "sink", Section: "cross", View: "from the tail"},
		{Caption: "Two.", Ask: "Where?", Case: "new", Beside: "old", Load: 0.5, Play: true, Field: "strength used", Section: "none",
			Points: []lesson.Point{{At: mesh.Point{1, 2}, Words: "here"}, {At: mesh.Point{3, 4}, Words: "there", Old: true}},
			Chart:  lesson.Chart{Title: "mm", Rows: []lesson.Row{{Words: "a", Value: 2, Spread: 1}, {Words: "b", Value: -1}}}},
	}}
}

// A question comes before its answer, and not on the way back.
func TestWalkAsks(t *testing.T) {
	w := Begin(twoSteps())
	if w.Asking || w.Go(-1) || w.Want().Field != scene.Sink || len(w.Want().Designs) != 1 {
		t.Fatalf("the first step: %+v", w.Want())
	}
	if !w.Go(1) || !w.Asking || w.Plays() || len(w.Chart().Rows) != 0 {
		t.Fatal("the second step does not ask")
	}
	if got := w.Want(); got.Load != 0 || got.Field != scene.Wood || len(got.Pins) != 0 || got.Designs[0].Name != "old" || got.Designs[1].Name != "new" {
		t.Errorf("while it asks the window shows %+v, want both designs bare, the old one first", got)
	}
	if w.asked() != "" {
		t.Error("the question stands twice")
	}
	w.Reveal(&mesh.Point{9, 9})
	if w.asked() != "Where?" {
		t.Errorf("over the answer stands %q, want its question", w.asked())
	}
	got := w.Want()
	if w.Asking || !w.Plays() || got.Load != 0.5 || got.Field != scene.StrengthUsed || len(w.Chart().Rows) != 2 {
		t.Errorf("the answer shows %+v", got)
	}
	if len(got.Pins) != 3 || got.Pins[0].On != 1 || got.Pins[1].On != 0 || got.Pins[2].Name == "" || got.Pins[2].At != (mesh.Point{9, 9}) {
		t.Errorf("it points at %+v, want the step's places on their designs and the one that was clicked", got.Pins)
	}
	if w.Go(1) || !w.Go(-1) || !w.Go(1) || !w.Go(1) || w.Asking || w.Guess != nil || w.At != 1 {
		t.Errorf("going on does not answer: %+v", w)
	}
	if w.Go(-1); w.Asking {
		t.Error("the way back asks")
	}
}

// Bars lie on their side of the line, as long as their numbers.
func TestBars(t *testing.T) {
	a, err := panel.NewAtlas(1)
	if err != nil {
		t.Fatal(err)
	}
	l := panel.NewList(a)
	DrawBars(l, panel.Rect{W: 400, H: 120}, twoSteps().Steps[1].Chart)
	reach := map[bool][2]float64{} // of the upper bar and the lower one
	for _, upper := range []bool{true, false} {
		lo, hi := 1e9, -1e9
		for i := 0; i+5 < len(l.Vertices); i += 3 {
			v, w := l.Vertices[i], l.Vertices[i+1]
			v.Paint.A = 255 // a bar under a line is paler
			if tall := max(v.Y, w.Y, l.Vertices[i+2].Y) - min(v.Y, w.Y, l.Vertices[i+2].Y); v.Paint != panel.SoftInk() || tall < 12 || (v.Y < 46) != upper {
				continue
			}
			for _, c := range l.Vertices[i : i+3] {
				lo, hi = min(lo, c.X), max(hi, c.X)
			}
		}
		reach[upper] = [2]float64{lo, hi}
	}
	long, short := reach[true][1]-reach[true][0], reach[false][1]-reach[false][0]
	if d := long - 2*short; d < -3 || d > 3 || reach[false][1] > reach[true][0]+1 {
		t.Errorf("the bar of 2 reaches over %v, that of -1 over %v; want twice as long, to the other side", reach[true], reach[false])
	}
}
