package stage

import (
	"testing"

	"archload/cases/design"
	"archload/cases/tree"
	"archload/viz/scene"
)

// A window that has shown many designs holds the newest few, not all.
func TestOldDesignsAreForgotten(t *testing.T) {
	a := NewAnswerer(nil, design.Options{Workers: 2, Refine: 0.3, NoError: true})
	var last *Shown
	names := []string{"first", "flat-plate", "course-guitar", "bowed-layout", "bowed-layout-no-post"}
	for _, name := range append(names, names[0]) {
		s, err := a.Answer(t.Context(), Want{Designs: []Design{{Name: name}}, Display: Display{Load: 1}}, last)
		if err != nil {
			t.Fatal(err)
		}
		if last = s; len(a.opened) > mostOpened || a.opened[name] == nil {
			t.Errorf("after %s, %d designs are held, it among them: %v; want it and at most %d", name, len(a.opened), a.opened[name] != nil, mostOpened)
		}
	}
	if a.opened[names[1]] != nil {
		t.Errorf("%s is held still, wanted longest ago", names[1])
	}
}

// As the hand takes hold and lets go nothing is drawn anew that looks the same; what is set is.
func TestHoldingDrawsNothing(t *testing.T) {
	a := NewAnswerer(nil, design.Options{Workers: 2, Refine: 0.3, NoError: true})
	want := Want{Designs: []Design{{Name: "course-guitar-relief"}}, Display: Display{Load: 1, Field: scene.Sink}}
	var last *Shown
	ask := func(held bool, depth float64) (drawn bool) {
		w := want
		w.Held = held
		if depth > 0 {
			w.Designs = []Design{w.Designs[0].With(tree.KeyValue{Key: "bridge.relief.depth", Value: tree.Valued(depth)})}
		}
		s, err := a.Answer(t.Context(), w, last)
		if err != nil {
			t.Fatal(err)
		}
		if !s.Want.Equal(w) {
			t.Errorf("answered %+v, want %+v", s.Want, w)
		}
		drawn = last == nil || s.Scenes[0] != last.Scenes[0]
		last = s
		return drawn
	}
	for i, c := range []struct {
		held        bool
		depth       float64 // mm; 0: as the file says
		drawn       bool
		what, state string
	}{
		{false, 0, true, "first", "answer"},
		{true, 0, false, "same design", "held"},
		{false, 0, false, "same design", "let go"},
		{true, 0, false, "same design", "held"},
		{true, 0.1, true, "other depth", "held"},
		{false, 0.1, false, "same depth", "let go"},
		{false, 0.3, true, "other depth", "let go"},
	} {
		if got := ask(c.held, c.depth); got != c.drawn {
			t.Errorf("%d: %s, %s: drawn anew %v, want %v", i, c.what, c.state, got, c.drawn)
		}
	}
	settled, err := a.Settle(t.Context(), last)
	if err != nil {
		t.Fatal(err)
	}
	if !settled.Settled() || settled.Scenes[0] != last.Scenes[0] {
		t.Errorf("with the report at hand the same solution is drawn anew; its numbers are there: %v", settled.Settled())
	}
}
