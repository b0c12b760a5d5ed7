package shape

import (
	"strings"
	"testing"

	"archload/cases/casetest"
	"archload/mesh"
)

// TestArchRaisedAndShifted wants heights over the rim multiplied and the apex
// moved, the edge as it was, and no other arch when it is raised without a fit.
func TestArchRaisedAndShifted(t *testing.T) {
	text := casetest.TopText + casetest.RestText
	with := func(keys string) *Geometry {
		return mustShape(t, strings.Replace(text, "arch.formula =", keys+"\narch.formula =", 1))
	}
	plain, raised, moved := with(""), with("arch.height_scale = 1.2"), with("arch.apex_shift = [8, 0]")
	for _, p := range []mesh.Point{{0, 0}, {40, 30}, {-60, -80}} {
		z, rim := plain.Plate.Outer.At(p), plain.RimHeight
		got := raised.Plate.Outer.At(p)
		if want := rim + 1.2*(z.Z-rim); !casetest.Near(got.Z, want, 1e-9) || !casetest.Near(got.Zxx, 1.2*z.Zxx, 1e-9) {
			t.Errorf("raised by 1.2 at %v: %.4f mm high, bent %.6f; want %.4f, %.6f", p, got.Z, got.Zxx, want, 1.2*z.Zxx)
		}
	}
	if a, b := moved.Plate.Outer.At(mesh.Point{8, 0}).Z, plain.Plate.Outer.At(mesh.Point{0, 0}).Z; !casetest.Near(a, b, 1e-6) {
		t.Errorf("the apex moved by 8 mm is %.4f mm high, before %.4f", a, b)
	}
	anew, err := FitGeometry(raised.Case, plain, []string{"plate.arch.height_scale"})
	if err != nil {
		t.Fatal(err)
	}
	if got, want := anew.Plate.Outer.At(mesh.Point{40, 30}), raised.Plate.Outer.At(mesh.Point{40, 30}); got != want {
		t.Errorf("raised from an arch that was fitted: %v, fitted anew %v", got, want)
	}
}
