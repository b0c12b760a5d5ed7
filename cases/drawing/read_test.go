package drawing

import (
	"errors"
	"testing"
)

// TestNamed parts names of files and of things in them; drawings are known by their
// ending, however it is written, and Read takes no other file.
func TestNamed(t *testing.T) {
	for value, drawn := range map[string]bool{"top.svg#outline": true, "TOP.SVG#outline": true, "a/b.svgz": true, "top.csv": false, "svg": false, "top.svg.csv#outline": false} {
		file, name, ok := Named(value)
		if ok != drawn {
			t.Errorf("%s: a drawing: %t, want %t", value, ok, drawn)
		}
		if name != "" {
			file += "#" + name
		}
		if file != value {
			t.Errorf("%s: comes apart as %s", value, file)
		}
	}
	var f *Fault
	if _, err := Read("top.csv", []byte("<svg/>")); !errors.As(err, &f) {
		t.Errorf("a table is read as a drawing: %v", err)
	}
}
