package contact

import (
	"cmp"
	"slices"

	"archload/fem/friction"
)

// followRough follows the load with friction, in increments (package friction).
func (s *Problem) followRough(fit LoadCase) (*State, error) {
	p := s.lcp(fit)
	rest, err := p.slackRest()
	if err != nil {
		return nil, err
	}
	q := p.rough(fit, rest)
	path, err := q.Follow()
	if err != nil {
		return nil, err
	}
	return p.roughState(q, path, rest), nil
}

// FollowLike is Follow of a load case that differs little from one whose state is known, as does the
// plate: the increments of a Rough foot are those of that state, which are the first guess too. With end only the
// last of them is solved again, and what had happened until then is taken over.
func (s *Problem) FollowLike(fit LoadCase, like *State, end bool) (*State, error) {
	if s.plate.hold != Rough || like == nil || like.path == nil || like.onward {
		return s.Follow(fit)
	}
	p := s.lcp(fit)
	rest := like.SlackRest
	if !end {
		var err error
		if rest, err = p.slackRest(); err != nil {
			return nil, err
		}
	}
	q := p.rough(fit, rest)
	follow := q.Like
	if end {
		follow = q.Ends
	}
	path, err := follow(like.path)
	if err != nil {
		return s.Follow(fit)
	}
	return p.roughState(q, path, rest), nil
}

// rough is the problem with friction of a body that came to rest somewhere.
func (p *lcp) rough(fit LoadCase, rest [6]float64) *friction.Problem {
	q := &friction.Problem{A: p.a, R: p.r, B: p.b, F: p.f, Self: p.self, Gap: make([]float64, p.pads), Coefficient: fit.Friction}
	for i := range q.Gap {
		q.Gap[i] = p.restGap(i, rest)
	}
	return q
}

// roughState says a path of friction as the state of a load.
func (p *lcp) roughState(q *friction.Problem, path *friction.Path, rest [6]float64) *State {
	m := path.Last()
	st := &State{Lambda: m.Force, Gap: m.Gap, Slid: m.Slid, Rho: m.Rho, SlackRest: rest, Glides: m.Guided,
		Work: m.Work, Lost: m.Lost, Loose: m.Loose, Residual: q.Violation(m), path: path}
	st.Closed, st.Slides = kinds(m)
	for k := range path.Moments {
		at := &path.Moments[k]
		t := Trace{Load: at.Load, Force: make([]float64, p.pads)}
		for i := range t.Force {
			t.Force[i] = at.Force[p.normal(i)]
		}
		st.Trace = append(st.Trace, t)
		if k == 0 {
			continue
		}
		st.Events = append(st.Events, roughEvents(&path.Moments[k-1], at, k == 1)...)
		if p.history {
			st.keepRough(p, &path.Moments[k-1], at)
		}
	}
	return st
}

// kinds says which pads bear and which of them slide.
func kinds(m *friction.Moment) (closed, slides []bool) {
	closed, slides = make([]bool, len(m.Kind)), make([]bool, len(m.Kind))
	for i, k := range m.Kind {
		closed[i], slides[i] = k != friction.Open, k == friction.Slides
	}
	return closed, slides
}

// roughEvents are the pads that open or close in an increment. Those that touch at rest
// close with the first load, if they do not lift off under it.
func roughEvents(from, to *friction.Moment, first bool) (out []Event) {
	for i := range to.Kind {
		was, is := from.Kind[i] != friction.Open, to.Kind[i] != friction.Open
		load := from.Load + to.Turn[i]*(to.Load-from.Load)
		switch {
		case first && was && is:
			out = append(out, Event{Load: 0, Pad: int32(i), Closes: true})
		case first && was || was == is:
		default:
			out = append(out, Event{Load: load, Pad: int32(i), Closes: is})
		}
	}
	slices.SortStableFunc(out, func(a, b Event) int { return cmp.Compare(a.Load, b.Load) })
	return out
}

// roughSegment is what friction adds to a stretch of the path.
type roughSegment struct {
	slid, ds    []float64 // of each pad, mm, and for each unit of load
	glides      bool
	loose       float64
	lost, apart [2]float64 // N·mm by load and by its square from the beginning on: dissipated, and what the work is less by
}

// addTo sets what friction knows of a state in the stretch, at a load beyond its beginning.
func (r *roughSegment) addTo(st *State, s float64) {
	st.Slid, st.Glides, st.Loose = slices.Clone(r.slid), r.glides, r.loose
	for i, v := range r.ds {
		st.Slid[i] += s * v
	}
	st.Lost += s * (r.lost[0] + s*r.lost[1])
	st.Work -= s * (r.apart[0] + s*r.apart[1])
}

// keepRough notes the stretch between two moments.
func (st *State) keepRough(p *lcp, from, to *friction.Moment) {
	dt := to.Load - from.Load
	k := segment{load: from.Load, size: len(from.Force), lambda: from.Force, dl: make([]float64, len(from.Force)), gap: from.Gap, dg: make([]float64, p.pads),
		rho: from.Rho, work: from.Work, lost: from.Lost, done: p.self,
		rough: &roughSegment{slid: from.Slid, ds: make([]float64, p.pads), glides: to.Guided, loose: to.Loose}}
	k.closed, k.slides = kinds(to)
	for j := range k.dl {
		k.dl[j] = (to.Force[j] - from.Force[j]) / dt
		k.done += p.b[j] * k.dl[j]
	}
	for i := range k.dg {
		k.dg[i], k.rough.ds[i] = (to.Gap[i]-from.Gap[i])/dt, (to.Slid[i]-from.Slid[i])/dt
		for a := range 2 {
			j := 3*i + 1 + a
			way, apart := to.Bears[i][a]/dt, (to.Side[i][a]-from.Side[i][a]-to.Bears[i][a])/dt
			add(&k.rough.lost, -way, from.Force[j], k.dl[j])
			add(&k.rough.apart, -apart, from.Force[j], k.dl[j])
		}
		if from.Kind[i] == friction.Open || to.Kind[i] == friction.Open {
			add(&k.rough.apart, -k.dg[i], from.Force[3*i], k.dl[3*i])
		}
	}
	for m := range k.dr {
		k.dr[m] = (to.Rho[m] - from.Rho[m]) / dt
		k.done += p.f[m] * k.dr[m]
	}
	if st.history == nil {
		st.history = &history{per: p.per}
	}
	st.history.segments = append(st.history.segments, k)
}

// add adds the work of a force that grows along a way.
func add(work *[2]float64, way, force, grows float64) {
	work[0] += way * force
	work[1] += way * grows / 2
}
