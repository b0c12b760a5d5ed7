package moved

import (
	"archload/fem"
	"archload/fem/contact"
)

// Near answers problems on one plate that differ little, in gaps or loads: each iteration begins where the last
// one ended, with its tangent. What the path's work says of the energy is not asked. The zero value is ready.
type Near struct {
	on   setting
	last *answer
}

// Solve is Problem.Solve for the next problem.
func (n *Near) Solve(p *Problem, share float64) (*contact.Result, Effort, error) {
	w := p.start()
	if n.last != nil {
		w.on, w.at = n.on, *n.last
		if err := w.settle(share); err == nil {
			r, err := w.balanced(share)
			n.last = &w.at
			return r, w.effort, err
		}
		w.on, w.at = p.first(), p.start().at
	}
	if err := w.climb(ascent{to: share, part: share, least: share / 64}); err != nil {
		return nil, w.effort, err
	}
	r, err := w.balanced(share)
	if err != nil {
		return nil, w.effort, err
	}
	if n.last == nil {
		on, err := p.tangent(w.on, w.at.u)
		if err != nil {
			return r, w.effort, nil // each begins afresh
		}
		n.on = on
		w.effort.Tangents++
	}
	n.last = &w.at
	return r, w.effort, nil
}

// About is a plate about the equilibrium that it has found: against small changes its stiffness is the tangent,
// and what it leaves out is a push that stays, so that the contact under other gaps is linear again and off by
// the square of the change.
type About struct {
	Plate *fem.Prepared
	Cond  *contact.Condensed
	Stand *contact.Problem
	Loads []contact.BodyLoad // on the body
}

// About is the plate about the answer found last, to a problem under a share of the load. It is an error if
// the plate is not stable there.
func (n *Near) About(p *Problem, share float64) (*About, error) {
	if n.last == nil {
		return nil, GivesWayError{Share: share}
	}
	w := p.start()
	w.on, w.at = n.on, *n.last
	acts := p.acting(share, w.at.u, w.at.stands())
	cond := w.on.cond.WithPush(acts.plate, w.push(w.at.u))
	return &About{Plate: w.on.plate, Cond: cond, Stand: w.on.stand.Over(cond), Loads: acts.body}, nil
}
