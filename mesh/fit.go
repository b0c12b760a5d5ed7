package mesh

import (
	"cmp"
	"fmt"
	"math"
)

// FitSurface fits a smooth surface to the data: cubic B-splines that minimise
//
//	Σ ((f(pᵢ) − zᵢ)/σᵢ)² + λ · roughness,
//
// the roughness being an integral of squared third derivatives (see
// fitrough.go) and λ the greatest weight for which the data are still met to
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
func FitSurface(d SurfaceData) (*Spline, FitReport, error) {
	f, err := newFitter(&d)
	if err != nil {
		return nil, FitReport{}, err
	}
	const coarser = 2 // cells of the first passes, over the final size
	size := f.rim.cellSize(d.Cell)
	fine := make(chan *bandSystem, 1)
	go func() { fine <- f.bare(size) }() // the data's errors are not known yet, the roughness is
	bare := f.bare(coarser * size)
	coarse := f.on(bare)
	f.strange = f.standOut(coarse.try(stiffLog))
	first := coarse.choose(startLog, startLog)
	f.refineSigma(first)
	first = f.on(bare).choose(first.log, startLog)
	f.refineSigma(first)
	final := f.on(<-fine).choose(first.log, leastLog)
	report := f.report(final)
	if err := cmp.Or(f.slip(final, size), f.contradiction(final)); err != nil {
		return nil, report, err
	}
	return final.spline, report, nil
}

const (
	usualCell = 6.0 // mm
	mostCells = 2e4 // larger outlines get larger cells
	boxMargin = 2   // cells beyond the outline's box
	startLog  = 4.0 // log10 λ where the search begins; coarse cells can follow the data no closer
	leastLog  = -3.0
	mostLog   = 12.0
)

// fitter holds the equations of one fit.
type fitter struct {
	spec   *SurfaceData
	rim    *rimLine
	data   []datum
	trough bool

	strange []strangeDatum // data that stand out from their neighbours, in order of the data
}

func newFitter(d *SurfaceData) (*fitter, error) {
	for i := range d.Templates {
		if t := &d.Templates[i]; len(t.Points) != len(t.Heights) {
			return nil, &DataError{Set: "templates", Line: -1, Msg: fmt.Sprintf(
				"station %s: %d points but %d heights", t.ID, len(t.Points), len(t.Heights))}
		}
	}
	if d.Outline == nil {
		return nil, &DataError{Set: "outline", Line: -1, Msg: "no outline given"}
	}
	rim, err := rimOf(d.Outline)
	if err != nil {
		return nil, err
	}
	f := &fitter{spec: d, rim: rim}
	f.data = gather(d, rim)
	if err := checkData(d, f.data); err != nil {
		return nil, err
	}
	f.trough = showsTrough(d, f.data)
	f.data = append(f.data, rimData(d, rim, f.data)...)
	return f, nil
}

// rimOf returns the outline as a fine closed polyline.
func rimOf(r Region) (*rimLine, error) {
	const tol = 0.005 // mm, chord error
	pts := r.Polyline(tol)
	var clean []Point
	for i, p := range pts {
		if !finite(p[0], p[1]) {
			return nil, &DataError{Set: "outline", Line: int32(i), At: p, Msg: "want finite numbers"}
		}
		if p != pts[(i+1)%len(pts)] {
			clean = append(clean, p)
		}
	}
	if len(clean) < 3 {
		return nil, &DataError{Set: "outline", Line: -1, Msg: fmt.Sprintf("want at least 3 points, found %d", len(clean))}
	}
	return newRimLine(clean), nil
}

// cellSize returns the edge of the spline cells, mm, from the one wanted.
func (r *rimLine) cellSize(wanted float64) float64 {
	area := (r.hi[0] - r.lo[0]) * (r.hi[1] - r.lo[1])
	return max(cmp.Or(wanted, usualCell), math.Sqrt(area/mostCells))
}

// showsTrough tells whether some height near the outline lies below the rim:
// only then is the roughness across the edge made cheap.
func showsTrough(d *SurfaceData, all []datum) bool {
	const near, depth = 40.0, 0.2 // mm
	if d.Rim == nil {
		return false
	}
	for i := range all {
		e := &all[i]
		if e.foot.inside && e.foot.dist > onOutline && e.foot.dist < near && e.z < *d.Rim-max(depth, 4*e.height) {
			return true
		}
	}
	return false
}

// level is the fit on one size of cells.
type level struct {
	*fitter
	sys  *bandSystem
	work []float64
	runs int
}

// bare returns the equations on cells of the given size without the data.
func (f *fitter) bare(size float64) *bandSystem {
	s := newBandSystem(gridOver(f.rim.lo, f.rim.hi, size))
	r := roughness{rim: f.rim, flat: flatWeight}
	if f.spec.Rim == nil {
		r.flat = flatOpen
	}
	if f.trough {
		r.strip = cmp.Or(f.spec.RecurveAt, usualAt) / usualAt
	}
	s.addRoughness(r)
	return s
}

// on sets the equations up with the data as they are now; bare stays as it is.
func (f *fitter) on(bare *bandSystem) *level {
	l := &level{fitter: f, sys: newBandSystem(bare.grid)}
	l.sys.rough = bare.rough
	l.work = make([]float64, len(l.sys.data))
	for i := range f.data {
		e := &f.data[i]
		e.st = bare.valueAt(e.at)
		l.sys.addRow(&e.st, e.z, 1/e.sigma)
	}
	return l
}

// trial is the fit for one λ.
type trial struct {
	log    float64 // log10 λ
	ratio  float64 // greatest rms of misfit over sigma among the classes, 1
	ok     bool    // the matrix was positive definite
	spline *Spline
	runs   int // factorisations so far on this level
}

// try fits with one λ.
func (l *level) try(log float64) trial {
	l.runs++
	factor, ok := l.sys.factor(math.Pow(10, log), l.work)
	t := trial{log: log, ok: ok, ratio: math.Inf(1), runs: l.runs}
	if !ok {
		return t
	}
	coef := factor.solve(l.sys.rhs)
	t.spline = &Spline{grid: l.sys.grid, coef: coef}
	var sum [classes]float64
	var count [classes]int
	for i := range l.data {
		e := &l.data[i]
		r := (l.sys.apply(&e.st, coef) - e.z) / e.sigma
		sum[e.class] += r * r
		count[e.class]++
	}
	t.ratio = 0
	for c := range classes {
		if count[c] > 0 {
			t.ratio = max(t.ratio, math.Sqrt(sum[c]/float64(count[c])))
		}
	}
	return t
}

// refineSigma updates the standard deviations with the slopes of a fit.
func (f *fitter) refineSigma(t trial) {
	if t.spline == nil {
		return
	}
	for i := range f.data {
		e := &f.data[i]
		j := t.spline.At(e.at)
		e.setSigma(math.Hypot(j.Zx, j.Zy))
	}
}
