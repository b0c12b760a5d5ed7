package stability

import (
	"encoding/json"
	"math"
	"testing"

	"archload/cases/answer"
	"archload/cases/casetest"
	"archload/cases/design"
)

// coarse are the options of a quick solve.
func coarse() design.Options {
	return design.Options{Refine: 0.5, NoError: true, NoFlow: true}
}

// TestSecondOrder solves the guitar on its moved shape: all checks pass, it sinks a few percent more
// than on the shape as carved, and half the forces make less than half of that share.
func TestSecondOrder(t *testing.T) {
	c := casetest.Open(t, "course-guitar")
	share := map[float64]float64{}
	for _, times := range []float64{0.5, 1} {
		s, err := Solve(t.Context(), Times(c, times), coarse())
		if err != nil {
			t.Fatal(err)
		}
		r := Summarize(s, times)
		if bad := r.Error.Failed(); len(bad) > 0 {
			t.Errorf("%g times: %v: %+v", times, bad, r.Error)
		}
		if r.Linear.Bridge.Sink != answer.Sink(s.Linear) {
			t.Errorf("%g times: linear sink %g, want %g", times, r.Linear.Bridge.Sink, answer.Sink(s.Linear))
		}
		share[times] = float64(r.Second.Share)
	}
	if v := share[1]; !(v > 0.02 && v < 0.08) {
		t.Errorf("share of the second order: %.4f, want 0.02 to 0.08", v)
	}
	if v := share[0.5] / share[1]; !(v > 0.4 && v < 0.55) {
		t.Errorf("half the load makes %.3f of that share, want about half", v)
	}
}

// TestReportJSON wants linear and second-order numbers side by side.
func TestReportJSON(t *testing.T) {
	s, err := Solve(t.Context(), casetest.Open(t, "bench-plate"), coarse())
	if err != nil {
		t.Fatal(err)
	}
	data, err := json.Marshal(Summarize(s, 1))
	if err != nil {
		t.Fatal(err)
	}
	var r struct {
		Order  string
		Times  float64
		Gauges []struct{ Sink float64 }
		Linear struct{ Gauges []struct{ Sink float64 } }
		Second struct{ Share float64 } `json:"second_order"`
	}
	if err := json.Unmarshal(data, &r); err != nil {
		t.Fatal(err)
	}
	if r.Order != "second" || r.Times != 1 || len(r.Gauges) == 0 || len(r.Gauges) != len(r.Linear.Gauges) {
		t.Fatalf("order %q, times %g, %d gauges, %d linear", r.Order, r.Times, len(r.Gauges), len(r.Linear.Gauges))
	}
	g, l := r.Gauges[0].Sink, r.Linear.Gauges[0].Sink
	if !(math.Abs(g/l-1) < 0.05) || g == l {
		t.Errorf("first gauge sinks %g, linear %g, want a little apart", g, l)
	}
}
