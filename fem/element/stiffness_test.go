package element

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestStiffnessKernels: the kernels in assembly and the portable ones agree within the rounding
// of a sum of twelve products; bit for bit where the compiler fuses none.
func TestStiffnessKernels(t *testing.T) {
	if !fast {
		t.Skip("no AVX2 here")
	}
	dice := rand.New(rand.NewPCG(1, 2))
	var rows, got, want [numRows][18]float64
	var c laws
	for i := range rows {
		for j := range rows[i] {
			rows[i][j] = dice.NormFloat64()
		}
	}
	for i := range c {
		c[i] = dice.NormFloat64()
	}
	forcesAVX2(&got, &rows, &c)
	forcesGo(&want, &rows, &c)
	for i := range want {
		for j, w := range want[i] {
			if math.Abs(got[i][j]-w) > 1e-14 {
				t.Errorf("force %d of freedom %d: got %.17g, want %.17g", i, j, got[i][j], w)
			}
		}
	}
	var k, portable [324]float64
	productAVX2(&k, &rows, &want)
	productGo(&portable, &rows, &want)
	for i, w := range portable {
		if math.Abs(k[i]-w) > 1e-13 {
			t.Errorf("stiffness of freedoms %d and %d: got %.17g, want %.17g", i/18, i%18, k[i], w)
		}
	}
}
