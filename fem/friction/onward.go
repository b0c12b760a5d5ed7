package friction

import "math"

// Onward follows the contact at full load from a moment to a problem that has changed since then: compliance,
// movements, gaps and loads are those after the change. With F, ρ and u the old forces and places, the rows and
// the loads stand at the share s of the change by
//
//	b(s) = b₀ + s (b − b₀),  b₀ = u − A F − R ρ,   f(s) = f₀ + s (f − f₀),  f₀ = −Rᵀ F,
//
// so that s = 0 is the old state and s = 1 the new problem exactly; between them the change is taken as straight.
// It is taken in equal steps, twice as many each time, until the end stays as it is. What a step leaves inexact is soon
// forgotten by a foot that slides, so that equal steps need fewer for the same end than steps that are each held to it.
// The moments tell the share as their load, the first being the one begun from, at 0. What has slid stays slid; work is
// not told. The error is ErrNoRest.
func (p *Problem) Onward(m *Moment) (*Path, error) {
	c := p.changeFrom(m)
	var before *Path
	solves := 0
	for n := fewestSteps; ; n *= 2 {
		path, ok := c.inSteps(n, before.between)
		solves += path.Solves
		switch {
		case ok && (n == mostSteps || before != nil && apart(before.Last(), path.Last()) <= changeClose):
			path.Solves, path.factor = solves, p.factor
			path.firstTurns()
			return path, nil
		case ok:
			before = path
			c.first.rate = p.pace(path)
		case n == mostSteps:
			return nil, ErrNoRest
		}
	}
}

const (
	fewestSteps = 2
	mostSteps   = 64
	changeClose = 1.5e-3 // by how much half as many steps may differ, of all forces or of the greatest way: as many are off by a third to two thirds of it
)

// change is a problem on its way.
type change struct {
	p     *Problem
	b0    []float64
	f0    [6]float64
	first Moment // at its beginning
}

// changeFrom finds the movements and loads under which a moment's forces rest in the changed problem.
func (p *Problem) changeFrom(m *Moment) *change {
	first := *m
	first.Load, first.rise, first.rate = 0, nil, make([][3]float64, p.pads())
	c := &change{p: p, b0: make([]float64, len(p.B)), first: first}
	n := len(p.B)
	for j := range c.b0 {
		switch i := j / 3; {
		case i >= p.pads():
			c.b0[j] = m.held[j-3*p.pads()]
		case j%3 == 0:
			c.b0[j] = m.Gap[i] - p.Gap[i]
		default:
			c.b0[j] = m.Side[i][j%3-1]
		}
		for k, f := range m.Force {
			c.b0[j] -= p.A[j*n+k] * f
		}
		for k, r := range p.R[j] {
			c.b0[j] -= r * m.Rho[k]
			c.f0[k] -= r * m.Force[j]
		}
	}
	return c
}

// inSteps takes the change in equal steps; like guesses the moment after so many of them, nil where it knows none. It is
// false if a step finds no rest: only where there are mostSteps may each try everything.
func (c *change) inSteps(n int, like func(k int) *Moment) (*Path, bool) {
	path := &Path{Moments: []Moment{c.first}}
	for k := range n {
		m, ok := c.step(path, float64(k+1)/float64(n), like(k+1), n == mostSteps)
		if !ok {
			return path, false
		}
		path.Moments = append(path.Moments, *m)
	}
	return path, true
}

// firstTurns tells from how the forces go on after which share of the first step its pads closed: the pace before, which
// tells it in later steps, is not known there.
func (p *Path) firstTurns() {
	first, m, next := &p.Moments[0], &p.Moments[1], &p.Moments[2]
	for i := range m.Kind {
		if j := 3 * i; first.Kind[i] == Open && m.Kind[i] != Open && next.Force[j] > m.Force[j] {
			m.Turn[i] = max(0, 1-m.Force[j]/(next.Force[j]-m.Force[j]))
		}
	}
}

// pace is that of the pads in half the first step of a path, of those that close in it as it were without their own
// force: whoever takes the change anew in twice as many steps knows by it when and where a pad closes in the first.
func (p *Problem) pace(path *Path) [][3]float64 {
	first, m, n := &path.Moments[0], &path.Moments[1], len(p.B)
	out := make([][3]float64, p.pads())
	for i, v := range m.rate {
		for k := range v {
			if j := 3*i + k; first.Kind[i] == Open && m.Kind[i] != Open {
				v[k] -= p.A[j*n+j] * m.Force[j]
			}
			out[i][k] = v[k] / 2
		}
	}
	return out
}

// between is the moment after k half steps of the path: a guess; nil without a path.
func (p *Path) between(k int) *Moment {
	if p == nil {
		return nil
	}
	if k%2 == 0 {
		return &p.Moments[k/2]
	}
	a, b := &p.Moments[k/2], &p.Moments[k/2+1]
	m := *b
	m.Force = make([]float64, len(b.Force))
	for j, f := range b.Force {
		m.Force[j] = (a.Force[j] + f) / 2
	}
	for i, r := range b.Rho {
		m.Rho[i] = (a.Rho[i] + r) / 2
	}
	return &m
}

// step goes on from the last moment of a path to a share of the change; last: it must come to rest.
func (c *change) step(path *Path, share float64, like *Moment, last bool) (*Moment, bool) {
	q := *c.p
	if share < 1 {
		q.B = make([]float64, len(c.b0))
		for j, b := range c.p.B {
			q.B[j] = c.b0[j] + share*(b-c.b0[j])
		}
		for k, f := range c.p.F {
			q.F[k] = c.f0[k] + share*(f-c.f0[k])
		}
	}
	inc, ok := q.rests(path.before(), 1, like, last)
	path.Solves += inc.solves
	c.p.factor = q.factor
	if !ok {
		return nil, false
	}
	m := inc.moment()
	m.Load = share
	return m, true
}

// before is the last moment as one from which the next step goes, that step being the whole load; the pace of the step
// before, as long, is its own.
func (p *Path) before() *Moment {
	from := *p.Last()
	from.Load = 0
	return &from
}

// OnwardLike is Onward in the steps of an earlier path, of a problem that differs little: so that what it comes to is
// smooth in what differs. The error is ErrNoRest.
func (p *Problem) OnwardLike(m *Moment, earlier *Path) (*Path, error) {
	p.factor = earlier.factor
	c := p.changeFrom(m)
	c.first.rate = earlier.Moments[0].rate
	path, ok := c.inSteps(len(earlier.Moments)-1, func(k int) *Moment { return &earlier.Moments[k] })
	if !ok {
		return p.Onward(m)
	}
	path.factor = p.factor
	return path, nil
}

// OnwardEnds solves the last step of an earlier path of Onward again, for a problem that differs a little: what had
// happened until then is taken over. The error is ErrNoRest.
func (p *Problem) OnwardEnds(earlier *Path) (*Path, error) {
	n := len(earlier.Moments) - 1
	path := &Path{Moments: earlier.Moments[:n:n]}
	from := path.before()
	p.factor = earlier.factor
	s := p.increment(from, 1)
	if s.guided = earlier.Last().Guided; s.guided {
		copy(s.hold, from.held)
	}
	s.like = earlier.Last()
	ok := s.search(false)
	path.Solves = s.solves
	if !ok {
		return nil, ErrNoRest
	}
	path.Moments, path.factor = append(path.Moments, *s.moment()), p.factor
	return path, nil
}

// apart is by how much two moments differ: the forces in the sum, of all forces, or the places of the pads, at most, of
// the greatest; whichever is more.
func apart(a, b *Moment) float64 {
	off, sum := 0.0, 0.0
	for j, f := range b.Force {
		off, sum = off+math.Abs(f-a.Force[j]), sum+math.Abs(f)
	}
	way, far := 0.0, 0.0
	for i, u := range b.Side {
		v := a.Side[i]
		way = max(way, math.Abs(b.Gap[i]-a.Gap[i]), math.Abs(u[0]-v[0]), math.Abs(u[1]-v[1]))
		far = max(far, math.Abs(b.Gap[i]), math.Abs(u[0]), math.Abs(u[1]))
	}
	return max(off/max(sum, 1e-300), way/max(far, 1e-300))
}
