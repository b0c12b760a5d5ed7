package gauge

import (
	"math"
	"strings"
	"testing"

	"archload/cases/tree"
)

func TestParseList(t *testing.T) {
	got, err := ParseList("13 .017, 26w-0.89mmw")
	want := []One{{13 * tree.Inch / 1000, false}, {0.017 * tree.Inch, false}, {26 * tree.Inch / 1000, true}, {0.89, true}}
	if err != nil || len(got) != len(want) {
		t.Fatalf("got %v, %v, want %v", got, err, want)
	}
	for i := range want {
		if math.Abs(float64(got[i].Diameter-want[i].Diameter)) > 1e-12 || got[i].Wound != want[i].Wound {
			t.Errorf("string %d: %v, want %v", i+1, got[i], want[i])
		}
	}
	for text, words := range map[string]string{"": "want gauges", "13 light": `found "light"`, "13 560w": "want strings of", "0.001": "want strings of"} {
		if _, err := ParseList(text); err == nil || !strings.Contains(err.Error(), words) {
			t.Errorf("%q: %v, want a fault that says %q", text, err, words)
		}
	}
}

// TestWoundWeight lays a wrap turn by turn along a core and weighs it, for cores from
// thin to thick: the closed form and its spread hold for all of them.
func TestWoundWeight(t *testing.T) {
	const d = 1.4224 // mm, 0.056 in
	for wrap, rho := range wraps {
		mean := float64(WoundWeight(d, wrap))
		for _, r := range []float64{0.3, coreShare, 0.5, 0.6} {
			core, wire := r*d, d*(1-r)/2
			turns := 1000 / wire // in a metre
			round := math.Hypot(math.Pi*(core+wire), wire)
			wrapped := turns * round * math.Pi / 4 * wire * wire // mm³
			kg := (SteelDensity*math.Pi/4*core*core*1000 + float64(rho)*wrapped) * 1e-9
			off := math.Abs(mean/kg - 1)
			if off > Spread || r == coreShare && off > 0.01 {
				t.Errorf("%s with a core of %g d: %.5g kg/m, turn by turn %.5g: off by %.1f %%", wrap, r, mean, kg, 100*off)
			}
		}
	}
	if WoundWeight(d, "") != WoundWeight(d, "bronze") {
		t.Error("without a word the wrap is not bronze")
	}
}
