package aging

import (
	"context"

	"archload/cases"
	"archload/cases/design"
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

// onward is the solution of a design after a change, the contact followed from a solution before it. c is the
// design as its case tells.
func onward(ctx context.Context, from *design.Solution, c *cases.Case, ch change, o design.Options) (*design.Solution, error) {
	r, err := ch.ready(ctx, from, c, o)
	if err != nil {
		return nil, err
	}
	return r.follow(nil)
}

// ready is a design after a change whose contact is still to be followed.
type ready struct {
	from *design.Solution
	top  *design.Top
	free bridgeFree
}

// ready gives a design other woods and lets them swell.
func (ch change) ready(ctx context.Context, from *design.Solution, c *cases.Case, o design.Options) (*ready, error) {
	adapted, err := design.Adapt(ctx, from.Top, c.WithCards(ch.cards), o)
	if err != nil {
		return nil, err
	}
	top := *adapted
	if ch.swells() || from.Result.Swollen != nil { // the plate that is shared may still be swollen as before
		top.Cond = top.Cond.Swollen(top.Factored.Swell(fem.Swell{Outer: ch.outer, Inner: ch.inner, Beams: ch.inner, Bodies: (ch.outer + ch.inner) / 2}))
	}
	if top.Stand != nil {
		if top.Stand, err = top.Cond.Problem(&top.Built.Bridge.Body); err != nil {
			return nil, err
		}
	}
	return &ready{from, &top, bridgeFree{top.Built, ch.outer}}, nil
}

// follow follows the contact, with other forces of the strings if there are any.
func (r *ready) follow(loads []contact.BodyLoad) (*design.Solution, error) {
	s := &design.Solution{Top: r.top}
	if r.top.Stand == nil {
		s.Result = r.top.Cond.RecoverPlate()
		return s, nil
	}
	fit := r.top.Fit()
	fit.Swell = r.free.rows()
	if loads != nil {
		fit.Loads = loads
	}
	st, err := r.top.Stand.Onward(contact.Standing{Problem: r.from.Top.Stand, Case: r.from.Result.LoadCase(), State: r.from.Result.State}, fit)
	if err != nil {
		return nil, design.Explain(r.top.Built.Case, err)
	}
	s.Result = r.top.Stand.Recover(st, fit)
	r.free.addTo(s.Result.Body)
	return s, nil
}
