package moved

import (
	"errors"
	"fmt"
	"math"

	"archload/fem/contact"
)

// GivesWayError says that no equilibrium was found up to the load that was asked for.
type GivesWayError struct {
	Share  float64 // of the load up to which there is one
	Change bool    // of a change under the whole load in its stead
}

// Error says at what share the equilibrium is lost.
func (e GivesWayError) Error() string {
	if e.Change {
		return fmt.Sprintf("no equilibrium on the moved shape beyond %.3g of the change: there the plate gives way", e.Share)
	}
	return fmt.Sprintf("no equilibrium on the moved shape beyond %.3g of the load: there the plate gives way", e.Share)
}

// Solve finds the equilibrium under a share of the load, which may be above 1. Errors are those of
// the contact, and GivesWayError.
func (p *Problem) Solve(share float64) (*contact.Result, Effort, error) {
	w := p.start()
	err := w.climb(ascent{to: share, part: share, least: share / 64})
	if err != nil {
		return nil, w.effort, err
	}
	r, err := w.balanced(share)
	if err != nil {
		return nil, w.effort, err
	}
	r.Checks.Energy = w.workLeft(r)
	return r, w.effort, nil
}

// How nearly forces balance in an answer, over the load: fewer than so many steps more see to it.
const (
	balance   = 2e-9
	moreSteps = 4
)

// balanced completes the answer at which the walk has arrived. Movements settle before forces balance: where these
// are still apart, the iteration goes on.
func (w *walk) balanced(share float64) (*contact.Result, error) {
	r := w.recovered()
	for k := 0; k < moreSteps && r.Checks.Force > balance; k++ {
		a, err := w.step(share, &w.at, w.at.u, ends)
		if err != nil {
			return nil, err
		}
		w.at = a
		r = w.recovered()
	}
	return r, nil
}

// Raise raises the load from nothing to a share of it in equal parts, and tells each the movements there:
// a result without reactions, energies and checks. Where the load cannot rise further the parts are
// halved to a hundredth of the share reached, and GivesWayError says where that is.
func (p *Problem) Raise(to float64, parts int, each func(share float64, r *contact.Result)) error {
	part := to / float64(parts)
	return p.start().climb(ascent{to: to, part: part, most: part, least: part / 64, near: 0.005, each: each})
}

// start is a walk that has not begun.
func (p *Problem) start() *walk {
	return &walk{p: p, on: p.first(), at: answer{u: make([]float64, 6*len(p.Plate.Model.Nodes))}}
}

// ascent says how a load is raised: to a share of it, in parts that are tried at first, that are at
// most and at least so large, or near so much of the share reached.
type ascent struct {
	to, part    float64
	most, least float64 // most 0: any
	near        float64
	each        func(share float64, r *contact.Result)
}

// climb raises the load.
func (w *walk) climb(a ascent) error {
	for w.share < a.to {
		to := math.Min(a.to, w.share+a.part)
		if a.to-to < 1e-9*a.to {
			to = a.to
		}
		err := w.settle(to)
		switch {
		case err == nil:
			w.share = to
			w.effort.Parts++
			if a.each != nil {
				a.each(to, w.at.result)
			}
			if a.part *= 2; a.most > 0 {
				a.part = math.Min(a.part, a.most)
			}
		case !errors.Is(err, errLost) && !errors.Is(err, contact.ErrOverturns) && !errors.Is(err, contact.ErrMechanism):
			return err
		case a.part/2 < math.Max(a.least, a.near*w.share):
			if w.share == 0 && !errors.Is(err, errLost) {
				return err // the body does not stand under any load
			}
			return GivesWayError{w.share, w.p.changes()}
		default:
			a.part /= 2
		}
	}
	return nil
}
