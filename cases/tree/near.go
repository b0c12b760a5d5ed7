package tree

import (
	"slices"
	"strings"

	"archload/materials/spelling"
)

// Nearest returns the known word closest to the one found, or "" when none
// resembles it: at most a third of its letters may differ, two at least of four.
func Nearest(found string, known []string) string {
	best, least := "", max(min(2, len(found)-2), len(found)/3)+1
	for _, k := range slices.Sorted(slices.Values(known)) {
		if d := spelling.Distance(strings.ToLower(found), strings.ToLower(k)); d < least {
			best, least = k, d
		}
	}
	return best
}
