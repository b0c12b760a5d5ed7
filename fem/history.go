package fem

import "slices"

// history is the whole path of a load, stretch by stretch.
type history struct {
	per      int // rows of a pad
	segments []segment
}

// segment is one straight stretch of the path: where it begins, and the rates of
// change with the load along it.
type segment struct {
	load           float64 // fraction of full load
	lambda, dl     []float64
	gap, dg        []float64
	rho, dr        [6]float64
	closed, slides []bool
	work, lost     float64 // N·mm, at its beginning
	done           float64 // N·mm: work of the loads is load times this for each unit of load
}

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

// at is the contact at a load of the stretch.
func (k *segment) at(load float64) *State {
	s := load - k.load
	st := &State{Lambda: slices.Clone(k.lambda), Gap: slices.Clone(k.gap), Closed: k.closed, Slides: k.slides, Rho: k.rho,
		Work: k.work + (k.load+load)/2*k.done*s, Lost: k.lost}
	for i := range st.Lambda {
		st.Lambda[i] += s * k.dl[i]
	}
	for i := range st.Gap {
		st.Gap[i] += s * k.dg[i]
	}
	for m := range st.Rho {
		st.Rho[m] += s * k.dr[m]
	}
	return st
}

// Likewise returns the contact of the same body and plate at a fraction of the
// load when every gap is gap times and every load force times what it was. The
// problem is homogeneous of degree one in load and gap together, also where pads
// stick on the way, because each stretch of the path is linear; so that it is
// this path at load·force/gap, which must not be above 1, times gap.
func (st *State) Likewise(gap, force, load float64) *State {
	if gap == 1 && force == 1 {
		return st.At(load)
	}
	at := *st.At(load * force / gap)
	at.Lambda, at.Gap = slices.Clone(at.Lambda), slices.Clone(at.Gap)
	at.Events, at.Trace = slices.Clone(at.Events), slices.Clone(at.Trace)
	for i := range at.Lambda {
		at.Lambda[i] *= gap
	}
	for i := range at.Gap {
		at.Gap[i] *= gap
	}
	for m := range at.Rho {
		at.Rho[m] *= gap
		at.SlackRest[m] *= gap
	}
	at.Work, at.Lost = at.Work*gap*gap, at.Lost*gap*gap
	for i := range at.Events {
		at.Events[i].Load *= gap / force
	}
	for i, t := range at.Trace {
		f := make([]float64, len(t.Force))
		for k, v := range t.Force {
			f[k] = v * gap
		}
		at.Trace[i] = Trace{Load: t.Load * gap / force, Force: f}
	}
	at.history = nil
	return &at
}

// At returns the contact at a fraction of the load, from 0 to 1, with what
// happened up to there; the state must hold its path (Fit.Path). At full load
// it is the state itself.
func (st *State) At(load float64) *State {
	if load >= 1 || st.history == nil {
		return st
	}
	load = max(load, 0)
	i := len(st.history.segments) - 1
	for i > 0 && st.history.segments[i].load > load {
		i--
	}
	out := st.history.segments[i].at(load)
	out.SlackRest, out.Residual, out.Segments = st.SlackRest, st.Residual, st.Segments
	for _, e := range st.Events {
		if e.Load <= load {
			out.Events = append(out.Events, e)
		}
	}
	for _, t := range st.Trace {
		if t.Load < load {
			out.Trace = append(out.Trace, t)
		}
	}
	end := Trace{Load: load, Force: make([]float64, len(out.Gap))}
	for i := range end.Force {
		end.Force[i] = out.Lambda[i*st.history.per]
	}
	out.Trace = append(out.Trace, end)
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
