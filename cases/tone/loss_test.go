package tone

import (
	"context"
	"math"
	"testing"

	"archload/cases/casetest"
	"archload/cases/design"
)

// losses are those of the tones of the domed plate, free, tapped in the middle, of a wood with the
// given lines.
func losses(t *testing.T, wood string) []Loss {
	t.Helper()
	c := casetest.Load(t, casetest.Files("dome.toml", domed+`[motion]
by_wood = true
[[tap]]
at = [0, 0]
[wood.own]
like = "sitka-spruce"
`+wood, "top.toml", `format = 1
base = "dome.toml"
[plate]
wood = "own"
`), "top.toml")
	r, err := FindResponse(context.Background(), c, design.Free, ResponseOptions{From: 100, To: 800, Points: 2}, design.Options{Workers: 1, Refine: 0.5})
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Losses) < 3 {
		t.Fatalf("%d losses, want at least 3", len(r.Losses))
	}
	return r.Losses
}

// TestLossByWood: a plate whose wood loses alike in all directions loses as much in every tone; one
// that loses along the grain alone loses less, by what is stored across.
func TestLossByWood(t *testing.T) {
	for i, l := range losses(t, "loss_along = 0.03\nloss_across = 0.03\n") {
		if math.Abs(l.Loss-0.03) > 1e-7 {
			t.Errorf("tone %d at %.1f Hz loses %.9f, want 0.03", i+1, l.Hz, l.Loss)
		}
	}
	for i, l := range losses(t, "loss_along = 0.01\nloss_across = 0.03\n") {
		if l.Loss <= 0.0101 || l.Loss >= 0.0299 {
			t.Errorf("tone %d at %.1f Hz loses %.6f, want between 0.01 and 0.03", i+1, l.Hz, l.Loss)
		}
	}
}
