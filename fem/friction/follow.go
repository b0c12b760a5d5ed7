package friction

import (
	"cmp"
	"math"
	"slices"
)

// Follow raises the load from nothing to full. The error is ErrNoRest.
func (p *Problem) Follow() (*Path, error) {
	p.factor = nil
	path := &Path{Moments: []Moment{*p.rest()}}
	step, gaped := 1.0, p.gaped()
	if gaped {
		step = firstStep
	}
	for path.Last().Load < 1 {
		from := path.Last()
		step = max(leastStep, from.closes(step))
		load := from.Load + step
		if load > 1-step/8 {
			load = 1
		}
		last := step <= leastStep || !gaped
		s, ok := p.rests(from, load, nil, last)
		path.Solves += s.solves
		if !ok && last {
			return nil, ErrNoRest
		}
		if !ok {
			step = max(leastStep, step/4)
			continue
		}
		m := s.moment()
		may := p.tolerance() * (load - from.Load) * math.Abs(m.Work) / load
		loose := math.Abs(m.Loose - from.Loose)
		if loose > may && step > leastStep {
			step = max(leastStep, (load-from.Load)*max(0.2, 0.8*math.Sqrt(may/loose)))
			continue
		}
		path.Moments = append(path.Moments, *m)
		step = max(leastStep, (load-from.Load)*min(2, 0.8*math.Sqrt(may/max(loose, 1e-300))))
	}
	path.factor = p.factor
	return path, nil
}

// closes shortens a step if more than a sixth of the pads would close in it at the pace of the increment before:
// it would have to be shortened after all, as much work would be left open.
func (m *Moment) closes(step float64) float64 {
	var after []float64
	for i, v := range m.rate {
		if m.Kind[i] == Open && v[0]*step < -m.Gap[i] {
			after = append(after, -m.Gap[i]/v[0])
		}
	}
	most := max(mostClose, len(m.rate)/6)
	if len(after) <= most {
		return step
	}
	slices.Sort(after)
	return after[most]
}

// tolerance is Tolerance or what stands for it.
func (p *Problem) tolerance() float64 { return cmp.Or(p.Tolerance, 1e-4) }

const (
	mostClose = 8 // pads: so many may close in any increment
	firstStep = 1.0 / 32
	leastStep = 1.0 / (1 << 13)
)

// gaped says whether any pad stands off at rest.
func (p *Problem) gaped() bool {
	for _, g := range p.Gap {
		if g > 0 {
			return true
		}
	}
	return false
}

// rests finds the state of rest at the end of an increment: without the guides where the
// foot holds itself, and, if last, with them. like is a first guess at it; nil: none.
func (p *Problem) rests(from *Moment, load float64, like *Moment, last bool) (*increment, bool) {
	s := p.increment(from, load)
	s.like = like
	if !from.Guided && p.Coefficient > 0 {
		if s.search(last) {
			return s, true
		}
		if !last {
			return s, false
		}
		solves := s.solves
		s = p.increment(from, load)
		s.solves, s.like = solves, like
	}
	s.guided = true
	copy(s.hold, from.held)
	return s, s.search(last)
}

// search is newton; if last, and it goes in circles, it comes down from a rougher foot,
// or up from a smoother one.
func (s *increment) search(last bool) bool {
	if s.newton() {
		return true
	}
	if s.glides || !last {
		return false
	}
	full := s.mu
	defer func() { s.mu = full }()
	return s.lead(max(leadsFrom*full, 1), full) || s.lead(min(full, 1)/leadsFrom, full)
}

// lead is newton with a coefficient of friction that goes from one to another.
func (s *increment) lead(from, to float64) bool {
	s.start()
	s.led = true
	for n := range leadSteps + 1 {
		s.mu = from * math.Pow(to/from, float64(n)/leadSteps)
		if !s.newton() {
			return false
		}
	}
	return true
}

const (
	leadsFrom = 8
	leadSteps = 12
)

// rest is the contact before loading.
func (p *Problem) rest() *Moment {
	m := &Moment{Force: make([]float64, len(p.B)), Gap: append([]float64(nil), p.Gap...), Side: make([][2]float64, p.pads()),
		Kind: make([]Kind, p.pads()), Turn: make([]float64, p.pads()), Bears: make([][2]float64, p.pads()), Slid: make([]float64, p.pads()), held: make([]float64, p.guides()), rate: make([][3]float64, p.pads())}
	for i, g := range p.Gap {
		if g <= 0 {
			m.Kind[i] = Sticks
		}
	}
	return m
}
