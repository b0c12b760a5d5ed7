package scene

import (
	"math"
	"testing"

	"archload/cases/answer"
)

// A foot of which the numbers say that no gap is left is drawn without one, and every gap that is drawn is one that
// they show.
func TestClosedGapsAreNotDrawn(t *testing.T) {
	s := solved(t, "course-guitar-relief", 0.3)
	left := answer.BridgeNow(s).GapLeft
	hairs := 0
	for i, g := range FootValues(s, RemainingGap) {
		raw := s.FootGaps()[i]
		if raw > 0 && raw <= ClosedGap {
			hairs++
		}
		if !math.IsNaN(g) && (g <= ClosedGap || left < ClosedGap) {
			t.Errorf("cell %d is drawn open by %g mm; the foot says %g", i, g, left)
		}
	}
	if hairs == 0 {
		t.Error("no cell stands open by less than the numbers show: nothing is tried")
	}
}
