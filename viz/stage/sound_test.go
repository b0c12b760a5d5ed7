package stage

import (
	"testing"

	"archload/cases/design"
	"archload/viz/scene"
)

// A top sounds in the hand and on its edge too, each state with tones and pictures of its
// own; strings are drawn only where there are any.
func TestEveryStateSounds(t *testing.T) {
	a := NewAnswerer(nil, design.Options{Workers: 2, Refine: 0.4, NoError: true})
	var last *Shown
	lowest := map[design.State]float64{}
	for _, state := range []design.State{design.Strung, design.Bare, design.Free} {
		w := Want{Designs: []Design{{Name: "course-guitar"}}, Display: Display{Load: 1, Field: scene.Tone, State: string(state), Strings: true, Tone: 2}}
		s, err := a.Answer(t.Context(), w, last)
		if err != nil {
			t.Fatal(err)
		}
		d := s.Designs[0]
		if d.Sound == nil || d.Sound.State != state || len(d.Sound.Report.Tones) != tonesFound {
			t.Fatalf("%s: %+v, %q", state, d.Sound, d.Soundless)
		}
		lowest[state] = d.Sound.Report.Tones[0].Hz
		bridge := false
		for _, o := range s.Scenes[0].Solids {
			bridge = bridge || o.Name == "base"
		}
		if bridge != (state == design.Strung) {
			t.Errorf("%s: a bridge is drawn: %v", state, bridge)
		}
		last = s
	}
	if !(lowest[design.Free] < lowest[design.Bare]) {
		t.Errorf("the lowest tones are %v Hz; want the free plate's below that on its edge", lowest)
	}
}
