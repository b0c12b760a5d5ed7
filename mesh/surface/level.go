package surface

import "math"

// level is the fit on one size of cells.
type level struct {
	*fitter
	sys  *system
	last factor // of the trial before
	runs int
}

// on sets the equations up with the data as they are now; bare stays as it is.
func (f *fitter) on(bare *system) *level {
	l := &level{fitter: f, sys: bare.empty()}
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
	var ok bool
	l.last, ok = l.sys.factor(math.Pow(10, log), l.last)
	t := trial{log: log, ok: ok, ratio: math.Inf(1), runs: l.runs}
	if !ok {
		return t
	}
	coef := l.last.solve(l.sys.rhs)
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

// lift is what the coefficients of the fit with this λ gain for each mm by which the rim's height
// rises, which is all that they depend on it.
func (l *level) lift(log float64) []float64 {
	rhs := make([]float64, l.sys.total())
	for i := range l.data {
		if e := &l.data[i]; e.follows {
			for k, u := range l.sys.unknowns(e.st.first) {
				rhs[u] += e.st.w[k] / (e.sigma * e.sigma)
			}
		}
	}
	var ok bool
	if l.last, ok = l.sys.factor(math.Pow(10, log), l.last); !ok {
		panic("surface: a matrix that was positive definite is no longer")
	}
	return l.last.solve(rhs)
}

const (
	startLog = 4.0 // log10 λ where the search begins; coarse cells can follow the data no closer
	leastLog = -3.0
	mostLog  = 12.0
)
