package aging

import (
	"context"
	"maps"

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
func (ch *change) swells() bool { return ch.outer != 0 || ch.inner != 0 }

// withCards is the case with other woods.
func withCards(c *cases.Case, of func(materials.Card) materials.Card) *cases.Case {
	if of == nil {
		return c
	}
	q := *c
	q.Cards = maps.Clone(c.Cards)
	for key, card := range q.Cards {
		q.Cards[key] = of(card)
	}
	return &q
}

// onward is the solution of a design after a change, the contact followed from a solution before it. c is the
// design as its case tells.
func onward(ctx context.Context, from *design.Solution, c *cases.Case, ch change, o design.Options) (*design.Solution, error) {
	adapted, err := design.Adapt(ctx, from.Top, withCards(c, ch.cards), o)
	if err != nil {
		return nil, err
	}
	top := *adapted
	if ch.swells() {
		top.Cond = top.Cond.Swollen(top.Factored.Swell(fem.Swell{Outer: ch.outer, Inner: ch.inner, Beams: ch.inner}))
	}
	s := &design.Solution{Top: &top}
	if top.Stand == nil {
		s.Result = top.Cond.RecoverPlate()
		return s, nil
	}
	if top.Stand, err = top.Cond.Problem(&top.Built.Bridge.Body); err != nil {
		return nil, err
	}
	fit := top.Fit()
	free := bridgeFree{top.Built, ch.outer}
	fit.Swell = free.rows()
	st, err := top.Stand.Onward(contact.Standing{Problem: from.Top.Stand, Case: fitOf(from), State: from.Result.State}, fit)
	if err != nil {
		return nil, design.Explain(c, err)
	}
	s.Result = top.Stand.Recover(st, fit)
	free.addTo(s.Result.Body)
	return s, nil
}

// fitOf is the load case of a solution whose wood has not swollen.
func fitOf(s *design.Solution) contact.LoadCase { return s.Top.Fit() }
