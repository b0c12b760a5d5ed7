package live

import (
	"context"
	"io/fs"

	"archload/cases"
	"archload/cases/design"
	"archload/cases/tree"
)

// Begin opens a case, by the name of a bundled one or by its file in fsys, and
// makes it ready for the hand. Whether the options ask for flow and error
// estimate does not matter here.
func Begin(ctx context.Context, fsys fs.FS, name string, o design.Options) (*Live, error) {
	o.AnyFoot = true
	from, err := openLive(fsys, name)
	if err != nil {
		return nil, err
	}
	l := &Live{fsys: fsys, name: name, o: o, from: from, c: from.last, ahead: true}
	if l.top, err = design.Prepare(ctx, l.c, o); err != nil {
		return nil, err
	}
	return l, nil
}

// Set returns the design with some keys set, on the cheapest way from this
// one. Later keys replace earlier ones of the same name. After a fault or a
// cancelled context this design is as good as before.
func (l *Live) Set(ctx context.Context, set ...tree.KeyValue) (*Live, error) {
	keys := tree.Laid(l.keys, set...)
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
	track, short, ways := l.known(top)
	return &Live{fsys: l.fsys, name: l.name, keys: keys, o: l.o, from: from, c: from.last, top: top,
		near: l.nearest(), track: track, ways: ways, ahead: short}, nil
}

// CaseWith is the case with exactly these keys set on top of its file, before it is answered: what Set
// would be given. Errors are the faults of the keys.
func (l *Live) CaseWith(keys ...tree.KeyValue) (*cases.Case, error) {
	from, err := l.from.with(keys)
	if err != nil {
		return nil, err
	}
	return from.last, nil
}
