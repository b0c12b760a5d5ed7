package design

import (
	"math"
	"testing"
)

// TestTogether: two strips glued side by side that swell by 1 and 4, the first three times as stiff, come to 1.75 and bear
// no force in all; what does not lie beside them has no say.
func TestTogether(t *testing.T) {
	a := layer{stiff: [3]float64{300, 300, 0}, swell: [3]float64{1, 1, 9}}
	b := layer{stiff: [3]float64{100, 100, 100}, swell: [3]float64{4, 1, 2}}
	got := together([]layer{a, b})
	for k, want := range [3]float64{1.75, 1, 2} {
		if math.Abs(got[k]-want) > 1e-15 {
			t.Errorf("axis %d: %.15g, want %.15g", k, got[k], want)
		}
	}
	if f := a.stiff[0]*(got[0]-a.swell[0]) + b.stiff[0]*(got[0]-b.swell[0]); math.Abs(f) > 1e-12 {
		t.Errorf("they bear %g N in all, want none", f)
	}
}
