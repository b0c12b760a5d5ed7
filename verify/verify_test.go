package verify

import (
	"context"
	"testing"
)

// TestPublished runs every check of testdata/verification.
func TestPublished(t *testing.T) {
	rows, err := Run(context.Background(), Options{Workers: 2})
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) < 200 {
		t.Errorf("%d rows, want 200 at least", len(rows))
	}
	for _, r := range rows {
		t.Logf("%s, %s (%s): got %.7g %s, want %.7g, deviation %.3g, allowed %.3g", r.Name, r.Quantity, r.Mesh, r.Got, r.Unit, r.Expected, r.Deviation, r.Allowed)
		if !r.Pass {
			t.Errorf("%s, %s (%s): got %.7g %s, want %.7g (%s): deviation %.3g, allowed %.3g (%s)",
				r.Name, r.Quantity, r.Mesh, r.Got, r.Unit, r.Expected, r.By, r.Deviation, r.Allowed, r.Reason)
		}
	}
}
