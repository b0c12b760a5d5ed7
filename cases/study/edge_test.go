package study

import (
	"math"
	"slices"
	"testing"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/casetest"
	"archload/cases/design"
	"archload/cases/tree"
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

// TestEdgeRanges: the range of a number is the root of the sum of squares of what it loses in
// designs that are solved afresh with thinner sides and with a smaller lining; a
// hinged edge has none.
func TestEdgeRanges(t *testing.T) {
	t.Parallel()
	o := design.Options{Workers: 2, Refine: 0.4, NoFlow: true, NoError: true}
	solved := func(c *cases.Case) float64 {
		s, err := design.Solve(t.Context(), c, o)
		if err != nil {
			t.Fatal(err)
		}
		return answer.Sink(s)
	}
	c := casetest.Open(t, "course-guitar-elastic")
	s, err := design.Solve(t.Context(), c, o)
	if err != nil {
		t.Fatal(err)
	}
	got, err := EdgeRanges(t.Context(), s, o)
	if err != nil {
		t.Fatal(err)
	}
	thin, narrow := casetest.Open(t, "course-guitar-elastic"), casetest.Open(t, "course-guitar-elastic")
	thin.Rim.SideThickness *= tree.Length(math.Exp(-logDeviation(sideScatter)))
	for i := range narrow.Rim.Lining {
		narrow.Rim.Lining[i] *= tree.Length(math.Exp(-logDeviation(liningScatter)))
	}
	base := answer.Sink(s)
	want := math.Hypot(solved(thin)-base, solved(narrow)-base)
	if v := float64(got["bridge_sink"]); math.Abs(v-want) > 1e-7 || v < 1e-3 {
		t.Errorf("± edge of the sink %g mm, solved afresh %g", v, want)
	}
	hinged, err := design.Solve(t.Context(), casetest.Open(t, "course-guitar"), o)
	if err != nil {
		t.Fatal(err)
	}
	if got, err := EdgeRanges(t.Context(), hinged, o); err != nil || got != nil {
		t.Errorf("a hinged edge has %v, %v", got, err)
	}
}
