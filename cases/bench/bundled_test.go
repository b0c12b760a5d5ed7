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
