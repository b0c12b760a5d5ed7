package problem

import (
	"math"

	"archload/fem/vec3"
)

// unit is a vector of length 1.
func unit(a [3]float64) [3]float64 { return vec3.Scale(a, 1/vec3.Norm(a)) }

const degree = math.Pi / 180 // rad

// dice is a small linear congruential generator, so that a check is the same
// every time (D. E. Knuth's MMIX constants, from memory).
type dice uint64

// next returns a number in [-1, 1).
func (d *dice) next() float64 {
	*d = *d*6364136223846793005 + 1442695040888963407
	return float64(int64(*d>>11))/(1<<52) - 1
}
