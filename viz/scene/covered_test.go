package scene

import "testing"

// A square of 100 mm seen from outside covers its own part of the view, a line its way; a faint
// solid covers nothing.
func TestCovered(t *testing.T) {
	square := func(x float64, a uint8) *Solid {
		o := &Solid{Name: "square", Points: []vec{{x, -50, 0}, {x + 100, -50, 0}, {x + 100, 50, 0}, {x, 50, 0}}, Tris: [][3]int32{{0, 1, 2}, {0, 2, 3}}}
		o.Paint.A = a
		return o
	}
	s := &Scene{Solids: []*Solid{square(-50, 255), square(100, 60)}, Lines: []*Line{{Points: []vec{{-150, -100, 0}, {-150, 100, 0}}}}}
	c := Camera{Pitch: 90, Distance: 1000, Lens: 20}
	v := s.Covered(c, 400, 400, 8)
	at := func(x, y float64) (px, py float64) {
		px, py, _, _ = c.Project(vec{x, y, 0}, 400, 400)
		return px, py
	}
	for _, k := range []struct {
		what string
		x, y float64
		want bool
	}{{"the middle of the square", 0, 0, true}, {"its corner", 45, 45, true}, {"beside it", 75, 0, false}, {"the faint one", 150, 0, false}, {"the line", -150, 30, true}} {
		x, y := at(k.x, k.y)
		if got := v.Meets(x-4, y-4, x+4, y+4); got != k.want {
			t.Errorf("%s is covered: %v, want %v", k.what, got, k.want)
		}
	}
	x, y := at(-150, 30)
	if s.Covered(c, 400, 400, 8, "square").Meets(x-4, y-4, x+4, y+4) {
		t.Error("the line counts among the solids")
	}
}
