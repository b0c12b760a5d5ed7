package fem

import (
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/gonum/blas/gonum"
)

// ErrMechanism says that the closed pads do not hold the body: with them alone it
// is a mechanism.
var ErrMechanism = errors.New("contact: the closed pads do not hold the body")

// Event is a pad that closes or opens while the load rises.
type Event struct {
	Load   float64 // fraction of full load
	Pad    int32
	Closes bool
}

// State is the contact at full load.
type State struct {
	Lambda    []float64  // row forces, N: pad-major, normal first; then the guides
	Gap       []float64  // remaining gap of each pad, mm; 0 where closed
	Closed    []bool     // for each pad
	Slides    []bool     // closed pads that bear without drag (grip only)
	Rho       [6]float64 // movement of the body's first node from its rest, mm and rad
	SlackRest [6]float64 // where the slack body comes to rest on its uneven foot, mm and rad
	Events    []Event
	Work      float64  // of all loads along the path, N·mm
	Lost      float64  // let go by grip when pads open, N·mm
	Trace     []Trace  // normal forces at the start, at every event and at full load
	history   *history // if Fit asks for it
	Residual  float64  // worst violation of the contact conditions, relative to the load
	Segments  int
}

// Trace is the normal force of every pad at one load.
type Trace struct {
	Load  float64   // fraction of full load
	Force []float64 // N, one for each pad
}

// tracer is the state of the path while it is followed.
type tracer struct {
	p            *lcp
	active       *activeSet
	load         float64
	lambda       []float64 // all rows
	gap          []float64 // normal rows only are kept current: relative movement of each pad
	rho          [6]float64
	closed       []bool
	slides       []bool      // closed pads that bear without drag
	releases     map[int]int // how often a pad let go within a millionth of the load
	releasesFrom float64     // load at which that count began
	fades        []bool      // pads whose drag fades in a stage that has not ended
	stages       int         // fading stages so far
	stage        []int       // of each row: the stage in which it fades
	offset       []float64   // tangential rows: where the pad stuck, mm
	pending      []int32     // pads that opened with tangential force left
	lastRates    *rates      // along direction lastID at lastDt, nil if pads have come or gone since
	lastID       int
	lastDt       float64
	batch        int // stretches to guess at once
	state        *State
	force        float64 // scale of forces, N
	length       float64 // scale of movements, mm
}

// direction is one straight stage of the path: the load rises by dt, and the
// tangential forces left on opened pads fade out.
type direction struct {
	id   int // of the stage, see tracer.stage
	dt   float64
	fade []int32   // rows
	rate []float64 // dλ/ds of those rows, N
}

// equations asks for the forces under which the active rows stay where they are.
type equations struct {
	dt float64
	v  []float64  // movement of every row without them; nil: under a share dt of the load
	f  [6]float64 // resultant of the forces
}

type rates struct {
	lambda []float64 // of the active rows, in their order
	all    []float64 // of all rows, those that fade among them
	rho    [6]float64
	w      []float64 // of each pad's normal row
}

// trace raises the load from nothing to full.
//
// Where the slack body rests on three pads with the load's resultant on the
// edge between two of them, the first newton may tip it onto neighbours that
// stand off by less than any tool can feel. If the path is lost so, it starts
// again with such pads taken as touching: within 1e-5, then up to a hundredth of
// the greatest gap.
func (p *lcp) trace() (*State, error) {
	deepest := 0.0
	for _, g := range p.gap {
		deepest = math.Max(deepest, g)
	}
	st, err := p.traceFrom(0)
	for _, share := range []float64{1e-5, 1e-3, 1e-2} {
		if !errors.Is(err, ErrMechanism) || deepest == 0 {
			break
		}
		if again, e := p.traceFrom(share * deepest); e == nil {
			return again, nil
		}
	}
	return st, err
}

// traceFrom raises the load with gaps at rest below snap, mm, taken as closed.
func (p *lcp) traceFrom(snap float64) (*State, error) {
	n := len(p.b)
	w := &tracer{p: p, lambda: make([]float64, n), gap: make([]float64, p.pads),
		closed: make([]bool, p.pads), slides: make([]bool, p.pads), releases: map[int]int{}, stage: make([]int, n), fades: make([]bool, p.pads), offset: make([]float64, n), state: &State{}, batch: mostPredicted}
	p.snap = 0
	rest, err := p.slackRest()
	if err != nil {
		return nil, err
	}
	p.snap = snap
	w.state.SlackRest = rest
	for i := range w.gap {
		w.gap[i] = p.slackGap(i, rest)
	}
	w.scales()
	w.active = w.newActiveSet()
	if err := w.start(); err != nil {
		return nil, err
	}
	if err := w.advance(direction{dt: 1}); err != nil {
		return nil, err
	}
	return w.residual()
}

// scales sets what counts as no force and no gap.
func (w *tracer) scales() {
	for _, f := range w.p.f[:3] {
		w.force += math.Abs(f)
	}
	for i := range w.p.pads {
		w.length = math.Max(w.length, math.Abs(w.p.b[w.p.normal(i)]))
		w.length = math.Max(w.length, w.gap[i])
	}
	w.length = math.Max(w.length, 1e-12)
	w.force = math.Max(w.force, 1e-12)
}

// start closes every pad that touches at rest, and the guides.
func (w *tracer) start() error {
	var rows []int32
	for i := w.p.pads * w.p.per; i < len(w.p.b); i++ {
		rows = append(rows, int32(i))
	}
	for i := range w.p.pads {
		if w.gap[i] > 1e-12 { // mm; restGap has put rounding to zero
			continue
		}
		w.gap[i] = 0
		w.record(i, true)
		w.closed[i] = true
		rows = append(rows, w.rowsOf(i)...)
	}
	return w.active.add(rows)
}

func (w *tracer) closePads(pads []int) error {
	var rows []int32
	for _, i := range pads {
		w.closed[i] = true
		rows = append(rows, w.rowsOf(i)...)
	}
	return w.active.add(rows)
}

// rowsOf are the rows of a closed pad that are held.
func (w *tracer) rowsOf(i int) []int32 {
	rows := make([]int32, w.rowsHeld(i))
	for a := range rows {
		rows[a] = int32(i*w.p.per + a)
	}
	return rows
}

// rowsHeld is how many rows of a closed pad are held: a sliding one's normal only.
func (w *tracer) rowsHeld(i int) int {
	if w.slides[i] {
		return 1
	}
	return w.p.per
}

func (w *tracer) openPads(pads []int) error {
	out := map[int32]bool{}
	for _, i := range pads {
		w.closed[i] = false
		for a := range w.p.per {
			out[int32(i*w.p.per+a)] = true
		}
		w.lambda[i*w.p.per] = 0
	}
	return w.active.remove(out)
}

// rates solves for the derivatives along a direction with the present set of
// closed pads.
func (w *tracer) rates(d direction) (*rates, error) {
	p := w.p
	r := &rates{w: make([]float64, p.pads)}
	open := make([]bool, p.pads)
	for i, c := range w.closed {
		open[i] = !c
	}
	var err error
	r.all, r.rho, err = w.active.solve(equations{dt: d.dt, v: w.unheldMovement(d), f: w.resultant(d)}, r.w, open)
	if err != nil {
		return nil, err
	}
	r.lambda = make([]float64, len(w.active.rows))
	for k, j := range w.active.rows {
		r.lambda[k] = r.all[j]
	}
	for m, j := range d.fade {
		if w.fadesIn(d, j) {
			r.all[j] = d.rate[m]
		}
	}
	return r, nil
}

// resultant is the resultant that the active rows must hold, with what fades taken
// off.
func (w *tracer) resultant(d direction) (f [6]float64) {
	for m := range 6 {
		f[m] = -w.p.f[m] * d.dt
		for k, j := range d.fade {
			if w.fadesIn(d, j) {
				f[m] -= w.p.r[j][m] * d.rate[k]
			}
		}
	}
	return f
}

// unheldMovement is the movement of every row while rows fade, were nothing to carry; nil
// if none fades.
func (w *tracer) unheldMovement(d direction) []float64 {
	if len(d.fade) == 0 {
		return nil
	}
	var bl gonum.Implementation
	n := len(w.p.b)
	v := make([]float64, n)
	bl.Daxpy(n, d.dt, w.p.b, 1, v, 1)
	for m, j := range d.fade {
		if w.fadesIn(d, j) {
			bl.Daxpy(n, d.rate[m], w.p.a[int(j)*n:int(j+1)*n], 1, v, 1)
		}
	}
	return v
}

// slope is dw/ds of any row.
func (w *tracer) slope(i int32, d direction, r *rates) float64 {
	var bl gonum.Implementation
	p, n := w.p, len(w.p.b)
	v := p.b[i]*d.dt + bl.Ddot(n, p.a[int(i)*n:int(i+1)*n], 1, r.all, 1)
	for m := range 6 {
		v += p.r[i][m] * r.rho[m]
	}
	return v
}

// advance follows one direction to its end, s from 0 to 1.
func (w *tracer) advance(d direction) error {
	for s := 0.0; ; {
		r, err := w.pivot(d)
		if err != nil {
			return err
		}
		ds := w.step(r, 1-s)
		w.passSegment(d, r, ds)
		if s += ds; s < 1 {
			s = w.lookAhead(d, s)
		}
		if s >= 1 {
			break
		}
		if w.state.Segments++; w.state.Segments > 60*w.p.pads+200 {
			if w.load == 0 {
				return ErrOverturns // the resultant lies on the very edge of the foot
			}
			return fmt.Errorf("contact: no end after %d events at %.3f of the load", w.state.Segments, w.load)
		}
	}
	if d.dt > 0 {
		w.noteForces()
	}
	return nil
}

// passSegment follows one straight stretch of the path.
func (w *tracer) passSegment(d direction, r *rates, ds float64) {
	if d.dt > 0 {
		w.noteForces()
	}
	w.keepSegment(d, r)
	w.move(d, r, ds)
}

// step is the length to the next event, at most left.
func (w *tracer) step(r *rates, left float64) float64 {
	ds := left
	tiny := w.p.relativeZero() // slower than this counts as standing, as in wrong
	for i := range w.p.pads {
		if !w.closed[i] && r.w[i] < -tiny*w.length {
			ds = math.Min(ds, math.Max(0, w.gap[i]/-r.w[i]))
		}
	}
	for k, j := range w.active.rows {
		if w.p.isNormal(j) && r.lambda[k] < -tiny*w.force {
			ds = math.Min(ds, math.Max(0, w.lambda[j]/-r.lambda[k]))
		}
	}
	return ds
}

// move goes along by ds, and counts the work.
func (w *tracer) move(d direction, r *rates, ds float64) {
	p := w.p
	dD := p.self * d.dt * ds
	for k, j := range w.active.rows {
		dl := r.lambda[k] * ds
		w.lambda[j] += dl
		dD += p.b[j] * dl
	}
	dD += w.fadeDrag(d, r, ds)
	for m := range 6 {
		w.rho[m] += r.rho[m] * ds
		dD += p.f[m] * r.rho[m] * ds
	}
	for i := range p.pads {
		if !w.closed[i] {
			w.gap[i] += r.w[i] * ds
		}
	}
	w.state.Work += (w.load + d.dt*ds/2) * dD
	w.load += d.dt * ds
	if w.load-w.releasesFrom > 1e-6 {
		clear(w.releases)
		w.releasesFrom = w.load
	}
}

// fadeDrag moves the tangential forces that are still left on opened pads: those of
// this stage fade, those of a stage that waits for this one stay. All of them
// do work on the slip of their pads, which is lost. It returns what their change
// adds to the movement of the loads.
func (w *tracer) fadeDrag(d direction, r *rates, ds float64) (dD float64) {
	if len(d.fade) == 0 {
		return 0
	}
	rate := map[int32]float64{}
	for k, j := range d.fade {
		if w.fadesIn(d, j) {
			rate[j] = d.rate[k]
		}
	}
	for i := range int32(w.p.pads * w.p.per) {
		if w.p.isNormal(i) || w.stuck(i) || w.lambda[i] == 0 {
			continue
		}
		dl := rate[i] * ds
		w.state.Lost -= (w.lambda[i] + dl/2) * w.slope(i, d, r) * ds
		w.lambda[i] += dl
		dD += w.p.b[i] * dl
	}
	return dD
}
