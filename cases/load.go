package cases

import (
	"embed"
	"fmt"
	"io/fs"
	"path"
	"reflect"
	"slices"
	"strings"

	"archload/cases/tree"
	"archload/materials"
)

// BundledFiles are the cases that come with the program, and their tables.
//
//go:embed bundled
var BundledFiles embed.FS

// BundledDir is where they lie in BundledFiles.
const BundledDir = "bundled"

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
func loadChanged(src, over *tree.Source, set []KeyValue) (*Case, error) {
	d := NewDecoder()
	return Finish(d, &Case{Rep: d.Rep}, src, Chain(d, src, nil), over, set)
}

// NewDecoder returns a decoder that fills a Case, with nothing read so far.
func NewDecoder() *tree.Decoder {
	return &tree.Decoder{Rep: tree.NewFaultLog(), Tables: map[string]*tree.CsvTable{}, Root: reflect.TypeFor[Case](),
		Listed: "archload keys",
		Own:    &kept{cards: map[string]materials.Card{}, drawings: map[string]*drawnSheet{}}}
}

// kept is what the keys of a case share while they are read.
type kept struct {
	cards    map[string]materials.Card // bundled cards found, by name
	drawings map[string]*drawnSheet    // by label; nil: faulty
}

// keptBy returns what the decoder of a case keeps.
func keptBy(d *tree.Decoder) *kept { return d.Own.(*kept) }

// CardsFound are the bundled wood cards that the decoder of a case has looked up,
// by name. What is put among them is not looked up again.
func CardsFound(d *tree.Decoder) map[string]materials.Card { return keptBy(d).cards }

// Finish makes a case of the tree of its file and bases, with keys set on top.
func Finish(d *tree.Decoder, c *Case, src *tree.Source, whole *tree.Node, over *tree.Source, set []KeyValue) (*Case, error) {
	if whole != nil && len(set) > 0 {
		whole = SetKeys(d, whole, over, set)
	}
	if whole != nil {
		d.Rep.Places[""] = whole.At()
		d.Table(reflect.ValueOf(c).Elem(), whole, "")
		if c.Title == "" && d.Rep.Clean("title") {
			c.Title = TrimExt(path.Base(src.Label))
		}
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

// Files returns the files the case was read from: the case, its bases, tables
// and wood cards, in the order of opening. Names in bundled cases begin with
// "bundled/".
func (c *Case) Files() []string {
	var out []string
	for _, s := range c.Rep.Order {
		out = append(out, s.Label)
	}
	return out
}

// Place returns the file and line that set a key, or the table it would stand
// in if it is left to its default.
func (c *Case) Place(key string) (file string, line int) {
	p := c.Rep.Find(key)
	return p.Src.Label, p.Line
}

// Fault returns a fault at a key, for what only a later stage can see.
func (c *Case) Fault(key, form string, args ...any) *tree.FileError {
	file, line := c.Place(key)
	return &tree.FileError{File: file, Line: line, Key: key, Err: fmt.Errorf(form, args...)}
}

// IsSet reports whether a key stands in the case or its bases.
func (c *Case) IsSet(key string) bool {
	_, ok := c.Rep.Places[key]
	return ok
}

// openBundled opens a bundled case.
func openBundled(name string) (*tree.Source, error) {
	file := path.Join(BundledDir, name+".toml")
	src, err := tree.OpenSource(BundledFiles, file, file)
	if err == nil {
		return src, nil
	}
	names, listErr := bundledNames()
	if listErr != nil {
		return nil, listErr
	}
	if like := tree.Nearest(name, names); like != "" {
		return nil, fmt.Errorf("no bundled case of this name; did you mean %q?", like)
	}
	return nil, fmt.Errorf("no bundled case of this name (a file needs its ending .toml); there are %s", strings.Join(names, ", "))
}

// bundledNames lists the bundled cases.
func bundledNames() ([]string, error) {
	files, err := fs.Glob(BundledFiles, path.Join(BundledDir, "*.toml"))
	if err != nil {
		return nil, err
	}
	for i, f := range files {
		files[i] = TrimExt(path.Base(f))
	}
	slices.Sort(files)
	return files, nil
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

// BundledFS returns the bundled cases and their tables, for copying.
func BundledFS() (fs.FS, error) { return fs.Sub(BundledFiles, BundledDir) }

// opening returns the first paragraph of a file's opening comment.
func opening(text string) string {
	var words []string
	for line := range strings.Lines(text) {
		body, ok := strings.CutPrefix(strings.TrimSpace(line), "#")
		if !ok || strings.TrimSpace(body) == "" {
			break
		}
		words = append(words, strings.Fields(body)...)
	}
	return strings.Join(words, " ")
}
