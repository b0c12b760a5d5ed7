package sketch

import (
	"math"
	"testing"

	"archload/viz/panel"
)

// drawn is a sketch in a rectangle, with as many notes as it takes.
func drawn(t *testing.T, of string, notes []Note) *panel.List {
	t.Helper()
	a, err := panel.NewAtlas(1)
	if err != nil {
		t.Fatal(err)
	}
	l := panel.NewList(a)
	Draw(l, panel.Rect{X: 40, Y: 30, W: 520, H: Height}, of, notes)
	return l
}

// A sketch stays in its rectangle, and an unknown one is none.
func TestSketchStaysInItsPlace(t *testing.T) {
	notes := []Note{{"5 N", 5}, {"leans 0.01", 0.01}, {"25 N", 25}, {"leans 0.11", 0.11}, {"here", 0}}
	for of := range kinds() {
		l := drawn(t, of, notes)
		if len(l.Vertices) < 100 {
			t.Errorf("%s: %d corners, want a drawing", of, len(l.Vertices))
		}
		for _, v := range l.Vertices {
			if v.X < 38 || v.X > 562 || v.Y < 28 || v.Y > 32+Height {
				t.Errorf("%s: a corner at %g, %g", of, v.X, v.Y)
				break
			}
		}
	}
	if l := drawn(t, "nothing", nil); len(l.Vertices) > 0 {
		t.Error("an unknown sketch draws something")
	}
}

// A place turns anticlockwise as it is seen, the page's y down.
func TestTurned(t *testing.T) {
	q := turned(panel.Point{X: 3, Y: 1}, panel.Point{X: 1, Y: 1}, math.Pi/2)
	if math.Abs(q.X-1) > 1e-12 || math.Abs(q.Y+1) > 1e-12 {
		t.Errorf("turned to %+v, want 1, -1: up on the page", q)
	}
}
