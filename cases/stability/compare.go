package stability

import (
	"context"

	"archload/cases/design"
	"archload/cases/study"
	"archload/fem/contact"
	"archload/fem/moved"
)

// Comparison sets designs side by side on their moved shapes, with the linear numbers of each.
type Comparison struct {
	*study.Comparison
	Order  string    `json:"order"` // second
	Times  float64   `json:"times"`
	Second []Order   `json:"second_order"` // of each case
	Linear []Linear  `json:"linear"`       // likewise
	each   []*Report // likewise
}

// Compare adds to a comparison of answers on their moved shapes what each has beside it.
func Compare(c *study.Comparison, each []*Report) *Comparison {
	out := &Comparison{Comparison: c, Order: "second", each: each}
	for _, r := range each {
		out.Times = r.Times
		out.Second, out.Linear = append(out.Second, r.Second), append(out.Linear, r.Linear)
	}
	return out
}

// Each are the answers, in the order of the cases.
func (c *Comparison) Each() []*Report { return c.each }

// Try is study.Try on the moved shape, with the linear trial beside.
func Try(ctx context.Context, top *design.Top, o study.TrialOptions) (*study.Trial, error) {
	linear, err := study.Try(ctx, top, o)
	if err != nil {
		return nil, err
	}
	near := &moved.Near{}
	m := &study.Moved{Settle: func(ctx context.Context, q *design.Top, share float64) (*contact.Result, error) {
		p := problem(q)
		p.Stop = ctx.Err
		r, _, err := near.Solve(p, share)
		return r, design.Explain(q.Built.Case, err)
	}}
	if _, err := m.Settle(ctx, top, 1); err != nil {
		return nil, err
	}
	about, err := near.About(problem(top), 1)
	if err != nil {
		return nil, err
	}
	moves := *top
	moves.Factored, moves.Cond, moves.Stand = about.Plate, about.Cond, about.Stand
	m.About, m.Loads, o.Moved = &moves, about.Loads, m
	t, err := study.Try(ctx, top, o)
	if err != nil {
		return nil, err
	}
	t.OnMovedShape(linear)
	return t, nil
}
