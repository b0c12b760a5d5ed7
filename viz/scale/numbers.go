package scale

import (
	"math"
	"strconv"
	"strings"
)

// Decimals returns how many decimals a multiple of step needs.
func Decimals(step float64) int {
	if step <= 0 {
		return 0
	}
	return max(0, int(math.Ceil(-math.Log10(step)-1e-9)))
}

// Number writes v with n decimals and a true minus sign; very small or large
// values are written with a power of ten. NaN is a dash.
func Number(v float64, n int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "–"
	}
	a := math.Abs(v)
	s := strconv.FormatFloat(a, 'f', min(n, 5), 64)
	if n > 5 || a >= 1e6 {
		s = strconv.FormatFloat(a, 'g', 3, 64)
	}
	if v < 0 && strings.Trim(s, "0.") != "" {
		s = "−" + s
	}
	if strings.Trim(s, "0.") == "" {
		return "0"
	}
	return s
}

// Fixed writes v with n decimals, zeros too, and a true minus sign; a dash where
// there is no number.
func Fixed(v float64, n int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "–"
	}
	t := strconv.FormatFloat(v, 'f', n, 64)
	if strings.Trim(t, "-0.") == "" {
		t = strings.TrimPrefix(t, "-")
	}
	return strings.Replace(t, "-", "−", 1)
}

// Alike returns how many decimals values that stand beside each other need, n or up to two more, so
// that none which agree to a quarter of the last one are written as if they differed.
func Alike(n int, values ...float64) int {
	for k := n; k < n+2; k++ {
		if !split(k, values) {
			return k
		}
	}
	return n + 2
}

// split says whether two values that agree to a quarter of decimal n are rounded apart.
func split(n int, values []float64) bool {
	near := 0.25 * math.Pow(10, -float64(n))
	for i, v := range values {
		for _, o := range values[:i] {
			if math.Abs(v-o) < near && Fixed(v, n) != Fixed(o, n) {
				return true
			}
		}
	}
	return false
}

// Percent writes a fraction.
func Percent(v float64) string { return Fixed(100*v, 0) + " %" }

// Reading writes v with three significant figures, at most three decimals.
func Reading(v float64) string {
	a := math.Abs(v)
	switch {
	case a == 0 || math.IsNaN(a):
		return Number(v, 0)
	case a < 1e-3:
		return Number(v, 6)
	case a < 10:
		return strings.TrimSuffix(Number(v, 2+b2i(a < 0.1)), ".00")
	case a < 100:
		return Number(v, 1)
	}
	return Number(v, 0)
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}
