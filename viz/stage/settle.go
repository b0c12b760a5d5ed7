package stage

import (
	"context"

	"archload/cases/design"
	"archload/cases/quantity"
	"archload/cases/stability"
	"archload/cases/study"
	"archload/viz/scene"
)

// Settle works out the next of what takes longer than the picture: first the
// whole report at full load of the top that is shown, then, as Confirmed tells,
// the case solved afresh, then, where that is asked for, on its moved shape, and last,
// as Ranged tells, how sure its numbers are.
func (a *Answerer) Settle(ctx context.Context, s *Shown) (*Shown, error) {
	out := *s
	out.Designs = nil
	for _, d := range s.Designs {
		one := *d
		var err error
		switch {
		case s.Confirmed() && a.onMovedShape && !s.Want.Linear && !s.moved():
			err = a.move(ctx, &one)
		case s.Confirmed() && one.Spread == nil:
			one.Spread, err = study.FindSpread(ctx, one.Sure, a.options)
		case s.Settled():
			err = a.confirm(ctx, &one)
		case one.Report == nil:
			one.Report, err = one.Live.Report(ctx)
		}
		if err != nil {
			return nil, err
		}
		out.Designs = append(out.Designs, &one)
	}
	out.tabulate()
	if s.Want.Field == scene.StrengthUsed {
		out.draw() // with the mark
	}
	return &out, nil
}

// confirm solves a design afresh, on the triangles that its case asks for, as
// archload solve does.
func (a *Answerer) confirm(ctx context.Context, d *Answered) error {
	if d.Sure != nil {
		return nil
	}
	sol, err := design.Solve(ctx, d.Live.Case(), a.options)
	if err != nil {
		return err
	}
	d.Sure, d.Linear = sol, quantity.Summarize(sol)
	d.Report = d.Linear
	return nil
}

// least is a share of the load that is none.
const least = 1e-9

// move finds the equilibrium on the moved shape. A top that has none keeps its linear numbers, and says so.
func (a *Answerer) move(ctx context.Context, d *Answered) error {
	if d.Moved != nil || d.GivesWay > 0 {
		return nil
	}
	s, err := stability.OnMovedShape(ctx, d.Sure)
	if share, is := stability.GivesWay(err); is {
		d.GivesWay = max(share, least)
		return nil
	}
	if err != nil {
		return err
	}
	d.Moved = stability.Summarize(s, 1)
	d.Report = d.Moved.Report
	return nil
}
