package desk

import (
	"math"
	"testing"

	"archload/cases/design"
	"archload/cases/tone"
	"archload/viz/panel"
	"archload/viz/scene"
)

// The tones in the window are those of the command; one that is pressed is drawn and
// swings to both sides alike.
func TestTonesSwing(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar"}})
	h.key(panel.DigitKey(int(scene.Tone)))
	a := h.d.shown.Designs[0]
	if a.Sound == nil {
		t.Fatalf("no tones: %q", a.Soundless)
	}
	want, _, err := tone.FindTones(t.Context(), a.Live.Case(), design.Strung, len(a.Sound.Report.Tones), design.Options{Refine: coarse, NoError: true})
	if err != nil {
		t.Fatal(err)
	}
	for i, w := range want.Tones {
		if got := a.Sound.Report.Tones[i]; math.Abs(got.Hz/w.Hz-1) > 1e-9 || got.Pattern != w.Pattern {
			t.Errorf("tone %d: %.6f Hz, %s; the command finds %.6f Hz, %s", i+1, got.Hz, got.Pattern, w.Hz, w.Pattern)
		}
	}
	h.push("tone 2")
	s := h.d.shown
	if k := s.ToneOf(0); k != 1 {
		t.Fatalf("tone %d is drawn after a press on the second", k+1)
	}
	up, rest, down := s.Swung(1)[0].Solids[0].Points, s.Swung(0)[0].Solids[0].Points, s.Swung(-1)[0].Solids[0].Points
	most := 0.0
	for i := range rest {
		for k := range rest[i] {
			if d := math.Abs(up[i][k] + down[i][k] - 2*rest[i][k]); d > 1e-9 {
				t.Fatalf("point %d swings to %v and %v about %v", i, up[i], down[i], rest[i])
			}
			most = math.Max(most, math.Abs(up[i][k]-rest[i][k]))
		}
	}
	if most < 2 || most > 20 {
		t.Errorf("the swing is drawn %g mm; want some millimetres", most)
	}
	if !h.d.Moving() {
		t.Error("the tone does not swing")
	}
	h.key(panel.LetterKey('p'))
	if h.d.Moving() {
		t.Error("P does not stop it")
	}
}
