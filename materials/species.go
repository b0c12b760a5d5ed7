package materials

import (
	_ "embed" // for species.toml
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2"
)

//go:embed species.toml
var speciesFile []byte

// UnknownWoodError is a name that no bundled card has.
type UnknownWoodError struct {
	Name string
	Near []string // the nearest names, best first
}

// Error names what was asked for and what is near.
func (e *UnknownWoodError) Error() string {
	return fmt.Sprintf("no wood card %q; nearest: %s", e.Name, strings.Join(e.Near, ", "))
}

// Cards returns the bundled cards, sorted by name.
func Cards() ([]Card, error) {
	var file map[string]map[string]any
	if err := toml.Unmarshal(speciesFile, &file); err != nil {
		return nil, fmt.Errorf("species.toml: %w", err)
	}
	var cards []Card
	var errs []error
	for _, name := range slices.Sorted(maps.Keys(file)) {
		card, err := fullCard(name, file[name])
		if err != nil {
			errs = append(errs, fmt.Errorf("species.toml: %s: %w", name, err))
		}
		cards = append(cards, card)
	}
	if err := errors.Join(errs...); err != nil {
		return nil, err
	}
	return cards, nil
}

// Find returns the bundled card of that name; otherwise an *UnknownWoodError
// with near names.
func Find(name string) (Card, error) {
	cards, err := Cards()
	if err != nil {
		return Card{}, err
	}
	names := make([]string, len(cards))
	for i, c := range cards {
		if c.Name == name {
			return c, nil
		}
		names[i] = c.Name
	}
	return Card{}, &UnknownWoodError{Name: name, Near: nearest(name, names, 3)}
}

// nearest returns the n names most like the wanted one: those that share a
// word with it come first, then by edit distance, then by name.
func nearest(want string, names []string, n int) []string {
	want = strings.ToLower(want)
	distance := make(map[string]int, len(names))
	for _, name := range names {
		distance[name] = editDistance(want, strings.ToLower(name))
		for _, word := range strings.FieldsFunc(want, func(r rune) bool { return strings.ContainsRune(" -_", r) }) {
			if len(word) > 2 && strings.Contains(name, word) {
				distance[name] -= 100
			}
		}
	}
	sorted := slices.Clone(names)
	slices.SortStableFunc(sorted, func(a, b string) int { return distance[a] - distance[b] })
	return sorted[:min(n, len(sorted))]
}

// editDistance is the number of letters to insert, delete or replace.
func editDistance(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			cost := diagonal
			if a[i] != b[j] {
				cost++
			}
			diagonal = row[j+1]
			row[j+1] = min(cost, row[j]+1, diagonal+1)
		}
	}
	return row[len(b)]
}
