package materials

import (
	"math"
	"math/rand/v2"
	"testing"
)

// tw1 is the test wood of the checks: E1 10 GPa, E2 0.78 GPa, nu12 0.37, G12
// 0.64, G13 0.61, G23 0.03 GPa, 400 kg/m³ (own choice, near spruce). The
// checks are plane: the remaining three are Sitka ratios of the Wood Handbook.
func tw1() Orthotropic {
	return Orthotropic{EL: 10000, ER: 780, ET: 430, GLR: 640, GLT: 610, GRT: 30,
		NuLR: 0.37, NuLT: 0.467, NuRT: 0.435, Density: 400}
}

// sitka is the handbook's Sitka spruce, tables 5-1, 5-2 and 5-3 (from memory).
func sitka() Orthotropic {
	const EL = 10890
	return Orthotropic{EL: EL, ER: 0.078 * EL, ET: 0.043 * EL, GLR: 0.064 * EL, GLT: 0.061 * EL, GRT: 0.003 * EL,
		NuLR: 0.372, NuLT: 0.467, NuRT: 0.435, Density: 403}
}

// isotropic returns the same in every direction: young in MPa, nu 1, density in
// kg/m³; G = E / (2 (1 + nu)).
func isotropic(young, nu, density float64) Orthotropic {
	shear := young / (2 * (1 + nu))
	return Orthotropic{EL: young, ER: young, ET: young, GLR: shear, GLT: shear, GRT: shear,
		NuLR: nu, NuLT: nu, NuRT: nu, Density: density}
}

// randomAxes returns axes of a random rotation from a random unit quaternion.
func randomAxes(r *rand.Rand) Axes {
	var q [4]float64
	var sum float64
	for i := range q {
		q[i] = r.NormFloat64()
		sum += q[i] * q[i]
	}
	for i := range q {
		q[i] /= math.Sqrt(sum)
	}
	w, x, y, z := q[0], q[1], q[2], q[3]
	return Axes{
		{1 - 2*(y*y+z*z), 2 * (x*y - w*z), 2 * (x*z + w*y)},
		{2 * (x*y + w*z), 1 - 2*(x*x+z*z), 2 * (y*z - w*x)},
		{2 * (x*z - w*y), 2 * (y*z + w*x), 1 - 2*(x*x+y*y)},
	}
}

// near fails unless got is within rel of want.
func near(t *testing.T, what string, got, want, rel float64) {
	t.Helper()
	if !(math.Abs(got-want) <= rel*math.Abs(want)) {
		t.Errorf("%s = %.9g, want %.9g within %g", what, got, want, rel)
	}
}

// sameCompliance fails unless all 36 agree within rel of the largest.
func sameCompliance(t *testing.T, what string, got, want Compliance, rel float64) {
	t.Helper()
	var largest float64
	for i := range want {
		for j := range want {
			largest = max(largest, math.Abs(want[i][j]))
		}
	}
	for i := range want {
		for j := range want {
			if d := math.Abs(got[i][j] - want[i][j]); !(d <= rel*largest) {
				t.Errorf("%s: S[%d][%d] = %g, want %g", what, i, j, got[i][j], want[i][j])
			}
		}
	}
}
