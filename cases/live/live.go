package live

import (
	"context"
	"io/fs"
	"slices"
	"sync"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
)

// liveFrom is the place at which faults in keys set by hand are told.
const liveFrom = "set by hand"

// Live is a design under the hand: a case, the keys set on top of it, and the
// prepared top that answers it. It never changes; Set gives another one, which
// shares what it can. Any number of goroutines may ask it at the same time.
type Live struct {
	fsys fs.FS
	name string
	keys []cases.KeyValue
	o    design.Options
	from *readCase
	c    *cases.Case
	top  *design.Top

	mu    sync.Mutex
	track *track // of the load, nil: not yet followed
	near  *closings
}

// Begin opens a case, by the name of a bundled one or by its file in fsys, and
// makes it ready for the hand. Whether the options ask for flow and error
// estimate does not matter here.
func Begin(ctx context.Context, fsys fs.FS, name string, o design.Options) (*Live, error) {
	from, err := openLive(fsys, name)
	if err != nil {
		return nil, err
	}
	l := &Live{fsys: fsys, name: name, o: o, from: from, c: from.last}
	if l.top, err = design.Prepare(ctx, l.c, o); err != nil {
		return nil, err
	}
	return l, nil
}

// Name is the case's name as Begin took it.
func (l *Live) Name() string { return l.name }

// Case is the case with the keys set.
func (l *Live) Case() *cases.Case { return l.c }

// Keys are the keys set on top of the case, each once, in the order in which
// they were last set.
func (l *Live) Keys() []cases.KeyValue { return slices.Clone(l.keys) }

// Set returns the design with some keys set, on the cheapest way from this
// one. Later keys replace earlier ones of the same name. After a fault or a
// cancelled context this design is as good as before.
func (l *Live) Set(ctx context.Context, set ...cases.KeyValue) (*Live, error) {
	keys := cases.Laid(l.keys, set...)
	from, err := l.from.with(keys)
	if err != nil {
		return nil, err
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	top, err := design.Adapt(ctx, l.top, from.last, l.o)
	if err != nil {
		return nil, err
	}
	return &Live{fsys: l.fsys, name: l.name, keys: keys, o: l.o, from: from, c: from.last, top: top,
		near: l.nearest(), track: l.known(top)}, nil
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
