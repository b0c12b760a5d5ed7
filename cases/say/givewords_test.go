package say

import (
	"strings"
	"testing"

	"archload/cases/answer"
	"archload/cases/stability"
)

// The sentence of giving way names what decades leave of the factor only where the woods' creep is known.
func TestGivesWayOverDecades(t *testing.T) {
	r := &stability.GivingReport{Times: 1, Stability: stability.Factors{Modes: []stability.GivingWay{{Factor: 12.1, Y: 205}}}}
	for _, c := range []struct {
		over answer.Num
		want string
	}{{7.4, "earlier still, from 7.4 times on."}, {answer.None(), "earlier still."}} {
		r.Stability.OverDecades = [2]answer.Num{c.over, c.over}
		if got := GivesWay(r); !strings.HasSuffix(got, c.want) || strings.Contains(got, "NaN") {
			t.Errorf("over decades %v: %q", c.over, got)
		}
	}
}
