package tone

import (
	"testing"

	"archload/cases/motion"
)

// TestHeard: a tone whose pattern was seen is taken for the computed one of that shape, a quarter away, though another is nearer;
// counts serve as names; one that was seen to be another is not taken for its neighbour; and without a pattern the nearest
// that is left counts.
func TestHeard(t *testing.T) {
	r := &Report{Tones: []Tone{
		{Hz: 100, Pattern: "twist", lines: [2]int{1, 1}},
		{Hz: 150, Pattern: "3 fields across", lines: [2]int{2, 0}},
		{Hz: 200, Pattern: "ring", lines: [2]int{2, 2}},
		{Hz: 230, Pattern: "3 fields along", lines: [2]int{0, 2}},
		{Hz: 300, Pattern: "6 fields, up to 2 across, 3 along", lines: [2]int{1, 2}},
	}}
	heard := []motion.HeardTone{{Hz: 151, Pattern: "Ring"}, {Hz: 118}, {Hz: 196, Pattern: "across"}, {Hz: 205, Pattern: "along"}, {Hz: 310, Pattern: "2,1"},
		{Hz: 304, Pattern: "twist"}, {Hz: 900}}
	want := []HeardTone{{Tone: 3, By: byShape}, {Tone: 1, By: byFrequency}, {Tone: 2, By: byShape}, {Tone: 4, By: byShape}, {Tone: 5, By: byShape}, {}, {}}
	r.hear(heard)
	for i, h := range r.Heard {
		if h.Tone != want[i].Tone || h.By != want[i].By {
			t.Errorf("%g Hz, %q: tone %d by %q, want %d by %q", h.Hz, h.Pattern, h.Tone, h.By, want[i].Tone, want[i].By)
		}
	}
}
