package bench

import (
	"fmt"
	"io/fs"
	"path"
	"reflect"

	"archload/cases"
	"archload/cases/tree"
	"archload/materials"
)

// Load reads a bench file and what it names from fsys, checks it and fills in the defaults. The
// error, if any, is tree.Faults: all of them at once.
func Load(fsys fs.FS, name string) (*File, error) {
	src, err := tree.OpenSource(fsys, name, name)
	if err != nil {
		return nil, tree.Faults{{File: name, Line: 1, Err: err}}
	}
	top, fault := tree.Parse(src)
	if fault != nil {
		return nil, tree.Faults{fault}
	}
	d := cases.NewDecoder()
	d.Root, d.Listed = reflect.TypeFor[File](), "docs/bench.md"
	d.Rep.Order = append(d.Rep.Order, src)
	d.Rep.Places[""] = top.At()
	f := &File{Rep: d.Rep}
	d.Table(reflect.ValueOf(f).Elem(), top, "")
	f.nameThings(cases.TrimExt(path.Base(src.Label)))
	f.findCard()
	if err := f.findTop(src); err != nil {
		return nil, err
	}
	f.check()
	if err := d.Rep.Err(); err != nil {
		return nil, err
	}
	return f, nil
}

// nameThings gives a name to what has none.
func (f *File) nameThings(file string) {
	name := func(s *string, kind string, i int) {
		if *s == "" {
			*s = fmt.Sprintf("%s %d", kind, i+1)
		}
	}
	if f.Title == "" {
		f.Title = file
	}
	if f.Name == "" {
		f.Name = file
	}
	for i := range f.Bars {
		name(&f.Bars[i].Name, "bar", i)
	}
	for i := range f.Presses {
		p := &f.Presses[i]
		name(&p.Name, "press", i)
		for k := range p.Gauges {
			name(&p.Gauges[k].Name, "gauge", k)
		}
	}
}

// findCard finds the card of like: one of the file's own, a card file beside it, or a bundled one.
func (f *File) findCard() {
	if f.Like == "" || !f.Rep.Clean("like") {
		return
	}
	if own := f.Woods[f.Like]; own != nil && own.Values != nil {
		f.keep(materials.FromTable(f.Like, own.Values))
		return
	}
	if path.Ext(f.Like) != ".toml" {
		f.keep(materials.Find(f.Like))
		return
	}
	src, err := tree.OpenBeside(f.Rep.Find("like").Src, f.Like)
	if err != nil {
		f.Rep.AddKey("like", "%q: %w", f.Like, err)
		return
	}
	f.Rep.Order = append(f.Rep.Order, src)
	f.keep(materials.ParseCard(cases.TrimExt(path.Base(f.Like)), src.Data))
}

// keep takes a card, or tells why there is none.
func (f *File) keep(card materials.Card, err error) {
	if err != nil {
		f.Rep.AddKey("like", "%w", err)
		return
	}
	if f.Humidity != nil {
		f.MoistureNow = materials.Moisture(*f.Humidity, bench)
		card = card.Wetted(f.MoistureNow)
	}
	f.Card = card
}

// bench is the temperature of a workshop, degrees Celsius; wood's moisture hardly goes by it.
const bench = 20

// findTop loads the cases that describe the plate and what it shall become. Their faults are told as their own.
func (f *File) findTop(src *tree.Source) error {
	var err error
	if b := f.Blank; b != nil && b.Case != "" && f.Rep.Clean("blank.case") {
		if f.Top, err = named(src, b.Case); err != nil {
			return err
		}
	}
	if c := f.Carving; c != nil && c.Target != "" && f.Rep.Clean("carving.target") {
		f.Aim, err = named(src, c.Target)
	}
	return err
}

// named opens a case that a bench file names: a file beside it, or a bundled one.
func named(src *tree.Source, name string) (*cases.Case, error) {
	if path.Ext(name) == ".toml" {
		name, _ = src.Beside(name)
	}
	return cases.Open(src.Fsys, name)
}
