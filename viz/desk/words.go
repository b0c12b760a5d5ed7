package desk

import (
	"fmt"
	"math"
	"strings"
)

// decimal writes a number with a true minus sign; a dash where there is none.
func decimal(v float64, digits int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "–"
	}
	t := fmt.Sprintf("%.*f", digits, v)
	if strings.Trim(t, "-0.") == "" {
		t = strings.TrimPrefix(t, "-")
	}
	return strings.Replace(t, "-", "−", 1)
}

// percent writes a fraction.
func percent(v float64) string { return decimal(100*v, 0) + " %" }
