package cases

import (
	"math"
	"testing"
)

func TestParseNote(t *testing.T) {
	for _, c := range []struct {
		name   string
		want   float64 // Hz
		source string
	}{
		{"A4", 440, "ISO 16:1975"},
		{"E4", 329.6276, "440 / 2^(5/12) by hand"},
		{"B3", 246.9417, "440 / 2^(10/12) by hand"},
		{"C4", 261.6256, "440 / 2^(9/12) by hand"},
		{"F#3", 184.9972, "440 / 2^(15/12) by hand"},
		{"Gb3", 184.9972, "the same key as F#3"},
		{"Bb2", 116.5409, "440 / 2^(23/12) by hand"},
		{"E2", 82.4069, "E4 two octaves down"},
		{"B#3", 261.6256, "the same key as C4"},
		{"Cb4", 246.9417, "the same key as B3"},
		{"C-1", 8.1758, "C4 / 32"},
		{"e4", 329.6276, "small letter"},
	} {
		got, err := ParseNote(c.name)
		if err != nil || math.Abs(float64(got)-c.want) > 1e-4 {
			t.Errorf("ParseNote(%q) = %.5f Hz, %v, want %.4f (%s)", c.name, got, err, c.want, c.source)
		}
	}
	for _, bad := range []string{"", "H4", "E", "E44", "E#b4", "4E", "E 4", "Ebbb4", "é4"} {
		if got, err := ParseNote(bad); err == nil {
			t.Errorf("ParseNote(%q) = %g Hz, want an error", bad, got)
		}
	}
}
