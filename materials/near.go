package materials

import (
	"slices"
	"strings"

	"archload/materials/spelling"
)

// nearest returns at most n names like the wanted one: those that share a word with
// it come first, then by edit distance, up to a third of its letters, then by name.
func nearest(want string, names []string, n int) []string {
	want = strings.ToLower(want)
	distance := make(map[string]int, len(names))
	for _, name := range names {
		distance[name] = spelling.Distance(want, strings.ToLower(name))
		for _, word := range strings.FieldsFunc(want, func(r rune) bool { return strings.ContainsRune(" -_", r) }) {
			if len(word) > 2 && strings.Contains(name, word) {
				distance[name] -= 100
			}
		}
	}
	sorted := slices.Clone(names)
	slices.SortStableFunc(sorted, func(a, b string) int { return distance[a] - distance[b] })
	sorted = slices.DeleteFunc(sorted, func(name string) bool { return distance[name] > max(2, len(want)/3) })
	return sorted[:min(n, len(sorted))]
}
