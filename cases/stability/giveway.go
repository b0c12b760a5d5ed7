package stability

import (
	"context"

	"archload/cases"
	"archload/cases/design"
	"archload/fem/buckling"
	"archload/fem/contact"
	"archload/fem/vibration"
)

// Giving is how a design would lose its stability by linear theory: its contact, stresses and shapes.
type Giving struct {
	Linear  *design.Solution
	Modes   *buckling.Modes
	Bearing int // pads that bear
	// OverDecades is the lowest factor as decades of load leave the woods, with the most and the least creep; 0: not known.
	OverDecades [2]float64
}

// Find finds the lowest factors on a case's load at which it would lose its stability. Errors are
// those of a solve.
func Find(ctx context.Context, c *cases.Case, count int, o design.Options) (*Giving, error) {
	o.NoFlow, o.NoError = true, true
	linear, err := design.Solve(ctx, c, o)
	if err != nil {
		return nil, err
	}
	o.Say("stability")
	g, err := FindOn(ctx, linear, count)
	if err == nil && len(g.Modes.Factors) > 0 {
		o.Say("stability over decades")
		err = g.age(ctx, o)
	}
	return g, err
}

// age finds the lowest factor of the softened design.
func (g *Giving) age(ctx context.Context, o design.Options) error {
	aged, err := g.Linear.Age(ctx, o)
	if err != nil || aged == nil {
		return err
	}
	for k, old := range []*design.Solution{aged.Most, aged.Least} {
		soft, err := FindOn(ctx, old, 1)
		if err != nil {
			return err
		}
		if f := soft.Modes.Factors; len(f) > 0 {
			g.OverDecades[k] = f[0]
		}
	}
	return nil
}

// FindOn is Find for a case that is solved by linear theory, without its decades.
func FindOn(ctx context.Context, linear *design.Solution, count int) (*Giving, error) {
	t := linear.Top
	in := buckling.Input{Input: vibration.Input{Plate: t.Factored.System, Workers: t.Workers}, U: linear.Result.U}
	if br := t.Built.Bridge; br != nil {
		in.Body, in.Pads, in.Foot = &br.Body, design.BearingPads(br, linear.Result.State), footBelow(br)
		in.Guided = br.Hold == contact.Slip || linear.Result.State.Glides
	}
	m, err := buckling.Find(in, count)
	if err != nil {
		return nil, design.Explain(t.Built.Case, err)
	}
	return &Giving{Linear: linear, Modes: m, Bearing: len(in.Pads)}, ctx.Err()
}

// mostRaised is the factor beyond which no path is followed.
const mostRaised = 50

// Far is a factor by which the load must have met its limit, if it has one near: a tenth above the lowest
// linear factor.
func (g *Giving) Far() float64 {
	if f := g.Modes.Factors; len(f) > 0 {
		return min(1.1*f[0], mostRaised)
	}
	return mostRaised
}
