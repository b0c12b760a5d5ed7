package swelling

import (
	"context"
	"math"

	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/verify/problem"
	"archload/fem/contact"
)

// creepRubs is the foot of creepCloses with friction. The laws of Signorini and Coulomb know forces by their proportions
// alone: a foot whose wood all has grown softer, alike, by G bears, sticks, slides and opens as the new one does once its strings
// have come up to G times their pull; sink and slide are those there, every force a G-th. So years are set beside
// new feet under stronger strings: at the last age the share of the middle, sink and slide; and which pads bear at several G, the
// pads that close in between. "late" is by how much G a pad is told to close later than one of those feet shows,
// or earlier.
func creepRubs(ctx context.Context) (problem.Readings, error) {
	c, err := load("creep-closes")
	if err != nil {
		return nil, err
	}
	bridge := *c.Bridge
	bridge.Hold, bridge.Friction, bridge.Relief.Depth = "friction", 0.3, 0.14
	c.Bridge = &bridge
	k := c.Cards["plate.wood"].Creep
	r, err := yearsOf(ctx, c, "1d,1y,10y,50y")
	if err != nil {
		return nil, err
	}
	s, err := design.Solve(ctx, c, design.Options{NoError: true, NoFlow: true})
	if err != nil {
		return nil, err
	}
	fresh := func(grown float64) (*contact.State, error) { return underStronger(s.Top, grown) }
	closes := map[[2]float64]float64{} // by place: G
	for _, m := range r.Moments {
		closes[[2]float64{m.X, m.Y}] = grownBy(k, m.Years)
	}
	out := problem.Readings{"closing": float64(len(closes)), "late": 0}
	last := r.Years[3]
	for _, grown := range []float64{1.13, 1.17, 1.22, 1.3, 1.38, 1.415, grownBy(k, last.Years)} {
		st, err := fresh(grown)
		if err != nil {
			return nil, err
		}
		for i, closed := range st.Closed {
			at := s.Top.Built.Bridge.Pads[i].At
			if g, told := closes[[2]float64{at[0], at[1]}]; told && closed == (g > grown) {
				out["late"] = max(out["late"], math.Abs(g-grown))
			}
		}
		s.Result = s.Top.Stand.Recover(st, s.Top.Fit())
	}
	want := answer.Summarize(s).Bridge
	out["middle"] = last.Bridge.Share.Middle / want.Share.Middle
	out["slid"] = float64(last.Bridge.Slid / want.Slid)
	return out, nil
}

// underStronger is a foot under strings that pull so many times as hard.
func underStronger(top *design.Top, times float64) (*contact.State, error) {
	fit := top.Fit()
	fit.Loads = append([]contact.BodyLoad(nil), top.Built.Bridge.Body.Loads...)
	for i := range fit.Loads {
		for a := range fit.Loads[i].F {
			fit.Loads[i].F[a] *= times
			fit.Loads[i].M[a] *= times
		}
	}
	return top.Stand.Follow(fit)
}
