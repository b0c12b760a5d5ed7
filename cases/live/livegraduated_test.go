package live

import (
	"testing"
	"testing/fstest"

	"archload/cases/tree"
)

// A top graduated by readings takes another wood, and another thickness in all.
func TestGraduatedTopTakesOtherWood(t *testing.T) {
	t.Parallel()
	files := fstest.MapFS{
		"g.toml": {Data: []byte("format = 1\nbase = \"course-guitar\"\nplate.thickness = { points = \"g.csv\" }\n")},
		"g.csv":  {Data: []byte("x_mm,y_mm,thickness_mm\n0,0,5.2\n0,120,4.6\n0,-150,4.6\n110,-60,4.2\n-110,-60,4.2\n70,120,4.1\n-70,120,4.1\n150,-110,3.9\n-150,-110,3.9\n")},
	}
	l, err := Begin(t.Context(), files, "g.toml", quick())
	if err != nil {
		t.Fatal(err)
	}
	for _, set := range []tree.KeyValue{
		{Key: "plate.wood", Value: tree.Valued("engelmann-spruce")},
		{Key: "plate.thickness_scale", Value: tree.Valued(0.95)},
		{Key: "brace[1].height_scale", Value: tree.Valued(1.1)},
	} {
		if l, err = l.Set(t.Context(), set); err != nil {
			t.Fatalf("%s: %v", set.Key, err)
		}
	}
}
