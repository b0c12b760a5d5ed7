package materials

import (
	"math"
	"testing"
)

// TestReduceOrder puts a different number at every place.
func TestReduceOrder(t *testing.T) {
	var s Compliance
	for i := range s {
		for j := range s {
			s[i][j] = float64(10*min(i+1, j+1) + max(i+1, j+1))
		}
	}
	got := s.Reduce()
	want := Reduced{
		MM: [3][3]float64{{11, 12, 16}, {12, 22, 26}, {16, 26, 66}},
		MS: [3][2]float64{{15, 14}, {25, 24}, {56, 46}},
		SS: [2][2]float64{{55, 45}, {45, 44}},
	}
	if got != want {
		t.Errorf("reduced = %v, want %v", got, want)
	}
}

// TestSlopeCosts holds what a slope costs a carved quarter-cut plate of
// handbook Sitka: in the text a fifth and three tenths at 8 degrees, a half
// and three fifths at 15. Compared with the closed form 1/E = c⁴/Ea + (1/G -
// 2 nu/Ea) s²c² + s⁴/Eb, independent of the turning.
func TestSlopeCosts(t *testing.T) {
	o := sitka()
	for _, c := range []struct {
		degrees       float64
		along, across float64 // share of the stiffness lost, 1
	}{{8, 0.20, 0.30}, {15, 0.50, 0.60}} {
		sin, cos := sincosDegrees(c.degrees)
		s2, c2 := sin*sin, cos*cos
		alongForm := 1 / (c2*c2/o.EL + (1/o.GLT-2*o.NuLT/o.EL)*s2*c2 + s2*s2/o.ET)
		acrossForm := 1 / (c2*c2/o.ER + (1/o.GRT-2*o.NuRT/o.ER)*s2*c2 + s2*s2/o.ET)
		wood := PlateAxes(Cut{})
		up := Axes{{1, 0, 0}, {0, cos, sin}, {0, -sin, cos}}   // climbs along the grain
		side := Axes{{cos, 0, sin}, {0, 1, 0}, {-sin, 0, cos}} // climbs across it
		along := 1 / o.Compliance().Between(wood, up).Reduce().MM[1][1]
		across := 1 / o.Compliance().Between(wood, side).Reduce().MM[0][0]
		near(t, "modulus along, MPa", along, alongForm, 1e-12)
		near(t, "modulus across, MPa", across, acrossForm, 1e-12)
		t.Logf("%g degrees: along costs %.4f, across %.4f", c.degrees, 1-along/o.EL, 1-across/o.ER)
		if d := 1 - along/o.EL - c.along; math.Abs(d) > 0.02 {
			t.Errorf("%g degrees cost %.3f along, want about %.2f", c.degrees, 1-along/o.EL, c.along)
		}
		if d := 1 - across/o.ER - c.across; math.Abs(d) > 0.02 {
			t.Errorf("%g degrees cost %.3f across, want about %.2f", c.degrees, 1-across/o.ER, c.across)
		}
	}
}
