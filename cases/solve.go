package cases

import (
	"context"
	"errors"
	"fmt"

	"archload/fem"
	"archload/mesh"
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

func (o Options) workers() int { return max(1, o.Workers) }

func (o Options) refine() float64 {
	if o.Refine == 0 {
		return 1
	}
	return o.Refine
}

func (o Options) say(stage string) {
	if o.Progress != nil {
		o.Progress(stage)
	}
}

// Top is a prepared top: its model with its factor and its condensed contact: what stays
// while strings and relief change.
type Top struct {
	Built    *Built
	Factored *fem.Prepared
	cond     *fem.Condensed
	stand    *fem.Problem // nil without a bridge
	notes    *FitNotes
	clock    Clock
	spent    Stages

	workers int
	circles *circles
}

// Solution is an answered case.
type Solution struct {
	Top    *Top
	Result *fem.Result
	Flow   *fem.Flow // where the load goes; nil if left out or the load does not press down
	Coarse *Solution // the same case on triangles twice as large; nil if not wanted
	Spent  Stages

	flowFault error // why a load that presses down has no flow
}

// Solve answers a case: geometry, mesh, model, factor, contact, results.
// Cancelling ctx stops it between two stages.
func Solve(ctx context.Context, c *Case, o Options) (*Solution, error) {
	o.say("arch")
	g, err := newShape(c, o)
	if err != nil {
		return nil, err
	}
	sol, err := g.solve(ctx, o, o.refine())
	if err != nil {
		return nil, err
	}
	if !o.NoFlow {
		o.say("load flow")
		sol.FindFlow()
	}
	if o.NoError {
		return sol, nil
	}
	quiet := o
	quiet.Progress = nil
	o.say("error estimate")
	sol.Coarse, err = g.solve(ctx, quiet, o.refine()/2)
	if err != nil {
		return nil, fmt.Errorf("coarser solve for the error estimate: %w", err)
	}
	return sol, nil
}

// shape is the geometry of a case, fitted once for every mesh density.
type shape struct {
	c      *Case
	domain mesh.Domain
	plate  mesh.Plate
	notes  *FitNotes
	clock  Clock
	spent  Stages
}

func newShape(c *Case, o Options) (*shape, error) {
	g := &shape{c: c, clock: o.Clock}
	var err error
	g.clock.time(&g.spent.Mesh, func() {
		g.domain, g.plate, g.notes, err = Geometry(c)
	})
	return g, err
}

func (g *shape) solve(ctx context.Context, o Options, refine float64) (*Solution, error) {
	p, err := g.prepare(ctx, o, refine)
	if err != nil {
		return nil, err
	}
	o.say("contact")
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	return p.answer()
}

// prepare meshes, assembles, factorises and condenses.
func (g *shape) prepare(ctx context.Context, o Options, refine float64) (*Top, error) {
	p := &Top{clock: g.clock, spent: g.spent, notes: g.notes}
	o.say("mesh")
	var err error
	p.clock.time(&p.spent.Mesh, func() { err = g.mesh(p, refine) })
	if err != nil {
		return nil, err
	}
	return p, p.solid(ctx, o, nil)
}

func (g *shape) mesh(p *Top, refine float64) error {
	d := g.domain
	d.Scale = 1 / refine
	plan, err := mesh.Triangulate(d)
	if err != nil {
		return g.c.PlaceFault(g.notes, err)
	}
	p.Built, err = Build(g.c, g.plate, mesh.Lift(plan, g.plate))
	return err
}

func (p *Top) condense() error {
	if p.Built.Bridge == nil {
		p.cond = p.Factored.Condense(nil, fem.Slip, p.Built.Loads)
		return nil
	}
	for i := range p.Built.Bridge.pads {
		p.Built.Bridge.pads[i].At = p.Factored.Middle(p.Built.Bridge.pads[i].Spread)
	}
	p.cond = p.Factored.Condense(p.Built.Bridge.pads, p.Built.Bridge.hold, p.Built.Loads)
	var err error
	p.stand, err = p.cond.Problem(&p.Built.Bridge.body)
	return err
}

// answer follows the load on a prepared top and recovers the result.
func (p *Top) answer() (*Solution, error) {
	s := &Solution{Top: p, Spent: p.spent}
	var err error
	p.clock.time(&s.Spent.Contact, func() {
		if p.stand == nil {
			s.Result = p.cond.RecoverPlate()
			return
		}
		fit := p.fit()
		var st *fem.State
		if st, err = p.stand.Follow(fit); err == nil {
			s.Result = p.stand.Recover(st, fit)
		}
	})
	if err != nil {
		return nil, p.Built.Case.explain(err)
	}
	return s, nil
}

func (p *Top) fit() fem.LoadCase {
	f := fem.LoadCase{Gap: make([]float64, len(p.Built.Bridge.pads)), Loads: p.Built.Bridge.body.Loads}
	for i := range f.Gap {
		f.Gap[i] = p.Built.Bridge.pads[i].Gap
	}
	return f
}

// explain puts a mechanical failure at the key that causes it.
func (c *Case) explain(err error) error {
	var free *fem.UnsupportedError
	switch {
	case errors.As(err, &free):
		return c.Fault("rim.support", "%w: nothing holds the plate, or its supports leave a motion free, or a part of it hangs on nothing; give [rim] support or bench supports", err)
	case errors.Is(err, fem.ErrOverturns):
		return c.Fault("strings", "the strings' resultant falls outside the bridge's foot: the bridge would tip")
	case errors.Is(err, fem.ErrMechanism):
		return errors.New("contact: the closed points do not hold the bridge; it would tip or slide off")
	}
	return err
}
