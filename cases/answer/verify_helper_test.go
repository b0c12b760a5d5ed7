package answer

import (
	"context"
	"sync"
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

// bundledAt is a bundled case at a mesh density.
type bundledAt struct {
	name   string
	refine float64
}

// kept holds the solutions that several tests read.
var kept struct {
	sync.Mutex
	sols map[bundledAt]func() (*design.Solution, error)
}

// solved is answered for a bundled case. It is solved once for all tests, which
// only read it.
func solved(t testing.TB, name string, refine float64) *design.Solution {
	t.Helper()
	at := bundledAt{name, refine}
	kept.Lock()
	solve, ok := kept.sols[at]
	if !ok {
		if kept.sols == nil {
			kept.sols = map[bundledAt]func() (*design.Solution, error){}
		}
		solve = sync.OnceValues(func() (*design.Solution, error) {
			c, err := cases.Open(nil, name)
			if err != nil {
				return nil, err
			}
			return design.Solve(context.Background(), c, design.Options{Workers: 2, Refine: refine, NoError: true})
		})
		kept.sols[at] = solve
	}
	kept.Unlock()
	s, err := solve()
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
