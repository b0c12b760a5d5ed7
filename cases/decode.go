package cases

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"unicode"

	"github.com/pelletier/go-toml/v2"
)

// decoder fills the case structs from a tree and gathers every fault.
type decoder struct {
	rep    *faultLog
	tables map[string]*csvTable // read tables by label; nil: faulty
	root   reflect.Type         // where the home of a misplaced key is looked for
	own    any                  // what the types that read themselves share
}

// nodeDecoder is a type that reads itself, because its key admits more than
// one kind of value.
type nodeDecoder interface {
	decodeNode(d *decoder, n *node, key string, tag reflect.StructTag)
}

// decode fills v from n. The tag is that of the struct field, or empty.
func (d *decoder) decode(v reflect.Value, n *node, key string, tag reflect.StructTag) {
	d.rep.places[key] = n.at()
	if c, ok := v.Addr().Interface().(nodeDecoder); ok {
		c.decodeNode(d, n, key, tag)
		return
	}
	if dim, ok := dimensionOf(v.Interface()); ok {
		v.SetFloat(d.quantity(dim, n, key, tag))
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		d.decode(v.Elem(), n, key, tag)
	case reflect.Struct:
		d.table(v, n, key)
	case reflect.Map:
		d.namedTables(v, n, key, tag)
	case reflect.Slice:
		d.list(v, n, key, tag)
	case reflect.Array:
		d.tuple(v, n, key, tag)
	default:
		d.scalar(v, n, key, tag)
	}
}

// fault records a fault at a node.
func (d *decoder) fault(n *node, key, form string, args ...any) {
	d.rep.add(n.at(), key, fmt.Errorf(form, args...))
}

// quantity reads a number, with or without unit, and checks its range.
func (d *decoder) quantity(dim dimension, n *node, key string, tag reflect.StructTag) float64 {
	var x float64
	var err error
	switch v := n.val.(type) {
	case int64:
		x, err = dim.number(float64(v))
	case float64:
		x, err = dim.number(v)
	case string:
		x, err = dim.parse(v)
	default:
		err = fmt.Errorf("want %s, found %s", dim.wanted(), n.what())
	}
	if want := tag.Get("want"); err == nil && want != "" {
		err = dim.inRange(x, want)
	}
	if err != nil {
		d.rep.add(n.at(), key, err)
		return 0
	}
	return x
}

// scalar reads a word, a switch or a whole number.
func (d *decoder) scalar(v reflect.Value, n *node, key string, tag reflect.StructTag) {
	switch v.Kind() {
	case reflect.String:
		s, ok := n.val.(string)
		if !ok {
			d.fault(n, key, "want text in quotes, found %s", n.what())
			return
		}
		raw := func(r rune) bool { return unicode.IsControl(r) && (r != '\n' || tag.Get("lines") == "") }
		if strings.ContainsFunc(s, raw) {
			d.fault(n, key, "want one line of text without control characters, found %q", s)
			return
		}
		if one := strings.Fields(tag.Get("one")); len(one) > 0 && !slices.Contains(one, s) {
			d.fault(n, key, "want one of %s, found %q", strings.Join(one, ", "), s)
			return
		}
		v.SetString(s)
	case reflect.Bool:
		b, ok := n.val.(bool)
		if !ok {
			d.fault(n, key, "want true or false, found %s", n.what())
		}
		v.SetBool(b)
	case reflect.Int:
		i, ok := n.val.(int64)
		if !ok {
			d.fault(n, key, "want a whole number, found %s", n.what())
		}
		v.SetInt(i)
	default:
		panic("cases: no rule to decode " + v.Type().String())
	}
}

// list reads an array of any length.
func (d *decoder) list(v reflect.Value, n *node, key string, tag reflect.StructTag) {
	items, ok := n.val.([]*node)
	if !ok {
		want := "a list"
		if v.Type().Elem().Kind() == reflect.Struct {
			want = fmt.Sprintf("a list of tables, [[%s]]", key)
		}
		d.fault(n, key, "want %s, found %s", want, n.what())
		return
	}
	if most := tag.Get("most"); most != "" && tagNumber(most) < float64(len(items)) {
		d.fault(n, key, "want at most %s, found %d", most, len(items))
		return
	}
	v.Set(reflect.MakeSlice(v.Type(), len(items), len(items)))
	for i, item := range items {
		d.decode(v.Index(i), item, entryKey(key, i+1), tag)
	}
}

// tuple reads an array of fixed length: a point, a size, a force.
func (d *decoder) tuple(v reflect.Value, n *node, key string, tag reflect.StructTag) {
	items, ok := n.val.([]*node)
	if !ok || len(items) != v.Len() {
		d.fault(n, key, "want %d numbers [%s], found %s", v.Len(), strings.Join([]string{"x", "y", "z"}[:v.Len()], ", "), n.what())
		return
	}
	for i, item := range items {
		if v.Type().Elem() == reflect.TypeFor[float64]() { // a place: its numbers are lengths
			dim, _ := dimensionOf(Length(0))
			v.Index(i).SetFloat(d.quantity(dim, item, key, tag))
			continue
		}
		d.decode(v.Index(i), item, entryKey(key, i+1), tag)
	}
}

// namedTables reads a table of tables whose names are the user's.
func (d *decoder) namedTables(v reflect.Value, n *node, key string, tag reflect.StructTag) {
	kids, ok := n.val.(map[string]*node)
	if !ok {
		d.fault(n, key, "want tables [%s.NAME], found %s", key, n.what())
		return
	}
	if most := tag.Get("most"); most != "" && tagNumber(most) < float64(len(kids)) {
		d.fault(n, key, "want at most %s, found %d", most, len(kids))
		return
	}
	v.Set(reflect.MakeMap(v.Type()))
	for _, name := range sortedKeys(kids) {
		e := reflect.New(v.Type().Elem()).Elem()
		d.decode(e, kids[name], joinKey(key, name), "")
		v.SetMapIndex(reflect.ValueOf(name), e)
	}
}

// table reads a struct: known keys, defaults for those absent, a fault for
// each unknown one.
func (d *decoder) table(v reflect.Value, n *node, key string) {
	kids, ok := n.val.(map[string]*node)
	if !ok {
		d.fault(n, key, "want a table, found %s", n.what())
		return
	}
	var known []string
	for _, f := range caseFields(v.Type()) {
		name := f.Tag.Get("toml")
		known = append(known, name)
		sub := joinKey(key, name)
		if kid, ok := kids[name]; ok {
			d.decode(v.FieldByIndex(f.Index), kid, sub, f.Tag)
		} else if need := f.Tag.Get("need"); need != "" {
			d.fault(n, sub, "missing, want %s", need)
		} else {
			d.absent(v.FieldByIndex(f.Index), sub, f)
		}
	}
	for _, name := range sortedKeys(kids) {
		if slices.Contains(known, name) {
			continue
		}
		d.unknown(kids[name], joinKey(key, name), name, known)
	}
}

// unknown records an unknown key and the known one it resembles.
func (d *decoder) unknown(n *node, key, name string, known []string) {
	if d.rep.full() {
		return
	}
	if like := nearest(name, known); like != "" {
		d.fault(n, key, "unknown key; did you mean %q?", like)
		return
	}
	if home := homesOf(d.root, "", name); len(home) > 0 {
		d.fault(n, key, "unknown key here; want it in [%s]", strings.Join(home, "] or ["))
		return
	}
	d.fault(n, key, "unknown key; known here: %s", strings.Join(known, ", "))
}

// homesOf returns the tables below a struct type that have a key of this name.
func homesOf(t reflect.Type, table, name string) []string {
	for t.Kind() == reflect.Pointer || t.Kind() == reflect.Slice {
		t = t.Elem()
	}
	if t.Kind() != reflect.Struct {
		return nil
	}
	var out []string
	for _, f := range caseFields(t) {
		key := f.Tag.Get("toml")
		if key == name && table != "" {
			out = append(out, table)
		}
		out = append(out, homesOf(f.Type, joinKey(table, key), name)...)
	}
	return out
}

// absent fills in the default of a key that is not in the file.
func (d *decoder) absent(v reflect.Value, key string, f reflect.StructField) {
	text, ok := f.Tag.Lookup("default")
	if !ok {
		if v.Kind() == reflect.Struct {
			d.defaultsBelow(v, key)
		}
		return
	}
	if v.Kind() == reflect.String {
		v.SetString(text)
		return
	}
	var tree map[string]any
	if err := toml.Unmarshal([]byte("v = "+text), &tree); err != nil {
		panic("cases: malformed default of " + key + ": " + text)
	}
	quiet := *d // a default has no place in a file
	quiet.rep = newFaultLog()
	quiet.decode(v, grow(&source{label: "default"}, tree["v"], "", 1, nil), key, f.Tag)
	if err := quiet.rep.err(); err != nil {
		panic("cases: " + err.Error())
	}
}

// defaultsBelow fills an absent table's own defaults; a table that reads
// itself does so from nothing.
func (d *decoder) defaultsBelow(v reflect.Value, key string) {
	if _, ok := v.Addr().Interface().(nodeDecoder); ok {
		return
	}
	for _, f := range caseFields(v.Type()) {
		d.absent(v.FieldByIndex(f.Index), joinKey(key, f.Tag.Get("toml")), f)
	}
}

// caseFields returns the fields of a struct that are keys of a case file.
func caseFields(t reflect.Type) []reflect.StructField {
	var out []reflect.StructField
	for _, f := range reflect.VisibleFields(t) {
		if f.Tag.Get("toml") != "" {
			out = append(out, f)
		}
	}
	return out
}
