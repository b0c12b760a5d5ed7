package fem

import "slices"

// Stop is the contact at one load on the way to full load.
type Stop struct {
	Load   float64    // fraction of full load
	Lambda []float64  // row forces as in State, N
	Gap    []float64  // remaining gap of each pad, mm
	Closed []bool     // for each pad
	Slides []bool     // as in State
	Rho    [6]float64 // as in State, mm and rad
	Work   float64    // as in State, up to this load, N·mm
	Lost   float64    // as in State, up to this load, N·mm
}

// stopOver notes the state at every wanted load within the stretch of length
// ds that begins here; within it everything is linear in the load.
func (w *walk) stopOver(d direction, r *rates, ds float64) {
	for len(w.p.stops) > 0 && d.dt > 0 && w.p.stops[0] <= w.t+d.dt*ds*(1+1e-12) {
		s := (w.p.stops[0] - w.t) / d.dt
		at := Stop{Load: w.p.stops[0], Lambda: slices.Clone(w.lambda), Gap: slices.Clone(w.w),
			Closed: slices.Clone(w.closed), Slides: slices.Clone(w.slides), Rho: w.rho}
		for k, j := range w.g.held() {
			at.Lambda[j] += s * r.lambda[k]
		}
		for i := range at.Gap {
			at.Gap[i] += s * r.w[i]
			if w.closed[i] {
				at.Gap[i] = 0
			}
		}
		done := w.p.self * d.dt // by the loads, for each unit of load
		for m := range at.Rho {
			at.Rho[m] += s * r.rho[m]
			done += w.p.f[m] * r.rho[m]
		}
		for k, j := range w.g.held() {
			done += w.p.b[j] * r.lambda[k]
		}
		at.Work = w.state.Work + (w.t+d.dt*s/2)*done*s
		at.Lost = w.state.Lost
		w.state.Stops = append(w.state.Stops, at)
		w.p.stops = w.p.stops[1:]
	}
}

// Scaled returns the contact of the same body and plate at full load when every
// gap is 1 / Load times what it was: without a gap the problem is homogeneous of
// degree one in load and gap together, also where pads stick on the way, because
// each stretch of the path is linear. Events and rest are those of the whole
// path, in the new gaps and up to full load.
func (s *Stop) Scaled(path *State) *State {
	k := 1 / s.Load
	out := &State{Lambda: slices.Clone(s.Lambda), Gap: slices.Clone(s.Gap), Closed: s.Closed, Slides: s.Slides, Rho: s.Rho, Rest: path.Rest,
		Work: s.Work * k * k, Lost: s.Lost * k * k, Residual: path.Residual}
	for i := range out.Lambda {
		out.Lambda[i] *= k
	}
	for i := range out.Gap {
		out.Gap[i] *= k
	}
	for m := range out.Rho {
		out.Rho[m] *= k
		out.Rest[m] *= k
	}
	for _, e := range path.Events {
		if e.Load <= s.Load {
			out.Events = append(out.Events, Event{Load: e.Load * k, Pad: e.Pad, Closes: e.Closes})
		}
	}
	return out
}

// Moves returns the movement of every body node at full load, mm and rad, six a
// node, from the slack rest.
func (s *Standing) Moves(st *State, fit Fit) []float64 {
	r := &Result{standing: s, State: st}
	r.body(s.problemBody(fit))
	return r.Body
}

// PadSinks returns how far the plate's outer surface gives way at each pad at
// full load, along the surface's normal, inward positive, mm, the pad's own
// bedding left out.
func (s *Standing) PadSinks(st *State) []float64 {
	n := len(s.plate.cols)
	out := make([]float64, len(s.plate.pads))
	for i := range out {
		row := i * s.per
		out[i] = -s.plate.loadAt[row]
		for j, c := range s.plate.c[row*n : (row+1)*n] {
			out[i] += c * st.Lambda[j]
		}
	}
	return out
}
