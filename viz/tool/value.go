package tool

import (
	"math"
	"strings"

	"archload/cases/tree"
	"archload/viz/scale"
)

// Holds tells whether the tool sets a key.
func (t *Tool) Holds(key string) bool {
	var set []tree.KeyValue
	if t.Most > t.Least {
		set = t.Set(t.Value)
	} else if t.Pick != nil && len(t.Words) > 0 {
		set = t.Pick(t.Chosen)
	}
	for _, k := range set {
		if k.Key == key {
			return true
		}
	}
	return false
}

// ValueWords write the tool's value.
func (t *Tool) ValueWords() string {
	switch {
	case t.Most > t.Least && t.Show != nil:
		return t.Show(t.Value)
	case t.Most > t.Least:
		return strings.TrimSpace(scale.Number(t.Value, Digits(t.Step)) + " " + t.Unit)
	case t.Chosen < len(t.Words):
		return t.Words[t.Chosen]
	}
	return ""
}

// Digits is how many decimals a step needs.
func Digits(step float64) int {
	n := 0
	for n < 6 && math.Abs(step-math.Round(step)) > 1e-9 {
		step *= 10
		n++
	}
	return n
}

// Words name a key that was set, as the tools hold it, and say from what to what: usual are the
// values of sliders in the design's file, by their ids.
func Words(k tree.KeyValue, tools []Tool, usual map[string]float64) (name, value string) {
	if k.Key == ChangeKey {
		return "Graduation", "changed at places"
	}
	name, value = ChangedWords(k)
	own, found := name, false
	for _, t := range tools {
		was, slides := usual[t.ID]
		switch {
		case !t.Holds(k.Key):
		case !slides || t.Most <= t.Least:
			return t.Label, t.ValueWords()
		case was != t.Value || !found: // of a place, the way that it has moved
			u := t
			u.Value = was
			words := u.ValueWords() + " → " + t.ValueWords()
			if found = true; name == own || value == "" {
				name, value = t.Label, words
				continue
			}
			name, value = name+"; "+t.Label, value+"; "+words
		}
	}
	return name, value
}

// Parser reads what is typed for a value in a unit beside plain numbers, as a case file takes it: lengths in inches
// ("1/64 in"); nil: nothing else.
func Parser(unit string) func(text string) (float64, error) {
	if unit != "mm" {
		return nil
	}
	return func(text string) (float64, error) {
		text = strings.NewReplacer("−", "-", ",", ".").Replace(strings.TrimSpace(text))
		mm, err := tree.Lengths([]tree.ChangeValue{{Text: text, Value: text}})
		if err != nil {
			return 0, err
		}
		return mm[0], nil
	}
}
