package answer

import (
	"context"
	"testing"

	"archload/cases"
	"archload/cases/design"
)

// answered solves a case at a mesh density without the error estimate.
func answered(t testing.TB, c *cases.Case, refine float64) *design.Solution {
	t.Helper()
	s, err := design.Solve(context.Background(), c, design.Options{Workers: 2, Refine: refine, NoError: true})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// passed fails if a built-in check of the run fails.
func passed(t *testing.T, name string, s *design.Solution) {
	t.Helper()
	ch := s.Result.Checks
	r := ErrorReport{Equilibrium: ch.Force, Moment: ch.Moment, Energy: ch.Energy, Complementarity: s.Result.Complementarity}
	if bad := r.Failed(); len(bad) > 0 {
		t.Errorf("%s: built-in checks %v fail: force %.2g, moment %.2g, energy %.2g, contact %.2g",
			name, bad, ch.Force, ch.Moment, ch.Energy, s.Result.Complementarity)
	}
}
