package eigen

import (
	"errors"
	"fmt"
)

// Lowest finds the lowest eigenvalues with their vectors. The error is a
// *sparse.PivotError if K, or for a free body K + s M, is not positive definite, and says
// otherwise what could not be reached: convergence, or a count that agrees.
func Lowest(p *Problem, o Options) (*Modes, error) { return lowest(p, o, 0) }

// lowest is Lowest with room for some octets of vectors; 0: enough for most problems.
func lowest(p *Problem, o Options, room int) (*Modes, error) {
	o.Count = max(o.Count, 1)
	if !p.K.SamePattern(p.M) {
		return nil, errors.New("eigen: K and M differ in pattern")
	}
	l, err := newLanczos(p, o, room)
	if err != nil {
		return nil, err
	}
	return l.search()
}

// search finds pairs and counts, until the two agree.
func (l *lanczos) search() (*Modes, error) {
	for round := 0; ; round++ {
		if err := l.converge(); err != nil {
			return nil, err
		}
		modes, err := l.modes(), error(nil)
		if modes.Proof, err = l.count(); err != nil {
			return nil, err
		}
		if modes.Proof.Count == len(modes.Values) {
			modes.Rounds = round
			return modes, nil
		}
		if modes.Proof.Count < len(modes.Values) || round == mostRounds {
			return nil, fmt.Errorf("eigen: %d eigenvalues found below %.6g, but %d counted",
				len(modes.Values), modes.Proof.Bound, modes.Proof.Count)
		}
		if err := l.again(); err != nil {
			return nil, err
		}
	}
}

// mostRounds is how often the search goes on because the count is higher than the number
// found.
const mostRounds = 8

// again keeps what has converged, whole octets of it, and goes on with the operator and new
// start vectors.
func (l *lanczos) again() error {
	found := 0
	for found < len(l.ritz.theta) && l.ritz.residual[found] <= l.o.tolerance()*l.ritz.theta[found] {
		found++
	}
	l.compress(min(found/width, l.most-2))
	k := l.p.K
	if l.shift != 0 {
		k = l.shifted(l.shift)
	}
	if err := l.f.Refactor(k); err != nil {
		return err
	}
	l.whole = false
	l.fresh()
	return nil
}
