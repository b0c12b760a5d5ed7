package scale

import "math"

// Slack is the share of a step by which a value may pass the end of the scale
// without opening another band: rounding noise about zero must not.
const Slack = 0.002

// StepAbove returns the smallest 1, 2 or 5 times a power of ten that is >= v.
func StepAbove(v float64) float64 {
	e := math.Floor(math.Log10(v))
	for ; ; e++ {
		for _, k := range []float64{1, 2, 5} {
			if x := k * math.Pow(10, e); x >= v*(1-1e-12) {
				return x
			}
		}
	}
}

// StepBelow returns the greatest 1, 2 or 5 times a power of ten <= v.
func StepBelow(v float64) float64 {
	n := StepAbove(v)
	for _, k := range []float64{1, 0.5, 0.4, 0.2} {
		if m := StepAbove(n * k * 0.999); m <= v*(1+1e-9) {
			return m
		}
	}
	return n / 10
}
