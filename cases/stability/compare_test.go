package stability

import (
	"math"
	"testing"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/study"
	"archload/cases/tree"
)

// TestTry: reliefs tried about the moved shape of one sink as each sinks by itself, and that of the sheet but for
// the places where its pads stuck on the way, which the way decides; the linear ones stand beside.
func TestTry(t *testing.T) {
	o := coarse()
	o.Refine = 0.25
	open := func(depth float64) *cases.Case {
		c, err := cases.OpenChanged(nil, "course-guitar", "test", []tree.KeyValue{{Key: "bridge.relief.depth", Value: tree.Valued(depth)}})
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	top, err := design.Prepare(t.Context(), open(0.1), o)
	if err != nil {
		t.Fatal(err)
	}
	tr, err := Try(t.Context(), top, study.TrialOptions{Depths: []float64{0, 0.2}, Shapes: []string{"parabola"}})
	if err != nil {
		t.Fatal(err)
	}
	if tr.Order != "second" || tr.Linear == nil || len(tr.Linear.Points) != 2 || tr.Sheet.Checks != "" {
		t.Fatalf("order %q, linear %v, failed %q", tr.Order, tr.Linear, tr.Sheet.Checks)
	}
	for i, p := range []study.TrialPoint{tr.Points[1], *tr.Sheet} {
		s, err := Solve(t.Context(), open(p.Depth), o)
		if err != nil {
			t.Fatal(err)
		}
		within := []float64{1e-3, 2e-4}[i]
		if got, want := p.Sink, answer.Sink(s.Solution); math.Abs(got/want-1) > within || math.Abs(got/answer.Sink(s.Linear)-1) < 10*within {
			t.Errorf("%g mm deep: sinks %.7f mm, by itself %.7f, linear %.7f", p.Depth, got, want, answer.Sink(s.Linear))
		}
	}
}
