package problem

import "math"

func add(a, b [3]float64) [3]float64 { return [3]float64{a[0] + b[0], a[1] + b[1], a[2] + b[2]} }

func sub(a, b [3]float64) [3]float64 { return [3]float64{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }

func times(a [3]float64, s float64) [3]float64 { return [3]float64{s * a[0], s * a[1], s * a[2]} }

func dot(a, b [3]float64) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

func cross(a, b [3]float64) [3]float64 {
	return [3]float64{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

func length(a [3]float64) float64 { return math.Sqrt(dot(a, a)) }

func unit(a [3]float64) [3]float64 { return times(a, 1/length(a)) }

const degree = math.Pi / 180 // rad

// dice is a small linear congruential generator, so that a check is the same
// every time (D. E. Knuth's MMIX constants, from memory).
type dice uint64

// next returns a number in [-1, 1).
func (d *dice) next() float64 {
	*d = *d*6364136223846793005 + 1442695040888963407
	return float64(int64(*d>>11))/(1<<52) - 1
}
