package study

import (
	"math"
	"slices"
	"testing"

	"archload/cases/answer"
	"archload/cases/casetest"
	"archload/cases/design"
	"archload/cases/quantity"
)

// TestAnswers: the numbers that decide carry the ranges of a comparison, in
// order round the value; what cannot be negative is not said to be; and without
// a spread no range is made up.
func TestAnswers(t *testing.T) {
	t.Parallel()
	o := rough()
	o.NoError, o.Refine = false, 0.6
	s := solveAll(t, o, casetest.Open(t, "course-guitar-relief"))[0]
	c := compareAll(t, []*design.Solution{s})
	sp, err := FindSpread(t.Context(), s, design.Options{Workers: 1})
	if err != nil {
		t.Fatal(err)
	}
	r := answer.Summarize(s)
	answers := map[string]Answer{}
	for _, a := range Answers(r, sp) {
		answers[a.Key] = a
		if !(a.Least <= a.Value && a.Value <= a.Most) || math.Abs(float64(a.Value+a.Wood-a.Most)) > 1e-12 || !(a.Mesh >= 0) {
			t.Errorf("%s: %g %s, least %g, most %g, wood ± %g, mesh ± %g", a.Key, a.Value, a.Unit, a.Least, a.Most, a.Wood, a.Mesh)
		}
	}
	const twoFeet = 2
	notAsked := []string{quantity.HeadMotion, quantity.HeadSeasons, quantity.HeadYears}
	all := slices.DeleteFunc(quantity.Reported(), func(q quantity.Quantity) bool {
		return q.Feet == twoFeet || slices.Contains(notAsked, q.Summary)
	})
	if len(answers) != len(all) {
		t.Errorf("%d answers, want %d: the relieved foot has all but those of two feet, of how it swings, of seasons and of years, which were not asked", len(answers), len(all))
	}
	for _, key := range []string{"bridge_sink", "middle_touches_at", "strength_used"} {
		row, a := rowOf(t, c, key), answers[key]
		if a.Wood != row.Ranges[0].Wood || a.Mesh != row.Ranges[0].Mesh {
			t.Errorf("%s: wood ± %g, mesh ± %g; in a comparison ± %g, ± %g", key, a.Wood, a.Mesh, row.Ranges[0].Wood, row.Ranges[0].Mesh)
		}
	}
	if a := answers["gap_left"]; a.Least < 0 {
		t.Errorf("the gap left is at least %g mm, want 0 or more", a.Least)
	}
	for _, a := range Answers(r, nil) {
		if a.Wood.Known() || a.Mesh.Known() || a.Least.Known() {
			t.Errorf("%s without a spread: ± %g, ± %g, want none", a.Key, a.Wood, a.Mesh)
		}
	}
}
