package stage

import (
	"context"

	"archload/cases/study"
)

// Settle works out the next of what takes longer than the picture: first the report at full
// load of the top that is shown; then the case solved afresh at full load and at the load that is shown,
// both on the moved shape unless the linear answer is wanted, upon which picture and numbers are those; then what it
// is compared with, the design as its file says; and last, as Ranged tells, how sure all of it is.
func (a *Answerer) Settle(ctx context.Context, s *Shown) (*Shown, error) {
	out := *s
	out.Designs = nil
	for _, d := range s.Designs {
		one := *d
		if err := a.step(ctx, &one, s); err != nil {
			return nil, err
		}
		out.Designs = append(out.Designs, &one)
	}
	return &out, out.compose(s)
}

// step works out what a design lacks next.
func (a *Answerer) step(ctx context.Context, d *Answered, s *Shown) (err error) {
	w, linear := s.Want, !s.Second
	switch {
	case d.quick == nil:
		if d.quick, err = d.Live.Report(ctx); err == nil {
			d.Live.Ready()
		}
	case d.Pitch == nil:
		d.Pitch, err = certain(ctx, d.Live.Case(), linear, a.options)
		if w.Load == 1 {
			d.Here = d.Pitch
		}
	case d.Here == nil && w.Load >= leastShare:
		d.Here, err = d.Pitch.share(ctx, w.Load, a.options)
	case d.Origin == nil && d.base != nil && w.Load >= leastShare:
		d.Origin, err = a.origin(ctx, d, w.Load, linear)
	case d.Pitch.Spread == nil:
		err = spread(ctx, a, &d.Pitch)
		if w.Load == 1 {
			d.Here = d.Pitch
		}
	case d.Here != nil && d.Here.Spread == nil:
		err = spread(ctx, a, &d.Here)
	}
	return err
}

// ready does ahead what the next edits would wait for.
func (s *Shown) ready() {
	for _, d := range s.Designs {
		d.Live.Ready()
	}
}

// spread works out how an answer answers to its wood and its edge.
func spread(ctx context.Context, a *Answerer, c **Certain) error {
	s, err := study.FindSpread(ctx, (*c).Linear, a.options)
	if err == nil {
		*c = (*c).with(s)
	}
	return err
}

// origin is the design as its file says at a share of the load.
func (a *Answerer) origin(ctx context.Context, d *Answered, load float64, linear bool) (*Certain, error) {
	c, err := certain(ctx, d.base.Case(), linear, a.options)
	if err == nil && load < 1 {
		c, err = c.share(ctx, load, a.options)
	}
	if err != nil {
		return nil, err
	}
	return c.slim(), nil
}
