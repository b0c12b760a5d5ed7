package panel

import (
	"math"

	"archload/viz/scale"
)

// Axis is one axis of a chart.
type Axis struct {
	Name     string
	Unit     string
	Min, Max float64 // Min = Max: from the data
	Zero     bool    // 0 is within it, whatever the data
}

// ends returns what an axis spans.
func (a Axis) ends(lo, hi float64) (float64, float64) {
	if a.Min < a.Max {
		return a.Min, a.Max
	}
	if !(lo <= hi) {
		lo, hi = 0, 1
	}
	if a.Zero {
		lo, hi = min(lo, 0), max(hi, 0)
	}
	if hi-lo <= 1e-12*max(abs(lo), abs(hi)) {
		pad := max(abs(lo)/10, 1e-9)
		if lo == 0 && hi == 0 {
			pad = 1
		}
		lo, hi = lo-pad, hi+pad
		if a.Zero && hi > 0 && lo > -pad*2 && lo < 0 {
			lo = min(0, lo+pad)
		}
	}
	return lo, hi
}

// words returns the name of an axis with its unit.
func (a Axis) words() string {
	switch {
	case a.Name == "":
		return a.Unit
	case a.Unit == "":
		return a.Name
	}
	return a.Name + ", " + a.Unit
}

// Plot is where a chart's values lie on the page.
type Plot struct {
	Inner Rect // within the axes
	x, y  span
}

// X returns the place of a value across, points from the left of the page.
func (p Plot) X(v float64) float64 { return p.x.at(v) }

// Y returns the place of a value up, points from the top of the page.
func (p Plot) Y(v float64) float64 { return p.y.at(v) }

// Across returns the value across at x, points; the other way of X.
func (p Plot) Across(x float64) float64 { return p.x.value(x) }

// span takes values to one coordinate of the page.
type span struct {
	lo, hi float64 // values at the ends
	a, b   float64 // coordinates there, points
}

func (s span) at(v float64) float64 { return s.a + (v-s.lo)/(s.hi-s.lo)*(s.b-s.a) }

func (s span) value(x float64) float64 { return s.lo + (x-s.a)/(s.b-s.a)*(s.hi-s.lo) }

// Ticks returns the marks of an axis from lo to hi, 1-2-5, at most most of
// them, and the decimals that they need.
func Ticks(lo, hi float64, most int) (at []float64, decimals int) {
	if !(hi > lo) || math.IsInf(hi-lo, 0) {
		return nil, 0
	}
	step := scale.StepAbove((hi - lo) / float64(max(1, most)))
	const hair = 1e-9
	for k := math.Ceil(lo/step - hair); k*step <= hi+hair*step && len(at) <= most+1; k++ {
		at = append(at, k*step+0)
	}
	return at, min(9, scale.Decimals(step))
}
