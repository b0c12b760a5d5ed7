package section

import (
	"math"
	"testing"

	"archload/cases"
	"archload/cases/design"
	"archload/mesh"
)

// TestHeadsNear: of four posts under a flat line the two near it are drawn, where they stand; one beyond the
// wood and one far beside are not.
func TestHeadsNear(t *testing.T) {
	c := &design.LineCut{From: mesh.Point{0, 0}, To: mesh.Point{100, 0}}
	for x := 10.0; x <= 90; x++ {
		c.Along, c.Inner, c.Sink = append(c.Along, x), append(c.Inner, 20+x/10), append(c.Sink, x/100)
	}
	c.Inner[20] = math.NaN() // over a hole: the next station serves
	heads := headsNear(c, []cases.Post{{Name: "a", At: mesh.Point{40, -20}, Diameter: 6}, {Name: "beyond", At: mesh.Point{99, 0}, Diameter: 6},
		{Name: "beside", At: mesh.Point{40, 31}, Diameter: 6}, {Name: "hole", At: mesh.Point{30, 5}, Diameter: 8}})
	want := []postHead{{"a", 3, 40, 24, 0.4}, {"hole", 4, 30, 22.9, 0.29}}
	if len(heads) != len(want) {
		t.Fatalf("%v", heads)
	}
	for i, w := range want {
		h := heads[i]
		if h.name != w.name || h.half != w.half || h.at != w.at || math.Abs(h.top-w.top) > 1e-9 || math.Abs(h.sink-w.sink) > 1e-9 {
			t.Errorf("post %d: %+v, want %+v", i, h, w)
		}
	}
}
