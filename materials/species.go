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
	Near []string // the nearest names, best first; none resembles it: empty
	All  []string // all names
}

// Error names what was asked for and what is near.
func (e *UnknownWoodError) Error() string {
	if len(e.Near) == 0 {
		return fmt.Sprintf("no wood card %q; there are %s", e.Name, strings.Join(e.All, ", "))
	}
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
	return Card{}, &UnknownWoodError{Name: name, Near: nearest(name, names, 3), All: names}
}
