package cases

import (
	"context"
	"io/fs"
	"slices"
	"sync"
)

// liveFrom is the place at which faults in keys set by hand are told.
const liveFrom = "set by hand"

// Live is a design under the hand: a case, the keys set on top of it, and the
// prepared top that answers it. It never changes; Set gives another one, which
// shares what it can. Any number of goroutines may ask it at the same time.
type Live struct {
	fsys fs.FS
	name string
	keys []KeyValue
	o    Options
	from *readCase
	c    *Case
	p    *Top

	mu    sync.Mutex
	track *track // of the load, nil: not yet followed
	near  *closings
}

// Begin opens a case, by the name of a bundled one or by its file in fsys, and
// makes it ready for the hand. Whether the options ask for flow and error
// estimate does not matter here.
func Begin(ctx context.Context, fsys fs.FS, name string, o Options) (*Live, error) {
	from, err := openLive(fsys, name)
	if err != nil {
		return nil, err
	}
	l := &Live{fsys: fsys, name: name, o: o, from: from, c: from.last}
	if l.p, err = Prepare(ctx, l.c, o); err != nil {
		return nil, err
	}
	return l, nil
}

// Name is the case's name as Begin took it.
func (l *Live) Name() string { return l.name }

// Case is the case with the keys set.
func (l *Live) Case() *Case { return l.c }

// Keys are the keys set on top of the case, each once, in the order in which
// they were last set.
func (l *Live) Keys() []KeyValue { return slices.Clone(l.keys) }

// laid are the keys of l with others laid over them: a key replaces the same
// key and all below it.
func (l *Live) laid(set []KeyValue) []KeyValue {
	out := slices.Clone(l.keys)
	for _, kv := range set {
		out = slices.DeleteFunc(out, func(o KeyValue) bool { return isWithin(o.Key, kv.Key) })
		out = append(out, kv)
	}
	return out
}

// CostOf says what Set would have to pay for some keys. Faults of the changed
// case come out here.
func (l *Live) CostOf(set ...KeyValue) (Cost, error) {
	from, err := l.from.with(l.laid(set))
	if err != nil {
		return Nothing, err
	}
	changed := changedKeys(l.c, from.last)
	if !slices.ContainsFunc(changed, func(k string) bool { return isWithin(k, "plate.outline") || isWithin(k, "plate.hole") }) {
		if err := l.p.places(from.last); err != nil {
			return Nothing, err
		}
	}
	return l.cost(from.last, changed), nil
}

// cost is what it costs to come from l to a case that differs in some keys.
func (l *Live) cost(c *Case, changed []string) Cost {
	most := Nothing
	for _, k := range changed {
		one := costOf(k)
		if movesFoot(k) {
			one = l.footCost(c)
		}
		most = max(most, one)
	}
	return most
}

// Set returns the design with some keys set, on the cheapest way from this
// one. Later keys replace earlier ones of the same name. After a fault or a
// cancelled context this design is as good as before.
func (l *Live) Set(ctx context.Context, set ...KeyValue) (*Live, error) {
	keys := l.laid(set)
	from, err := l.from.with(keys)
	if err != nil {
		return nil, err
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	q := &Live{fsys: l.fsys, name: l.name, keys: keys, o: l.o, from: from, c: from.last, near: l.nearest()}
	changed := changedKeys(l.c, q.c)
	switch cost := l.cost(q.c, changed); cost {
	case Remesh:
		q.p, err = l.p.remeshed(ctx, q.c, changed, l.o)
	case Refactor:
		if !slices.ContainsFunc(changed, func(k string) bool { return costOf(k) == Refactor }) { // a foot beyond the contact nodes
			q.p, err = l.p.refitted(q.c, changed, l.o.workers())
			break
		}
		q.p, err = l.p.refactored(ctx, q.c, changed, l.o)
	default:
		q.p, err = l.p.refitted(q.c, changed, l.o.workers())
		if err == nil {
			q.track = l.known(q.p)
		}
	}
	if err != nil {
		return nil, err
	}
	return q, nil
}

// Report is the whole report of full load, with the load flow. Nothing tells
// how far off the mesh is: that needs a second solve.
func (l *Live) Report(ctx context.Context) (*Report, error) {
	s, err := l.At(1)
	if err != nil {
		return nil, err
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	s = s.whole()
	s.FindFlow()
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	return Summarize(s), nil
}

// whole is the solution with reactions, energies and checks.
func (s *Solution) whole() *Solution {
	w := *s
	w.Result = s.Result.Complete()
	return &w
}
