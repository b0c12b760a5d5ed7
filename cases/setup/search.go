package setup

import (
	"context"
	"errors"
	"fmt"
	"math"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
)

// How a way is looked for.
const (
	leastSaddle, mostSaddle = 4.0, 80.0  // mm
	leastNeck, mostNeck     = -5.0, 20.0 // deg, as neck_angle takes them
	leastBend, mostBend     = 0.2, 45.0  // deg, of the strings behind the saddle
	settled                 = 2e-4       // mm, of what gives way between two rounds
	mostRounds              = 20
)

// errNone says that no value in the range does it.
var errNone = errors.New("nothing in the range does it")

// tops answers settings of one design; the top is prepared once.
type tops struct {
	*board
	top *design.Top
	opt design.Options

	grown [2][2]float64 // what decades make of that which gives way at bass and treble: least and most, times; NaN: not known
}

// answer solves a setting.
func (t *tops) answer(ctx context.Context, s setting) (*design.Solution, error) {
	top, err := design.Adapt(ctx, t.top, t.with(s), t.opt)
	if err != nil {
		return nil, err
	}
	return top.Answer()
}

// gives is how far bass and treble outer string come down over the board at the
// octave from slack to pitch, mm.
func (t *tops) gives(sol *design.Solution) [2]float64 {
	forces := sol.Top.Built.Geometry.StringForces()
	return [2]float64{answer.ActionChangeAt(sol, forces[t.outer[0]].X), answer.ActionChangeAt(sol, forces[t.outer[1]].X)}
}

// ages finds what decades make of what gives way, by the design as it stands: its top and
// what presses it change little from way to way.
func (t *tops) ages(ctx context.Context, sol *design.Solution) error {
	aged, err := sol.Age(ctx, t.opt)
	if err != nil {
		return err
	}
	for k := range t.grown {
		t.grown[k] = [2]float64{math.NaN(), math.NaN()}
		if aged != nil {
			t.grown[k] = aged.Grown(func(s *design.Solution) float64 { return t.gives(s)[k] })
		}
	}
	return nil
}

// find looks for the setting that fulfils the wish, with move changing the one thing
// that sets the action. Each round solves the setting, and sets anew for what
// gave way; that changes little from round to round, since the pressure is held.
func (t *tops) find(ctx context.Context, w Wish, name string, lo, hi float64, move func(s setting, v float64) setting) (*Way, error) {
	s := t.was
	sol, err := t.answer(ctx, s)
	if err != nil {
		return nil, err
	}
	last := t.gives(sol)
	for range mostRounds {
		want := (w.Bass+w.Treble)/2 + (last[0]+last[1])/2
		v, err := root(lo, hi, func(v float64) float64 {
			a := t.slack(move(s, v))
			return (a[0]+a[1])/2 - want
		})
		if err != nil {
			return nil, fmt.Errorf("%s: no value from %g to %g gives that action: %w", name, lo, hi, err)
		}
		s = move(s, v)
		if s, err = t.anchored(s, w); err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		if sol, err = t.answer(ctx, s); err != nil {
			return nil, err
		}
		now := t.gives(sol)
		change := math.Max(math.Abs(now[0]-last[0]), math.Abs(now[1]-last[1]))
		last = now
		if change < settled {
			way := t.way(name, s, sol)
			way.cut(w, s)
			return way, nil
		}
	}
	return nil, fmt.Errorf("%s: the action does not settle in %d rounds", name, mostRounds)
}

// anchored is the setting with the anchor at the height that gives the wished
// pressure or bend.
func (t *tops) anchored(s setting, w Wish) (setting, error) {
	at := func(bend float64) setting {
		q := s
		q.anchor = t.g.TopAtBridge + s.saddle - float64(t.c.Strings.Path.AnchorDistance)*math.Tan(bend*math.Pi/180)
		return q
	}
	bend, err := root(leastBend, mostBend, func(bend float64) float64 {
		forces := t.with(at(bend)).StringForces(t.g.TopAtBridge)
		if w.Downforce > 0 {
			return cases.SumStrings(forces).Downforce - w.Downforce
		}
		return breakAngle(forces) - w.BreakAngle
	})
	if err != nil {
		if w.Downforce > 0 {
			return s, fmt.Errorf("no height of the anchor presses the bridge with %g N: %w", w.Downforce, err)
		}
		return s, fmt.Errorf("no height of the anchor bends the strings by %g degrees: %w", w.BreakAngle, err)
	}
	return at(bend), nil
}

// way tells what a solved setting gives.
func (t *tops) way(name string, s setting, sol *design.Solution) *Way {
	forces := sol.Top.Built.Geometry.StringForces()
	sum := cases.SumStrings(forces)
	w := &Way{Name: name, NeckAngle: s.neck, FretPlane: t.fretPlane(s.neck), SaddleHeight: s.saddle, AnchorHeight: s.anchor,
		Downforce: sum.Downforce, BreakAngle: breakAngle(forces), Shift: sum.Rocking, Sink: answer.Sink(sol),
		BridgeMass: answer.MassOf(sol.Top.Built).Bridge, Slack: t.slack(s)}
	for k, g := range t.gives(sol) {
		w.AtPitch[k] = w.Slack[k] - g
		a, b := w.Slack[k]-t.grown[k][0]*g, w.Slack[k]-t.grown[k][1]*g
		w.Settled[k] = [2]answer.Num{answer.Num(math.Min(a, b)), answer.Num(math.Max(a, b))}
	}
	return w
}

// cut slants the saddle so that both outer strings stand as wished: the octave is
// half way to the nut, so the saddle differs by twice the difference. It moves the
// strings' loads by less than a degree's tenth, which is left out.
func (w *Way) cut(wish Wish, s setting) {
	missing := [2]float64{wish.Bass - w.AtPitch[0], wish.Treble - w.AtPitch[1]}
	w.Slant = 2 * (missing[0] - missing[1]) / math.Cos(s.neck*math.Pi/180)
	for k, m := range missing {
		w.Slack[k] += m
		w.AtPitch[k] += m
		w.Settled[k][0] += answer.Num(m)
		w.Settled[k][1] += answer.Num(m)
	}
}

// root halves the range until f's sign change is found, f monotone.
func root(lo, hi float64, f func(float64) float64) (float64, error) {
	a, b := f(lo), f(hi)
	if !(a*b <= 0) { // not a number too
		return 0, errNone
	}
	for range 60 {
		mid := (lo + hi) / 2
		if v := f(mid); v*a > 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2, nil
}
