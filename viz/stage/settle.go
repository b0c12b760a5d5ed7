package stage

import (
	"context"
	"slices"

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
		d.quick, err = d.Live.Report(ctx)
	case d.Pitch == nil:
		d.Pitch, err = a.certain(ctx, d.Live.Case(), linear)
		if w.Load == 1 {
			d.Here = d.Pitch
		}
	case d.Here == nil && w.Load >= leastShare:
		d.Here, err = a.share(ctx, d.Pitch, w.Load)
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
	c, err := a.certain(ctx, d.base.Case(), linear)
	if err == nil && load < 1 {
		c, err = a.share(ctx, c, load)
	}
	if err != nil {
		return nil, err
	}
	return c.slim(), nil
}

// Settled says whether the numbers at full load are there.
func (s *Shown) Settled() bool {
	return !slices.ContainsFunc(s.Designs, func(d *Answered) bool { return d.Report == nil })
}

// Confirmed says whether picture and numbers are those of the case solved afresh: at the load that is
// shown and at full load.
func (s *Shown) Confirmed() bool {
	return s.pitched() && (s.Want.Load < leastShare || s.here())
}

// pitched says whether every design is solved afresh at full load.
func (s *Shown) pitched() bool {
	return !slices.ContainsFunc(s.Designs, func(d *Answered) bool { return d.Pitch == nil })
}

// here says whether every design is solved afresh at the load that is shown.
func (s *Shown) here() bool {
	return !slices.ContainsFunc(s.Designs, func(d *Answered) bool { return d.Here == nil })
}

// Ranged says whether nothing more is worked out: every number has its ranges by wood and edge.
func (s *Shown) Ranged() bool {
	return s.Confirmed() && !slices.ContainsFunc(s.Designs, func(d *Answered) bool {
		return d.Pitch.Spread == nil || d.Here != nil && d.Here.Spread == nil || d.base != nil && d.Origin == nil && s.Want.Load >= leastShare
	})
}
