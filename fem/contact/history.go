package contact

import (
	"slices"

	"archload/fem/friction"
)

// State is the contact at full load.
type State struct {
	Lambda    []float64  // row forces, N: pad-major, normal first; then the guides
	Gap       []float64  // remaining gap of each pad, mm; 0 where closed
	Closed    []bool     // for each pad
	Slides    []bool     // closed pads that slide: in grip they bear without drag, rough they drag with all their friction
	Slid      []float64  // how far each rough pad has slid while it bore, mm; nil if the pads are not rough
	Glides    bool       // no rough pad sticks any more: the guides hold the body
	Rho       [6]float64 // movement of the body's first node from its rest, mm and rad
	SlackRest [6]float64 // where the slack body comes to rest on its uneven bearing area, mm and rad
	Events    []Event
	Work      float64        // of all loads along the path, N·mm
	Lost      float64        // let go by grip when pads open, or dissipated by friction, N·mm
	Loose     float64        // work of which the increments of friction do not tell when it is done, N·mm: a bound on what they cost Lost and Work
	Trace     []Trace        // normal forces at the start, at every event and at full load
	history   *history       // nil unless LoadCase.History asked for it
	Residual  float64        // worst violation of the contact conditions, relative to the load
	path      *friction.Path // of a Rough foot, from whose end a change goes on
	onward    bool           // reached by a change under constant load (Problem.Onward), without Work and Lost
}

// Increments is in how many parts a foot with friction was followed; 0 without friction.
func (st *State) Increments() int {
	if st.path == nil {
		return 0
	}
	return len(st.path.Moments) - 1
}

// history is the whole path of a load, stretch by stretch.
type history struct {
	per      int // rows of a pad
	segments []segment
}

// segment is one straight stretch of the path: where it begins, and the rates of
// change with the load along it.
type segment struct {
	load           float64 // fraction of full load
	size           int     // rows
	rows           []int32 // of lambda and dl, the others are zero; nil: all
	lambda, dl     []float64
	gap, dg        []float64
	rho, dr        [6]float64
	closed, slides []bool
	work, lost     float64 // N·mm, at its beginning
	done           float64 // N·mm: work of the loads is load times this for each unit of load
	rough          *roughSegment
}

// all spreads values of the stretch's rows over all rows.
func (k *segment) all(values []float64) []float64 {
	if k.rows == nil {
		return values
	}
	out := make([]float64, k.size)
	for i, j := range k.rows {
		out[j] = values[i]
	}
	return out
}

// at is the contact at a load of the stretch.
func (k *segment) at(load float64) *State {
	s := load - k.load
	st := &State{Lambda: make([]float64, k.size), Gap: slices.Clone(k.gap), Closed: k.closed, Slides: k.slides, Rho: k.rho,
		Work: k.work + (k.load+load)/2*k.done*s, Lost: k.lost}
	copy(st.Lambda, k.all(k.lambda))
	for j, v := range k.all(k.dl) {
		st.Lambda[j] += s * v
	}
	for i := range st.Gap {
		st.Gap[i] += s * k.dg[i]
	}
	for m := range st.Rho {
		st.Rho[m] += s * k.dr[m]
	}
	if k.rough != nil {
		k.rough.addTo(st, s)
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
	at.Slid = slices.Clone(at.Slid)
	for i := range at.Slid {
		at.Slid[i] *= gap
	}
	at.Work, at.Lost, at.Loose = at.Work*gap*gap, at.Lost*gap*gap, at.Loose*gap*gap
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
	at.history, at.path = nil, nil
	return &at
}

// At returns the contact at a fraction of the load, from 0 to 1, with what
// happened up to there; the state must hold its path (LoadCase.History). At full load
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
	out.SlackRest, out.Residual = st.SlackRest, st.Residual
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
