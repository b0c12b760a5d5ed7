package scene

import (
	"context"
	"testing"

	"archload/cases"
	"archload/cases/design"
)

// solved answers a bundled case on a mesh of the given density.
func solved(t testing.TB, name string, refine float64) *design.Solution {
	t.Helper()
	c, err := cases.OpenChanged(nil, name, "hand", nil)
	if err != nil {
		t.Fatal(err)
	}
	s, err := design.Solve(context.Background(), c, design.Options{Workers: 2, NoError: true, Refine: refine})
	if err != nil {
		t.Fatal(err)
	}
	return s
}
