package friction

import (
	"math"
	"slices"
)

// moment is the contact at the end of an increment that has been solved, with the work
// done on the way.
func (s *increment) moment() *Moment {
	p := s.p
	m := &Moment{Load: s.load, Force: s.force, Gap: make([]float64, p.pads()), Side: make([][2]float64, p.pads()), Rho: s.rho,
		Kind: make([]Kind, p.pads()), Guided: s.guided, Turn: s.share, Bears: make([][2]float64, p.pads()), Slid: slices.Clone(s.from.Slid), held: s.at[3*p.pads():], rate: make([][3]float64, p.pads())}
	for i, st := range s.states {
		j := 3 * i
		m.Kind[i], m.Side[i] = st.kind, [2]float64{s.at[j+1], s.at[j+2]}
		if st.kind == Open {
			m.Gap[i] = max(0, p.Gap[i]+s.at[j])
			clear(m.Force[j : j+3])
		}
	}
	if !s.guided {
		clear(m.Force[3*p.pads():])
	}
	m.rise = make([]float64, len(m.Force))
	for j, f := range m.Force {
		m.rise[j] = (f - s.from.Force[j]) / (s.load - s.from.Load)
	}
	for i := range m.rate {
		was, long := s.from, s.load-s.from.Load
		m.rate[i] = [3]float64{(m.Gap[i] - was.Gap[i]) / long, (m.Side[i][0] - was.Side[i][0]) / long, (m.Side[i][1] - was.Side[i][1]) / long}
	}
	s.noteWays(m)
	m.Work, m.Lost, m.Loose = s.from.Work+s.trapezoid(m), s.from.Lost, s.from.Loose
	for i := range m.Kind {
		lost, loose, law := s.padWork(m, i)
		m.Lost += lost
		m.Work -= loose
		m.Loose += math.Abs(loose) + math.Abs(law-lost)
	}
	return m
}

// noteWays notes how far the pads moved while they bore, and after which share of the
// increment those that opened did so: where the force that is used up and the gap that
// a force would have to close meet in proportion; likewise those that closed, where the pace before did not tell.
func (s *increment) noteWays(m *Moment) {
	n := len(s.p.B)
	for i := range m.Bears {
		if s.from.Kind[i] == Open && m.Kind[i] == Open {
			continue
		}
		for a := range 2 {
			m.Bears[i][a] = m.Side[i][a] - s.anchor[i][a]
		}
		if m.Kind[i] == Slides {
			m.Slid[i] += math.Hypot(m.Bears[i][0], m.Bears[i][1])
		}
		switch was, own := s.from, s.p.A[3*i*n+3*i]; {
		case was.Kind[i] != Open && m.Kind[i] == Open:
			m.Turn[i] = was.Force[3*i] / max(was.Force[3*i]+m.Gap[i]/own, 1e-300)
			m.Slid[i] += s.slidUntilOpen(m, i)
		case was.Kind[i] == Open && s.share[i] == 1: // the pace before did not tell
			m.Turn[i] = was.Gap[i] / (was.Gap[i] + m.Force[3*i]*own)
		}
	}
}

// slidUntilOpen is how far pad i slid in the increment before it opened: then it stood where it had come to without
// its own drag.
func (s *increment) slidUntilOpen(m *Moment, i int) float64 {
	var slid [2]float64
	for a := range slid {
		j := 3*i + 1 + a
		give := s.p.A[j*len(s.p.B)+j] * s.from.Force[j]
		slid[a] = m.Turn[i]*(m.Bears[i][a]+give) - give
	}
	return math.Hypot(slid[0], slid[1])
}

// trapezoid is the loads' work in the increment along a straight line, (6).
func (s *increment) trapezoid(m *Moment) float64 {
	p := s.p
	by := p.Self * (m.Load - s.from.Load)
	for j, f := range m.Force {
		by += p.B[j] * (f - s.from.Force[j])
	}
	for c, f := range p.F {
		by += f * (m.Rho[c] - s.from.Rho[c])
	}
	return (m.Load + s.from.Load) / 2 * by
}

// padWork is what pad i's forces do along the straight line: lost is the work of its
// drag while it bears; loose what is done while it stands off, where the forces of the
// straight line are none of the pad's; law is what the law of friction takes.
func (s *increment) padWork(m *Moment, i int) (lost, loose, law float64) {
	j, a := 3*i, s.from
	gap := m.Gap[i] - a.Gap[i]
	if a.Kind[i] != Open && m.Kind[i] != Open {
		gap = 0
	}
	before, after := 0.0, 0.0
	for k := range 2 {
		drag := (a.Force[j+1+k] + m.Force[j+1+k]) / 2
		before -= drag * (m.Side[i][k] - a.Side[i][k] - m.Bears[i][k])
		after -= drag * m.Bears[i][k]
	}
	normal := (a.Force[j] + m.Force[j]) / 2
	return after, before - normal*gap, s.mu * normal * math.Hypot(m.Bears[i][0], m.Bears[i][1])
}

// Violation is the greatest breach of the laws of contact and friction at a moment, and
// of the body's balance, relative to its load: pull, drag beyond what friction gives,
// overlap (over the compliance in the mean), missing force.
func (p *Problem) Violation(m *Moment) float64 {
	s := p.increment(m, m.Load)
	copy(s.force, m.Force)
	s.rho = m.Rho
	s.move()
	worst := 0.0
	for i := range p.Gap {
		j := 3 * i
		normal := m.Force[j]
		gap := p.Gap[i] + s.at[j]
		worst = max(worst, -normal, math.Hypot(m.Force[j+1], m.Force[j+2])-p.Coefficient*max(normal, 0), -gap/s.mean)
		if m.Kind[i] != Open {
			worst = max(worst, gap/s.mean)
		}
	}
	for c := range 3 {
		sum := p.F[c] * m.Load
		for j, f := range m.Force {
			sum += f * p.R[j][c]
		}
		worst = max(worst, math.Abs(sum))
	}
	return worst / s.big
}
