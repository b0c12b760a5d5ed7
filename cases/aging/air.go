package aging

import (
	"context"
	"slices"

	"archload/cases"
	"archload/cases/design"
	"archload/cases/season"
)

// UsualMade is the air in which a top is taken to have been made where its case does not
// say (common practice, no published source), and the temperature of the wood cards.
func UsualMade() season.Climate { return *season.Usual().Made }

// Air is a design in the air in which it was made, its strings on, ready to be taken to
// other air, one at a time: what a hand does with a slider. It never changes.
type Air struct {
	Made     season.Climate
	Held     string // what a movement is relative to
	Cautions []string

	c   *cases.Case
	o   design.Options
	was state // by linear theory
}

// NewAir answers a case in the air in which it was made: its own, or UsualMade. Errors are
// those of Seasons.
func NewAir(ctx context.Context, c *cases.Case, o design.Options) (*Air, error) {
	q := *c
	made := UsualMade()
	strings := "tension"
	if c.Season != nil {
		strings = c.Season.Strings
		if c.Season.Made != nil {
			made = *c.Season.Made
		}
	}
	q.Season = &season.Season{Made: &made, To: []season.Climate{made}, Strings: strings}
	if err := swellingKnown(&q); err != nil {
		return nil, err
	}
	o.Swells = true
	_, was := stepsOf(q.Season)
	sol, err := solved(ctx, nil, q.WithCards(at(was.Moisture)), o)
	if err != nil {
		return nil, err
	}
	return &Air{Made: made, Held: heldWords(&q), Cautions: cautions(&q, Wish{}), c: &q, o: o, was: state{linear: sol}}, nil
}

// At is the design in air of a relative humidity, percent, at the temperature of the air
// that it was made in, once the wood has followed: its numbers, and its solution; moved is how
// it has moved from the made state (Moved).
func (a *Air) At(ctx context.Context, humidity float64) (r *SeasonReport, is, moved *design.Solution, err error) {
	to := *a.c.Season
	to.To = []season.Climate{{Name: "air", Humidity: humidity, Temperature: a.Made.Temperature}}
	steps, _ := stepsOf(&to)
	s := steps[0]
	now, err := s.solve(ctx, a.was, a.was, a.c, a.o)
	if err != nil {
		return nil, nil, nil, err
	}
	s.report.fill(a.was, now, s.change)
	m := movement{made: a.was.linear, now: now.linear}
	if a.c.SwellsAlone() {
		m.settle()
	}
	return &s.report, now.linear, Moved(m.made, m.now), nil
}

// Moved is how a top has moved from one solution to another on the same triangles: a
// solution of which only the displacements count, of plate and bridge.
func Moved(from, to *design.Solution) *design.Solution {
	r := *to.Result
	r.U, r.Body = less(r.U, from.Result.U), less(r.Body, from.Result.Body)
	if r.State != nil {
		st := *r.State
		st.SlackRest = [6]float64{}
		r.State = &st
	}
	return &design.Solution{Top: to.Top, Result: &r}
}

func less(a, b []float64) []float64 {
	out := slices.Clone(a)
	for i := range out {
		out[i] -= b[i]
	}
	return out
}
