package contact

import "slices"

// keepSegment notes the stretch that begins here.
func (w *tracer) keepSegment(d direction, r *rates) {
	if !w.p.history || d.dt == 0 {
		return
	}
	k := segment{load: w.load, lambda: slices.Clone(w.lambda), dl: make([]float64, len(w.lambda)), gap: slices.Clone(w.gap), dg: slices.Clone(r.w),
		rho: w.rho, dr: r.rho, closed: slices.Clone(w.closed), slides: slices.Clone(w.slides),
		work: w.state.Work, lost: w.state.Lost, done: w.p.self * d.dt}
	for i := range k.gap {
		if w.closed[i] {
			k.gap[i], k.dg[i] = 0, 0
		}
	}
	for i, j := range w.active.rows {
		k.dl[j] = r.lambda[i] / d.dt
		k.done += w.p.b[j] * r.lambda[i]
	}
	for i := range k.dg {
		k.dg[i] /= d.dt
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
