package gauge

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"archload/cases/tree"
)

// One is a string of a list.
type One struct {
	Diameter tree.Length // mm
	Wound    bool
}

// thickest is the greatest gauge admitted, mm, and thinnest the least: no string is made
// beyond them.
const thinnest, thickest = 0.1, 5.0

// ParseList reads a list of gauges, thin ones first as they are sold: thousandths of an
// inch ("13"), inches (".013") or millimetres ("0.33mm"), a w behind what is wound
// ("26w"), parted by blanks, commas or dashes.
func ParseList(text string) ([]One, error) {
	var out []One
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" ,;\t-–/", r) }) {
		m := regexp.MustCompile(`^(\d*\.?\d+)(mm|in|")?([wWpP])?$`).FindStringSubmatch(word)
		if m == nil {
			return nil, fmt.Errorf(`want gauges as in "13 17 26w 35w 45w 56w", found %q`, word)
		}
		x, err := strconv.ParseFloat(m[1], 64)
		if err != nil {
			return nil, fmt.Errorf("gauge %q: %w", word, err)
		}
		switch {
		case m[2] == "mm":
		case m[2] == "" && x > 1:
			x *= tree.Inch / 1000
		default:
			x *= tree.Inch
		}
		if x < thinnest || x > thickest {
			return nil, fmt.Errorf("want strings of %g to %g mm, found %q, %.3g mm", thinnest, thickest, word, x)
		}
		out = append(out, One{tree.Length(x), strings.EqualFold(m[3], "w")})
	}
	if len(out) == 0 {
		return nil, fmt.Errorf(`want gauges as in "13 17 26w 35w 45w 56w", found %q`, text)
	}
	return out, nil
}
