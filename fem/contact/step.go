package contact

// step is the length to the next event, (8), at most left.
func (w *tracer) step(r *rates, left float64) float64 {
	ds := left
	tiny := w.p.relativeZero() // slower than this counts as standing, as in wrong
	for i := range w.p.pads {
		if !w.closed[i] && r.w[i] < -tiny*w.length {
			ds = min(ds, max(0, w.gap[i]/-r.w[i]))
		}
	}
	for k, j := range w.active.rows {
		if r.lambda[k] < -tiny*w.force && w.p.isNormal(j) {
			ds = min(ds, max(0, w.lambda[j]/-r.lambda[k]))
		}
	}
	return ds
}

// move goes along by ds, and counts the work, (10).
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
