package aging

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// Age is a time since the strings came on.
type Age struct {
	Name  string  // as it was written, "10y"
	Years float64 // 1 is 365.25 days
}

// What is admitted: the greatest age, years, and how many of them.
const (
	MostYears = 500
	mostAges  = 24
)

// Ages reads ages parted by commas: "1d,1y,10y,50y"; s, h, d, w, m and y are seconds, hours, days, weeks, months and
// years. They come back in rising order, each once.
func Ages(list string) ([]Age, error) {
	days := map[byte]float64{'s': 1.0 / 86400, 'h': 1.0 / 24, 'd': 1, 'w': 7, 'm': 365.25 / 12, 'y': 365.25}
	var out []Age
	words := strings.Split(list, ",")
	if len(words) > mostAges {
		return nil, fmt.Errorf("want ages, %d at most, found %d", mostAges, len(words))
	}
	for _, word := range words {
		word = strings.TrimSpace(word)
		if word == "" {
			return nil, fmt.Errorf("want ages parted by commas, such as 1d,1y,10y,50y, found %q", list)
		}
		unit, ok := days[word[len(word)-1]]
		v, err := strconv.ParseFloat(strings.TrimSpace(word[:len(word)-1]), 64)
		switch years := v * unit / 365.25; {
		case !ok || err != nil || math.IsNaN(v):
			return nil, fmt.Errorf("want ages with a unit (s, h, d, w, m, y) such as 1d,1y,10y,50y, found %q", word)
		case !(years > 0) || years > MostYears:
			return nil, fmt.Errorf("want ages above 0 and up to %d years, found %q", MostYears, word)
		default:
			out = append(out, Age{Name: word, Years: years})
		}
	}
	slices.SortStableFunc(out, func(a, b Age) int { return cmp.Compare(a.Years, b.Years) })
	return slices.CompactFunc(out, func(a, b Age) bool { return a.Years == b.Years }), nil
}
