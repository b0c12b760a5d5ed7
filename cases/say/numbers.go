package say

import (
	"fmt"
	"math"

	"archload/cases/answer"
	"archload/cases/quantity"
)

// Letter names design i of a comparison: A to Z, then AA, AB and so on.
func Letter(i int) string {
	const letters = 26
	if i < letters {
		return string(rune('A' + i))
	}
	return Letter(i/letters-1) + Letter(i%letters)
}

// numberText writes a number of a quantity without its unit.
func numberText(q quantity.Quantity, v answer.Num) string {
	switch {
	case !v.Known() && q.Event:
		return "never"
	case !v.Known():
		return "none"
	}
	return plainZeros(fmt.Sprintf("%.*f", q.Digits, float64(v)))
}

// widthText is half the width of a range, as many digits as the number itself.
func widthText(q quantity.Quantity, v answer.Num) string {
	switch {
	case !v.Known():
		return "?"
	case v > 0 && q.Nought(v):
		return "<" + fmt.Sprintf("%.*f", q.Digits, math.Pow10(-q.Digits))
	}
	return fmt.Sprintf("%.*f", q.Digits, float64(v))
}

// differenceText writes what is more or less of a quantity; = for none.
func differenceText(q quantity.Quantity, v answer.Num) string {
	switch {
	case !v.Known():
		return ""
	case q.Nought(v):
		return "="
	}
	return fmt.Sprintf("%+.*f", q.Digits, float64(v))
}

func percentOf(v answer.Num, none bool) string {
	if !v.Known() || none {
		return ""
	}
	return fmt.Sprintf("%+.1f", float64(v))
}
