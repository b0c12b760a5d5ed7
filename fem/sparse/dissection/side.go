package dissection

import "math"

// Sides of a cut.
const (
	leftSide  = 0
	rightSide = 1
	separator = 2
)

// minShare is the share of the nodes that the smaller side holds at least.
const minShare = 0.1

// score weighs the size of a separator against the balance of the sides: the size
// over the product of the shares, 1 for equal halves.
func score(sep, left, right int32) float64 {
	l, r := float64(left), float64(right)
	n := l + r
	if min(l, r) < minShare*n {
		return math.Inf(1)
	}
	return float64(sep) * n * n / (4 * l * r)
}
