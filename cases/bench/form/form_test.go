package form

import (
	"context"
	"strings"
	"testing"
	"testing/fstest"

	"archload/cases"
	"archload/cases/bench"
	"archload/cases/design"
)

// TestForm: the form of a bundled case is a bench file as it stands, that asks for the case's gauges.
func TestForm(t *testing.T) {
	c, err := cases.Open(fstest.MapFS{}, "course-guitar")
	if err != nil {
		t.Fatal(err)
	}
	text, err := Of(context.Background(), c, "course-guitar", design.Options{Workers: 2, Refine: 0.5})
	if err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(text, "# [[tone]]"); n != tones || !strings.Contains(text, "twist") {
		t.Errorf("%d tones, want %d, one a twist:\n%s", n, tones, text)
	}
	f, err := bench.Load(fstest.MapFS{"form.toml": {Data: []byte(text)}}, "form.toml")
	if err != nil {
		t.Fatal(err)
	}
	if len(f.Presses) != 1 || len(f.Presses[0].Gauges) != len(c.Gauges) {
		t.Errorf("%+v, want one press with the case's %d gauges", f.Presses, len(c.Gauges))
	}
}
