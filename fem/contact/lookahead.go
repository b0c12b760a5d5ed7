package contact

import (
	"slices"
	"sync"
)

// predicted is a stretch of the path that is guessed to come: pads close where it
// begins, and nothing else happens until the next ones do.
type predicted struct {
	closes    []int
	rows      int // active, once these have closed
	factored  int // rows in the factor by then
	motion    motion
	w         []float64 // rates of the gaps
	rightSide []float64 // what the rates of the forces are made of
	ds        float64
	forces    *sync.WaitGroup // until lambda is there
	lambda    []float64       // rates of the active rows' forces
}

// mostAhead and leastAhead are how many stretches are guessed at once: fewer after
// a guess that failed, more again after those that held.
const (
	mostPredicted  = 16
	leastPredicted = 2
)

// lookAhead goes on along a direction from s by closing pads as if none opened, and
// returns where it ends. The rates of the gaps follow from the factor as it grows;
// those of the forces, which cost a pass through all of it, are found for some
// stretches in one, beside the guess at the next. The path goes on as far as the guess
// holds: a force that would fall to nothing on the way ends it there.
func (w *tracer) lookAhead(d direction, s float64) float64 {
	h := w.active
	for ok := d.dt > 0 && len(w.pending) == 0; ok && s < 1; {
		opens, closes := w.violations(w.lastRates)
		if len(opens) > 0 || len(closes) == 0 {
			return s
		}
		list := w.predict(h, d, s, closes)
		from := w.segments
		if s, ok = w.followPredicted(d, h, s, list); ok {
			w.batch = min(2*w.batch, mostPredicted)
		} else {
			w.batch = max(leastPredicted, w.segments-from)
		}
	}
	return s
}

// followPredicted goes along the stretches guessed and says whether all of them held.
func (w *tracer) followPredicted(d direction, h *activeSet, s float64, list []predicted) (float64, bool) {
	rows := h.rows
	for i := range list {
		a := &list[i]
		a.forces.Wait()
		w.noteClosed(a.closes)
		h.rows = rows[:a.rows]
		r := w.predictedRates(d, a)
		opens, closes := w.violations(r)
		ds, holds := 0.0, len(opens)+len(closes) == 0
		if holds {
			ds = w.step(r, 1-s)
			w.passSegment(d, r, ds)
			s += ds
		}
		if !holds || s >= 1 || ds < a.ds {
			list[len(list)-1].forces.Wait()
			h.restore(a)
			return s, false
		}
		w.segments++
	}
	return s, len(list) > 0
}

// predict closes pads, ahead of the path, until one asks for more than a plain
// closing or the batch is full.
func (w *tracer) predict(h *activeSet, d direction, s float64, closes []int) (list []predicted) {
	h.c.Ready()
	gap, open := slices.Clone(w.gap), make([]bool, w.p.pads)
	for i, c := range w.closed {
		open[i] = !c
	}
	list = make([]predicted, 0, mostPredicted)
	for len(closes) > 0 && len(list) < w.batch && len(closes)*w.p.per <= h.c.Room() && w.plain(h, closes) {
		a := predicted{closes: closes, w: make([]float64, w.p.pads), rows: len(h.rows) + len(closes)*w.p.per, ds: 1 - s}
		kept := h.c.Len()
		for _, i := range closes {
			open[i] = false
			gap[i] = 0
		}
		if !h.tryPredicted(&a, w.stuckRows(closes), equations{dt: d.dt, f: w.resultant(d)}, open) {
			h.c.Cut(kept)
			h.factored = h.factored[:kept]
			h.rows = h.rows[:a.rows-len(closes)*w.p.per]
			h.sum()
			break
		}
		closes = w.advanceGaps(&a, gap, open)
		list = append(list, a)
		if len(list)%forcesAtOnce == 0 {
			h.findForces(list[len(list)-forcesAtOnce:], true)
		}
		if s += a.ds; s >= 1 {
			break
		}
	}
	rest := len(list) / forcesAtOnce * forcesAtOnce
	h.findForces(list[rest:], rest > 0)
	return list
}

// advanceGaps moves the gaps of the open pads along a stretch up to the next pads that
// close, which it returns.
func (w *tracer) advanceGaps(a *predicted, gap []float64, open []bool) (closes []int) {
	tiny := w.p.relativeZero()
	for i, v := range a.w {
		if open[i] && v < -tiny*w.length {
			a.ds = min(a.ds, max(0, gap[i]/-v))
		}
	}
	for i, v := range a.w {
		if !open[i] {
			continue
		}
		if gap[i] += v * a.ds; gap[i] <= tiny*w.length && v < -tiny*w.length {
			closes = append(closes, i)
		}
	}
	return closes
}

// plain says whether pads close for the first time at this load and have no force
// left from before.
func (w *tracer) plain(h *activeSet, pads []int) bool {
	for _, i := range pads {
		if w.releases[i] > 0 || w.fades[i] || w.hasDrag(i) || h.c.Taken(w.p.normal(i)) {
			return false
		}
	}
	return true
}

// stuckRows are the rows of some pads that stick.
func (w *tracer) stuckRows(pads []int) (rows []int32) {
	for _, i := range pads {
		for a := range w.p.per {
			rows = append(rows, int32(i*w.p.per+a))
		}
	}
	return rows
}

// predictedRates are the rates along a stretch.
func (w *tracer) predictedRates(d direction, a *predicted) *rates {
	r := &rates{rho: a.motion.rho, w: a.w, lambda: a.lambda}
	w.lastRates, w.lastID, w.lastDt = r, d.id, d.dt
	return r
}

// tryPredicted takes the rows of pads that close and finds how everything moves then;
// it says whether it could.
func (h *activeSet) tryPredicted(a *predicted, rows []int32, q equations, open []bool) bool {
	if h.add(rows) != nil {
		return false
	}
	with := make([]float64, len(h.sides))
	for m, g := range h.gram {
		with[m] = q.dt * g[loadSide]
	}
	var err error
	if a.motion, err = h.solveMotion(with, q.f); err != nil {
		return false
	}
	h.movement(h.sides[loadSide], q.dt, a.motion, a.w, open)
	a.rightSide = h.rightSide(h.sides[loadSide], q.dt, a.motion)
	a.factored = len(h.factored)
	return true
}

// forcesAtOnce is how many stretches pass through the factor together.
const forcesAtOnce = 8

// findForces finds the rates of the active rows' forces along some stretches; beside what is done next, if
// there is another worker.
func (h *activeSet) findForces(list []predicted, beside bool) {
	if len(list) == 0 {
		return
	}
	out, ts, done := make([][]float64, len(list)), make([][]float64, len(list)), &sync.WaitGroup{}
	for i := range list {
		a := &list[i]
		a.lambda, a.forces = make([]float64, a.rows), done
		out[i], ts[i] = a.lambda, a.rightSide
	}
	c, rows := h.c, h.rows
	if !beside || h.p.workers == 1 {
		c.Back(out, rows, ts)
		return
	}
	c = c.AsTaken()
	done.Go(func() { c.Back(out, rows, ts) })
}

// restore gives back the rows taken beyond a stretch.
func (h *activeSet) restore(a *predicted) {
	h.rows = h.rows[:a.rows]
	if a.factored < len(h.factored) {
		h.c.Cut(a.factored)
		h.factored = h.factored[:a.factored]
		h.sum()
	}
}
