package materials

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestRigidities are those of test wood 1, 4 mm: D11 = E1 h³/12/(1 - nu12
// nu21), D12 = nu12 D22, D66 = G12 h³/12 (Timoshenko and Woinowsky-Krieger,
// chapter 11), worked out independently.
func TestRigidities(t *testing.T) {
	r := tw1().Compliance().Reduce()
	d := r.Bending(4)
	a := r.MembraneShear(4)
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"D11, N·mm", d[0][0], 53908.984}, {"D22, N·mm", d[1][1], 4204.901},
		{"D12, N·mm", d[0][1], 1555.813}, {"D66, N·mm", d[2][2], 3413.3333},
		{"A11 = 12 D11 / h², N/mm", a[0][0], 53908.984 * 12 / 16},
		{"shear xz = 5/6 G13 h, N/mm", a[3][3], 5.0 / 6 * 610 * 4},
		{"shear yz = 5/6 G23 h, N/mm", a[4][4], 5.0 / 6 * 30 * 4},
	} {
		near(t, c.what, c.got, c.want, 2e-7)
	}
}

// TestMembraneShearIsTheInverse multiplies the 5 x 5 stiffness by the
// compliance it came from, for random slopes.
func TestMembraneShearIsTheInverse(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	const h = 5.0
	for range 20 {
		red := sitka().Compliance().Turned(randomAxes(r)).Reduce()
		k, p := red.MembraneShear(h), red.PlaneStress()
		for i := range 5 {
			for j := range 5 {
				var sum float64
				for m := range 5 {
					sum += k[i][m] / h * entry(red, m, j)
				}
				checkUnit(t, "membrane and shear", i, j, sum)
				if k[i][j] != k[j][i] {
					t.Errorf("K[%d][%d] is not exactly symmetric", i, j)
				}
			}
		}
		for i := range 3 {
			for j := range 3 {
				var sum float64
				for m := range 3 {
					sum += p[i][m] * red.MM[m][j]
				}
				checkUnit(t, "plane stress", i, j, sum)
			}
		}
	}
}

// entry is [MM MS; SM (6/5) SS] at i, j.
func entry(r Reduced, i, j int) float64 {
	switch {
	case i < 3 && j < 3:
		return r.MM[i][j]
	case i < 3:
		return r.MS[i][j-3]
	case j < 3:
		return r.MS[j][i-3]
	}
	return 1.2 * r.SS[i-3][j-3]
}

func checkUnit(t *testing.T, what string, i, j int, got float64) {
	t.Helper()
	want := 0.0
	if i == j {
		want = 1
	}
	if !(math.Abs(got-want) < 1e-11) {
		t.Errorf("%s: (K S)[%d][%d] = %g, want %g", what, i, j, got, want)
	}
}

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

func TestInversePanicsOnIndefinite(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("no panic for an indefinite compliance")
		}
	}()
	o := tw1()
	o.NuLR = 5
	o.Compliance().Reduce().PlaneStress()
}
