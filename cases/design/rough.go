package design

import "archload/fem/contact"

// The friction of smooth dry wood on wood, 1 (Forest Products Laboratory, Wood
// Handbook, ch. 4).
const (
	LeastFriction = 0.3
	MostFriction  = 0.5
)

// Friction is what a rough foot does with another friction.
type Friction struct {
	Coefficient float64
	Solution    *Solution // contact and movements alone; nil if there is no state of rest
}

// findFrictions follows the contact again with the least and the most friction of wood.
// It costs the contact alone. A foot whose load is one increment begins from what it did with its own friction; of
// several the pace of the one before is the better guess.
func (s *Solution) findFrictions() {
	t := s.Top
	if t.Stand == nil || t.Built.Bridge.Hold != contact.Rough {
		return
	}
	t.clock.time(&s.Spent.Contact, func() {
		for _, c := range []float64{LeastFriction, MostFriction} {
			f := Friction{Coefficient: c}
			fit := t.Fit()
			fit.Friction = c
			var like *contact.State
			if len(s.Result.State.Trace) == 2 {
				like = s.Result.State
			}
			if st, err := t.Stand.FollowLike(fit, like, false); err == nil {
				f.Solution = &Solution{Top: t, Result: t.Stand.RecoverMoves(st, fit)}
			}
			s.Frictions = append(s.Frictions, f)
		}
	})
}
