package surface

import "math"

// choose returns the fit with the greatest λ whose ratio is at most one; if
// there is none, the fit with the least λ tried. It starts at the log10 λ
// given and needs two to six factorisations.
func (l *level) choose(start, least float64) trial {
	s := search{next: min(max(start, least), mostLog), least: least}
	for range 14 {
		t := l.try(s.next)
		if !t.ok {
			break // no smaller λ can be solved for
		}
		s.take(t)
		if s.done() {
			break
		}
		s.step()
	}
	best := s.over
	if s.haveUnder {
		best = s.under
	}
	best.runs = l.runs
	return best
}

// search looks for the zero of log10 ratio over log10 λ, which rises.
type search struct {
	under, over         trial // greatest λ known to be good, least known to be too great
	haveUnder, haveOver bool
	next, least         float64
	turns               int // trials in succession on the same side, signed
}

// value returns log10 of the ratio.
func (t *trial) value() float64 { return math.Log10(max(t.ratio, 1e-9)) }

// take sorts a trial in.
func (s *search) take(t trial) {
	good := t.ratio <= 1
	switch {
	case good && (!s.haveUnder || t.log > s.under.log):
		s.under, s.haveUnder, s.turns = t, true, max(s.turns, 0)+1
	case !good && (!s.haveOver || t.log < s.over.log):
		s.over, s.haveOver, s.turns = t, true, min(s.turns, 0)-1
	}
}

// done tells whether λ is known well enough: the ratio within 4 % below one,
// or the bracket within a fifth of a decade (λ acts by its sixth root), or an
// end of the range.
func (s *search) done() bool {
	const closeBelow, closeLog = 0.96, 0.2
	switch {
	case s.haveUnder && (s.under.ratio >= closeBelow || s.under.log >= mostLog):
		return true
	case s.haveUnder && s.haveOver:
		return s.over.log-s.under.log < closeLog
	case s.haveOver:
		return s.over.log <= s.least
	}
	return false
}

// step chooses the next λ: outside the known range by the usual slope of the
// curve, inside by the secant, pulled to the middle if one end does not move.
func (s *search) step() {
	const usualSlope, aim, longest = 0.25, -0.008, 4.0 // decades of ratio per decade of λ
	switch {
	case !s.haveUnder:
		s.next = s.over.log - min(max((s.over.value()-aim)/usualSlope, 0.3), longest)
	case !s.haveOver:
		s.next = s.under.log + min(max((aim-s.under.value())/usualSlope, 0.3), longest)
	default:
		a, b := s.under.value()-aim, s.over.value()-aim
		u := 0.5
		if b > a {
			u = min(max(-a/(b-a), 0.1), 0.9)
		}
		if s.turns > 2 || s.turns < -2 {
			u = 0.5
		}
		s.next = s.under.log + u*(s.over.log-s.under.log)
	}
	s.next = min(max(s.next, s.least), mostLog)
}
