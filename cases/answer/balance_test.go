package answer

import (
	"math"
	"testing"
)

// TestContactBalancesStrings: wherever the apex lies, the foot's forces and
// drags carry the strings' force and their moment about the foot's middle.
// Statics of the bridge as a free body.
func TestContactBalancesStrings(t *testing.T) {
	for _, name := range []string{"course-guitar", "course-guitar-treble"} {
		s := solved(t, name, 0.6)
		var force, moment [3]float64
		add := func(at, f [3]float64) {
			for k := range 3 {
				force[k] += f[k]
				moment[k] += at[(k+1)%3]*f[(k+2)%3] - at[(k+2)%3]*f[(k+1)%3]
			}
		}
		for _, l := range s.Top.Built.Bridge.Body.Loads {
			add(l.At, l.F)
		}
		scale := math.Abs(force[2])
		per := rows(s)
		for i := range s.Top.Built.Bridge.Pads {
			p := &s.Top.Built.Bridge.Pads[i]
			for a := range per {
				f := s.Result.State.Lambda[i*per+a]
				add(p.At, [3]float64{f * p.Dir[a][0], f * p.Dir[a][1], f * p.Dir[a][2]})
			}
		}
		for k := range 3 {
			if math.Abs(force[k]) > 1e-8*scale || math.Abs(moment[k]) > 1e-8*scale*100 {
				t.Errorf("%s: the bridge is out of balance by %.3g N and %.3g N mm along axis %d", name, force[k], moment[k], k+1)
			}
		}
	}
}
