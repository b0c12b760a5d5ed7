package stage

import (
	"context"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/quantity"
	"archload/cases/stability"
	"archload/cases/study"
	"archload/viz/scene"
)

// Certain is a design solved afresh at a share of its load, as archload solve does: on its moved
// shape, unless the linear answer is asked for. It never changes.
type Certain struct {
	Load     float64           // share of the case's own load, 1
	Linear   *design.Solution  // on the shape as carved
	Carved   *answer.Report    // its numbers
	Solution *design.Solution  // on the moved shape; Linear, if that is not wanted or there is none
	Report   *answer.Report    // its numbers
	Moved    *stability.Report // its numbers beside the linear ones; nil if it is Linear
	Fault    string            // why there is none on the moved shape, where that is wanted; "" if there is
	GivesWay float64           // share of the load beyond which there is no equilibrium on the moved shape; 0: there is one, or it was not looked for
	Spread   *study.Spread     // how it answers to its wood and its edge; nil until that is worked out

	linear   bool // the linear answer was asked for
	skeleton *scene.Skeleton
}

// leastShare is the least share of the load that a case is solved at: below it nothing moves.
const leastShare = 0.01

// serves tells whether it is the answer to a theory at a share of the load.
func (c *Certain) serves(load float64, linear bool) bool {
	return c != nil && c.Load == load && c.linear == linear
}

// with is the same with its spread.
func (c *Certain) with(s *study.Spread) *Certain {
	q := *c
	q.Spread = s
	return &q
}

// certain solves a case at its full load.
func certain(ctx context.Context, c *cases.Case, linear bool, o design.Options) (*Certain, error) {
	s, err := design.Solve(ctx, c, o)
	if err != nil {
		return nil, err
	}
	return settled(ctx, s, 1, linear)
}

// share is the answer at a share of the load, on the same factor.
func (c *Certain) share(ctx context.Context, load float64, o design.Options) (*Certain, error) {
	less := stability.Times(c.Linear.Top.Built.Case, load)
	s, err := again(ctx, c.Linear, less, o)
	if err != nil {
		return nil, err
	}
	s.FindFlow()
	if c.Linear.Coarse != nil {
		if s.Coarse, err = again(ctx, c.Linear.Coarse, less, o); err != nil {
			return nil, err
		}
	}
	return settled(ctx, s, load, c.linear)
}

// again answers another case on the top of a solution.
func again(ctx context.Context, s *design.Solution, c *cases.Case, o design.Options) (*design.Solution, error) {
	top, err := design.Adapt(ctx, s.Top, c, o)
	if err != nil {
		return nil, err
	}
	return top.Answer()
}

// settled finds the moved shape of a linear answer, where that is wanted. A top that has no equilibrium
// there keeps its linear numbers, and says so.
func settled(ctx context.Context, s *design.Solution, load float64, linear bool) (*Certain, error) {
	c := &Certain{Load: load, Linear: s, Solution: s, linear: linear}
	c.Carved = quantity.Summarize(s)
	c.Report = c.Carved
	if !linear {
		m, err := stability.OnMovedShape(ctx, s)
		share, gives := stability.GivesWay(err)
		switch {
		case gives:
			c.GivesWay = max(share, least)
		case ctx.Err() != nil:
			return nil, ctx.Err()
		case err != nil:
			c.Fault = err.Error()
		default:
			m.FindFlow()
			c.Moved = stability.Summarize(m, load)
			c.Solution, c.Report = m.Solution, c.Moved.Report
		}
	}
	c.skeleton = scene.NewSkeleton(c.Solution)
	return c, ctx.Err()
}

// least is a share of the load that is none.
const least = 1e-9

// numbers is the answer with its spread alone, without what it was solved on: some hundred megabytes.
func (c *Certain) numbers() *Certain {
	return &Certain{Load: c.Load, Carved: c.Carved, Report: c.Report, Spread: c.Spread, linear: c.linear}
}

// slim is the answer without what only another solve needs.
func (c *Certain) slim() *Certain {
	s := c.Solution
	return &Certain{Load: c.Load, Report: c.Report, linear: c.linear,
		Solution: &design.Solution{Top: &design.Top{Built: s.Top.Built}, Result: s.Result}}
}
