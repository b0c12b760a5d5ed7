package tool

import (
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
