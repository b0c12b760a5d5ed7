package live

import (
	"context"
	"fmt"

	"archload/cases/answer"
	"archload/cases/design"
	"archload/fem/contact"
	"archload/fem/pages"
)

// At returns the top at a fraction of the string load, from 0 to 1; loads on
// the plate rise along. It serves every field, cut and gauge of a Solution and
// its load flow (FindFlow). At full load it is the answer of Solve.
func (l *Live) At(load float64) (*design.Solution, error) {
	if !(load >= 0 && load <= 1) {
		return nil, fmt.Errorf("want a fraction of the load from 0 to 1, found %g", load)
	}
	s := &design.Solution{Top: l.top, Spent: l.top.Spent}
	if l.top.Stand == nil {
		s.Result = l.top.Cond.RecoverPlateMoves(load)
		return s, nil
	}
	t, err := l.follow()
	if err != nil {
		return nil, err
	}
	fit := l.top.Fit()
	fit.Unapplied = 1 - load
	fit.Loads = loadShare(fit.Loads, load)
	s.Result = l.top.Stand.RecoverMoves(t.at(load), fit)
	return s, nil
}

// Ready does ahead, while nothing else is asked, what the next edits would wait for: the flexibility under a foot that
// moves, and memory.
func (l *Live) Ready() {
	l.top.Cond.Ready()
	pages.Ahead()
}

// loadShare is a fraction of some loads.
func loadShare(loads []contact.BodyLoad, share float64) []contact.BodyLoad {
	out := make([]contact.BodyLoad, len(loads))
	for i, b := range loads {
		out[i] = b
		for k := range b.F {
			out[i].F[k] = share * b.F[k]
		}
	}
	return out
}

// follow follows the load, once.
func (l *Live) follow() (*track, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.track != nil {
		return l.track, nil
	}
	t, err := newTrack(l.top, l.near, l.ahead)
	if err != nil {
		return nil, design.Explain(l.c, err)
	}
	l.track, l.near, l.ways = t, t.closings(l.top), l.ways.with(t)
	return t, nil
}

// nearest is how the contact points closed that are known best.
func (l *Live) nearest() *closings {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.near
}

// known are the tracks that a design has in common with one refitted from it, and the one of
// them that serves it; nil if there is none. short is that of tracks.serving.
func (l *Live) known(q *design.Top) (serving *track, short bool, all tracks) {
	l.mu.Lock()
	defer l.mu.Unlock()
	if q.Stand != l.top.Stand {
		return nil, false, nil
	}
	serving, short = l.ways.serving(q)
	return serving, short, l.ways
}

// Report is the whole report of full load, with the load flow. Nothing tells
// how far off the mesh is: that needs a second solve.
func (l *Live) Report(ctx context.Context) (*answer.Report, error) {
	s, err := l.At(1)
	if err != nil {
		return nil, err
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	s = whole(s)
	s.FindFlow()
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	return answer.Summarize(s), nil
}

// whole is the solution with reactions, energies and checks.
func whole(s *design.Solution) *design.Solution {
	w := *s
	w.Result = s.Result.Complete()
	return &w
}
