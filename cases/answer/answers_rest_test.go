package answer

import (
	"math"
	"testing"

	"archload/cases"
	"archload/cases/tree"
)

// TestAnswersOfManyReliefs lays a narrow foot on many depths of relief: the
// slack bridge finds its rest on each, and the sink changes smoothly.
func TestAnswersOfManyReliefs(t *testing.T) {
	t.Parallel()
	p := mustPrepare(t, "octave-mandola", 1)
	depth := float64(p.Built.Case.Bridge.Relief.Depth)
	last := 0.0
	for i := range 20 {
		k := 0.5 + 0.05*float64(i)
		c, err := cases.OpenChanged(nil, "octave-mandola", "test", []tree.KeyValue{{Key: "bridge.relief.depth", Value: tree.Valued(k * depth)}})
		if err != nil {
			t.Fatal(err)
		}
		s, err := refit(p, c)
		if err != nil {
			t.Fatalf("gaps %g times as deep: %v", k, err)
		}
		r := Summarize(s)
		if i > 0 && math.Abs(r.Bridge.Sink-last) > 0.02 {
			t.Errorf("gaps %g times as deep: the bridge sinks %.4f mm, %.4f before; want a step under 0.02", k, r.Bridge.Sink, last)
		}
		if bad := r.Error.Failed(); len(bad) > 0 {
			t.Errorf("gaps %g times as deep: failed %v", k, bad)
		}
		last = r.Bridge.Sink
	}
}
