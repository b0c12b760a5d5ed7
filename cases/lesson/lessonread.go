package lesson

import (
	"errors"
	"fmt"
	"path"
	"reflect"
	"strings"
	"unicode/utf8"

	"archload/cases"
	"archload/cases/bench"
	"archload/cases/tree"
	"archload/mesh"
)

// lessonFile is a lesson as its file has it.
type lessonFile struct {
	Format int        `toml:"format" need:"format = 1"`
	Title  string     `toml:"title" need:"the lesson's title"`
	About  string     `toml:"about" need:"one sentence on what it shows"`
	Steps  []stepFile `toml:"step" need:"at least one [[step]]"`
}

// stepFile is a step as the file has it. Case with its set keys, field, face,
// view and section stay as they are until a step says otherwise.
type stepFile struct {
	Caption string       `toml:"caption" need:"one or two sentences" lines:"several"`
	Caution string       `toml:"caution" lines:"several"`      // default: none
	Case    string       `toml:"case"`                         // a bundled case, or a file beside the lesson; default: the step before's, with its set keys
	Set     lessonKeys   `toml:"set"`                          // default: none
	Beside  string       `toml:"beside"`                       // default: none
	Against lessonKeys   `toml:"beside_set"`                   // keys set on the design beside; default: none
	Bench   string       `toml:"bench"`                        // a bundled bench file, or a file beside the lesson; default: the step before's
	Ask     string       `toml:"ask"`                          // default: none
	Load    float64      `toml:"load" default:"1" want:"0..1"` // 1, of the string load; default: 1
	Play    bool         `toml:"play" default:"false"`         // default: false
	Field   string       `toml:"field"`                        // default: the step before's, at first "none"
	Face    string       `toml:"face"`                         // default: the step before's, at first "outside"
	View    string       `toml:"view"`                         // default: the step before's, at first "at an angle"
	Section string       `toml:"section"`                      // default: the step before's, at first "none"
	More    bool         `toml:"difference" default:"false"`   // default: false, both designs
	Enlarge float64      `toml:"enlarge" want:"0..1000"`       // 1; default: 0, chosen
	Forces  bool         `toml:"forces" default:"false"`       // default: false
	Strip   float64      `toml:"strip" want:"0..1000"`         // mm; default: 0, the whole plate
	Tone    int          `toml:"tone" want:"0..12"`            // default: the lowest
	State   string       `toml:"state"`                        // default: "strung", if there are strings
	Air     float64      `toml:"air" want:"0..95"`             // %; default: dry, as in winter
	AirA    float64      `toml:"beside_air" want:"0..95"`      // %, of the design beside; without one the design itself stands beside, in this air; default: as air
	Sketch  sketchFile   `toml:"sketch"`                       // default: none
	Points  lessonPoints `toml:"point"`                        // one table or a list of them; default: none
	Chart   chartFile    `toml:"chart"`                        // default: none
}

// The longest texts of a lesson, characters: what a window has room for.
const (
	longestCaption = 260
	longestWords   = 48
	longestAsk     = 120
	longestRow     = 90
	mostRows       = 7
)

// lessonKeys are the keys that a step sets, in order of their lines.
type lessonKeys struct {
	set   []tree.KeyValue
	lines []int
}

// DecodeNode reads a table of keys, flat or nested.
func (k *lessonKeys) DecodeNode(d *tree.Decoder, n *tree.Node, key string, _ reflect.StructTag) {
	kids, ok := n.Val.(map[string]*tree.Node)
	if !ok {
		d.Fault(n, key, "want a table of keys, as in set = { \"bridge.relief.depth\" = 0.2 }, found %s", n.What())
		return
	}
	for _, name := range tree.SortedKeys(kids) {
		k.gather(kids[name], name)
	}
}

// gather takes a key, or each key of a table: bridge.relief.depth may stand
// with or without quotes.
func (k *lessonKeys) gather(n *tree.Node, key string) {
	if kids, ok := n.Val.(map[string]*tree.Node); ok && len(kids) > 0 {
		for _, name := range tree.SortedKeys(kids) {
			k.gather(kids[name], dotted(key, name))
		}
		return
	}
	v := cases.Plain(n)
	k.set = append(k.set, tree.KeyValue{Key: key, Value: tree.ChangeValue{Text: tree.ValueWords(v), Value: v}})
	k.lines = append(k.lines, n.Line)
}

// dotted joins keys of which the second may be a path itself.
func dotted(key, name string) string {
	if _, err := tree.SplitKey(name); err == nil {
		return key + "." + name
	}
	return tree.JoinKey(key, name)
}

// lessonPoints reads one point or a list of them.
type lessonPoints []pointFile

// DecodeNode reads one table or a list of them.
func (p *lessonPoints) DecodeNode(d *tree.Decoder, n *tree.Node, key string, _ reflect.StructTag) {
	items, isList := n.Val.([]*tree.Node)
	if !isList {
		items = []*tree.Node{n}
	}
	*p = make(lessonPoints, len(items))
	for i, item := range items {
		sub := key
		if isList {
			sub = tree.EntryKey(key, i+1)
		}
		(*p)[i].key = sub
		d.Decode(reflect.ValueOf(&(*p)[i]).Elem(), item, sub, "")
	}
}

// pointFile is one point as the file has it.
type pointFile struct {
	At    lessonPlace `toml:"at" need:"the name of a part of the case, or a place [x, y] in mm"`
	Words string      `toml:"words"`                  // default: the name
	Old   bool        `toml:"beside" default:"false"` // on the design beside; default: false

	Arrow  [3]float64 `toml:"arrow"`                  // mm; default: none
	Above  float64    `toml:"above" want:"0..200"`    // mm; default: 0, on the top
	Swings bool       `toml:"swings" default:"false"` // default: false

	key string
}

// lessonPlace is a landmark's name or a place of its own.
type lessonPlace struct {
	name string
	at   mesh.Point // mm
}

// DecodeNode reads a name or a place [x, y].
func (p *lessonPlace) DecodeNode(d *tree.Decoder, n *tree.Node, key string, tag reflect.StructTag) {
	switch v := n.Val.(type) {
	case string:
		p.name = v
	case []*tree.Node:
		d.Tuple(reflect.ValueOf(&p.at).Elem(), n, key, tag)
	default:
		d.Fault(n, key, "want the name of a part of the case, or a place [x, y] in mm, found %s", n.What())
	}
}

// lessonReader resolves a decoded lesson.
type lessonReader struct {
	src    *tree.Source
	rep    *tree.FaultLog
	opened map[string]*cases.Case // by name and set keys; nil: faulty
}

func readLesson(src *tree.Source) (*Lesson, error) {
	d := &tree.Decoder{Rep: tree.NewFaultLog(), Tables: map[string]*tree.CsvTable{}, Root: reflect.TypeFor[lessonFile]()}
	d.Rep.Order = []*tree.Source{src}
	top, fault := tree.Parse(src)
	if fault != nil {
		if errors.Is(fault.Err, tree.ErrNoKeys) {
			fault.Err = errors.New("want a lesson (format = 1, title, about, [[step]] ...), found no keys")
		}
		return nil, tree.Faults{fault}
	}
	var f lessonFile
	d.Rep.Places[""] = top.At()
	d.Table(reflect.ValueOf(&f).Elem(), top, "")
	if d.Rep.Clean("format") && f.Format != lessonFormat {
		d.Rep.AddKey("format", "want %d, the lesson format this program reads, found %d", lessonFormat, f.Format)
	}
	if len(f.Steps) == 0 && d.Rep.Clean("step") {
		d.Rep.AddKey("step", "want at least one [[step]], found none")
	}
	r := &lessonReader{src: src, rep: d.Rep, opened: map[string]*cases.Case{}}
	out := &Lesson{Name: cases.TrimExt(path.Base(src.Label)), Title: f.Title, About: f.About}
	before := Step{Field: Fields()[0], Face: Faces()[0], View: "at an angle", Section: Sections()[0]}
	for i := range f.Steps {
		before = r.step(&f.Steps[i], tree.EntryKey("step", i+1), before)
		out.Steps = append(out.Steps, before)
	}
	if err := d.Rep.Err(); err != nil {
		return nil, err
	}
	return out, nil
}

// step resolves one step from the file's words and the step before.
func (r *lessonReader) step(f *stepFile, key string, before Step) Step {
	s := Step{Load: f.Load, Play: f.Play, Case: before.Case, Set: before.Set, Bench: before.Bench, Ask: f.Ask}
	s.Field = r.choice(f.Field, before.Field, key+".field", Fields())
	s.Face = r.choice(f.Face, before.Face, key+".face", Faces())
	s.View = r.choice(f.View, before.View, key+".view", Views())
	s.Section = r.choice(f.Section, before.Section, key+".section", Sections())
	s.State = r.choice(f.State, "", key+".state", States())
	s.Forces, s.Strip, s.Tone, s.Air, s.AirA, s.More, s.Enlarge = f.Forces, f.Strip, f.Tone, f.Air, f.AirA, f.More, f.Enlarge
	if f.Case != "" {
		s.Case, s.Set = r.pathOf(f.Case), nil
	}
	s.Set = tree.Laid(s.Set, f.Set.set...)
	if s.Case == "" {
		r.rep.AddKey(key+".case", "missing in the first step, want the case it shows")
	}
	design := r.open(s.Case, s.Set, designKeys{key + ".case", key + ".set", &f.Set})
	other := r.beside(f, key, &s)
	if f.Bench != "" {
		s.Bench = r.bench(f.Bench, key+".bench")
	}
	s.Caption = r.words(f.Caption, key+".caption", longestCaption, &s, design, other)
	s.Caution = r.words(f.Caution, key+".caution", longestCaption, &s, design, other)
	s.Ask = r.words(f.Ask, key+".ask", longestAsk, &s, design, other)
	s.Sketch = r.sketch(&f.Sketch, key+".sketch", &s, design, other)
	s.Chart = r.chart(&f.Chart, key+".chart", &s, design, other)
	for i := range f.Points {
		p := &f.Points[i]
		p.Words = r.words(p.Words, p.key+".words", longestWords, &s, design, other)
		if !p.Old {
			s.Points = append(s.Points, r.point(p, design))
			continue
		}
		if s.Beside == "" {
			r.rep.AddKey(p.key+".beside", "no second design is shown; want beside = ... in the step")
		}
		s.Points = append(s.Points, r.point(p, other))
	}
	return s
}

// beside opens the design that stands beside the step's own; nil if there is none.
func (r *lessonReader) beside(f *stepFile, key string, s *Step) *cases.Case {
	if f.Beside == "" && f.AirA > 0 { // the same design in two airs
		s.Beside, s.Against = s.Case, s.Set
		return r.opened[fmt.Sprint(s.Case, s.Set)]
	}
	if f.Beside == "" {
		if len(f.Against.set) > 0 {
			r.rep.AddKey(key+".beside_set", "no second design is shown; want beside = ... in the step")
		}
		if f.More {
			r.rep.AddKey(key+".difference", "no second design is shown; want beside = ... in the step")
		}
		return nil
	}
	s.Beside, s.Against = r.pathOf(f.Beside), f.Against.set
	return r.open(s.Beside, s.Against, designKeys{key + ".beside", key + ".beside_set", &f.Against})
}

// designKeys are the keys of a step at which a design is named and changed.
type designKeys struct {
	named, set string
	own        *lessonKeys
}

// bench opens a bench file, to see that it is there and without fault.
func (r *lessonReader) bench(name, key string) string {
	name = r.pathOf(name)
	if _, err := bench.Open(r.src.Fsys, name); err != nil {
		r.rep.AddKey(key, "%w", err)
	}
	return name
}

// short tells a text that is longer than there is room for.
func (r *lessonReader) short(text, key string, most int) {
	if n := utf8.RuneCountInString(text); n > most {
		r.rep.AddKey(key, "want at most %d characters, found %d", most, n)
	}
}

// choice returns a word of a list, or the one of the step before.
func (r *lessonReader) choice(found, before, key string, known []string) string {
	if found == "" {
		return before
	}
	for _, k := range known {
		if k == found {
			return found
		}
	}
	r.rep.AddKey(key, "want one of %s, found %q%s", strings.Join(known, ", "), found, didYouMean(found, known))
	return before
}

// pathOf returns the name of a case as OpenChanged takes it.
func (r *lessonReader) pathOf(name string) string {
	if path.Ext(name) != ".toml" {
		return name
	}
	file, _ := r.src.Beside(name)
	return file
}

// open opens a case with its set keys; nil if it is faulty, which is told at
// the keys.
func (r *lessonReader) open(name string, set []tree.KeyValue, at designKeys) *cases.Case {
	if name == "" {
		return nil
	}
	id := fmt.Sprint(name, set)
	if c, seen := r.opened[id]; seen {
		return c
	}
	const over = "\x00set"
	c, err := cases.OpenChanged(r.src.Fsys, name, over, set)
	r.opened[id] = c
	var faults tree.Faults
	if !errors.As(err, &faults) {
		return c
	}
	for _, f := range faults {
		switch {
		case f.File == over:
			r.rep.Add(tree.Place{Src: r.src, Line: r.lineOf(f, len(set), at)}, at.set+": "+f.Key, f.Err)
		case f.File == name && f.Key == "":
			r.rep.AddKey(at.named, "%q: %w", name, f.Err)
		default:
			r.rep.AddKey(at.named, "%w", f)
		}
	}
	return nil
}

// lineOf is the line of the set key that a fault is about: the fault counts
// the keys in force, of which the last are the step's own.
func (r *lessonReader) lineOf(f *tree.FileError, inForce int, at designKeys) int {
	if i := f.Line - 1 - inForce + len(at.own.lines); i >= 0 && i < len(at.own.lines) {
		return at.own.lines[i]
	}
	return r.rep.Find(at.set).Line
}

// words takes the marks of the claims out of a text of so many characters at most and keeps the
// claims.
func (r *lessonReader) words(text, key string, most int, s *Step, design, other *cases.Case) string {
	plain, claims, err := parseClaims(text)
	if err != nil {
		r.rep.AddKey(key, "%w", err)
		return plain
	}
	r.short(plain, key, most)
	for i := range claims {
		c := &claims[i]
		c.at = tree.FileError{File: r.src.Label, Line: r.rep.Find(key).Line, Key: key}
		if err := c.checkNames(s, design, other); err != nil {
			r.rep.AddKey(key, "%w", err)
		}
	}
	s.Claims = append(s.Claims, claims...)
	return plain
}

// point finds a point on the design.
func (r *lessonReader) point(f *pointFile, design *cases.Case) Point {
	p := Point{Name: f.At.name, At: f.At.at, Words: f.Words, Old: f.Old, Arrow: f.Arrow, Above: f.Above, Swings: f.Swings}
	if p.Words == "" {
		p.Words = p.Name
	}
	if p.Arrow == ([3]float64{}) && (p.Above > 0 || p.Swings) {
		r.rep.AddKey(f.key, "above and swings are of an arrow; want arrow = [x, y, z] in mm with them")
	}
	if p.Words == "" && r.rep.Clean(f.key) {
		r.rep.AddKey(f.key, "want words beside a place that has no name")
	}
	if p.Name == "" || design == nil {
		return p
	}
	var names []string
	for _, l := range Landmarks(design) {
		if l.Name == p.Name {
			p.At = l.At
			return p
		}
		names = append(names, l.Name)
	}
	r.rep.AddKey(f.key+".at", "no part of this name in the case%s; there are %s", didYouMean(p.Name, names), strings.Join(names, ", "))
	return p
}
