package live

import (
	"io/fs"
	"maps"

	"archload/cases"
	"archload/cases/tree"
	"archload/materials"
)

// readCase is a case's file with all that reading it again would give again: the
// tree of the file and its bases, its tables, the woods it found. It is never
// changed.
type readCase struct {
	src    *tree.Source
	over   *tree.Source // where keys set by hand are told to stand
	tree   *tree.Node
	order  []*tree.Source // of the files of the tree
	tables map[string]*tree.CsvTable
	cards  map[string]materials.Card
	last   *cases.Case // the case it gave
}

// openLive reads a case's file.
func openLive(fsys fs.FS, name string) (*readCase, error) {
	src, err := cases.OpenNamed(fsys, name)
	if err != nil {
		return nil, tree.Faults{{File: name, Line: 1, Err: err}}
	}
	d := cases.NewDecoder()
	o := &readCase{src: src, over: &tree.Source{Fsys: fsys, Path: From, Label: From}}
	o.tree = cases.Chain(d, src, nil)
	o.order = d.Rep.Order
	if err := d.Rep.Err(); err != nil {
		return nil, err
	}
	return o.with(nil)
}

// with is the case with keys set on top, and what can be shared with the next
// one.
func (o *readCase) with(keys []tree.KeyValue) (*readCase, error) {
	d := cases.NewDecoder()
	d.Rep.Order = append(d.Rep.Order, o.order...)
	maps.Copy(d.Tables, o.tables)
	maps.Copy(cases.CardsFound(d), o.cards)
	c, err := cases.Finish(d, &cases.Case{Rep: d.Rep}, o.src, o.tree, o.over, keys)
	if err != nil {
		return nil, err
	}
	q := *o
	q.tables, q.cards, q.last = d.Tables, cases.CardsFound(d), c
	return &q, nil
}

// From is the place at which faults and warnings of keys set by hand are told, with the number of the key.
const From = "as set here"
