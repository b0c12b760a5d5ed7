package viz

import (
	"image/color"
	"math"
	"strconv"
	"strings"
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

// NewScale chooses bands that cover lo..hi: the smallest 1-2-5 step that
// needs no more than 14 of them (16 with sign, half on each side of zero).
func NewScale(lo, hi float64, signed bool) Scale {
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
	for s.Step = nice(width / float64(most)); ; s.Step = nice(s.Step * 1.01) {
		first, last := math.Floor(s.Lo/s.Step+slack), math.Ceil(s.Hi/s.Step-slack)
		if n := int(last - first); n <= most {
			s.Lo, s.Hi, s.bands = first*s.Step, last*s.Step, n
			return s
		}
	}
}

// slack is the share of a step by which a value may pass the end of the scale
// without opening another band: rounding noise about zero must not.
const slack = 0.002

// nice returns the smallest 1, 2 or 5 times a power of ten that is >= v.
func nice(v float64) float64 {
	e := math.Floor(math.Log10(v))
	for ; ; e++ {
		for _, k := range []float64{1, 2, 5} {
			if x := k * math.Pow(10, e); x >= v*(1-1e-12) {
				return x
			}
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
		return noValueColor()
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
func (s Scale) LevelText(k int) string { return number(s.Level(k), decimals(s.Step)) }

// Reading writes a value with three significant figures, as pictures show it.
func Reading(v float64) string { return reading(v) }

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

func sign(v float64) float64 {
	switch {
	case v > 0:
		return 1
	case v < 0:
		return -1
	}
	return 0
}

// decimals returns how many decimals a multiple of step needs.
func decimals(step float64) int {
	if step <= 0 {
		return 0
	}
	return max(0, int(math.Ceil(-math.Log10(step)-1e-9)))
}

// number writes v with n decimals and a true minus sign; very small or large
// values are written with a power of ten. NaN is a dash.
func number(v float64, n int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "–"
	}
	a := math.Abs(v)
	s := strconv.FormatFloat(a, 'f', min(n, 5), 64)
	if n > 5 || a >= 1e6 {
		s = strconv.FormatFloat(a, 'g', 3, 64)
	}
	if v < 0 && strings.Trim(s, "0.") != "" {
		s = "−" + s
	}
	if strings.Trim(s, "0.") == "" {
		return "0"
	}
	return s
}

// reading writes v with three significant figures, at most three decimals.
func reading(v float64) string {
	a := math.Abs(v)
	switch {
	case a == 0 || math.IsNaN(a):
		return number(v, 0)
	case a < 1e-3:
		return number(v, 6)
	case a < 10:
		return strings.TrimSuffix(number(v, 2+b2i(a < 0.1)), ".00")
	case a < 100:
		return number(v, 1)
	}
	return number(v, 0)
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}

// Field is one quantity over the plate.
type Field struct {
	Name        string      // in the maker's words: "sink of the outer surface"
	Unit        string      // "mm", "MPa", "N/mm", "" for a pure number
	Nodal       []float64   // one value per node of the plan, in Unit; NaN: no value there
	PerTriangle []float64   // or one per triangle; drawn as the mean at the nodes weighted by area
	Signed      bool        // zero matters: diverging colours, symmetric range
	Plain       bool        // bands without lines between them
	Range       *[2]float64 // ends of the legend, in Unit, so that pictures share a scale; nil: from the values
}

// Extent returns the least and greatest value, NaN left out; ok is false if
// there is no value at all.
func (f Field) Extent() (lo, hi float64, ok bool) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, list := range [][]float64{f.Nodal, f.PerTriangle} {
		for _, v := range list {
			if !math.IsNaN(v) && !math.IsInf(v, 0) {
				lo, hi, ok = math.Min(lo, v), math.Max(hi, v), true
			}
		}
	}
	if !ok {
		return 0, 0, false
	}
	return lo, hi, true
}

// Scale returns the bands of the field's legend: Range if given, else the
// extent of the values.
func (f Field) Scale() Scale {
	lo, hi, _ := f.Extent()
	if f.Range != nil {
		lo, hi = f.Range[0], f.Range[1]
	}
	return NewScale(lo, hi, f.Signed)
}

// SharedRange returns the range that holds the values of all fields, so that
// their pictures can be compared colour by colour.
func SharedRange(fields ...Field) [2]float64 {
	r, found := [2]float64{}, false
	for _, f := range fields {
		lo, hi, ok := f.Extent()
		switch {
		case ok && !found:
			r, found = [2]float64{lo, hi}, true
		case ok:
			r = [2]float64{math.Min(r[0], lo), math.Max(r[1], hi)}
		}
	}
	return r
}
