package say

import (
	"testing"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/study"
)

// compared sets cases side by side with their ranges, on a coarse mesh that is
// its own companion.
func compared(t *testing.T, cs ...*cases.Case) *study.Comparison {
	t.Helper()
	o := design.Options{Workers: 2, Refine: 0.3, NoFlow: true, NoError: true}
	var names []string
	var sols []*design.Solution
	var reps []*answer.Report
	var spreads []*study.Spread
	for i, c := range cs {
		s, err := design.Solve(t.Context(), c, o)
		if err != nil {
			t.Fatal(err)
		}
		sp, err := study.FindSpread(t.Context(), s, o)
		if err != nil {
			t.Fatal(err)
		}
		names, sols = append(names, string(rune('a'+i))), append(sols, s)
		reps, spreads = append(reps, answer.Summarize(s)), append(spreads, sp)
	}
	return study.CompareRanged(names, sols, reps, spreads)
}
