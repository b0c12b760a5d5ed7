package friction

import (
	"math"
	"slices"
)

// Onward follows the contact at full load from a moment to a problem that has changed since then: compliance,
// movements, gaps and loads are those after the change. With F, ρ and u the old forces and places, the rows and
// the loads stand at the share s of the change by
//
//	b(s) = b₀ + s (b − b₀),  b₀ = u − A F − R ρ,   f(s) = f₀ + s (f − f₀),  f₀ = −Rᵀ F,
//
// so that s = 0 is the old state and s = 1 the new problem exactly; between them the change is taken as straight.
// It is taken in steps: one is halved until its two halves together leave the forces as the whole one does. The
// moments tell the share as their load, the first being the one begun from, at 0. What has slid stays slid; work is
// not told. The error is ErrNoRest.
func (p *Problem) Onward(m *Moment) (*Path, error) {
	c := p.changeFrom(m)
	at, long := 0.0, 1.0
	for at < 1 {
		last := long <= leastChange
		switch ok := c.halves(at, long, last); {
		case ok:
			at += long
			long = min(2*long, 1-at)
		case last:
			return nil, ErrNoRest
		default:
			long /= 2
		}
	}
	return c.path, nil
}

const (
	leastChange = 1.0 / (1 << 6) // of the whole change: shorter steps are taken as they are
	changeClose = 3e-3           // of the forces: how far two halves may differ from the whole; a foot that slides soon forgets it
)

// change is a problem on its way.
type change struct {
	p    *Problem
	b0   []float64
	f0   [6]float64
	path *Path
}

// changeFrom finds the movements and loads under which a moment's forces rest in the changed problem.
func (p *Problem) changeFrom(m *Moment) *change {
	first := *m
	first.Load, first.rise, first.rate = 0, nil, make([][3]float64, p.pads())
	c := &change{p: p, b0: make([]float64, len(p.B)), path: &Path{Moments: []Moment{first}}}
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

// halves takes a step in two halves, unless they differ too much from the whole one; last: however they differ.
func (c *change) halves(at, long float64, last bool) bool {
	whole, ok := c.step(at, long, last)
	if !ok {
		return false
	}
	half, ok := c.step(at, long/2, last)
	if !ok {
		return false
	}
	before := len(c.path.Moments)
	c.path.Moments = append(c.path.Moments, *half)
	both, ok := c.step(at+long/2, long/2, last)
	if !ok || !last && apart(whole, both) > changeClose {
		c.path.Moments = c.path.Moments[:before]
		return false
	}
	c.path.Moments = append(c.path.Moments, *both)
	return true
}

// step goes on from the last moment, which lies at a share of the change; last: it must come to rest.
func (c *change) step(at, long float64, last bool) (*Moment, bool) {
	q := *c.p
	s := at + long
	if s > 1-1e-12 {
		s = 1
	}
	if s < 1 {
		q.B = make([]float64, len(c.b0))
		for j, b := range c.p.B {
			q.B[j] = c.b0[j] + s*(b-c.b0[j])
		}
		for k, f := range c.p.F {
			q.F[k] = c.f0[k] + s*(f-c.f0[k])
		}
	}
	inc, ok := q.rests(c.path.before(long), 1, last)
	c.path.Solves += inc.solves
	c.path.factor = q.factor
	if !ok {
		return nil, false
	}
	m := inc.moment()
	m.Load = s
	return m, true
}

// before is the last moment as one from which a step so long goes, the step being the whole load.
func (path *Path) before(long float64) *Moment {
	from := *path.Last()
	times := 0.0 // as long as the step before
	if n := len(path.Moments); n > 1 {
		times = long / (from.Load - path.Moments[n-2].Load)
	}
	from.Load, from.rate = 0, slices.Clone(from.rate)
	for i := range from.rate {
		for k := range from.rate[i] {
			from.rate[i][k] *= times
		}
	}
	if from.rise != nil {
		from.rise = slices.Clone(from.rise)
		for j := range from.rise {
			from.rise[j] *= times
		}
	}
	return &from
}

// OnwardEnds solves the last step of an earlier path of Onward again, for a problem that differs a little: what had
// happened until then is taken over. The error is ErrNoRest.
func (p *Problem) OnwardEnds(earlier *Path) (*Path, error) {
	n := len(earlier.Moments) - 1
	path := &Path{Moments: earlier.Moments[:n:n]}
	from := path.before(1 - path.Last().Load)
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

// apart is by how much the forces of two moments differ, of all forces.
func apart(a, b *Moment) float64 {
	off, sum := 0.0, 0.0
	for j, f := range b.Force {
		off, sum = off+math.Abs(f-a.Force[j]), sum+math.Abs(f)
	}
	return off / max(sum, 1e-300)
}
