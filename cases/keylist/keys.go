package keylist

import (
	"fmt"
	"reflect"
	"regexp"
	"slices"
	"strings"

	"archload/cases"
	"archload/cases/tree"
	"archload/materials"
)

// Table is one table of a case file and what belongs into it.
type Table struct {
	Head string // as it is written, "[plate]" or "[[brace]]"; "": the keys above all tables
	What string // what it describes
	Keys []Entry
}

// Entry explains one key.
type Entry struct {
	Path    string // "plate.wood"
	Name    string // "wood"
	What    string // meaning, and what it is measured from
	Unit    string // of a bare number; "": none
	Default string // what stands for it if it is left out; "": nothing, it must be written or is one of several
	Needed  bool   // there must be one
	Admits  string // "> 0", "0 to 45", "one of a, b"; "": anything of its kind
	Example string // "width = 7"
}

// All lists every key of a case file, in the order of Case's fields.
func All() ([]Table, error) {
	notes, err := readNotes()
	if err != nil {
		return nil, err
	}
	l := keyLister{notes: notes}
	l.table(reflect.TypeFor[cases.Case](), "", "")
	for i, t := range l.out {
		for _, k := range t.Keys {
			if k.What == "" || k.Example == "" {
				return nil, fmt.Errorf("the key %s of table %d has no comment or no example", k.Path, i)
			}
		}
	}
	return l.out, nil
}

// Named returns the keys that a word names, under their tables: those of
// that name, path or table; else those whose path or meaning holds the word. Numbers of entries in a path do not matter.
func Named(tables []Table, word string) []Table {
	word = strings.ToLower(regexp.MustCompile(`\[\d*\]`).ReplaceAllString(word, ""))
	word = strings.Trim(word, "[]")
	for _, names := range []func(Table, Entry) bool{
		func(t Table, k Entry) bool {
			return slices.Contains([]string{strings.ToLower(k.Path), strings.ToLower(k.Name), strings.Trim(t.Head, "[]")}, word)
		},
		func(_ Table, k Entry) bool {
			return strings.Contains(strings.ToLower(k.Path), word) || strings.Contains(strings.ToLower(k.What), word)
		},
	} {
		var out []Table
		for _, t := range tables {
			some := t
			some.Keys = slices.DeleteFunc(slices.Clone(t.Keys), func(k Entry) bool { return !names(t, k) })
			if len(some.Keys) > 0 {
				out = append(out, some)
			}
		}
		if len(out) > 0 {
			return out
		}
	}
	return nil
}

// keyLister walks the structs of a case file.
type keyLister struct {
	notes map[string]string
	out   []Table
}

// table lists a struct's keys, then the tables below it.
func (l *keyLister) table(t reflect.Type, path, head string) {
	at := len(l.out)
	what := typeNote(t.Name(), l.notes[t.Name()])
	if head == "" {
		what = "above all tables"
	}
	l.out = append(l.out, Table{Head: head, What: what})
	for _, f := range tree.CaseFields(t) {
		key := tree.JoinKey(path, f.Tag.Get("toml"))
		if f.Tag.Get("eg") != "" {
			l.out[at].Keys = append(l.out[at].Keys, keyEntry(f, key, l.notes[t.Name()+"."+f.Name]))
		}
		l.below(f.Type, key)
	}
	if len(l.out[at].Keys) == 0 {
		l.out = append(l.out[:at], l.out[at+1:]...)
	}
}

// below lists the tables that a key may hold.
func (l *keyLister) below(t reflect.Type, key string) {
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	switch {
	case t == reflect.TypeFor[cases.Heights]():
		l.table(cases.ThicknessKeys(), key, "["+key+"]")
	case t == reflect.TypeFor[map[string]*cases.Wood]():
		l.out = append(l.out, woodTable(key))
	case t.Kind() == reflect.Slice && len(keysOf(t.Elem())) > 0:
		l.table(t.Elem(), key, "[["+key+"]]")
	case len(keysOf(t)) > 0:
		l.table(t, key, "["+key+"]")
	}
}

// keysOf are the keys of a table; none of what is no table.
func keysOf(t reflect.Type) []reflect.StructField {
	if t.Kind() != reflect.Struct {
		return nil
	}
	return tree.CaseFields(t)
}

// keyEntry explains one field by its tags and its comment.
func keyEntry(f reflect.StructField, path, note string) Entry {
	name := f.Tag.Get("toml")
	k := Entry{Path: path, Name: name, Needed: f.Tag.Get("need") != "", Admits: admits(f.Tag)}
	k.Example = name + " = " + strings.ReplaceAll(f.Tag.Get("eg"), "'", `"`)
	k.What, k.Unit, k.Default = parted(note)
	if k.Default == "" {
		k.Default = f.Tag.Get("default")
	}
	return k
}

// admits puts a key's range or its words into words.
func admits(tag reflect.StructTag) string {
	if one := strings.Fields(tag.Get("one")); len(one) > 0 {
		return "one of " + strings.Join(one, ", ")
	}
	want := tag.Get("want")
	if lo, hi, span := strings.Cut(want, ".."); span {
		return lo + " to " + hi
	}
	for _, sign := range []string{">=", ">"} {
		if bound, ok := strings.CutPrefix(want, sign); ok {
			return sign + " " + bound
		}
	}
	return want
}

// woodTable lists the keys of a wood of the case's own, with those of a card.
func woodTable(path string) Table {
	path += ".NAME"
	t := Table{Head: "[" + path + "]", What: "a wood of the case's own: a wood card with what you measured (like), or all values"}
	t.Keys = []Entry{{Path: path + ".like", Name: "like", What: "the wood card it starts from", Default: "none, and all of density ... nuRT are written", Example: `like = "sitka-spruce"`}}
	sample, err := materials.Find("sitka-spruce")
	if err != nil {
		panic("cases: " + err.Error())
	}
	for _, e := range sample.Entries() {
		what, unit, _ := materials.Meaning(e.Key)
		if unit == "1" {
			unit = ""
		}
		t.Keys = append(t.Keys, Entry{Path: path + "." + e.Key, Name: e.Key, What: what, Unit: unit, Default: "as like has it",
			Admits: woodRange(e.Key), Example: fmt.Sprintf("%s = %.3g", e.Key, e.Value)})
	}
	t.Keys = append(t.Keys,
		Entry{Path: path + ".scatter", Name: "scatter", What: "how much this piece of wood may still scatter: coefficients of variation by key, as archload bench finds them", Default: "as its species", Example: "scatter = { EL = 0.03, density = 0.01 }"},
		Entry{Path: path + ".together", Name: "together", What: "which of its values go together: correlations of their logarithms, as archload bench finds them", Default: "none", Example: `together = [["EL", "ER", -0.4]]`})
	return t
}

// woodRange is what a number of a wood may be: Poisson's ratios have no sign.
func woodRange(key string) string {
	if strings.HasPrefix(key, "nu") {
		return ""
	}
	if materials.MayVanish(key) {
		return ">= 0"
	}
	return "> 0"
}
