package live

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"archload/cases"
	"archload/cases/drawing"
	"archload/cases/tree"
)

// Kept writes the design as a case file that starts from the case that was
// opened and holds the keys set by hand. file is where it is to lie, named as
// Begin names a case's file; names in it are taken from there. Lists of which
// one entry was set are written whole, because a case takes lists whole.
func (l *Live) Kept(file string) ([]byte, error) {
	base, err := l.baseFrom(file)
	if err != nil {
		return nil, err
	}
	k := keeper{l: l, dir: path.Dir(file)}
	whole, err := k.tree()
	if err != nil {
		return nil, err
	}
	top := whole.Val.(map[string]*tree.Node)
	delete(top, "title")
	title := l.title()
	k.line("# %s\n", strings.ReplaceAll(title, "\n", " "))
	k.line("# Set by hand on top of %s.\n\n", base)
	k.line("format = %d\n", cases.Format)
	k.line("title = %s\n", tomlText(title))
	k.line("base = %s\n", tomlText(base))
	k.table("", top, reflect.TypeFor[cases.Case]())
	return []byte(k.text.String()), k.err
}

// Stale names the first file of the design that no longer says what was read of it, so that what is kept on
// top of it would be another design; "" if all of them do.
func (l *Live) Stale() string {
	for _, was := range l.c.Rep.Order {
		if was.Data == nil || bundled(was) {
			continue
		}
		info, err := fs.Stat(was.Fsys, was.Path)
		if err == nil && !info.Mode().IsRegular() {
			continue // a pipe is read once
		}
		now, err := tree.OpenSource(was.Fsys, was.Path, was.Label)
		if err != nil || !bytes.Equal(now.Data, was.Data) {
			return was.Label
		}
	}
	return ""
}

// title is the case's; one that speaks of the case as it was is marked.
func (l *Live) title() string {
	if len(l.keys) == 0 || slices.ContainsFunc(l.keys, func(kv tree.KeyValue) bool { return kv.Key == "title" }) {
		return l.c.Title
	}
	return l.c.Title + ", changed"
}

// baseFrom names the opened case as a file at a place would: a bundled case by
// its name, a file by its way from there.
func (l *Live) baseFrom(file string) (string, error) {
	src := l.from.src
	if bundled(src) {
		return cases.TrimExt(path.Base(src.Path)), nil
	}
	if path.Clean(file) == path.Clean(src.Path) {
		return "", fmt.Errorf("%s: want another file than the case that the design starts from", file)
	}
	if path.Ext(src.Path) != ".toml" {
		return "", fmt.Errorf("%s: want a case whose name ends in .toml to start from", src.Path)
	}
	return wayTo(path.Dir(file), src.Path)
}

// bundled says whether a source came with the program.
func bundled(s *tree.Source) bool { return s.Fsys == fs.FS(cases.BundledFiles) }

// wayTo is the way from a folder to a file, both from the same place.
func wayTo(dir, file string) (string, error) {
	dir, file = path.Clean(dir), path.Clean(file)
	if path.IsAbs(dir) != path.IsAbs(file) {
		if path.IsAbs(file) {
			return file, nil
		}
		return "", fmt.Errorf("%s: want a file named from the same place as %s", dir, file)
	}
	var from []string
	if dir != "." && dir != "/" {
		from = strings.Split(strings.TrimPrefix(dir, "/"), "/")
	}
	to := strings.Split(strings.TrimPrefix(file, "/"), "/")
	for len(from) > 0 && len(to) > 1 && from[0] == to[0] {
		from, to = from[1:], to[1:]
	}
	if slices.Contains(from, "..") {
		return "", fmt.Errorf("%s: no way from there to %s is known", dir, file)
	}
	return strings.Repeat("../", len(from)) + strings.Join(to, "/"), nil
}

// keeper writes one file.
type keeper struct {
	l    *Live
	dir  string
	text strings.Builder
	err  error
}

func (k *keeper) line(form string, args ...any) { fmt.Fprintf(&k.text, form, args...) }

// tree holds the keys set by hand, and whole lists where one entry was set.
func (k *keeper) tree() (*tree.Node, error) {
	from := k.l.from
	d := cases.NewDecoder()
	whole := cases.SetKeys(d, from.tree, from.over, k.l.keys)
	if err := d.Rep.Err(); err != nil {
		return nil, err
	}
	out := &tree.Node{Src: from.over, Line: 1, Val: map[string]*tree.Node{}}
	for _, kv := range k.l.keys {
		parts, err := tree.SplitKey(kv.Key)
		if err != nil {
			return nil, err
		}
		value := tree.Grow(from.over, kv.Value.Value, "", 1, nil)
		if i := slices.IndexFunc(parts, func(p tree.KeyPart) bool { return p.Entry > 0 }); i >= 0 {
			parts, value = parts[:i], whole
			for _, p := range parts {
				value = value.Val.(map[string]*tree.Node)[p.Name]
			}
		}
		if out, err = tree.WithKey(out, parts, "", value, cases.Alternatives); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// table writes a table: its values, then the tables and lists of tables in it.
func (k *keeper) table(key string, kids map[string]*tree.Node, t reflect.Type) {
	names := inOrder(kids, t)
	var below []string
	for _, name := range names {
		if nests(kids[name]) {
			below = append(below, name)
			continue
		}
		sub := tree.JoinKey(key, name)
		k.line("%s = %s\n", quotedKey(name), k.value(sub, kids[name]))
	}
	for _, name := range below {
		sub, kid := tree.JoinKey(key, quotedKey(name)), kids[name]
		if inner, ok := kid.Val.(map[string]*tree.Node); ok {
			if slices.ContainsFunc(inOrder(inner, nil), func(n string) bool { return !nests(inner[n]) }) {
				k.line("\n[%s]\n", sub)
			}
			k.table(sub, inner, fieldType(t, name))
			continue
		}
		for _, item := range kid.Val.([]*tree.Node) {
			k.line("\n[[%s]]\n", sub)
			inner := item.Val.(map[string]*tree.Node)
			for _, n := range inOrder(inner, fieldType(t, name)) {
				k.line("%s = %s\n", quotedKey(n), k.value(tree.JoinKey(sub, n), inner[n]))
			}
		}
	}
}

// nests says whether a value is a table or a list of tables.
func nests(n *tree.Node) bool {
	switch v := n.Val.(type) {
	case map[string]*tree.Node:
		return true
	case []*tree.Node:
		for _, e := range v {
			if _, ok := e.Val.(map[string]*tree.Node); !ok {
				return false
			}
		}
		return len(v) > 0
	}
	return false
}

// inOrder lists the keys of a table in the order of the struct that it is read
// into, those it does not know after them.
func inOrder(kids map[string]*tree.Node, t reflect.Type) []string {
	var out []string
	if t != nil && t.Kind() == reflect.Struct {
		for _, f := range tree.CaseFields(t) {
			if _, ok := kids[f.Tag.Get("toml")]; ok {
				out = append(out, f.Tag.Get("toml"))
			}
		}
	}
	for _, name := range tree.SortedKeys(kids) {
		if !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	return out
}

// fieldType is the struct that a key of a table is read into; nil if it is
// none.
func fieldType(t reflect.Type, name string) reflect.Type {
	if t == nil || t.Kind() != reflect.Struct {
		return nil
	}
	for _, f := range tree.CaseFields(t) {
		if f.Tag.Get("toml") != name {
			continue
		}
		e := f.Type
		for e.Kind() == reflect.Pointer || e.Kind() == reflect.Slice {
			e = e.Elem()
		}
		return e
	}
	return nil
}

// value writes a value on one line.
func (k *keeper) value(key string, n *tree.Node) string {
	switch v := n.Val.(type) {
	case string:
		return tomlText(k.named(key, n, v))
	case float64:
		return strconv.FormatFloat(v, 'g', -1, 64)
	case []*tree.Node:
		parts := make([]string, len(v))
		for i, e := range v {
			parts[i] = k.value(key, e)
		}
		return "[" + strings.Join(parts, ", ") + "]"
	case map[string]*tree.Node:
		var parts []string
		for _, name := range tree.SortedKeys(v) {
			parts = append(parts, quotedKey(name)+" = "+k.value(tree.JoinKey(key, name), v[name]))
		}
		return "{ " + strings.Join(parts, ", ") + " }"
	}
	return fmt.Sprint(n.Val)
}

// tomlText is a text in quotes; of Go's escapes TOML lacks the three replaced.
func tomlText(s string) string {
	return strings.NewReplacer(`\\`, `\\`, `\a`, `\u0007`, `\v`, `\u000b`, `\x`, `\u00`).Replace(strconv.Quote(s))
}

// quotedKey is a key as TOML has it.
func quotedKey(name string) string {
	if regexp.MustCompile(`^[A-Za-z0-9_-]+$`).MatchString(name) {
		return name
	}
	return tomlText(name)
}

// named is a text as the kept file must have it: the name of a file is told
// from where the kept one lies.
func (k *keeper) named(key string, n *tree.Node, text string) string {
	name, element, drawn := drawing.Named(text)
	if ext := path.Ext(name); !drawn && ext != ".csv" && ext != ".toml" {
		return text
	}
	if strings.HasSuffix(key, "name") || key == "title" {
		return text
	}
	file, _ := n.Src.Beside(name)
	if bundled(n.Src) {
		k.err = errors.Join(k.err, fmt.Errorf("%s: %q comes with the program and has no name from outside; copy the case to a folder of your own and open it there", key, text))
		return text
	}
	way, err := wayTo(k.dir, file)
	k.err = errors.Join(k.err, err)
	if element != "" {
		way += "#" + element
	}
	return way
}
