package surface

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"archload/mesh/plane"
)

// report sums up how the fit follows the data.
func (f *fitter) report(t trial) Report {
	r := Report{Smoothing: math.Pow(10, t.log), Trough: f.trough, Factorizations: t.runs}
	if t.spline == nil {
		return r
	}
	for c := range classes {
		if fit := f.classFit(c, t.spline); fit.Count > 0 {
			r.Classes = append(r.Classes, fit)
		}
	}
	for i := range f.data {
		if m := f.data[i].misfit(t.spline); math.Abs(m.Error) > 4*m.Sigma {
			r.Beyond = append(r.Beyond, m)
		}
	}
	slices.SortStableFunc(r.Beyond, func(a, b Misfit) int {
		return cmp.Compare(math.Abs(b.Error)/b.Sigma, math.Abs(a.Error)/a.Sigma)
	})
	for _, e := range f.strange {
		r.Warnings = append(r.Warnings, Warning{Set: e.set, Row: e.row, At: e.at, Msg: fmt.Sprintf(
			"height %g mm stands out from its neighbours by about %.1f mm", e.z, e.off)})
	}
	if t.log < ripplingLog && t.ratio <= 1 {
		r.Warnings = append(r.Warnings, Warning{At: f.data[0].at, Msg: "the heights scatter more than their stated errors: " +
			"the surface follows each of them and may ripple; state a larger noise"})
	}
	r.Warnings = append(r.Warnings, f.guessedRecurve()...)
	return r
}

// misfit compares the surface with the datum.
func (e *datum) misfit(s *Spline) Misfit {
	return Misfit{Set: e.set, Row: e.row, At: e.at, Error: s.At(e.at).Z - e.z, Sigma: e.sigma}
}

// classFit sums up one class.
func (f *fitter) classFit(c class, s *Spline) ClassFit {
	fit := ClassFit{Class: c.String()}
	var sum, ratio float64
	for i := range f.data {
		e := &f.data[i]
		if e.class != c {
			continue
		}
		m := e.misfit(s)
		fit.Count++
		sum += m.Error * m.Error
		ratio += m.Error * m.Error / (m.Sigma * m.Sigma)
		if fit.Count == 1 || math.Abs(m.Error) > math.Abs(fit.Worst.Error) {
			fit.Worst = m
		}
	}
	if fit.Count > 0 {
		fit.RMS = math.Sqrt(sum / float64(fit.Count))
		fit.Ratio = math.Sqrt(ratio / float64(fit.Count))
	}
	return fit
}

// slip returns an error if the data that stand out from their neighbours are
// alone in driving the smoothing down, by two decades or more: the surface
// would spike there. fine are the equations without the data.
func (f *fitter) slip(t trial, fine *system) error {
	const decades = 2.0
	if len(f.strange) == 0 || t.spline == nil {
		return nil
	}
	rest := *f
	rest.data = nil
	for i := range f.data {
		e := &f.data[i]
		if !slices.ContainsFunc(f.strange, func(s strangeDatum) bool { return s.datum == e }) {
			rest.data = append(rest.data, *e)
		}
	}
	if rest.on(fine).try(t.log+decades).ratio > 1 {
		return nil
	}
	e := slices.MaxFunc(f.strange, func(a, b strangeDatum) int { return cmp.Compare(a.off, b.off) })
	return e.fault("height %g mm contradicts its neighbours by about %.1f mm", e.z, e.off)
}

// contradiction returns an error if even the least smoothing leaves data
// further off than their errors allow.
func (f *fitter) contradiction(t trial) error {
	if t.spline == nil {
		return &DataError{Set: "points", Line: -1, Msg: "the surface cannot be determined from these data"}
	}
	if t.ratio <= 1 {
		return nil
	}
	ratio := func(e *datum) float64 { return math.Abs(e.misfit(t.spline).Error) / e.sigma }
	worst := slices.MaxFunc(f.data, func(a, b datum) int { return cmp.Compare(ratio(&a), ratio(&b)) })
	return worst.fault("height %g mm contradicts its neighbours: the closest smooth surface lies %.2f mm off",
		worst.z, math.Abs(worst.misfit(t.spline).Error))
}

const (
	stiffLog    = 7.0 // log10 λ of a fit so stiff that a single wrong height hardly bends it
	ripplingLog = 3.0 // log10 λ below which a surface follows single data; sound data gave 4.5 to 8
)

// standOut returns the heights that lie off a stiff fit far more than the
// others do, as a slip of the pen would: by more than 0.5 mm and ten times the
// usual misfit (1.48 times the median is the standard deviation of normal
// errors). Contour lines are left out; their errors come by whole lines.
func (f *fitter) standOut(stiff trial) []strangeDatum {
	const least, times, fewest = 0.5, 10 * 1.48, 12 // mm, 1, data
	if stiff.spline == nil {
		return nil
	}
	var all []strangeDatum
	var size []float64
	for i := range f.data {
		if e := &f.data[i]; e.class != classLine {
			off := math.Abs(e.misfit(stiff.spline).Error)
			all, size = append(all, strangeDatum{e, off}), append(size, off)
		}
	}
	if len(size) < fewest {
		return nil
	}
	slices.Sort(size)
	limit := max(least, times*size[len(size)/2])
	return slices.DeleteFunc(all, func(e strangeDatum) bool { return e.off <= limit })
}

// guessedRecurve warns of the long stretches of the outline along which no
// datum shows the recurve, at the longest.
func (f *fitter) guessedRecurve() []Warning {
	const longest = 120.0 // mm of outline
	if f.spec.Rim == nil {
		return nil
	}
	at := cmp.Or(f.spec.RecurveAt, usualAt)
	var seen []float64
	for i := range f.data {
		e := &f.data[i]
		if !e.isRim && e.foot.inside && e.foot.dist > 0.5*at && e.foot.dist < 1.5*at {
			seen = append(seen, e.foot.along)
		}
	}
	slices.Sort(seen)
	total := f.rim.length()
	if len(seen) == 0 {
		return []Warning{{At: f.rim.pts[0], Msg: fmt.Sprintf(
			"the recurve is guessed here: no height between %.0f and %.0f mm from the outline, anywhere along it", 0.5*at, 1.5*at)}}
	}
	var guessed, most float64
	var at0 plane.Point
	for i, s := range seen {
		next := seen[(i+1)%len(seen)]
		if i == len(seen)-1 {
			next += total
		}
		if next-s > longest {
			guessed += next - s
			if next-s > most {
				most, at0 = next-s, f.rim.pointAt(math.Mod((s+next)/2, total))
			}
		}
	}
	if guessed == 0 {
		return nil
	}
	elsewhere := ""
	if guessed > most {
		elsewhere = fmt.Sprintf(", nor along %.0f mm elsewhere", guessed-most)
	}
	return []Warning{{At: at0, Msg: fmt.Sprintf("the recurve is guessed here: no height between %.0f and %.0f mm from the outline along %.0f mm of it%s",
		0.5*at, 1.5*at, most, elsewhere)}}
}
