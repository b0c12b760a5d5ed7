package surface

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"archload/mesh/plane"
)

// class is a kind of data with one expectation of its errors.
type class int

const (
	classLine     class = iota // outline and contour lines: the place is uncertain
	classSpot                  // spot heights and templates: the height is rounded
	classMeasured              // measured points: noise
	classes
)

// String returns the class's name in reports.
func (c class) String() string {
	return [...]string{"outline and contours", "spots and templates", "measured points"}[c]
}

const (
	usualNoise    = 0.1   // mm, of a measured height
	usualRounding = 0.1   // mm, of x and y in a table
	uniform       = 0.29  // standard deviation over width of a uniform distribution, 1/√12
	leastSigma    = 0.003 // mm: no contour is better than this
	firstSlope    = 0.276 // 1, before the slope is known: 0.008 mm for x, y rounded to 0.1
	rimSpacing    = 4.0   // mm between the points at which the rim height is imposed
	onOutline     = 1.0   // mm: a datum this near the outline speaks of the rim height
)

// datum is one equation of the fit.
type datum struct {
	class   class
	set     string
	row     int32
	at      plane.Point
	z       float64 // mm
	place   float64 // standard deviation of the place, mm
	height  float64 // standard deviation of the height, mm
	sigma   float64 // of both together, mm
	foot    foot    // on the outline; not set for rim points
	isRim   bool
	follows bool // a rim point that is as high as Data.Rim says
	st      stencil
}

// setSigma combines both uncertainties for a surface of the given slope.
func (e *datum) setSigma(slope float64) {
	e.sigma = max(leastSigma, math.Hypot(e.place*slope, e.height))
	if e.class == classMeasured {
		e.sigma = e.height
	}
}

// gather turns the user's data into equations, without the rim.
func gather(d *Data, rim *rimLine) []datum {
	var all []datum
	row := int32(0)
	for i := range d.Lines {
		l := &d.Lines[i]
		for k, p := range l.Points {
			c := classLine
			if len(l.Points) == 1 {
				c = classSpot
			}
			all = append(all, datum{class: c, set: "contours", row: rowOf(l.Rows, k, row), at: p, z: l.Height})
			row++
		}
	}
	row = 0
	for i := range d.Templates {
		t := &d.Templates[i]
		for k, p := range t.Points {
			all = append(all, datum{class: classSpot, set: "templates", row: rowOf(t.Rows, k, row), at: p, z: t.Heights[k]})
			row++
		}
	}
	for i, s := range d.Points {
		all = append(all, datum{class: classMeasured, set: "points", row: int32(i), at: s.At, z: s.Z})
	}
	setUncertainty(d, all)
	for i := range all {
		all[i].foot = rim.nearest(all[i].at)
	}
	return all
}

// rowOf returns the k-th of rows, or the running count.
func rowOf(rows []int32, k int, count int32) int32 {
	if k < len(rows) {
		return rows[k]
	}
	return count
}

// setUncertainty fills the standard deviations of place and height.
func setUncertainty(d *Data, all []datum) {
	var places, heights []float64
	for _, e := range all {
		switch e.class {
		case classLine:
			places = append(places, e.at[0], e.at[1])
		case classSpot:
			heights = append(heights, e.z)
		}
	}
	place := cmp.Or(d.Rounding, roundingOf(places))
	height := roundingOf(heights)
	noise := cmp.Or(d.Noise, d.shownNoise())
	for i := range all {
		switch e := &all[i]; e.class {
		case classLine:
			e.place = uniform * place
		case classSpot:
			e.height = max(leastSigma, uniform*height)
		case classMeasured:
			e.height = noise
		}
		all[i].setSigma(firstSlope)
	}
}

// roundingOf returns the greatest step, mm, of which all values are whole
// multiples, at most usualRounding unless there are many values.
func roundingOf(values []float64) float64 {
	const many = 40
	for _, step := range []float64{1, 0.5, 0.1, 0.05, 0.02, 0.01} {
		if step > usualRounding && len(values) < many {
			continue
		}
		whole := func(v float64) bool { return math.Abs(v/step-math.Round(v/step)) < 1e-6 }
		if !slices.ContainsFunc(values, func(v float64) bool { return !whole(v) }) {
			return step
		}
	}
	return 0
}

// rimData returns the equations of the rim height. Where data lie on the
// outline and the user did not state the rim height, they take its place.
func rimData(d *Data, rim *rimLine, all []datum) []datum {
	if d.Rim == nil {
		return nil
	}
	n := max(12, int(math.Ceil(rim.length()/rimSpacing)))
	height := func(float64) (z, sigma float64, known bool) { return *d.Rim, 0, true }
	seen := rimSeen(d, all)
	if len(seen) > 0 {
		height = seen.at(rim.length())
	}
	var out []datum
	for i := range n {
		s := rim.length() * float64(i) / float64(n)
		z, sigma, known := height(s)
		if !known {
			continue
		}
		e := datum{class: classLine, set: "outline", row: int32(i), at: rim.pointAt(s), z: z, isRim: true, follows: len(seen) == 0,
			place: uniform * cmp.Or(d.Rounding, usualRounding), height: sigma}
		e.setSigma(firstSlope)
		out = append(out, e)
	}
	return out
}

// rimHeights are heights read on the outline, in order of arc length.
type rimHeights []rimHeight

type rimHeight struct{ along, z, sigma float64 } // mm

// rimSeen returns the data on the outline if they are to replace the rim
// height: it was not stated, and one of them differs from it by more than
// its own error.
func rimSeen(d *Data, all []datum) rimHeights {
	var seen rimHeights
	differs := false
	for _, e := range all {
		if e.foot.dist > onOutline {
			continue
		}
		seen = append(seen, rimHeight{e.foot.along, e.z, max(e.height, uniform*usualRounding)})
		differs = differs || math.Abs(e.z-*d.Rim) > 3*max(e.height, uniform*usualRounding)
	}
	if d.RimStated || !differs {
		return nil
	}
	slices.SortStableFunc(seen, func(a, b rimHeight) int { return cmp.Compare(a.along, b.along) })
	return seen
}

// at returns a function that gives the height at an arc length: between two
// readings the straight line, and nothing (not known) near a reading, which
// speaks for itself. length is that of the outline, mm.
func (r rimHeights) at(length float64) func(s float64) (z, sigma float64, known bool) {
	const near = 20.0 // mm
	return func(s float64) (float64, float64, bool) {
		k, _ := slices.BinarySearchFunc(r, s, func(e rimHeight, s float64) int { return cmp.Compare(e.along, s) })
		a, b := r[(k+len(r)-1)%len(r)], r[k%len(r)]
		before, after := math.Mod(s-a.along+length, length), math.Mod(b.along-s+length, length)
		if before < near || after < near {
			return 0, 0, false
		}
		u := before / (before + after)
		return a.z + u*(b.z-a.z), max(a.sigma, b.sigma), true
	}
}

// fault is a DataError at a datum.
func (e *datum) fault(format string, args ...any) error {
	return &DataError{Set: e.set, Line: e.row, At: e.at, Msg: fmt.Sprintf(format, args...)}
}

// shownNoise is the noise to assume where none is stated: what the measured
// points show, at most what a dial gauge by hand usually has.
func (d *Data) shownNoise() float64 {
	at, z := make([]plane.Point, len(d.Points)), make([]float64, len(d.Points))
	for i, p := range d.Points {
		at[i], z[i] = p.At, p.Z
	}
	n := estimateNoise(at, z)
	if math.IsNaN(n) {
		return usualNoise
	}
	return min(usualNoise, max(leastSigma, n))
}
