package scale

import (
	"math"
	"testing"
)

func TestNewScale(t *testing.T) {
	for _, c := range []struct {
		lo, hi     float64
		signed     bool
		from, to   float64
		step       float64
		bands      int
		wherefores string
	}{
		{0, 0.47, false, 0, 0.5, 0.05, 10, "0.47/14 = 0.034, next of 1-2-5 is 0.05"},
		{-0.013, 0.543, false, -0.05, 0.55, 0.05, 12, "a true rise opens a band"},
		{-1e-6, 0.5, false, 0, 0.5, 0.05, 10, "rounding noise opens none"},
		{0.021, 0.479, false, 0, 0.5, 0.05, 10, "ends are whole steps"},
		{-6.5, 3.8, true, -7, 7, 1, 14, "13/16 = 0.81, next is 1"},
		{-2, 90, true, -100, 100, 20, 10, "180/16 = 11, next is 20; 90 needs 5 a side"},
		{3, 3, false, 3, 3, 0, 1, "one value"},
		{0, 0, false, 0, 0, 0, 1, "all zero"},
		{0, 0, true, 0, 0, 0, 1, "all zero, signed"},
		{0, 1.4e5, false, 0, 1.4e5, 1e4, 14, "14 bands just fit"},
	} {
		s := New(c.lo, c.hi, c.signed)
		if !close9(s.Lo, c.from) || !close9(s.Hi, c.to) || !close9(s.Step, c.step) || s.Bands() != c.bands {
			t.Errorf("NewScale(%g, %g, %v) = %g..%g step %g, %d bands; want %g..%g step %g, %d bands (%s)",
				c.lo, c.hi, c.signed, s.Lo, s.Hi, s.Step, s.Bands(), c.from, c.to, c.step, c.bands, c.wherefores)
		}
	}
}

func close9(a, b float64) bool {
	return math.Abs(a-b) <= 1e-9*math.Max(1, math.Max(math.Abs(a), math.Abs(b)))
}

func TestScaleBand(t *testing.T) {
	s := New(0, 0.47, false)
	for _, c := range []struct {
		v    float64
		want int
	}{{0, 0}, {0.049, 0}, {0.05, 1}, {0.15, 3}, {0.351, 7}, {0.499, 9}, {9, 9}, {-9, 0}, {math.NaN(), -1}} {
		if got := s.Band(c.v); got != c.want {
			t.Errorf("Band(%g) = %d, want %d", c.v, got, c.want)
		}
	}
	if got := s.Color(math.NaN()); got != NoValue() {
		t.Errorf("Color(NaN) = %v, want grey", got)
	}
	for k := 0; k < s.Bands(); k++ {
		if got := s.Band(s.Level(k)); got != k {
			t.Errorf("Band(Level(%d)) = %d: a level must open its band", k, got)
		}
	}
}

// TestSignedZero checks that a signed scale is balanced and that a field of
// zeros is drawn neutral.
func TestSignedZero(t *testing.T) {
	s := New(-3, 7, true)
	for k := 0; k < s.Bands(); k++ {
		if a, b := s.Level(k), -s.Level(s.Bands()-k); !close9(a, b) {
			t.Errorf("level %d = %g, mirrored level %g", k, a, b)
		}
	}
	if got, want := New(0, 0, true).Color(0), Diverging().At(0.5); got != want {
		t.Errorf("colour of zero everywhere = %v, want neutral %v", got, want)
	}
}

func TestNumbers(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{Number(-0.05, 2), "−0.05"}, {Number(-0.0001, 2), "0"}, {Number(0, 2), "0"},
		{Number(3, 0), "3"}, {Number(math.NaN(), 1), "–"}, {Number(1.4e7, 0), "1.4e+07"},
		{Reading(0.3341), "0.33"}, {Reading(0.0412), "0.041"}, {Reading(62.13), "62.1"}, {Reading(391.2), "391"},
		{Reading(-6.55), "−6.55"}, {Reading(2), "2"}, {Reading(0), "0"}, {Reading(2e-5), "2e-05"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
	for _, c := range []struct {
		step float64
		want int
	}{{0.05, 2}, {0.1, 1}, {1, 0}, {20, 0}, {0.002, 3}, {0, 0}} {
		if got := Decimals(c.step); got != c.want {
			t.Errorf("decimals(%g) = %d, want %d", c.step, got, c.want)
		}
	}
}
