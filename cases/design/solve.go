package design

import (
	"context"
	"errors"

	"archload/cases"
	"archload/fem"
	"archload/fem/contact"
	"archload/fem/flow"
)

// Options steer a solve; the zero value is the default.
type Options struct {
	Workers  int                // goroutines; 0 means 1. The answer does not depend on it
	Refine   float64            // multiplies the case's own mesh.refine; 0 means 1
	Clock    Clock              // for the timings; nil leaves them zero
	NoFlow   bool               // leave out the load flow
	NoError  bool               // leave out the second, coarser solve behind the discretisation estimate
	Progress func(stage string) // told what starts; may be nil
}

// WorkerCount is how many goroutines may work, 1 at least.
func (o Options) WorkerCount() int { return max(1, o.Workers) }

func (o Options) refine() float64 {
	if o.Refine == 0 {
		return 1
	}
	return o.Refine
}

// Say tells the stage that starts to Progress, if that is wanted.
func (o Options) Say(stage string) {
	if o.Progress != nil {
		o.Progress(stage)
	}
}

// Solution is an answered case: its top and what full load does to it.
type Solution struct {
	Top    *Top
	Result *contact.Result
	Flow   *flow.Flow // where the load goes; nil if left out or the load does not press down
	Coarse *Solution  // the same case on triangles twice as large; nil if not wanted
	Spent  Stages

	FlowFault   error // why a load that presses down has no flow
	CoarseFault error // why there is no Coarse where one was wanted
}

// Solve answers a case: geometry, mesh, model, factor, contact, results.
// Cancelling ctx stops it between two stages. A coarser solve that fails does
// not take the answer with it.
func Solve(ctx context.Context, c *cases.Case, o Options) (*Solution, error) {
	o.Say("arch")
	g, spent, err := timedGeometry(c, o)
	if err != nil {
		return nil, err
	}
	sol, err := solveOn(ctx, g, spent, o, o.refine())
	if err != nil {
		return nil, err
	}
	if !o.NoFlow {
		o.Say("load flow")
		sol.FindFlow()
	}
	if o.NoError {
		return sol, nil
	}
	quiet := o
	quiet.Progress = nil
	o.Say("error estimate")
	sol.Coarse, sol.CoarseFault = solveOn(ctx, g, spent, quiet, o.refine()/2)
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	return sol, nil // an answer without an estimate is an answer still
}

// solveOn answers the case of a geometry, on which so much time was spent.
func solveOn(ctx context.Context, g *Geometry, spent Stages, o Options, refine float64) (*Solution, error) {
	t, err := prepare(ctx, g, spent, o, refine)
	if err != nil {
		return nil, err
	}
	o.Say("contact")
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	return t.Answer()
}

// Explain puts a mechanical failure at the key that causes it.
func Explain(c *cases.Case, err error) error {
	var free *fem.UnsupportedError
	switch {
	case errors.As(err, &free):
		return c.Fault("rim.support", "%w: nothing holds the plate, or its supports leave a motion free, or a part of it hangs on nothing; give [rim] support or bench supports", err)
	case errors.Is(err, contact.ErrOverturns):
		return c.Fault("strings", "the strings' resultant falls outside the bridge's foot: the bridge would tip")
	case errors.Is(err, contact.ErrMechanism):
		return errors.New("contact: the closed points do not hold the bridge; it would tip or slide off")
	}
	return err
}
