package say

import (
	"bytes"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"archload/cases"
	"archload/cases/casetest"
	"archload/cases/tree"
)

// TestNeverAndNoneText: what a design never comes to, and what it has not got,
// is said in words, within the width of a terminal.
func TestNeverAndNoneText(t *testing.T) {
	deep, err := cases.OpenChanged(nil, "course-guitar", "test", []tree.KeyValue{{Key: "bridge.relief.depth", Value: tree.Valued(2.0)}})
	if err != nil {
		t.Fatal(err)
	}
	c := compared(t, casetest.Open(t, "course-guitar"), deep, casetest.Open(t, "bench-plate"))
	var text bytes.Buffer
	if err := WriteComparison(&text, c); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`(?m)^    B  b +never$`, `(?m)^    C  c +none$`} {
		if !regexp.MustCompile(want).MatchString(text.String()) {
			t.Errorf("the text does not hold %q", want)
		}
	}
	for line := range strings.Lines(text.String()) {
		if n := utf8.RuneCountInString(strings.TrimRight(line, "\n")); n > 100 && !strings.HasPrefix(line, "      ") {
			t.Errorf("%d columns, want at most 100: %q", n, line)
		}
	}
}
