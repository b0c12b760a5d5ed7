package fem

import "slices"

// ahead is a stretch of the path that is guessed to come: pads close where it
// begins, and nothing else happens until the next ones do.
type ahead struct {
	closes []int
	rows   int // that carry, once these have closed
	taken  int // rows in the factor by then
	t      turning
	w      []float64 // rates of the gaps
	before []float64 // what the rates of the forces are made of
	ds     float64
}

// mostAhead and leastAhead are how many stretches are guessed at once: fewer after
// a guess that failed, more again after those that held.
const (
	mostAhead  = 16
	leastAhead = 2
)

// dash goes on along a direction from s by closing pads as if none opened, and
// returns where it ends. The rates of the gaps follow from the factor as it grows;
// those of the forces, which cost a pass through all of it, are found for all
// stretches of a batch in one. Only then does the path go on, as far as the guess
// holds: a force that would fall to nothing on the way ends it there.
func (w *walk) dash(d direction, s float64) float64 {
	h := w.g
	for ok := d.dt > 0 && len(w.pending) == 0; ok && s < 1; {
		opens, closes := w.wrong(w.last)
		if len(opens) > 0 || len(closes) == 0 {
			return s
		}
		list := w.guess(h, d, s, closes)
		from := w.state.Iteration
		if s, ok = w.along(d, h, s, list); ok {
			w.reach = min(2*w.reach, mostAhead)
		} else {
			w.reach = max(leastAhead, w.state.Iteration-from)
		}
	}
	return s
}

// along goes along the stretches guessed and says whether all of them held.
func (w *walk) along(d direction, h *held, s float64, list []ahead) (float64, bool) {
	forces := h.forces(list)
	rows := h.rows
	for i := range list {
		a := &list[i]
		w.landed(a.closes)
		h.rows = rows[:a.rows]
		r := w.ratesAhead(d, h, a, forces[i])
		if opens, closes := w.wrong(r); len(opens)+len(closes) > 0 {
			h.backTo(a)
			return s, false
		}
		ds := w.step(r, 1-s)
		w.stretch(d, r, ds)
		if s += ds; s >= 1 || ds < a.ds {
			h.backTo(a)
			return s, false
		}
		w.state.Iteration++
	}
	return s, len(list) > 0
}

// guess closes pads, ahead of the path, until one asks for more than a plain
// closing or the batch is full.
func (w *walk) guess(h *held, d direction, s float64, closes []int) (list []ahead) {
	h.c.Ready()
	gap, open := slices.Clone(w.w), make([]bool, w.p.pads)
	for i, c := range w.closed {
		open[i] = !c
	}
	for len(closes) > 0 && len(list) < w.reach && len(closes)*w.p.per <= h.c.Room() && w.plain(h, closes) {
		a := ahead{closes: closes, w: make([]float64, w.p.pads), rows: len(h.rows) + len(closes)*w.p.per, ds: 1 - s}
		kept := h.c.Len()
		for _, i := range closes {
			open[i] = false
			gap[i] = 0
		}
		if !h.tryAhead(&a, w.stuckRows(closes), question{dt: d.dt, f: w.load(d)}, open) {
			h.c.Cut(kept)
			h.taken = h.taken[:kept]
			h.rows = h.rows[:a.rows-len(closes)*w.p.per]
			h.sum()
			return list
		}
		closes = w.ahead(&a, gap, open)
		list = append(list, a)
		if s += a.ds; s >= 1 {
			break
		}
	}
	return list
}

// ahead moves the gaps of the open pads along a stretch up to the next pads that
// close, which it returns.
func (w *walk) ahead(a *ahead, gap []float64, open []bool) (closes []int) {
	tiny := w.p.nothing()
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
func (w *walk) plain(h *held, pads []int) bool {
	for _, i := range pads {
		if w.let[i] > 0 || w.fading[i] || w.hasLeft(i) || h.c.Taken(w.p.normal(i)) {
			return false
		}
	}
	return true
}

// stuckRows are the rows of some pads that stick.
func (w *walk) stuckRows(pads []int) (rows []int32) {
	for _, i := range pads {
		for a := range w.p.per {
			rows = append(rows, int32(i*w.p.per+a))
		}
	}
	return rows
}

// ratesAhead are the rates along a stretch.
func (w *walk) ratesAhead(d direction, h *held, a *ahead, all []float64) *rates {
	r := &rates{all: all, rho: a.t.rho, w: a.w, lambda: make([]float64, len(h.rows))}
	for k, j := range h.rows {
		r.lambda[k] = all[j]
	}
	w.last, w.lastID, w.lastDt = r, d.id, d.dt
	return r
}

// tryAhead takes the rows of pads that close and finds how everything moves then;
// it says whether it could.
func (h *held) tryAhead(a *ahead, rows []int32, q question, open []bool) bool {
	if h.push(rows) != nil {
		return false
	}
	with := make([]float64, len(h.sides))
	for m, g := range h.gram {
		with[m] = q.dt * g[loadSide]
	}
	var err error
	if a.t, err = h.turned(with, q.f); err != nil {
		return false
	}
	h.movement(h.sides[loadSide], q.dt, a.t, a.w, open)
	a.before = h.before(h.sides[loadSide], q.dt, a.t)
	a.taken = len(h.taken)
	return true
}

// forces are the rates of all rows' forces along each stretch.
func (h *held) forces(list []ahead) [][]float64 {
	xs, ts := make([][]float64, len(list)), make([][]float64, len(list))
	for i := range list {
		xs[i], ts[i] = make([]float64, h.c.Places()), list[i].before
	}
	h.c.Back(xs, ts)
	out := make([][]float64, len(list))
	for i := range list {
		out[i] = make([]float64, len(h.p.b))
		for _, r := range h.rows[:list[i].rows] {
			out[i][r] = xs[i][h.c.Place(r)]
		}
	}
	return out
}

// backTo gives back the rows taken beyond a stretch.
func (h *held) backTo(a *ahead) {
	h.rows = h.rows[:a.rows]
	if a.taken < len(h.taken) {
		h.c.Cut(a.taken)
		h.taken = h.taken[:a.taken]
		h.sum()
	}
}
