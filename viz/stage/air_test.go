package stage

import (
	"testing"

	"archload/cases/design"
	"archload/viz/scene"
)

// A design follows the slider of the humidity once the hand has let go, down in dry air
// and up in damp air; while it drags the last picture stands and says what it is of.
func TestAirFollowsTheSlider(t *testing.T) {
	a := NewAnswerer(nil, design.Options{Workers: 2, Refine: 0.3, NoError: true})
	w := Want{Designs: []Design{{Name: "course-guitar"}}, Display: Display{Load: 1, Field: scene.Humidity, Air: 30}}
	var last *Shown
	ask := func() *Answered {
		t.Helper()
		s, err := a.Answer(t.Context(), w, last)
		if err != nil {
			t.Fatal(err)
		}
		last = s
		if s.Designs[0].Air == nil {
			t.Fatalf("no answer in other air: %q", s.Designs[0].Airless)
		}
		return s.Designs[0]
	}
	dry := ask().Air
	w.Air, w.Held = 70, true
	if got := ask().Air; got != dry {
		t.Errorf("while the hand drags the picture is of %g %%, want that of %g %%", got.Humidity, dry.Humidity)
	}
	w.Held = false
	damp := ask().Air
	if !(dry.Report.ArchRise < 0 && damp.Report.ArchRise > 0) {
		t.Errorf("the arch rises %g mm in dry air and %g mm in damp air", dry.Report.ArchRise, damp.Report.ArchRise)
	}
	if s := last.Scenes[0].Scale; damp.Skeleton != dry.Skeleton || s == nil || !(s.Lo < 0) {
		t.Errorf("in damp air the legend is %+v; want one that rises too", s)
	}
}
