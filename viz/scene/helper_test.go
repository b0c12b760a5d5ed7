package scene

import (
	"context"
	"testing"

	"archload/cases"
)

// solved answers a bundled case on a mesh of the given density.
func solved(t testing.TB, name string, refine float64) *cases.Solution {
	t.Helper()
	c, err := cases.OpenChanged(nil, name, "hand", nil)
	if err != nil {
		t.Fatal(err)
	}
	s, err := cases.Solve(context.Background(), c, cases.Options{Workers: 2, NoError: true, Refine: refine})
	if err != nil {
		t.Fatal(err)
	}
	return s
}
