package scene

import (
	"image"
	"slices"
	"testing"
)

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

// What Reach returns holds every pixel that Paint changes but for the shadow, from near and from afar, and not much
// more.
func TestReach(t *testing.T) {
	s := solved(t, "course-guitar", 0.3)
	sc := NewSkeleton(s).Build(Show{Solution: s, Field: Sink, Strings: true, Load: 1})
	sc.Solids = slices.DeleteFunc(sc.Solids, func(o *Solid) bool { return o.Soft })
	const w, h = 300, 240
	for _, c := range []struct {
		of   Camera
		some bool // it leaves some of the view free
	}{{sc.Seen("at an angle", w, h).Moved(60, 20, h), true}, {sc.Seen("from the tail", w, h), true}, {Camera{Target: sc.Centre, Distance: 30, Pitch: 20}, false}} {
		img := image.NewNRGBA(image.Rect(0, 0, w, h))
		for i := range img.Pix {
			img.Pix[i] = 255
		}
		Paint(img, img.Rect, sc, c.of, PaintOptions{})
		r := sc.Reach(c.of, w, h, 1)
		var is image.Rectangle
		for y := range h {
			for x := range w {
				if q := img.NRGBAAt(x, y); q.R < 255 || q.G < 255 || q.B < 255 {
					is = is.Union(image.Rect(x, y, x+1, y+1))
				}
			}
		}
		if !is.In(r) || c.some && (r == img.Rect || r.Dx() > is.Dx()+24 || r.Dy() > is.Dy()+24) {
			t.Errorf("pixels of %v are changed, Reach says %v", is, r)
		}
	}
}
