package scale

import (
	"math"
	"testing"
)

func TestNewScale(t *testing.T) {
	for _, c := range []struct {
		lo, hi     float64
		kind       Kind
		from, to   float64
		step       float64
		bands      int
		wherefores string
	}{
		{0, 0.47, Counting, 0, 0.5, 0.05, 10, "0.47/14 = 0.034, next of 1-2-5 is 0.05"},
		{-0.013, 0.543, Sinking, -0.05, 0.55, 0.05, 12, "a true rise opens a band"},
		{-1e-3, 0.5, Sinking, 0, 0.5, 0.05, 10, "a breath opens none"},
		{0.021, 0.479, Counting, 0, 0.5, 0.05, 10, "ends are whole steps"},
		{-6.5, 3.8, Signed, -7, 4, 1, 11, "6.5/8 = 0.81, next is 1; no further than used"},
		{-2, 90, Signed, -20, 100, 20, 6, "90/8 = 11, next is 20; one step below zero is used"},
		{3, 3, Counting, 3, 3, 0, 1, "one value"},
		{0, 0, Counting, 0, 0, 0, 1, "all zero"},
		{0, 0, Signed, 0, 0, 0, 1, "all zero, signed"},
		{0, 1.4e5, Counting, 0, 1.4e5, 1e4, 14, "14 bands just fit"},
	} {
		s := New(c.lo, c.hi, c.kind)
		if !close9(s.Lo, c.from) || !close9(s.Hi, c.to) || !close9(s.Step, c.step) || s.Bands() != c.bands {
			t.Errorf("NewScale(%g, %g, %d) = %g..%g step %g, %d bands; want %g..%g step %g, %d bands (%s)",
				c.lo, c.hi, c.kind, s.Lo, s.Hi, s.Step, s.Bands(), c.from, c.to, c.step, c.bands, c.wherefores)
		}
	}
}

// What has come up is said so, not as a negative sink.
func TestRiseInWords(t *testing.T) {
	s := New(-0.2, 0.4, Sinking)
	if s.LevelText(0) != "0.20 up" || s.Label(0) != "0.20 up" || s.LevelText(s.Bands()) != "0.40" {
		t.Errorf("legend from %q to %q, line %q; want 0.20 up, 0.40", s.LevelText(0), s.LevelText(s.Bands()), s.Label(0))
	}
	if signed := New(-2, 2, Signed); signed.LevelText(0) != "−2.0" && signed.LevelText(0) != "−2" {
		t.Errorf("push reads %q", signed.LevelText(0))
	}
}

func close9(a, b float64) bool {
	return math.Abs(a-b) <= 1e-9*math.Max(1, math.Max(math.Abs(a), math.Abs(b)))
}

func TestScaleBand(t *testing.T) {
	s := New(0, 0.47, Counting)
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

// TestTwoSides checks that as far from zero a two-sided scale is as strong on both
// sides, whatever of it is used, and that a field of zeros is drawn in zero's colour.
func TestTwoSides(t *testing.T) {
	for kind, colors := range map[Kind]*ColorMap{Signed: Diverging(), Sinking: DownAndUp()} {
		s := New(-3, 7, kind)
		if s.Lo != -3 || s.Hi != 7 {
			t.Errorf("kind %d: %g to %g, want the used stretch, -3 to 7", kind, s.Lo, s.Hi)
		}
		for _, v := range []float64{-2.5, -0.5, 0, 0.5, 2.5, 7} {
			if got, want := s.Smooth(v), colors.At(0.5+0.5*v/7); got != want {
				t.Errorf("kind %d: %g is drawn %v, want %v", kind, v, got, want)
			}
		}
		if got, want := s.Tone(0.3), s.Smooth(0); got != want {
			t.Errorf("kind %d: three tenths up the legend %v, want the colour of zero %v", kind, got, want)
		}
		if got, want := New(0, 0, kind).Color(0), colors.At(0.5); got != want {
			t.Errorf("kind %d: zero everywhere is %v, want %v", kind, got, want)
		}
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

// Equal shares are not written as different ones.
func TestAlike(t *testing.T) {
	for _, c := range []struct {
		n      int
		values []float64
		want   int
	}{
		{0, []float64{13.49, 13.51}, 1},
		{0, []float64{13.4495, 13.4505, 13.5}, 2},
		{0, []float64{13.495, 13.505}, 1},
		{0, []float64{13.2, 13.9}, 0},
		{0, []float64{13.3, 13.7}, 0},
		{1, []float64{21.04, 21.06}, 2},
		{1, []float64{21.049, 21.051}, 2},
		{0, []float64{math.NaN(), 1}, 0},
		{0, nil, 0},
	} {
		if got := Alike(c.n, c.values...); got != c.want {
			t.Errorf("%v need %d decimals, want %d", c.values, got, c.want)
		}
	}
}
