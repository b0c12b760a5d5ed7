package shape

import (
	"math"
	"testing"
	"testing/fstest"

	"archload/cases"
	"archload/mesh"
)

// Wood is taken off inside at places: by what is said there, between the least and the most elsewhere, and the
// outer surface stays as it was; so does the geometry that a change back leads to.
func TestThicknessChange(t *testing.T) {
	open := func(change string) *cases.Case {
		text := "format = 1\nbase = \"course-guitar\"\n" + change
		c, err := cases.Load(fstest.MapFS{"c.toml": {Data: []byte(text)}}, "c.toml")
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	const list = "plate.thickness_change = [[0, 60, -0.5], [110, -80, 0.2], [-110, -80, 0], [0, -150, 0], [70, 150, 0]]\n"
	plain, err := NewGeometry(open(""))
	if err != nil {
		t.Fatal(err)
	}
	c := open(list)
	g, err := NewGeometry(c)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range c.Plate.ThicknessChange {
		p := mesh.Point{float64(r[0]), float64(r[1])}
		if got, want := g.Plate.Thickness.At(p).Z, 5+float64(r[2]); math.Abs(got-want) > 1e-9 {
			t.Errorf("at %v: %g mm, want %g", p, got, want)
		}
	}
	for _, p := range []mesh.Point{{0, 0}, {150, -120}, {-60, 200}, {30, 40}} {
		if z := g.Plate.Thickness.At(p).Z; z < 4.5-1e-9 || z > 5.2+1e-9 {
			t.Errorf("at %v: %g mm, want 4.5 to 5.2", p, z)
		}
		if g.Plate.Outer.At(p) != plain.Plate.Outer.At(p) || g.RimHeight != plain.RimHeight {
			t.Errorf("at %v the outer surface has moved", p)
		}
	}
	scaled := open(list + "plate.thickness_scale = 0.9\n")
	h, err := FitGeometry(scaled, g, []string{"plate.thickness_scale"})
	if err != nil {
		t.Fatal(err)
	}
	if got := h.Plate.Thickness.At(mesh.Point{0, 60}).Z; math.Abs(got-4.0) > 1e-9 {
		t.Errorf("nine tenths of 5 mm less 0.5: %g mm", got)
	}
	back, err := FitGeometry(open(""), g, []string{"plate.thickness_change"})
	if err != nil {
		t.Fatal(err)
	}
	if back.Plate.Thickness != plain.Plate.Thickness {
		t.Errorf("without the change the thickness is %v, want %v", back.Plate.Thickness, plain.Plate.Thickness)
	}
}
