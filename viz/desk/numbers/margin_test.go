package numbers

import (
	"math"
	"strings"
	"testing"

	"archload/cases/answer"
	"archload/cases/quantity"
	"archload/cases/study"
	"archload/viz/stage"
)

// Ranges that have nothing to do with each other add up by their squares, and what
// is not known does not count.
func TestMarginAddsSquares(t *testing.T) {
	q := quantity.Of("bridge_sink")
	m := marginOf(q, study.Range{Wood: 0.03, Edge: 0.04, Mesh: answer.None()})
	if got, want := m.text(), " ± 0.050"; got != want {
		t.Errorf("wood 0.03 and edge 0.04: %q, want %q", got, want)
	}
	for _, part := range []string{"± 0.030 mm another plank", "± 0.040 mm sides"} {
		if !strings.Contains(strings.ReplaceAll(m.words, ":", ""), part) {
			t.Errorf("the parts read %q; want %q in them", m.words, part)
		}
	}
	if m := marginOf(q, study.Range{Wood: answer.None(), Edge: answer.None(), Mesh: answer.None()}); m.text() != "" || !math.IsNaN(m.all) {
		t.Errorf("nothing known gives %q", m.text())
	}
	if m := marginOf(q, study.Range{Wood: answer.None(), Edge: answer.None(), Mesh: 0.0001}); m.text() != "" {
		t.Errorf("less than is shown gives %q", m.text())
	}
}

// A name stands in a command as it has to be typed.
func TestTypedNames(t *testing.T) {
	for name, want := range map[string]string{
		"course-guitar": "course-guitar", "bench/top-2.toml": "bench/top-2.toml", "top one.toml": "'top one.toml'",
		"it's.toml": `'it'\''s.toml'`, "a;b.toml": "'a;b.toml'", "$x.toml": "'$x.toml'", "~/a.toml": "'~/a.toml'", "Gitarre-größer.toml": "Gitarre-größer.toml",
	} {
		if got := Typed(name); got != want {
			t.Errorf("%s is typed %s, want %s", name, got, want)
		}
	}
}

// What is not known of a ± is said: that of an earlier design is not called missing.
func TestUnsure(t *testing.T) {
	if got, want := unsure(&stage.Answered{}, 1), "how sure each is (±) was not yet worked out"; got != want {
		t.Errorf("nothing worked out: %q, want %q", got, want)
	}
	before := &stage.Answered{Earlier: []*stage.Certain{{Load: 1}}}
	if got, want := unsure(before, 1), "(±) is of the design before the last change"; got != want {
		t.Errorf("an earlier design: %q, want %q", got, want)
	}
}
