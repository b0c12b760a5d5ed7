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

// Beside a tone of the first design stands the one of the second that swings most alike,
// up where the first is up.
func TestTonesSideBySide(t *testing.T) {
	a := NewAnswerer(nil, design.Options{Workers: 2, Refine: 0.4, NoError: true})
	w := Want{Designs: []Design{{Name: "course-guitar"}, {Name: "course-guitar-treble"}}, Display: Display{Load: 1, Field: scene.Tone, Tone: 1},
		Pins: []scene.Pin{{Text: "pumps", On: 1}, {Name: "1"}}}
	s, err := a.Answer(t.Context(), w, nil)
	if err != nil {
		t.Fatal(err)
	}
	k := s.ToneOf(1)
	for _, l := range s.Like {
		if l.First == 1 && k != l.Tone-1 {
			t.Errorf("beside tone 1 of A stands tone %d of B; tone %d swings most alike", k+1, l.Tone)
		}
	}
	if k < 0 || len(s.Scenes) != 2 {
		t.Fatalf("%d scenes, tone %d beside the second; %v, %q %q", len(s.Scenes), k+1, s.Like, s.Designs[0].Soundless, s.Designs[1].Soundless)
	}
	for i, want := range []string{"", "pumps"} { // a reading has no place in a swing
		got := ""
		for _, l := range s.Scenes[i].Labels {
			if l.Kind == scene.Part || l.Kind == scene.Reading {
				got += l.Text
			}
		}
		if got != want {
			t.Errorf("design %d is pointed at with %q, want %q", i, got, want)
		}
	}
	first, second := s.Scenes[0].Solids[0], s.Scenes[1].Solids[0]
	for i, v := range first.Values {
		if v == 1 { // where the first goes up most
			p := s.Designs[0].Sound.Shapes.Moving.Built.Mesh.Points[i]
			at, _ := s.Designs[1].Sound.Shapes.Moving.Built.OnOuter(p)
			sum := 0.0
			for c, n := range s.Designs[1].Sound.Shapes.Moving.Built.Mesh.Tris[at.Shell] {
				sum += at.L[c] * second.Values[n]
			}
			if sum <= 0 {
				t.Errorf("where A goes up most, at %v, B has %g", p, sum)
			}
		}
	}
}
