package contact

import (
	"errors"
	"fmt"
	"math"
)

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
	w := newTracer(p)
	p.snap = 0
	rest, err := p.slackRest()
	if err != nil {
		return nil, err
	}
	p.snap = snap
	w.state.SlackRest = rest
	for i := range w.gap {
		w.gap[i] = p.restGap(i, rest)
	}
	w.scales()
	w.active = w.newActiveSet()
	defer w.active.free()
	if err := w.start(); err != nil {
		return nil, err
	}
	if err := w.advance(direction{dt: 1}); err != nil {
		return nil, err
	}
	return w.residual()
}

// newTracer is a tracer before anything touches.
func newTracer(p *lcp) *tracer {
	n := len(p.b)
	return &tracer{p: p, lambda: make([]float64, n), gap: make([]float64, p.pads),
		closed: make([]bool, p.pads), slides: make([]bool, p.pads), releases: map[int]int{}, stage: make([]int, n), fades: make([]bool, p.pads), offset: make([]float64, n), state: &State{}, batch: mostPredicted}
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
		if w.segments++; w.segments > w.p.mostSegments() {
			if w.load == 0 {
				return ErrOverturns // the resultant lies on the very edge of the bearing area
			}
			return fmt.Errorf("contact: no end after %d events at %.3f of the load", w.segments, w.load)
		}
	}
	if d.dt > 0 {
		w.noteForces()
	}
	return nil
}

// mostSegments is where a path counts as lost: a cycle that rounding keeps alive.
// In some 2500 random problems of the tests no path had more than 1.2 segments a
// pad, stages of fading included; theory bounds it only by the number of sets.
func (p *lcp) mostSegments() int { return 60*p.pads + 200 }
