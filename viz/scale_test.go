package viz

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
		s := NewScale(c.lo, c.hi, c.signed)
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
	s := NewScale(0, 0.47, false)
	for _, c := range []struct {
		v    float64
		want int
	}{{0, 0}, {0.049, 0}, {0.05, 1}, {0.15, 3}, {0.351, 7}, {0.499, 9}, {9, 9}, {-9, 0}, {math.NaN(), -1}} {
		if got := s.Band(c.v); got != c.want {
			t.Errorf("Band(%g) = %d, want %d", c.v, got, c.want)
		}
	}
	if got := s.Color(math.NaN()); got != noValueColor() {
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
	s := NewScale(-3, 7, true)
	for k := 0; k < s.Bands(); k++ {
		if a, b := s.Level(k), -s.Level(s.Bands()-k); !close9(a, b) {
			t.Errorf("level %d = %g, mirrored level %g", k, a, b)
		}
	}
	if got, want := NewScale(0, 0, true).Color(0), Diverging().At(0.5); got != want {
		t.Errorf("colour of zero everywhere = %v, want neutral %v", got, want)
	}
}

func TestNumbers(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{number(-0.05, 2), "−0.05"}, {number(-0.0001, 2), "0"}, {number(0, 2), "0"},
		{number(3, 0), "3"}, {number(math.NaN(), 1), "–"}, {number(1.4e7, 0), "1.4e+07"},
		{reading(0.3341), "0.33"}, {reading(0.0412), "0.041"}, {reading(62.13), "62.1"}, {reading(391.2), "391"},
		{reading(-6.55), "−6.55"}, {reading(2), "2"}, {reading(0), "0"}, {reading(2e-5), "2e-05"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
	for _, c := range []struct {
		step float64
		want int
	}{{0.05, 2}, {0.1, 1}, {1, 0}, {20, 0}, {0.002, 3}, {0, 0}} {
		if got := decimals(c.step); got != c.want {
			t.Errorf("decimals(%g) = %d, want %d", c.step, got, c.want)
		}
	}
}

func TestExtents(t *testing.T) {
	nan := math.NaN()
	f := Field{Nodal: []float64{nan, 2, -1, math.Inf(1)}}
	if lo, hi, ok := f.Extent(); lo != -1 || hi != 2 || !ok {
		t.Errorf("Extent = %g, %g, %v; want -1, 2, true", lo, hi, ok)
	}
	empty := Field{PerTriangle: []float64{nan}}
	if _, _, ok := empty.Extent(); ok {
		t.Errorf("Extent of no values is ok")
	}
	if got, want := SharedRange(empty, f, Field{PerTriangle: []float64{5}}), [2]float64{-1, 5}; got != want {
		t.Errorf("SharedRange = %v, want %v", got, want)
	}
	f.Range = &[2]float64{0, 10}
	if s := f.Scale(); s.Lo != 0 || s.Hi != 10 {
		t.Errorf("scale %g..%g, want the given range 0..10", s.Lo, s.Hi)
	}
}
