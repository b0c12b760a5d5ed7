package tool

import (
	"math"
	"testing"

	"archload/cases/tree"
)

// A list is told by the names of its entries, a key by what it is.
func TestChangedWords(t *testing.T) {
	loads := []any{map[string]any{"name": "push", "at": []any{0.0, 1.0}}, map[string]any{"name": "pull"}}
	line := []any{[]any{0.0, 1.0}, []any{1.0, 1.0}, []any{2.0, 1.0}, []any{3.0, 1.0}}
	for _, c := range []struct {
		key, name, value string
		set              any
	}{
		{"load", "loads", "push; pull", loads},
		{"plate.outline", "outline of the top", "4 places", line},
		{"plate.hole", "sound holes", "none", []any{}},
		{"wood.board.EL", "stiffness along the grain", "as it stands", 12911.0},
		{"no.such", "no.such", "as it stands", 1.0},
	} {
		name, value := ChangedWords(tree.KeyValue{Key: c.key, Value: tree.ChangeValue{Text: "as it stands", Value: c.set}})
		if name != c.name || value != c.value {
			t.Errorf("%s reads %q, %q; want %q, %q", c.key, name, value, c.name, c.value)
		}
	}
}

// Lengths may be typed in inches, as in a case file; other units are no lengths.
func TestTypedLengths(t *testing.T) {
	parse := Parser("mm")
	for text, want := range map[string]float64{"1/64 in": 25.4 / 64, "0,005 in": 0.127, " 2.5 mm": 2.5, "1 1/2 in": 38.1, "−0.1 in": -2.54} {
		if got, err := parse(text); err != nil || math.Abs(got-want) > 1e-12 {
			t.Errorf("%q is %g mm, %v; want %g", text, got, err, want)
		}
	}
	for _, text := range []string{"3 N", "in", "1/0 in", "two mm", "1e400 in"} {
		if got, err := parse(text); err == nil && !math.IsInf(got, 0) {
			t.Errorf("%q is taken for %g mm", text, got)
		}
	}
	if Parser("N") != nil {
		t.Error("newtons are read as lengths")
	}
}
