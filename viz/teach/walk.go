package teach

import (
	"slices"

	"archload/cases/glossary"
	"archload/cases/lesson"
	"archload/mesh"
	"archload/viz/scene"
	"archload/viz/stage"
)

// Walk is a lesson on its way.
type Walk struct {
	*lesson.Lesson
	At     int         // the step, from 0
	Asking bool        // the step's question stands, its answer does not show yet
	Guess  *mesh.Point // mm, what was clicked for an answer; nil: nothing

	lines map[string][]glossary.Piece // of captions, with the words that are explained
}

// Begin is a lesson at its first step.
func Begin(l *lesson.Lesson) *Walk {
	w := &Walk{Lesson: l}
	w.Asking = w.Step().Ask != ""
	return w
}

// Step is the step at which it stands.
func (w *Walk) Step() *lesson.Step { return &w.Steps[w.At] }

// Go goes on by so many steps, or back, and says whether there is anything new to show. On
// the way forward a question comes before its answer.
func (w *Walk) Go(by int) bool {
	if w.Asking && by > 0 {
		w.Reveal(nil)
		return true
	}
	at := w.At + by
	if at < 0 || at >= len(w.Steps) {
		return false
	}
	w.At, w.Guess = at, nil
	w.Asking = by > 0 && w.Step().Ask != ""
	return true
}

// To goes straight to a step, from 0; a question stands before its answer.
func (w *Walk) To(at int) {
	w.At, w.Guess = at, nil
	w.Asking = w.Step().Ask != ""
}

// Reveal shows the answer to the question; guess is the place that was clicked, nil: none.
func (w *Walk) Reveal(guess *mesh.Point) { w.Asking, w.Guess = false, guess }

// Own is the place of the step's own design among those of its want.
func (w *Walk) Own() int {
	if w.Step().Beside != "" {
		return 1
	}
	return 0
}

// Want is what the window shall show at the step: the old design first, then the step's
// own, on their shape as carved, which its words speak of. While it asks, the wood alone without load.
func (w *Walk) Want() stage.Want {
	s := w.Step()
	out := stage.Want{Linear: true, Display: stage.Display{Load: s.Load, Strings: true, Inside: s.Face == "inside"}}
	if s.Beside != "" {
		out.Designs = append(out.Designs, stage.Design{Name: s.Beside, Keys: s.Against})
	}
	out.Designs = append(out.Designs, stage.Design{Name: s.Case, Keys: s.Set})
	// Words that a lesson may use are checked when it is read.
	out.Cut.Kind = stage.CutKind(max(0, slices.Index(lesson.Sections(), s.Section)))
	if w.Asking {
		out.Load = 0
		return out
	}
	out.Enlarge = s.Enlarge
	if s.More {
		out.Arrange = stage.Difference
	}
	out.Forces, out.Strip, out.Tone, out.State, out.Air = s.Forces, s.Strip, s.Tone, s.State, s.Air
	out.AirA, out.InAir = s.AirA, s.Air > 0
	for _, f := range scene.Fields() {
		if f.Word() == s.Field {
			out.Field = f
		}
	}
	for _, p := range s.Points {
		pin := scene.Pin{Text: p.Words, At: p.At, On: w.Own(), Arrow: p.Arrow, Above: p.Above, Swings: p.Swings}
		if p.Old {
			pin.On = 0
		}
		out.Pins = append(out.Pins, pin)
	}
	if w.Guess != nil {
		out.Pins = append(out.Pins, scene.Pin{Name: "your place:", At: *w.Guess})
	}
	return out
}

// Chart is the step's chart; without rows while it asks, or if there is none.
func (w *Walk) Chart() lesson.Chart {
	if w == nil || w.Asking {
		return lesson.Chart{}
	}
	return w.Step().Chart
}

// Below tells whether anything stands below the drawing: a sketch, or bars.
func (w *Walk) Below() bool {
	return w != nil && !w.Asking && (w.Step().Sketch.Of != "" || len(w.Step().Chart.Rows) > 0)
}

// Plays tells whether the load runs up to the step's.
func (w *Walk) Plays() bool { return w.Step().Play && !w.Asking }
