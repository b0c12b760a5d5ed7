package tree

import (
	"strings"
	"testing"
)

// TestWithinBounds wants brackets and dots in strings, comments and numbers to
// count for nothing.
func TestWithinBounds(t *testing.T) {
	for _, text := range []string{
		`a = "[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[["`,
		"a = '" + strings.Repeat("a.", 99) + "'", "# " + strings.Repeat(".", 99),
		"a = \"\"\"" + strings.Repeat("[\n", 99) + "\"\"\"", "a = [" + strings.Repeat("1.5, ", 99) + "]", `a = "\"` + strings.Repeat("[", 99) + `"`,
	} {
		if line, want := beyondBounds([]byte(text)); want != "" {
			t.Errorf("line %d: want %s; found in %.60s", line, want, text)
		}
	}
}
