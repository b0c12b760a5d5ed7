package friction

import "math"

// trial is the force that a pad would have if it did not give way: (4).
func (s *increment) trial(i int) (normal float64, drag [2]float64) {
	j := 3 * i
	normal = s.force[j] - s.stiff[i]*(s.p.Gap[i]+s.at[j])
	for a := range 2 {
		drag[a] = s.force[j+1+a] - s.stiff[i]*(s.at[j+1+a]-s.anchor[i][a])
	}
	return normal, drag
}

// onCone brings a trial force back to what the pad can bear.
func (s *increment) onCone(normal float64, drag [2]float64) (float64, [2]float64) {
	if normal <= 0 {
		return 0, [2]float64{}
	}
	most := s.mu * normal
	if l := math.Hypot(drag[0], drag[1]); l > most {
		return normal, [2]float64{drag[0] / l * most, drag[1] / l * most}
	}
	return normal, drag
}

// judge sets the states that the trial forces ask for, and returns the greatest
// distance of a force from what its pad can bear, N; changed says whether a pad does
// another thing than before.
func (s *increment) judge() (off float64, changed int) {
	for i := range s.states {
		normal, drag := s.trial(i)
		st := state{kind: Open}
		l := math.Hypot(drag[0], drag[1])
		switch most := s.mu * normal; {
		case normal <= 0:
		case l <= most:
			st.kind = Sticks
		default:
			st.kind, st.n = Slides, [2]float64{drag[0] / l, drag[1] / l}
			share := most / l
			st.soft = -1
			if share > 1e-9 {
				st.soft = (1 - share) / (share * s.stiff[i])
			}
		}
		if st.kind != s.states[i].kind {
			changed++
		}
		s.states[i] = st
		fn, ft := s.onCone(normal, drag)
		j := 3 * i
		off = max(off, math.Abs(s.force[j]-fn), math.Abs(s.force[j+1]-ft[0]), math.Abs(s.force[j+2]-ft[1]))
	}
	if !s.guided {
		for g := range s.hold {
			off = max(off, math.Abs(s.force[3*s.p.pads()+g]))
		}
	}
	return off, changed
}

// goOn guesses forces and states at the end of the increment from those of the moment
// before and their pace.
func (s *increment) goOn() {
	long := s.load - s.from.Load
	for j := range s.force {
		s.force[j] = s.from.Force[j] + long*s.from.rise[j]
	}
	for i, v := range s.from.rate {
		j := 3 * i
		s.at[j] = s.from.Gap[i] + long*v[0] - s.p.Gap[i]
		s.at[j+1], s.at[j+2] = s.from.Side[i][0]+long*v[1], s.from.Side[i][1]+long*v[2]
	}
	copy(s.at[3*s.p.pads():], s.from.held)
	s.judge()
}

// goLike guesses forces and states at the end of the increment from those of another.
func (s *increment) goLike() {
	copy(s.force, s.like.Force)
	s.rho = s.like.Rho
	s.move()
	s.judge()
}

// begin guesses the end of the increment, where there is something to guess it from.
func (s *increment) begin() {
	switch {
	case s.like != nil:
		s.goLike()
	case s.from.rise != nil && s.mu == s.p.Coefficient && !s.led:
		s.goOn()
	}
}

// newton searches the state of rest from the present forces; false if it is not found.
func (s *increment) newton() bool {
	s.glides = false
	force, at := make([]float64, len(s.force)), make([]float64, len(s.at))
	s.begin()
	off, whole := math.Inf(1), 0
	var fade fading
	for round := range mostRounds {
		changed, old := len(s.states), s.p.factor.serves(s)
		if round > 0 {
			was := off
			if off, changed = s.judge(); off <= exact*s.big || off <= enough*s.big && off > gains*was {
				return true
			}
			old = off < gains*was && s.p.factor.serves(s)
		}
		if !old {
			whole++
		}
		if !s.guided {
			copy(s.hold, s.at[3*s.p.pads():])
		}
		copy(force, s.force)
		copy(at, s.at)
		rho := s.rho
		if !s.solve(old) {
			return false
		}
		if s.glides = fade.glides(s.pull(), s.big, changed > 0, old); s.glides {
			return false
		}
		if share := damping(whole - 1); share < 1 {
			s.blend(share, force, at, rho)
		}
	}
	return false
}

// fading watches the force of guides that do not hold, from round to round.
type fading struct {
	pull   float64 // N
	steady int     // rounds in which it stayed as it was, and no pad changed
}

// glides takes a round's force of the guides, beside the load big; true where it has not faded for so long that the
// foot glides away. changed: some pad changed; old: the round went by an old factor, which tells nothing.
func (f *fading) glides(pull, big float64, changed, old bool) bool {
	before := f.pull
	f.pull = pull
	if changed || pull <= enough*big || pull < fades*before || pull*fades > before {
		f.steady = 0
	} else if !old {
		f.steady++
	}
	return f.steady > mostSteady
}

const (
	mostRounds = 120
	gains      = 0.4   // of what is off, from one round to the next: more, and an old factor serves no longer
	enough     = 1e-11 // of the load: where the search may end
	exact      = 1e-13 // of the load: where it ends
	fades      = 0.99  // of guides' force from one round to the next: more, and it does not fade
	mostSteady = 4     // rounds in which it stays as it is, and no pad changes: the foot glides
)

// pull is the greatest force of guides that do not hold, N: it does not fade where the
// foot glides away.
func (s *increment) pull() float64 {
	most := 0.0
	if s.guided {
		return 0
	}
	for _, f := range s.force[3*s.p.pads():] {
		most = max(most, math.Abs(f))
	}
	return most
}

// damping is the share of a round's change that is taken: all at first; a search that
// has not ended by then goes in circles, out of which a part of the way leads.
func damping(round int) float64 {
	if round < 10 || round%8 >= 6 {
		return 1
	}
	return []float64{0.5, 0.3, 0.7}[round/8%3]
}

// blend takes a share of the way from old forces and movements to the new ones.
func (s *increment) blend(share float64, force, at []float64, rho [6]float64) {
	for i, f := range force {
		s.force[i] = f + share*(s.force[i]-f)
	}
	for i, v := range at {
		s.at[i] = v + share*(s.at[i]-v)
	}
	for c, v := range rho {
		s.rho[c] = v + share*(s.rho[c]-v)
	}
}
