package cases

import (
	"fmt"
	"io/fs"
	"path"
	"reflect"

	"archload/cases/tree"
)

// Info describes a bundled case.
type Info struct {
	Name  string // to be given instead of a path
	Title string
	Shows string // first paragraph of the opening comment
}

// Load reads a case file and everything it names from fsys, checks it and
// fills in the defaults. The error, if any, is Faults: all of them at once.
//
// Names in a file are taken from beside the file that holds them, with forward
// slashes. They are cleaned but may climb above fsys ("../woods/mine.toml") or
// be absolute; whether that is admitted is for fsys to say.
func Load(fsys fs.FS, name string) (*Case, error) {
	src, err := tree.OpenSource(fsys, name, name)
	if err != nil {
		return nil, tree.Faults{{File: name, Line: 1, Err: err}}
	}
	return load(src)
}

// Open loads a bundled case by its name, or a case file from fsys. A name
// without a slash and without the ending .toml is that of a bundled case.
func Open(fsys fs.FS, nameOrPath string) (*Case, error) {
	return OpenChanged(fsys, nameOrPath, "", nil)
}

// load reads a case from its opened file.
func load(src *tree.Source) (*Case, error) { return loadChanged(src, nil, nil) }

// loadChanged is load with keys set by the user on top of the files; over
// stands for the place they come from.
func loadChanged(src, over *tree.Source, set []tree.KeyValue) (*Case, error) {
	d := NewDecoder()
	return Finish(d, &Case{Rep: d.Rep}, src, Chain(d, src, nil), over, set)
}

// Finish makes a case of the tree of its file and bases, with keys set on top.
func Finish(d *tree.Decoder, c *Case, src *tree.Source, whole *tree.Node, over *tree.Source, set []tree.KeyValue) (*Case, error) {
	if whole != nil && len(set) > 0 {
		whole = SetKeys(d, whole, over, set)
	}
	if whole != nil {
		d.Rep.Places[""] = whole.At()
		d.Table(reflect.ValueOf(c).Elem(), whole, "")
		if c.Title == "" && d.Rep.Clean("title") {
			c.Title = TrimExt(path.Base(src.Label))
		}
		c.fillBody(d)
		c.fillGauges(d.Rep)
		c.nameThings()
		c.fillHollow()
		c.findWoods(d)
		c.validate(d.Rep)
	}
	if err := d.Rep.Err(); err != nil {
		return nil, err
	}
	return c, nil
}

// nameThings gives a number to what has no name.
func (c *Case) nameThings() {
	name := func(s *string, kind string, i int) {
		if *s == "" {
			*s = fmt.Sprintf("%s %d", kind, i+1)
		}
	}
	for i := range c.Braces {
		name(&c.Braces[i].Name, "brace", i)
	}
	if c.Body != nil {
		for i := range c.Body.Back.Braces {
			name(&c.Body.Back.Braces[i].Name, "back bar", i)
		}
	}
	for i := range c.Loads {
		name(&c.Loads[i].Name, "load", i)
	}
	for i := range c.Gauges {
		name(&c.Gauges[i].Name, "gauge", i)
	}
	for i := range c.Supports {
		name(&c.Supports[i].Name, "support", i)
	}
	for i := range c.Posts {
		name(&c.Posts[i].Name, "post", i)
	}
	for i := range c.Masses {
		name(&c.Masses[i].Name, "mass", i)
	}
	for i := range c.Taps {
		name(&c.Taps[i].Name, "tap", i)
	}
	if c.Strings == nil {
		return
	}
	for i := range c.Strings.Each {
		s := &c.Strings.Each[i]
		if s.Name == "" {
			s.Name = s.Note.Name
		}
		name(&s.Name, "string", i)
	}
}

// fillHollow takes a hollow of no depth for none: so a case on top of a hollowed
// one says that its bridge is solid.
func (c *Case) fillHollow() {
	if b := c.Bridge; b != nil && b.Hollow != nil && b.Hollow.Depth == 0 {
		b.Hollow = nil
	}
}

// Bundled lists the bundled cases by name.
func Bundled() ([]Info, error) {
	names, err := bundledNames()
	if err != nil {
		return nil, err
	}
	out := make([]Info, len(names))
	for i, name := range names {
		src, err := openBundled(name)
		if err != nil {
			return nil, err
		}
		c, err := load(src)
		if err != nil {
			return nil, err
		}
		out[i] = Info{Name: name, Title: c.Title, Shows: opening(string(src.Data))}
	}
	return out, nil
}

// OpenChanged opens a case as Open does and sets keys in it before it is
// decoded and checked, as if a case on top of it had said so. Faults in them
// are told at the place from, which stands for a file, and the number of the
// key among them as its line.
func OpenChanged(fsys fs.FS, nameOrPath, from string, set []tree.KeyValue) (*Case, error) {
	src, err := OpenNamed(fsys, nameOrPath)
	if err != nil {
		return nil, tree.Faults{{File: nameOrPath, Line: 1, Err: err}}
	}
	return loadChanged(src, &tree.Source{Fsys: fsys, Path: from, Label: from}, set)
}
