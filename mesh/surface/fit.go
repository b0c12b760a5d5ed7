package surface

import (
	"cmp"
	"sync"
)

// Fit fits a smooth surface to the data: cubic B-splines that minimise
//
//	Σ ((f(pᵢ) − zᵢ)/σᵢ)² + λ · roughness,
//
// the roughness being an integral of squared third derivatives (see
// roughness.go) and λ the greatest weight for which the data are still met to
// within their own errors, class by class: Morozov's discrepancy principle.
// Third derivatives, because penalised second derivatives flatten an arch's
// apex and flanks. One λ for all data pooled would let hundreds of contour
// points outvote a few spot heights, hence the classes.
//
// Sources: C. H. Reinsch, Smoothing by spline functions, Numer. Math. 10
// (1967), for the discrepancy with splines; G. Wahba, Spline Models for
// Observational Data (SIAM 1990), for higher-order penalties. The weakened
// penalty across the edge is our own, chosen by experiment.
//
// Faults of the data are returned as a *DataError.
func Fit(d Data) (*Spline, Report, error) { return FitLike(d, nil) }

// FitLike is Fit, quicker if the data are spread over the outline of those that like was
// fitted to. The answer is the same to the last bit. like may be nil.
func FitLike(d Data, like *Spline) (*Spline, Report, error) {
	f, err := newFitter(&d, like.under())
	if err != nil {
		return nil, Report{}, err
	}
	go func() { _, _ = f.fine() }() // the data's errors are not known yet, the roughness is
	bare, err := f.coarse()
	if err != nil {
		return nil, Report{}, err
	}
	coarse := f.on(bare)
	f.strange = f.standOut(coarse.try(stiffLog))
	first := coarse.choose(startLog, startLog)
	f.refineSigma(first)
	again := f.on(bare)
	again.last = coarse.last
	first = again.choose(first.log, startLog)
	f.refineSigma(first)
	fine, err := f.fine()
	if err != nil {
		return nil, Report{}, err
	}
	last := f.on(fine)
	final := last.choose(first.log, leastLog)
	report := f.report(final)
	if err := cmp.Or(f.slip(final, fine), f.contradiction(final)); err != nil {
		return nil, report, err
	}
	final.spline.ground = f.ground
	last.last = factor{} // a rim that rises is rare: its memory is not kept for that
	final.spline.lift = sync.OnceValue(func() []float64 { return last.lift(final.log) })
	return final.spline, report, nil
}
