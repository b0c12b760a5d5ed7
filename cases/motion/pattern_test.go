package motion

import "testing"

// TestPatternsAsWritten reads patterns as they are written.
func TestPatternsAsWritten(t *testing.T) {
	for text, want := range map[string]string{"twist": "twist", "Twist": "twist", "1 1": "twist", "(1,1)": "twist", "2,0": "along", "0-2": "across", "2x1": "2 1", " ring ": "ring"} {
		p, ok := ReadPattern(text)
		if !ok || p.String() != want {
			t.Errorf("%q is %q (%v), want %q", text, p, ok, want)
		}
	}
	for _, text := range []string{"", "5", "1 0", "0 0", "a b", "1 2 3", "-1 2", "25 1"} {
		if p, ok := ReadPattern(text); ok {
			t.Errorf("%q is taken for %q", text, p)
		}
	}
}

// TestPatterns reads names and counts, and writes them back.
func TestPatterns(t *testing.T) {
	for text, want := range map[string]Pattern{"twist": {Across: 1, Along: 1}, "along": {Across: 2}, "across": {Along: 2}, "ring": {Ring: true}, "3 1": {Across: 3, Along: 1}} {
		got, ok := ReadPattern(text)
		if !ok || got != want || got.String() != text {
			t.Errorf("%q is %+v, %v, written %q; want %+v and the same text", text, got, ok, got, want)
		}
	}
	for _, text := range []string{"", "1", "0 1", "-2 1", "1 2 3", "cross"} {
		if _, ok := ReadPattern(text); ok {
			t.Errorf("%q was read as a pattern", text)
		}
	}
}
