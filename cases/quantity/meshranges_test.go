package quantity

import (
	"math"
	"testing"

	"archload/cases/answer"
	"archload/cases/casetest"
	"archload/cases/design"
)

// TestMeshRanges wants a range for every number that both meshes know: of a peak
// the whole difference, of others what is left of it, the sink's the same as the
// error that is told of it.
func TestMeshRanges(t *testing.T) {
	s, err := design.Solve(t.Context(), casetest.Open(t, "bench-plate"), design.Options{Refine: 0.5})
	if err != nil {
		t.Fatal(err)
	}
	r, coarse := Summarize(s), answer.SummarizeCompanion(s.Coarse)
	for key, width := range r.Error.Mesh {
		if !(width >= 0) {
			t.Errorf("%s: a range of %g, want one that is not negative", key, float64(width))
		}
	}
	near := func(what string, got, want float64) {
		t.Helper()
		if !(math.Abs(got-want) <= 1e-12*math.Abs(want)) || want == 0 {
			t.Errorf("%s: range %g, want %g", what, got, want)
		}
	}
	q := Of("strength_used")
	near(q.Key, float64(r.Error.Mesh[q.Key]), math.Abs(float64(q.Get(r)-q.Get(coarse))))
	near("most_sunk", float64(r.Error.Mesh["most_sunk"]), math.Abs(r.Top.MostSunk.Value-coarse.Top.MostSunk.Value)/(math.Exp2(1.3)-1))
	near("gauge 1", float64(r.Error.Mesh[GaugeKey(0)]), math.Abs(r.Gauges[0].Sink-coarse.Gauges[0].Sink)/(math.Exp2(1.3)-1))
	if r.Bridge != nil {
		near("bridge_sink", float64(r.Error.Mesh["bridge_sink"]), float64(r.Error.Discretisation)*r.Bridge.Sink)
	}
	s.Coarse = nil
	if m := Summarize(s).Error.Mesh; m != nil {
		t.Errorf("one mesh alone has ranges %v", m)
	}
}
