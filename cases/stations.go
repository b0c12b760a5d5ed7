package cases

import "math"

// Divide cuts each stretch between the places into equal parts near step.
func Divide(step float64, places ...float64) []float64 {
	out := []float64{places[0]}
	for k := 1; k < len(places); k++ {
		a, b := places[k-1], places[k]
		n := Pieces(b-a, step)
		for j := 1; j <= n; j++ {
			out = append(out, a+(b-a)*float64(j)/float64(n))
		}
	}
	return out
}

// Pieces is the number of equal parts of about the given step over a length. Half a
// part more counts as one, also where a conversion of units has rounded it down.
func Pieces(length, step float64) int { return max(1, int(math.Round(length/step+1e-9))) }
