package bench

import (
	"testing"
	"testing/fstest"
)

// TestBundled: each bundled file loads by its name, and has a title.
func TestBundled(t *testing.T) {
	names := Names()
	if len(names) < 2 {
		t.Fatalf("bundled: %v, want two or more", names)
	}
	for _, name := range names {
		f, err := Open(fstest.MapFS{}, name)
		if err != nil {
			t.Fatal(err)
		}
		if f.Title == name || f.readings() < 5 {
			t.Errorf("%s: title %q, %d readings, want a title and five", name, f.Title, f.readings())
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
