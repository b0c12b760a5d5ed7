package scale

import (
	"image/color"
	"math"
)

// Scale divides a range of values into bands of equal width with a colour
// each. Its zero value is not usable; make one with NewScale.
type Scale struct {
	Lo, Hi float64 // ends of the legend, in the field's unit, whole multiples of Step
	Step   float64 // 1, 2 or 5 times a power of ten; 0: one value everywhere
	Signed bool    // symmetric about zero, diverging colours
	bands  int
	colors *ColorMap
}

// Most bands a scale may have: lines closer than this cannot be counted.
const (
	mostBands       = 14
	mostSignedBands = 16
)

// New chooses bands that cover lo..hi: the smallest 1-2-5 step that
// needs no more than 14 of them (16 with sign, half on each side of zero).
func New(lo, hi float64, signed bool) Scale {
	s := Scale{Lo: lo, Hi: hi, Signed: signed, bands: 1, colors: Sequential()}
	if signed {
		m := math.Max(math.Abs(lo), math.Abs(hi))
		s.Lo, s.Hi, s.colors = -m, m, Diverging()
	}
	most := mostBands
	if signed {
		most = mostSignedBands
	}
	width := s.Hi - s.Lo
	if !(width > 1e-9*math.Max(math.Abs(s.Lo), math.Abs(s.Hi))) || width < 1e-300 {
		s.Lo, s.Hi = lo, lo
		return s
	}
	for s.Step = StepAbove(width / float64(most)); ; s.Step = StepAbove(s.Step * 1.01) {
		first, last := math.Floor(s.Lo/s.Step+Slack), math.Ceil(s.Hi/s.Step-Slack)
		if n := int(last - first); n <= most {
			s.Lo, s.Hi, s.bands = first*s.Step, last*s.Step, n
			return s
		}
	}
}

// Bands returns the number of bands, at least 1.
func (s Scale) Bands() int { return s.bands }

// Level returns the value at the lower edge of band k, in the field's unit.
func (s Scale) Level(k int) float64 {
	if s.Step == 0 {
		return s.Lo
	}
	n := math.Round(s.Lo/s.Step) + float64(k)
	if s.Step < 1 {
		return n / math.Round(1/s.Step) // 3/20 is 0.15, 3·0.05 is a little more
	}
	return n * s.Step
}

// Band returns the number of the band that holds v; values outside the scale
// belong to the end bands. It returns -1 for NaN.
func (s Scale) Band(v float64) int {
	if math.IsNaN(v) {
		return -1
	}
	if s.Step == 0 {
		return 0
	}
	lo, hi := 0, s.bands-1
	for lo < hi {
		mid := (lo + hi + 1) / 2
		if v >= s.Level(mid) {
			lo = mid
		} else {
			hi = mid - 1
		}
	}
	return lo
}

// BandColor returns the colour of band k, grey for a band below 0.
func (s Scale) BandColor(k int) color.NRGBA {
	switch {
	case k < 0:
		return NoValue()
	case s.bands == 1 && s.Signed:
		return s.colors.At(0.5 + 0.5*sign(s.Lo))
	case s.bands == 1:
		return s.colors.At(0.25)
	}
	return s.colors.At(float64(k) / float64(s.bands-1))
}

// Color returns the colour in which the value v is drawn.
func (s Scale) Color(v float64) color.NRGBA { return s.BandColor(s.Band(v)) }

// LevelText writes the value at the lower edge of band k as a legend shows it.
func (s Scale) LevelText(k int) string { return Number(s.Level(k), Decimals(s.Step)) }

// Share returns where v lies between the ends of the legend, 0 to 1; values
// outside are held at the ends, NaN stays NaN.
func (s Scale) Share(v float64) float64 {
	if s.Step == 0 {
		if s.Signed {
			return 0.5 + 0.5*sign(s.Lo)
		}
		return 0.25
	}
	return math.Max(0, math.Min(1, (v-s.Lo)/(s.Hi-s.Lo)))
}

// Smooth returns the colour of v without bands, for pictures whose contour
// lines are drawn by themselves.
func (s Scale) Smooth(v float64) color.NRGBA { return s.colors.At(s.Share(v)) }

// Map returns the scale's colours.
func (s Scale) Map() *ColorMap { return s.colors }

// Label is the value at the lower edge of band k in words; sign shown on both
// sides of a signed scale.
func (s Scale) Label(k int) string {
	v := s.Level(k)
	t := Number(v, Decimals(s.Step))
	if s.Signed && v > 0 {
		t = "+" + t
	}
	return t
}

func sign(v float64) float64 {
	switch {
	case v > 0:
		return 1
	case v < 0:
		return -1
	}
	return 0
}
