package friction

import "math"

// state is what a pad is taken to do while an increment is solved.
type state struct {
	kind Kind
	n    [2]float64 // direction of the drag on a sliding pad's row, unit
	soft float64    // compliance of a sliding pad square to its drag, mm/N; below 0: it carries nothing there
}

// increment is one step of the load, from a moment to a greater load.
type increment struct {
	p      *Problem
	from   *Moment
	load   float64 // at its end
	mu     float64 // coefficient of friction
	guided bool    // the guides hold

	states []state
	anchor [][2]float64 // where each pad stands sideways as it begins to bear in the increment, mm
	share  []float64    // of the increment after which each pad closed, 1; 0 if it was closed before
	hold   []float64    // where the guides hold, mm
	force  []float64    // of all rows, N
	at     []float64    // movement of all rows, mm
	rho    [6]float64

	stiff  []float64 // of each pad: 1 over its own compliance, N/mm
	mean   float64   // compliance of a row in the mean, mm/N
	lazy   float64   // compliance of guides that do not hold, mm/N
	big    float64   // scale of forces, N
	like   *Moment   // where the increment ended in an earlier path: the first guess; nil: none
	solves int
	led    bool // from another coefficient of friction
	glides bool // the search ended because nothing holds the body sideways
}

func (p *Problem) increment(from *Moment, load float64) *increment {
	n := len(p.B)
	s := &increment{p: p, from: from, load: load, mu: p.Coefficient, guided: from.Guided, states: make([]state, p.pads()), anchor: make([][2]float64, p.pads()),
		share: make([]float64, p.pads()), hold: make([]float64, p.guides()), force: make([]float64, n), at: make([]float64, n), stiff: make([]float64, p.pads())}
	for i := range s.stiff {
		j := 3 * i
		s.stiff[i] = (p.A[j*n+j] + p.A[(j+1)*n+j+1] + p.A[(j+2)*n+j+2]) / 3
		s.mean += s.stiff[i] / float64(p.pads())
	}
	for i, own := range s.stiff { // much stiffer than the others only magnifies rounding
		s.stiff[i] = 1 / max(own, stiffest*s.mean)
	}
	s.lazy = 1e4 * s.mean
	for _, f := range p.F[:3] {
		s.big += math.Abs(f) * load
	}
	s.big = max(s.big, 1e-300)
	s.start()
	return s
}

// stiffest is how small a pad's compliance may count, of the mean.
const stiffest = 1e-2

// start sets forces and states to those of the moment that the increment begins at.
func (s *increment) start() {
	copy(s.force, s.from.Force)
	s.setAnchors()
	for i, k := range s.from.Kind {
		s.states[i] = state{kind: k, soft: 0}
		j := 3 * i
		if l := math.Hypot(s.force[j+1], s.force[j+2]); k == Slides && l > 0 {
			s.states[i].n = [2]float64{s.force[j+1] / l, s.force[j+2] / l}
		} else if k == Slides {
			s.states[i] = state{kind: Sticks}
		}
	}
}

// setAnchors finds where the pads stand sideways as they begin to bear. One that stood
// off at the beginning goes on as it went until its gap is used up.
func (s *increment) setAnchors() {
	long := s.load - s.from.Load
	for i := range s.anchor {
		s.anchor[i] = s.from.Side[i]
		gap, closing := s.from.Gap[i], -s.from.rate[i][0]*long
		if s.from.Kind[i] != Open || gap <= 0 {
			continue
		}
		s.share[i] = 1
		if closing > gap {
			s.share[i] = gap / closing
		}
		for a := range 2 {
			s.anchor[i][a] += s.share[i] * long * s.from.rate[i][1+a]
		}
	}
}
