package contact

import (
	"math"
	"slices"

	"archload/fem"
	"archload/fem/friction"
)

// Standing is a body in a state of contact: where a change begins.
type Standing struct {
	Problem *Problem
	Case    LoadCase
	State   *State
}

// Swollen returns the condensed plate whose wood has stretched by itself, so that it
// moves without any load. What Condensed.Problem then puts on it feels that in Onward alone:
// Follow begins from slack strings and keeps the fit that the body had before.
func (c *Condensed) Swollen(w *fem.Swollen) *Condensed {
	q := *c
	q.swollen = w
	q.swellU = slices.Clone(w.Load)
	c.plate.Solve(q.swellU)
	q.swellAt = q.beyond(w)
	for i := range c.cols {
		q.swellAt[i] += dotColumn(c.cols[i], q.swellU)
	}
	return &q
}

// Eased is Swollen for movements of any size, p being the Eased system of w with the factor of c: its push (WithPush)
// stands for what the wood does to the nodes, and swellAt is what it does beyond them.
func (c *Condensed) Eased(p *fem.Prepared, w *fem.Swollen) *Condensed {
	q := *c
	q.plate, q.swollen, q.swellU, q.swellAt = p, w, nil, q.beyond(w)
	return &q
}

// beyond is by how much each row moves more than the nodes tell, mm.
func (c *Condensed) beyond(w *fem.Swollen) []float64 {
	out := make([]float64, len(c.cols))
	for i := range c.padRows() {
		pad := &c.pads[i/c.hold.rows()]
		out[i] = w.BeyondAlong(pad.Spread, pad.Dir[i%c.hold.rows()])
	}
	return out
}

// Standing is the body as it stands in a result.
func (r *Result) Standing() Standing { return Standing{r.problem, r.loadCase, r.State} }

// Onward follows the contact from a state in which a body stands to that of s under its full load:
// the same pads on a plate and a body that have since become softer or stiffer, or have stretched by
// themselves (Condensed.Swollen, LoadCase.Swell).
//
// With now = A λ + R ρ of the old forces and movements, and w the old gaps and places,
// all in the letters of the package, the rows obey at the share s of the change
//
//	w(s) = (w − now) + (end − (w − now)) s + A λ + R ρ,   Rᵀ λ + f + (f' − f) s = 0,
//
// end being what (2) has for s = 1: gap, load and swelling, and f' the resultant of loads that may have changed too. So s = 0 is the old state
// and s = 1 the new one exactly; between them the change is taken as straight. Pads that stick stay
// where they stuck, pads that close on the way stick where they are then. Events tell s as their load.
func (s *Problem) Onward(from Standing, fit LoadCase) (*State, error) {
	p, free := s.lcp(fit), s.swelling(fit)
	if s.plate.hold == Rough {
		return p.onwardRough(from, fit, free)
	}
	w := newTracer(p)
	old := from.Problem.places(from)
	w.state.SlackRest = from.State.SlackRest
	copy(w.lambda, from.State.Lambda)
	copy(w.closed, from.State.Closed)
	copy(w.slides, from.State.Slides)
	w.rho = from.State.Rho
	start := make([]float64, len(p.b)) // w - now
	for j := range int32(len(p.b)) {
		now := p.movement(j, 0, w.lambda, w.rho)
		start[j] = old[j] - now
		p.b[j] += free[j] - start[j]
		if p.isNormal(j) {
			i := p.padOf(j)
			p.b[j] += p.restGap(i, w.state.SlackRest)
			if !w.closed[i] {
				w.gap[i] = from.State.Gap[i]
			}
			continue
		}
		if int(j) < p.pads*p.per {
			w.offset[j] = now
		}
	}
	w.scales()
	p.held = from.Problem.lcp(from.Case).f
	for m := range p.f {
		p.f[m] -= p.held[m]
	}
	w.active = w.newActiveSet()
	defer w.active.free()
	if err := w.active.add(w.standing()); err != nil {
		return nil, err
	}
	if err := w.advance(direction{dt: 1}); err != nil {
		return nil, err
	}
	return w.settle(start)
}

// OnwardLike is Onward for a problem that differs little from one whose state is known, as reached from the same
// standing; nil: none. A Rough foot goes in the steps of that state; with ends only the last of them is solved again, and
// what had happened until then is taken over.
func (s *Problem) OnwardLike(from Standing, fit LoadCase, like *State, ends bool) (*State, error) {
	if s.plate.hold != Rough || like == nil || !like.onward {
		return s.Onward(from, fit)
	}
	p := s.lcp(fit)
	q := p.changed(fit, s.swelling(fit), from)
	if ends {
		if path, err := q.OnwardEnds(like.path); err == nil {
			return p.changedState(q, path, from), nil
		}
	}
	path, err := q.OnwardLike(from.State.path.Last(), like.path)
	if err != nil {
		return nil, err
	}
	return p.changedState(q, path, from), nil
}

// onwardRough is Onward with friction, in steps (friction.Problem.Onward).
func (p *lcp) onwardRough(from Standing, fit LoadCase, free []float64) (*State, error) {
	q := p.changed(fit, free, from)
	path, err := q.Onward(from.State.path.Last())
	if err != nil {
		return nil, err
	}
	return p.changedState(q, path, from), nil
}

// changed is the problem with friction of a body that has stood, rows moving by free besides.
func (p *lcp) changed(fit LoadCase, free []float64, from Standing) *friction.Problem {
	for j, v := range free {
		p.b[j] += v
	}
	return p.rough(fit, from.State.SlackRest)
}

// changedState says a path of a change as its state at the end.
func (p *lcp) changedState(q *friction.Problem, path *friction.Path, from Standing) *State {
	rest := from.State.SlackRest
	st := p.roughState(q, &friction.Path{Moments: []friction.Moment{*path.Last()}}, rest)
	st.Events, st.onward, st.path = nil, true, path
	for k := range path.Moments[1:] {
		st.Events = append(st.Events, roughEvents(&path.Moments[k], &path.Moments[k+1], false)...)
	}
	return st
}

// swelling is how each row moves by the swelling of body and plate, mm.
func (s *Problem) swelling(fit LoadCase) []float64 {
	free := make([]float64, len(s.cols))
	copy(free, fit.Swell)
	for i, v := range s.plate.swellAt {
		free[i] -= v
	}
	return free
}

// places are the gap of each pad and the movement of each other row in a state, mm.
func (s *Problem) places(at Standing) []float64 {
	p := s.lcp(at.Case)
	if at.State.onward {
		free := s.swelling(at.Case)
		for j := range p.b {
			p.b[j] += free[j]
		}
	}
	out := make([]float64, len(p.b))
	for j := range int32(len(p.b)) {
		out[j] = p.movement(j, 1, at.State.Lambda, at.State.Rho)
		if p.isNormal(j) {
			out[j] += p.restGap(p.padOf(j), at.State.SlackRest)
			if at.State.Closed[p.padOf(j)] {
				out[j] = 0
			}
		}
	}
	return out
}

// standing lists the rows that carry force where the change begins.
func (w *tracer) standing() []int32 {
	var rows []int32
	for i := w.p.pads * w.p.per; i < len(w.p.b); i++ {
		rows = append(rows, int32(i))
	}
	for i, closed := range w.closed {
		if closed {
			rows = append(rows, w.rowsOf(i)...)
		}
	}
	return rows
}

// settle solves the end of a change once more from scratch, as residual does that of a
// load; start is where the rows' movement counts from.
func (w *tracer) settle(start []float64) (*State, error) {
	p, s := w.p, w.state
	v := make([]float64, len(p.b))
	for j := range int32(len(v)) {
		v[j] = p.b[j] + start[j]
		if !p.isNormal(j) && int(j) < p.pads*p.per {
			v[j] = p.b[j] - w.offset[j]
		}
	}
	var f [6]float64
	for m := range f {
		f[m] = -p.held[m] - p.f[m]
	}
	var err error
	s.Lambda, s.Rho, err = w.active.solve(equations{v: v, f: f}, make([]float64, p.pads), make([]bool, p.pads))
	if err != nil {
		return nil, err
	}
	s.Closed, s.Slides, s.Gap, s.onward = w.closed, w.slides, make([]float64, p.pads), true
	for i := range s.Gap {
		j := p.normal(i)
		if w.closed[i] {
			s.Residual = math.Max(s.Residual, -s.Lambda[j]/w.force)
			s.Lambda[j] = math.Max(0, s.Lambda[j])
			continue
		}
		s.Gap[i] = start[j] + p.movement(j, 1, s.Lambda, s.Rho)
		s.Residual = math.Max(s.Residual, -s.Gap[i]/w.length)
	}
	w.addDrift()
	return s, nil
}
