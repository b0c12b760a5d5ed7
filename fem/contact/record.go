package contact

import "slices"

// keepSegment notes the stretch that begins here. What is written once and never changed is shared, not
// copied: a path has as many stretches as pads.
func (w *tracer) keepSegment(d direction, r *rates) {
	if !w.p.history || d.dt == 0 {
		return
	}
	k := segment{load: w.load, size: len(w.lambda), gap: slices.Clone(w.gap), dg: over(r.w, d.dt), dl: over(r.lambda, d.dt),
		rho: w.rho, dr: r.rho, closed: slices.Clone(w.closed), slides: slices.Clone(w.slides),
		work: w.state.Work, lost: w.state.Lost, done: w.p.self * d.dt}
	k.rows, k.lambda = w.active.rows[:len(w.active.rows):len(w.active.rows)], make([]float64, len(w.active.rows))
	for i, j := range k.rows {
		k.lambda[i] = w.lambda[j]
		k.done += w.p.b[j] * r.lambda[i]
	}
	for m := range k.dr {
		k.dr[m] /= d.dt
		k.done += w.p.f[m] * r.rho[m]
	}
	if w.state.history == nil {
		w.state.history = &history{per: w.p.per}
	}
	w.state.history.segments = append(w.state.history.segments, k)
}

// over divides the values of a list.
func over(list []float64, by float64) []float64 {
	if by == 1 {
		return list
	}
	out := make([]float64, len(list))
	for i, v := range list {
		out[i] = v / by
	}
	return out
}

// noteForces notes the normal forces at the present load.
func (w *tracer) noteForces() {
	f := make([]float64, w.p.pads)
	for i := range f {
		f[i] = w.lambda[w.p.normal(i)]
	}
	if n := len(w.state.Trace); n > 0 && w.load-w.state.Trace[n-1].Load < 1e-12 {
		w.state.Trace[n-1].Force = f
		return
	}
	w.state.Trace = append(w.state.Trace, Trace{Load: w.load, Force: f})
}

// passSegment follows one straight stretch of the path.
func (w *tracer) passSegment(d direction, r *rates, ds float64) {
	if d.dt > 0 {
		w.noteForces()
	}
	w.keepSegment(d, r)
	w.move(d, r, ds)
}
