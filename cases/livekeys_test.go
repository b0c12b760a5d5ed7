package cases

import (
	"context"
	"math"
	"testing"

	"archload/mesh"
	"archload/mesh/surface"
)

func changedCase(t *testing.T, name string, set ...KeyValue) *Case {
	t.Helper()
	c, err := OpenChanged(nil, name, "test", set)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// TestThicknessScale: 1.1 times 5 mm is 5.5 mm, also at the rim, whose height
// follows; and a graduation is scaled as a whole.
func TestThicknessScale(t *testing.T) {
	got := mustSolve(t, changedCase(t, "course-guitar", KeyValue{"plate.thickness_scale", Valued(1.1)}))
	want := mustSolve(t, changedCase(t, "course-guitar", KeyValue{"plate.thickness", Valued(5.5)}))
	if d := furthest(got.Result.U, want.Result.U); d > 1e-9 {
		t.Errorf("displacements differ by %.2g of the greatest, want 1e-9", d)
	}
	tilted := tiltedPlane{}
	plain, thick := scaledSurface{tilted, 1}, scaledSurface{tilted, 1.25}
	for _, p := range [][2]float64{{0, 0}, {40, -60}} {
		a, b := plain.At(p), thick.At(p)
		for k, v := range [][2]float64{{a.Z, b.Z}, {a.Zx, b.Zx}, {a.Zy, b.Zy}, {a.Zxx, b.Zxx}, {a.Zxy, b.Zxy}, {a.Zyy, b.Zyy}} {
			if math.Abs(v[1]-1.25*v[0]) > 1e-15 {
				t.Errorf("at %v: term %d of the scaled surface is %g, want 1.25 times %g", p, k, v[1], v[0])
			}
		}
	}
}

// tiltedPlane is a surface whose six terms are all different.
type tiltedPlane struct{}

func (tiltedPlane) At(p mesh.Point) surface.Jet {
	return surface.Jet{Z: 4 + 0.01*p[0], Zx: 0.01, Zy: 0.02, Zxx: 0.003, Zxy: 0.004, Zyy: 0.005}
}

// TestBraceNotFitted: a brace that is not glued in is not there, whatever its
// wood and height.
func TestBraceNotFitted(t *testing.T) {
	c := changedCase(t, "course-guitar", KeyValue{"brace[1].fitted", Valued(false)})
	s := mustSolve(t, c)
	r := Summarize(s)
	if len(r.Braces) != len(c.Braces)-1 || r.Braces[0].Name != c.Braces[1].Name {
		t.Errorf("the report has %d braces, want %d", len(r.Braces), len(c.Braces)-1)
	}
	other := mustSolve(t, changedCase(t, "course-guitar", KeyValue{"brace[1].fitted", Valued(false)},
		KeyValue{"brace[1].height_scale", Valued(2.0)}, KeyValue{"brace[1].wood", Valued("ebony")}))
	if d := furthest(other.Result.U, s.Result.U); d > 0 {
		t.Errorf("the height of a brace that is not fitted moves the top by %.2g of its sink, want nothing", d)
	}
	full := Summarize(mustSolve(t, mustOpen(t, "course-guitar")))
	if gain := full.Mass.Braces - r.Mass.Braces; math.Abs(gain-full.Braces[0].Mass) > 1e-9 {
		t.Errorf("leaving a brace of %.4f g off takes %.4f g off", full.Braces[0].Mass, gain)
	}
	none := mustSolve(t, changedCase(t, "course-guitar", KeyValue{"brace[1].fitted", Valued(false)}, KeyValue{"brace[2].fitted", Valued(false)}))
	bare := mustSolve(t, changedCase(t, "course-guitar", KeyValue{"brace", ChangeValue{"none", []any{}}}))
	if a, b := none.sink(), bare.sink(); math.Abs(a-b) > 5e-3*b {
		t.Errorf("with no brace fitted the bridge sinks %.5f mm, with none in the case %.5f mm: want the same but for the mesh, 0.5 %%", a, b)
	}
	if s.sink() <= mustSolve(t, mustOpen(t, "course-guitar")).sink() || none.sink() <= s.sink() {
		t.Error("a top sinks less with a brace left off")
	}
	crossed := mustSolve(t, changedCase(t, "course-guitar-crossed", KeyValue{"brace[1].fitted", Valued(false)}))
	for _, b := range crossed.Top.Built.Model.Beams {
		if b.Joined != [2]bool{} {
			t.Error("a brace is joined to one that is not fitted")
		}
	}
	if _, err := Solve(context.Background(), c, Options{Refine: 0.5}); err != nil {
		t.Errorf("with the load flow: %v", err)
	}
}
