package scale

import (
	"image/color"
	"math"
	"sync"
)

// Kind says what the colours of a scale mean: one meaning in every picture.
type Kind uint8

// The kinds of scale.
const (
	Counting Kind = iota // upward from the lower end: light to dark
	Signed               // zero parts two meanings: blue below, brown above
	Sinking              // down is plus: pale at zero, green to deep blue downward, brown upward
)

// twoSided tells whether zero is a colour of its own.
func (k Kind) twoSided() bool { return k != Counting }

// colors are the colours of a kind; those of two sides have zero in their middle.
func (k Kind) colors() *ColorMap {
	switch k {
	case Signed:
		return diverging()
	case Sinking:
		return downAndUp()
	}
	return sequential()
}

// The maps never change and take longer to lay out than a scale with one may.
var (
	diverging  = sync.OnceValue(Diverging)
	downAndUp  = sync.OnceValue(DownAndUp)
	sequential = sync.OnceValue(Sequential)
)

// Scale divides a range of values into bands of equal width with a colour
// each. Its zero value is not usable; make one with New.
type Scale struct {
	Lo, Hi float64 // ends of the legend, in the field's unit, whole multiples of Step
	Step   float64 // 1, 2 or 5 times a power of ten; 0: one value everywhere
	Kind   Kind
	bands  int
	reach  float64 // of two sides: the value of either end of the colours, whether used or not
	colors *ColorMap
}

// Most bands a scale may have: lines closer than this cannot be counted, nor
// more colours of one hue told apart.
const (
	mostBands = 14
	mostOfHue = 8 // on one side of a signed scale

	noSide = 0.005 // share of the greater side below which the other is not worth a band
)

// New chooses bands that cover lo..hi: the smallest 1-2-5 step that
// needs no more than 14 of them (with sign, 8 on each side of zero). A scale of
// two sides holds zero, reaches no further on each side than its values, and
// gives as far from zero as strong a colour on both.
func New(lo, hi float64, kind Kind) Scale {
	s := Scale{Lo: lo, Hi: hi, Kind: kind, bands: 1, colors: kind.colors()}
	if kind.twoSided() {
		s.Lo, s.Hi = math.Min(lo, 0), math.Max(hi, 0)
		breath := noSide * math.Max(-s.Lo, s.Hi)
		if -s.Lo < breath {
			s.Lo = 0
		}
		if s.Hi < breath {
			s.Hi = 0
		}
	}
	width := s.Hi - s.Lo
	if !(width > 1e-9*math.Max(math.Abs(s.Lo), math.Abs(s.Hi))) || width < 1e-300 {
		s.Lo, s.Hi = lo, lo
		return s
	}
	least := width / mostBands
	if kind == Signed {
		least = math.Max(math.Abs(s.Lo), math.Abs(s.Hi)) / mostOfHue
	}
	for s.Step = StepAbove(least); ; s.Step = StepAbove(s.Step * 1.01) {
		first, last := math.Floor(s.Lo/s.Step+Slack), math.Ceil(s.Hi/s.Step-Slack)
		if n := int(last - first); n <= mostBands || kind == Signed {
			s.Lo, s.Hi, s.bands = first*s.Step, last*s.Step, n
			s.reach = math.Max(-s.Lo, s.Hi)
			return s
		}
	}
}

// Bands returns the number of bands, at least 1.
func (s Scale) Bands() int { return s.bands }

// HatchedSide is the side of zero that is hatched, so that the sign shows without colours, too: 1, above, where colours
// have a sign (pull); -1, below, where it is a sinking (what has come up); 0: neither.
func (s Scale) HatchedSide() float64 {
	switch {
	case s.Step == 0:
		return 0
	case s.Kind == Signed:
		return 1
	case s.Kind == Sinking:
		return -1
	}
	return 0
}

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
	case s.Step == 0:
		return s.Smooth(s.Lo)
	case s.Kind.twoSided():
		arm := math.Round(s.reach / s.Step) // bands on the longer side
		first := arm + math.Round(s.Lo/s.Step)
		return s.colors.At((first + float64(k)) / (2*arm - 1))
	case s.bands == 1:
		return s.colors.At(0.25)
	}
	return s.colors.At(float64(k) / float64(s.bands-1))
}

// Color returns the colour in which the value v is drawn.
func (s Scale) Color(v float64) color.NRGBA { return s.BandColor(s.Band(v)) }

// LevelText writes the value at the lower edge of band k as a legend shows it: what has come up is
// no negative sink.
func (s Scale) LevelText(k int) string {
	v := s.Level(k)
	if s.Kind == Sinking && v < 0 && s.Step > 0 {
		return Number(-v, Decimals(s.Step)) + " up"
	}
	return Number(v, Decimals(s.Step))
}

// Tone returns the colour a share t, 0 to 1, of the way from the legend's lower
// end to its upper one, without bands.
func (s Scale) Tone(t float64) color.NRGBA { return s.Smooth(s.Lo + t*(s.Hi-s.Lo)) }

// Smooth returns the colour of v without bands, for pictures whose contour
// lines are drawn by themselves; values outside take the end colours.
func (s Scale) Smooth(v float64) color.NRGBA {
	switch {
	case s.Step == 0 && s.Kind.twoSided():
		return s.colors.At(0.5 + 0.5*sign(s.Lo))
	case s.Step == 0:
		return s.colors.At(0.25)
	case s.Kind.twoSided():
		return s.colors.At(0.5 + 0.5*math.Max(s.Lo, math.Min(s.Hi, v))/s.reach)
	}
	return s.colors.At((v - s.Lo) / (s.Hi - s.Lo))
}

// Label is the value at the lower edge of band k in words; sign shown on both
// sides of a signed scale.
func (s Scale) Label(k int) string {
	t := s.LevelText(k)
	if s.Kind == Signed && s.Level(k) > 0 {
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
