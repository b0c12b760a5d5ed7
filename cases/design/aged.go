package design

import (
	"context"
	"math"

	"archload/cases"
	"archload/fem/contact"
	"archload/materials"
)

// OldYears is the age that stands for decades under the strings, years.
const OldYears = 50

// Aged is a design on the day that it is strung and after OldYears of its load, with the least and the most that its
// woods may creep. Each is elastic with softened wood, the foot's contact followed from new to old.
type Aged struct {
	New, Least, Most *Solution
}

// Age softens the wood of a solution's design. It returns nil if the creep of a wood is not known.
func (s *Solution) Age(ctx context.Context, o Options) (*Aged, error) {
	for _, card := range s.Top.Built.Case.Cards {
		if !card.CreepKnown() {
			return nil, nil
		}
	}
	least, err := s.softened(ctx, s.Top.Built.Case, materials.LeastCreep, o)
	if err != nil {
		return nil, err
	}
	most, err := least.softened(ctx, s.Top.Built.Case, materials.MostCreep, o)
	if err != nil {
		return nil, err
	}
	return &Aged{New: s, Least: least, Most: most}, nil
}

// softened goes on to a case with its wood as OldYears leave it, each amount of creep taken times share.
func (s *Solution) softened(ctx context.Context, c *cases.Case, share float64, o Options) (*Solution, error) {
	t, err := Adapt(ctx, s.Top, c.WithCards(func(card materials.Card) materials.Card { return card.Crept(OldYears, share) }), o)
	if err != nil {
		return nil, err
	}
	old := &Solution{Top: t, Spent: t.Spent}
	t.clock.time(&old.Spent.Contact, func() {
		if t.Stand == nil {
			old.Result = t.Cond.RecoverPlate()
			return
		}
		fit := t.Fit()
		var st *contact.State
		if st, err = t.Stand.Onward(contact.Standing{Problem: s.Top.Stand, Case: s.Result.LoadCase(), State: s.Result.State}, fit); err == nil {
			old.Result = t.Stand.Recover(st, fit)
		}
	})
	if err != nil {
		return nil, Explain(c, err)
	}
	return old, nil
}

// Grown is by how much a number of the design grows: the least and the most of it, over the first; NaN where the first is nothing.
func (a *Aged) Grown(of func(*Solution) float64) (times [2]float64) {
	first := of(a.New)
	for k, old := range []*Solution{a.Least, a.Most} {
		if times[k] = of(old) / first; first == 0 {
			times[k] = math.NaN()
		}
	}
	return times
}
