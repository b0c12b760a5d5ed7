package cases

import (
	"io/fs"
	"maps"

	"archload/materials"
)

// readCase is a case's file with all that reading it again would give again: the
// tree of the file and its bases, its tables, the woods it found. It is never
// changed.
type readCase struct {
	src    *source
	over   *source // where keys set by hand are told to stand
	tree   *node
	order  []*source // of the files of the tree
	tables map[string]*csvTable
	cards  map[string]materials.Card
	last   *Case // the case it gave
}

// openLive reads a case's file.
func openLive(fsys fs.FS, name string) (*readCase, error) {
	src, err := openNamed(fsys, name)
	if err != nil {
		return nil, Faults{{File: name, Line: 1, Err: err}}
	}
	d := newDecoder()
	o := &readCase{src: src, over: &source{fsys: fsys, path: liveFrom, label: liveFrom}}
	o.tree = d.chain(src, nil)
	o.order = d.rep.order
	if err := d.rep.err(); err != nil {
		return nil, err
	}
	return o.with(nil)
}

// with is the case with keys set on top, and what can be shared with the next
// one.
func (o *readCase) with(keys []KeyValue) (*readCase, error) {
	d := newDecoder()
	d.rep.order = append(d.rep.order, o.order...)
	maps.Copy(d.tables, o.tables)
	maps.Copy(keptBy(d).cards, o.cards)
	c, err := d.finish(&Case{rep: d.rep}, o.src, o.tree, o.over, keys)
	if err != nil {
		return nil, err
	}
	q := *o
	q.tables, q.cards, q.last = d.tables, keptBy(d).cards, c
	return &q, nil
}
