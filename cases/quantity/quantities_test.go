package quantity

import (
	"testing"

	"archload/cases/answer"
)

// TestTwoFeetHaveNoThirds: what is of one foot alone is not known of two.
func TestTwoFeetHaveNoThirds(t *testing.T) {
	b := &answer.BridgeReport{Feet: []answer.FootReport{{From: -66, To: -24}, {From: 24, To: 66}}}
	for _, q := range All() {
		if v := q.Get(&answer.Report{Bridge: b}); q.Feet == 1 && v.Known() {
			t.Errorf("two feet have %s, %g", q.Name, v)
		}
	}
}
