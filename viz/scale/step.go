package scale

import "math"

// Slack is the share of a step by which a value may pass the end of the scale
// without opening another band: rounding noise about zero must not.
const Slack = 0.002

// StepAbove returns the smallest 1, 2 or 5 times a power of ten that is >= v.
// Of what is not a positive number it is 1.
func StepAbove(v float64) float64 {
	if !(v > 0) || math.IsInf(v, 0) {
		return 1
	}
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

// StepNear returns the nearest 1, 2 or 5 times a power of ten, by ratio, of a
// positive v.
func StepNear(v float64) float64 {
	best := math.Pow(10, math.Floor(math.Log10(v)))
	e := best
	for _, k := range []float64{2, 5, 10} {
		if math.Abs(math.Log(v/(k*e))) < math.Abs(math.Log(v/best)) {
			best = k * e
		}
	}
	return best
}
