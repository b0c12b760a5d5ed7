package desk

import (
	"testing"

	"archload/cases/design"
	"archload/viz/panel"
)

// BenchmarkPage lays out one page without painting it.
func BenchmarkPage(b *testing.B) {
	d, err := New(Options{Names: []string{"course-guitar-relief"}, Solve: design.Options{Workers: 2}})
	if err != nil {
		b.Fatal(err)
	}
	if err := d.Settle(b.Context(), false); err != nil {
		b.Fatal(err)
	}
	in := panel.Input{}
	for b.Loop() {
		in.Now += 1.0 / 60
		d.Frame(1280, 800, 1, in)
	}
}
