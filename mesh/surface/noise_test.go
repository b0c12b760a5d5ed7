package surface

import (
	"math"
	"math/rand/v2"
	"testing"

	"archload/mesh/plane"
)

// TestEstimateNoise: heights of a known arch with known noise give that noise
// back within a fifth; exact heights give next to none.
func TestEstimateNoise(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 5))
	for _, noise := range []float64{0, 0.02, 0.1} {
		var at []plane.Point
		var z []float64
		for range 900 {
			p := plane.Point{300 * (rng.Float64() - 0.5), 400 * (rng.Float64() - 0.5)}
			at = append(at, p)
			z = append(z, 18*math.Cos(math.Pi*p[0]/300)*math.Cos(math.Pi*p[1]/400)+noise*rng.NormFloat64())
		}
		got := estimateNoise(at, z)
		if math.Abs(got-noise) > 0.2*noise+0.006 {
			t.Errorf("noise of %g mm estimated as %.4f mm", noise, got)
		}
	}
	if got := estimateNoise([]plane.Point{{0, 0}}, []float64{1}); !math.IsNaN(got) {
		t.Errorf("one point gives noise %g, want NaN", got)
	}
}
