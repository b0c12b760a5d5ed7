package cases

import (
	"context"
	"math"
	"testing"
)

// off is the relative error of got.
func off(got, want float64) float64 { return got/want - 1 }

// within fails unless got lies within tol (relative to scale) of want.
func within(t *testing.T, what string, got, want, scale, tol float64) {
	t.Helper()
	if e := (got - want) / scale; !(math.Abs(e) <= tol) {
		t.Errorf("%s = %.6g, want %.6g: off by %.2f %%, allowed %.2g %%", what, got, want, 100*e, 100*tol)
	}
}

// bars is a set of bars with those that the model is known to miss: the
// relative error it reaches there, by the words of the check. A known miss may
// not grow, and must be struck out once the bar is met.
type bars map[string]float64

// within is the function of that name, for a bar that may be a known miss.
func (b bars) within(t *testing.T, what string, got, want, scale, tol float64) {
	t.Helper()
	reached, missed := b[what]
	if !missed {
		within(t, what, got, want, scale, tol)
		return
	}
	e := math.Abs(got-want) / scale
	t.Logf("%s: bar of %.2g %% missed: off by %.2f %%", what, 100*tol, 100*e)
	if e <= tol {
		t.Errorf("%s: off by %.2f %%, now within the bar of %.2g %%: strike it out of the known misses", what, 100*e, 100*tol)
	}
	within(t, what+" (known to miss its bar)", got, want, scale, reached)
}

// answered solves a case at a mesh density without the error estimate.
func answered(t testing.TB, c *Case, refine float64) *Solution {
	t.Helper()
	s, err := Solve(context.Background(), c, Options{Workers: 2, Refine: refine, NoError: true})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// opened opens a bundled case.
func opened(t testing.TB, name string) *Case {
	t.Helper()
	c, err := Open(nil, name)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// passed fails if a built-in check of the run fails.
func passed(t *testing.T, name string, s *Solution) {
	t.Helper()
	ch := s.Result.Checks
	r := ErrorReport{Equilibrium: ch.Force, Moment: ch.Moment, Energy: ch.Energy, Complementarity: s.Result.Complementarity}
	if bad := r.Failed(); len(bad) > 0 {
		t.Errorf("%s: built-in checks %v fail: force %.2g, moment %.2g, energy %.2g, contact %.2g",
			name, bad, ch.Force, ch.Moment, ch.Energy, s.Result.Complementarity)
	}
}
