package design

import (
	"context"

	"archload/cases"
	"archload/cases/shape"
	"archload/fem/contact"
)

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
	sol.findFrictions()
	quiet := o
	quiet.Progress = nil
	o.Say("error estimate")
	sol.Coarse, sol.CoarseFault = solveOn(ctx, g, spent, quiet, o.refine()/2)
	if sol.Coarse != nil {
		sol.Aged, sol.AgedFault = sol.Coarse.Age(ctx, quiet)
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	return sol, nil // an answer without an estimate is an answer still
}

// SolveShaped answers the case of a geometry whose thickness may have been changed since it was fitted: at the options' refinement,
// without load flow and without a second solve for the mesh's error. Errors are those of Solve.
func SolveShaped(ctx context.Context, g *shape.Geometry, o Options) (*Solution, error) {
	return solveOn(ctx, g, Stages{}, o, o.refine())
}

// solveOn answers the case of a geometry, on which so much time was spent.
func solveOn(ctx context.Context, g *shape.Geometry, spent Stages, o Options, refine float64) (*Solution, error) {
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

// Answer follows the load up to the full one and recovers the result, without
// the load flow. Errors: a *FileError at the strings that tip the bridge, or a
// contact that does not come to rest.
func (t *Top) Answer() (*Solution, error) {
	s := &Solution{Top: t, Spent: t.Spent}
	var err error
	t.clock.time(&s.Spent.Contact, func() {
		if t.Stand == nil {
			s.Result = t.Cond.RecoverPlate()
			return
		}
		fit := t.Fit()
		var st *contact.State
		if st, err = t.Stand.Follow(fit); err == nil {
			s.Result = t.Stand.Recover(st, fit)
		}
	})
	if err != nil {
		return nil, Explain(t.Built.Case, err)
	}
	return s, nil
}
