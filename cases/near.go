package cases

import (
	"slices"
	"strings"
)

// nearest returns the known word closest to the one found, or "" when none
// resembles it: at most a third of its letters may differ, two at least.
func nearest(found string, known []string) string {
	best, least := "", max(2, len(found)/3)+1
	for _, k := range slices.Sorted(slices.Values(known)) {
		if d := editDistance(strings.ToLower(found), strings.ToLower(k)); d < least {
			best, least = k, d
		}
	}
	return best
}

// editDistance is the least number of letters inserted, removed or replaced
// that turns a into b (V. I. Levenshtein, Soviet Physics Doklady 10, 1966).
func editDistance(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			replaced := diagonal
			if a[i] != b[j] {
				replaced++
			}
			diagonal = row[j+1]
			row[j+1] = min(replaced, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}
