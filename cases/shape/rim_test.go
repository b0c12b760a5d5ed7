package shape

import (
	"math"
	"testing"

	"archload/cases"
	"archload/cases/casetest"
	"archload/mesh"
	"archload/mesh/surface"
)

// TestRimRises: under the hand a fitted arch takes the height of its rim from another thickness without another fit, near the one that a
// fit of its own gives; for others it is fitted.
func TestRimRises(t *testing.T) {
	plain := casetest.Open(t, "course-guitar")
	was, err := NewGeometry(plain)
	if err != nil {
		t.Fatal(err)
	}
	take := func(from *Geometry, by float64, fit func(*cases.Case, *Geometry, []string) (*Geometry, error)) *Geometry {
		c := *plain
		c.Plate.ThicknessScale = by
		g, err := fit(&c, from, []string{"plate.thickness_scale"})
		if err != nil {
			t.Fatal(err)
		}
		return g
	}
	got, want := take(was, 1.04, FitNear), take(was, 1.04, FitGeometry)
	if s := got.Plate.Outer.(*surface.Spline); s.AsFitted() != was.Plate.Outer || want.Plate.Outer.(*surface.Spline).AsFitted() != want.Plate.Outer {
		t.Error("want the arch's rim raised under a hand alone")
	}
	if got.RimHeight != want.RimHeight {
		t.Errorf("the rim is %g mm high, want %g", got.RimHeight, want.RimHeight)
	}
	off := 0.0
	for _, p := range append(was.Outline.Polyline(20), mesh.Point{0, 0}, mesh.Point{40, 30}, mesh.Point{-60, -80}) {
		off = math.Max(off, math.Abs(got.Plate.Outer.At(p).Z-want.Plate.Outer.At(p).Z))
	}
	if off > 0.005 {
		t.Errorf("the rim raised by 0.2 mm, the arch is off by %.4f mm, want 0.005: far less than it was measured to", off)
	}
	c := *got.Case
	if again, err := FitNear(&c, got, []string{"plate.wood"}); err != nil || again.Plate != got.Plate {
		t.Errorf("other wood makes another plate (%v)", err)
	}
	if back := take(got, 1, FitNear); back.Plate.Outer != was.Plate.Outer {
		t.Error("back at its own thickness the arch is another")
	}
	if far := take(got, 1.2, FitNear); far.Plate.Outer.(*surface.Spline).AsFitted() == was.Plate.Outer {
		t.Error("a rim 1 mm higher keeps the fit")
	}
}
