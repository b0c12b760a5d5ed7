package aging

import (
	"context"

	"archload/cases"
	"archload/cases/design"
	"archload/cases/stability"
	"archload/fem"
	"archload/fem/contact"
	"archload/materials"
)

// change is what happens to a design under its strings.
type change struct {
	cards        func(materials.Card) materials.Card // how its woods change; nil: not
	outer, inner float64                             // percentage points of moisture at both faces
}

// swells says whether the wood takes up or gives off water.
func (ch change) swells() bool { return ch.outer != 0 || ch.inner != 0 }

// state is a design that stands.
type state struct {
	linear *design.Solution // by linear theory
	moved  *design.Solution // on its moved shape; nil: not asked for
}

// shown is the solution that is told.
func (s state) shown() *design.Solution {
	if s.moved != nil {
		return s.moved
	}
	return s.linear
}

// stands lets a linear solution stand, on its moved shape if that is asked for.
func stands(ctx context.Context, linear *design.Solution, second bool) (state, error) {
	s := state{linear: linear}
	if !second {
		return s, nil
	}
	moved, err := stability.OnMovedShape(ctx, linear)
	if err == nil {
		s.moved = moved.Solution
	}
	return s, err
}

// onward is a design after a change, the contact followed from the state before it: on the moved shape if that stood
// there. c is the design as its case tells.
func onward(ctx context.Context, from state, c *cases.Case, ch change, o design.Options) (state, error) {
	r, err := ch.ready(ctx, from, c, o)
	if err != nil {
		return state{}, err
	}
	return r.follow(ctx)
}

// ready is a design after a change whose contact is still to be followed.
type ready struct {
	from state
	top  *design.Top
	free bridgeFree
}

// ready gives a design other woods and lets them swell.
func (ch change) ready(ctx context.Context, from state, c *cases.Case, o design.Options) (*ready, error) {
	was := from.linear
	adapted, err := design.Adapt(ctx, was.Top, c.WithCards(ch.cards), o)
	if err != nil {
		return nil, err
	}
	top := *adapted
	if ch.swells() || was.Result.Swollen != nil { // the plate that is shared may still be swollen as before
		top.Cond = top.Cond.Swollen(top.Factored.Swell(fem.Swell{Outer: ch.outer, Inner: ch.inner, Beams: ch.inner, Bodies: (ch.outer + ch.inner) / 2}))
	}
	if top.Stand != nil {
		if top.Stand, err = top.Cond.Problem(&top.Built.Bridge.Body); err != nil {
			return nil, err
		}
	}
	return &ready{from, &top, bridgeFree{top.Built, ch.outer}}, nil
}

// follow follows the contact.
func (r *ready) follow(ctx context.Context) (state, error) {
	linear, err := r.followLinear(nil)
	if err != nil {
		return state{}, err
	}
	s := state{linear: linear}
	if r.from.moved != nil {
		if s.moved, err = r.followMoved(ctx, linear); err != nil {
			return state{}, err
		}
	}
	return s, nil
}

// followMoved follows the contact on the moved shape beside a linear solution.
func (r *ready) followMoved(ctx context.Context, linear *design.Solution) (*design.Solution, error) {
	moved, err := stability.Onward(ctx, linear, r.from.moved)
	if err != nil {
		return nil, err
	}
	r.grow(moved.Solution)
	return moved.Solution, nil
}

// grow adds what the bridge grows by itself to its movements.
func (r *ready) grow(s *design.Solution) {
	if s.Result.State != nil {
		r.free.addTo(s.Result.Body)
	}
}

// followLinear follows it by linear theory, with other forces of the strings if there are any.
func (r *ready) followLinear(p *pulls) (*design.Solution, error) {
	top := r.top
	if p != nil {
		top = pulled(top, p.plate)
	}
	s := &design.Solution{Top: top}
	if top.Stand == nil {
		s.Result = top.Cond.RecoverPlate()
		return s, nil
	}
	fit := top.Fit()
	fit.Swell = r.free.rows()
	if p != nil {
		fit.Loads = p.bridge
	}
	st, err := top.Stand.Onward(r.from.linear.Result.Standing(), fit)
	if err != nil {
		return nil, design.Explain(top.Built.Case, err)
	}
	s.Result = top.Stand.Recover(st, fit)
	r.grow(s)
	return s, nil
}

// pulled is a top under other loads on plate and body.
func pulled(top *design.Top, loads []fem.PointForce) *design.Top {
	if len(top.Built.StringTies()) == 0 {
		return top
	}
	t, b := *top, *top.Built
	b.Loads = loads
	t.Built, t.Cond = &b, top.Cond.WithLoads(loads)
	t.Stand = top.Stand.Over(t.Cond)
	return &t
}

// pulls are what strings do.
type pulls struct {
	bridge []contact.BodyLoad // loads on the bridge
	plate  []fem.PointForce   // all loads on plate and body
}
