package stability

import (
	"context"
	"errors"
	"slices"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/tree"
	"archload/fem"
	"archload/fem/contact"
	"archload/fem/moved"
)

// Solution is a case in equilibrium on its moved shape, beside its linear answer.
type Solution struct {
	*design.Solution                  // on the moved shape
	Linear           *design.Solution // on the shape as carved
	Effort           moved.Effort
	Seconds          float64 // that the moved shape took, by the clock of the options
}

// Solve answers a case on its moved shape. Errors are those of design.Solve, and a
// moved.GivesWayError that says how much of the load it bears.
func Solve(ctx context.Context, c *cases.Case, o design.Options) (*Solution, error) {
	linear, err := design.Solve(ctx, c, o)
	if err != nil {
		return nil, err
	}
	o.Say("moved shape")
	start := o.Now()
	s, err := OnMovedShape(ctx, linear)
	if err != nil {
		return nil, err
	}
	s.Seconds = o.Now().Sub(start).Seconds()
	if !o.NoFlow {
		o.Say("load flow")
		s.FindFlow()
	}
	return s, ctx.Err()
}

// AnswerTop answers a prepared top on its moved shape, without load flow and error of the mesh: what a
// series asks.
func AnswerTop(t *design.Top) (*answer.Report, error) {
	linear, err := t.Answer()
	if err != nil {
		return nil, err
	}
	s, err := OnMovedShape(context.Background(), linear)
	if err != nil {
		return nil, err
	}
	return answer.Summarize(s.Solution), nil
}

// OnMovedShape answers the case of a linear solution on its moved shape. Cancelling ctx stops it.
func OnMovedShape(ctx context.Context, linear *design.Solution) (*Solution, error) {
	return onMovedShape(ctx, linear, problem(linear.Top))
}

// Onward answers on its moved shape a design that has changed under its strings, of which linear is the linear
// answer with its swelling: contact and friction go on from a solution before the change on the moved shape. What the
// body on the plate grows by itself is for the caller to add. Cancelling ctx stops it.
func Onward(ctx context.Context, linear, from *design.Solution) (*Solution, error) {
	p := problem(linear.Top)
	p.Swell = linear.Result.Swollen
	if p.Stand != nil {
		p.Fit = linear.Result.LoadCase()
		standing := from.Result.Standing()
		p.From = &standing
	}
	return onMovedShape(ctx, linear, p)
}

func onMovedShape(ctx context.Context, linear *design.Solution, p *moved.Problem) (*Solution, error) {
	p.Stop = ctx.Err
	p.Linear = linear.Result
	second := *linear
	second.Coarse, second.Flow, second.Spent = nil, nil, design.Stages{}
	s := &Solution{Solution: &second, Linear: linear}
	r, effort, err := p.Solve(1)
	if err != nil {
		return nil, design.Explain(linear.Top.Built.Case, err)
	}
	second.Result, s.Effort = r, effort
	return s, nil
}

// problem is the whole load on a prepared top.
func problem(t *design.Top) *moved.Problem {
	p := &moved.Problem{Plate: t.Factored, Cond: t.Cond, Stand: t.Stand, Workers: t.Workers}
	br := t.Built.Bridge
	p.Condense = func(f *fem.Prepared) *contact.Condensed {
		if br == nil {
			return contact.Condense(f, nil, contact.Slip, t.Built.Loads)
		}
		return contact.Condense(f, br.Pads, br.Hold, t.Built.Loads, br.Body.Guides...)
	}
	if br != nil {
		p.Body, p.Fit, p.Pads = &br.Body, t.Fit(), br.Pads
	}
	p.Cords, p.Loads = cords(t.Built)
	return p
}

// cords are the strings of a body, which follow the saddle, the neck and the tail, and the loads that are
// none: on a plate whose edge is held, where the strings are tied is not part of the model, and they keep
// their direction.
func cords(b *design.Built) (cords []moved.Cord, others []fem.PointForce) {
	ties := b.StringTies()
	others = b.Loads[:len(b.Loads)-2*len(ties)]
	for i, ends := range ties {
		c := moved.Cord{Load: i}
		for k, at := range ends {
			c.Ends[k] = moved.CordEnd{Was: b.Loads[len(others)+2*i+k], At: at}
		}
		cords = append(cords, c)
	}
	return cords, others
}

// footBelow is how far the contact plane lies below the bridge's nodes, mm: the mean over its pads.
func footBelow(br *design.BridgeModel) float64 {
	sum := 0.0
	for i := range br.Pads {
		p := &br.Pads[i]
		sum += br.Body.Nodes[p.Node][2] - p.At[2]
	}
	return sum / float64(len(br.Pads))
}

// GivesWay says at what share of the load an answer found no equilibrium.
func GivesWay(err error) (share float64, is bool) {
	var way moved.GivesWayError
	is = errors.As(err, &way) && !way.Change
	return way.Share, is
}

// ChangeGivesWay says whether an answer found no equilibrium on the way of a change under the whole load.
func ChangeGivesWay(err error) bool {
	var way moved.GivesWayError
	return errors.As(err, &way) && way.Change
}

// Times returns the case with every force on it so many times as large: the strings' tension, the
// loads and the squeeze.
func Times(c *cases.Case, times float64) *cases.Case {
	if times == 1 {
		return c
	}
	q := *c
	if c.Strings != nil {
		s := *c.Strings
		s.TensionScale *= times
		s.Each = slices.Clone(s.Each)
		for i := range s.Each {
			s.Each[i].Rise *= tree.Force(times)
		}
		q.Strings = &s
	}
	q.Loads = slices.Clone(c.Loads)
	for i := range q.Loads {
		for k := range q.Loads[i].Force {
			q.Loads[i].Force[k] *= tree.Force(times)
		}
	}
	q.Rim.Squeeze *= tree.Force(times)
	return &q
}
