package study

import (
	"math"
	"slices"
	"testing"

	"archload/cases/casetest"
	"archload/cases/design"
)

// TestEdgeSteps: each step makes its own measures smaller by one standard deviation of
// their logarithm and leaves the case that it began from; an edge without sides has none.
func TestEdgeSteps(t *testing.T) {
	if n := len(edgeSteps(casetest.Open(t, "course-guitar"))); n != 0 {
		t.Errorf("a hinged edge has %d steps, want none", n)
	}
	c := casetest.Open(t, "course-guitar-body")
	want := [][]string{{"rim.side_thickness"}, {"rim.lining"}, {"body.back.thickness_scale"}}
	steps := edgeSteps(c)
	if len(steps) != len(want) {
		t.Fatalf("%d steps, want %d", len(steps), len(want))
	}
	for i, e := range steps {
		less := e.smaller(c)
		if got := design.ChangedKeys(c, less); !slices.Equal(got, want[i]) {
			t.Errorf("%s changes %v, want %v", e.name, got, want[i])
		}
		if i == 2 {
			if by := math.Log(c.Body.Back.ThicknessScale / less.Body.Back.ThicknessScale); math.Abs(by-logDeviation(e.cv)) > 1e-12 {
				t.Errorf("%s: smaller by %g, want %g", e.name, by, logDeviation(e.cv))
			}
		}
	}
}
