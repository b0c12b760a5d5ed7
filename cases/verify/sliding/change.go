package sliding

import (
	"archload/fem"
	"archload/fem/contact"
)

// changing is a stand that has come to rest under its loads, and lives through changes from there.
type changing struct {
	problem *contact.Problem
	now     *contact.Result
}

// settle raises the loads on the stand with a coefficient of friction, pads standing off by gap.
func (s *stand) settle(coefficient float64, gap []float64) (*changing, error) {
	sys, err := fem.Assemble(&s.model, 1)
	if err != nil {
		return nil, err
	}
	top, err := sys.Prepare(1)
	if err != nil {
		return nil, err
	}
	p, err := contact.Condense(top, s.pads, contact.Rough, nil).Problem(&s.body)
	if err != nil {
		return nil, err
	}
	fit := contact.LoadCase{Gap: gap, Loads: s.body.Loads, Friction: coefficient}
	st, err := p.Follow(fit)
	if err != nil {
		return nil, err
	}
	return &changing{p, p.Recover(st, fit)}, nil
}

// swell takes it on to where its rows have moved so far by themselves since it was new.
func (c *changing) swell(by []float64) (*contact.State, error) {
	from := c.now.Standing()
	fit := from.Case
	fit.Swell = by
	st, err := c.problem.Onward(from, fit)
	if err != nil {
		return nil, err
	}
	c.now = c.problem.Recover(st, fit)
	return st, nil
}
