package study

import (
	"math"
	"testing"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/quantity"
	"archload/cases/tree"
)

// TestTold reads gauges off the same plate in another wood: the answers must come to those of that wood, surer than before, and
// a gauge that reads ten times as much must be left out alone.
func TestTold(t *testing.T) {
	open := func() *cases.Case {
		c, err := cases.Open(nil, "bench-plate")
		if err != nil {
			t.Fatal(err)
		}
		c.Gauges = append(c.Gauges, cases.Gauge{Name: "middle", At: [2]float64{0, 0}}, cases.Gauge{Name: "beside", At: [2]float64{40, 20}},
			cases.Gauge{Name: "behind", At: [2]float64{0, -50}})
		return c
	}
	solve := func(c *cases.Case) *design.Solution {
		s, err := design.Solve(t.Context(), c, design.Options{Refine: 0.4})
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	c := open()
	other := cutFrom(c, planks(c), append([]map[string]float64{{"EL": 1.25, "ER": 0.85, "GLR": 1.1}}, make([]map[string]float64, len(planks(c))-1)...))
	truth := answer.Summarize(solve(other))
	for i := range c.Gauges {
		v := truth.Gauges[i].Sink
		if i == 0 {
			v *= 10
		}
		sink := tree.Length(v)
		c.Gauges[i].Measured = &sink
	}
	s := solve(c)
	r := answer.Summarize(s)
	sp, err := FindSpread(t.Context(), s, design.Options{Workers: 2})
	if err != nil {
		t.Fatal(err)
	}
	told := sp.Tell(r)
	for i, g := range told.Gauges {
		t.Logf("%s: %.4f ± %.4f before, read %.4f, %.4f ± %.4f after, left out %v", g.Name, float64(g.Before.Value), float64(g.Before.SD), float64(g.Measured), float64(g.After.Value), float64(g.After.SD), g.LeftOut)
		if g.LeftOut != (i == 0) {
			t.Errorf("gauge %q: left out %v, want %v", g.Name, g.LeftOut, i == 0)
		}
	}
	q := quantity.Of("most_sunk")
	before, after, want := sp.wood(q), told.Answer(q, q.Get(r)), float64(q.Get(truth))
	t.Logf("sinks %.4f ± %.4f before, %.4f ± %.4f after, in that wood %.4f", float64(q.Get(r)), float64(before), float64(after.Value), float64(after.SD), want)
	if !(math.Abs(float64(after.Value)-want) < 2*float64(after.SD)) || !(after.SD < before/3) {
		t.Errorf("after the gauges it sinks %.4f ± %.4f, want %.4f to two of that, and surer than ± %.4f", float64(after.Value), float64(after.SD), want, float64(before))
	}
	if none := sp.Tell(truth); none != nil {
		t.Errorf("gauges that were not read say something")
	}
}
