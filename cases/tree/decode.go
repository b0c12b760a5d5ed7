package tree

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"unicode"

	"github.com/pelletier/go-toml/v2"
)

// Decoder fills the case structs from a tree and gathers every fault.
type Decoder struct {
	Rep    *FaultLog
	Tables map[string]*CsvTable // read tables by label; nil: faulty
	Root   reflect.Type         // where the home of a misplaced key is looked for
	Own    any                  // what the types that read themselves share
	Listed string               // where a user finds all keys explained, for messages; "": nowhere
}

// nodeDecoder is a type that reads itself, because its key admits more than
// one kind of value.
type nodeDecoder interface {
	DecodeNode(d *Decoder, n *Node, key string, tag reflect.StructTag)
}

// Decode fills v from n. The tag is that of the struct field, or empty.
func (d *Decoder) Decode(v reflect.Value, n *Node, key string, tag reflect.StructTag) {
	d.Rep.Places[key] = n.At()
	if c, ok := v.Addr().Interface().(nodeDecoder); ok {
		c.DecodeNode(d, n, key, tag)
		return
	}
	if dim, ok := DimensionOf(v.Interface()); ok {
		v.SetFloat(d.Quantity(dim, n, key, tag))
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		d.Decode(v.Elem(), n, key, tag)
	case reflect.Struct:
		d.Table(v, n, key)
	case reflect.Map:
		d.namedTables(v, n, key, tag)
	case reflect.Slice:
		d.List(v, n, key, tag)
	case reflect.Array:
		d.Tuple(v, n, key, tag)
	default:
		d.scalar(v, n, key, tag)
	}
}

// Fault records a fault at a node.
func (d *Decoder) Fault(n *Node, key, form string, args ...any) {
	d.Rep.Add(n.At(), key, fmt.Errorf(form, args...))
}

// Quantity reads a number, with or without unit, and checks its range.
func (d *Decoder) Quantity(dim Dimension, n *Node, key string, tag reflect.StructTag) float64 {
	var x float64
	var err error
	switch v := n.Val.(type) {
	case int64:
		x, err = dim.Number(float64(v))
	case float64:
		x, err = dim.Number(v)
	case string:
		x, err = dim.Parse(v)
	default:
		err = fmt.Errorf("want %s, found %s", dim.Wanted(), n.What())
	}
	if want := tag.Get("want"); err == nil && want != "" {
		err = dim.inRange(x, want)
	}
	if err != nil {
		d.Rep.Add(n.At(), key, err)
		return 0
	}
	return x
}

// scalar reads a word, a switch or a whole number.
func (d *Decoder) scalar(v reflect.Value, n *Node, key string, tag reflect.StructTag) {
	switch v.Kind() {
	case reflect.String:
		s, ok := n.Val.(string)
		if !ok {
			d.Fault(n, key, "want text in quotes, found %s", n.What())
			return
		}
		raw := func(r rune) bool { return unicode.IsControl(r) && (r != '\n' || tag.Get("lines") == "") }
		if strings.ContainsFunc(s, raw) {
			d.Fault(n, key, "want one line of text without control characters, found %q", s)
			return
		}
		if one := strings.Fields(tag.Get("one")); len(one) > 0 && !slices.Contains(one, s) {
			d.Fault(n, key, "want one of %s, found %q", strings.Join(one, ", "), s)
			return
		}
		v.SetString(s)
	case reflect.Bool:
		b, ok := n.Val.(bool)
		if !ok {
			d.Fault(n, key, "want true or false, found %s", n.What())
		}
		v.SetBool(b)
	case reflect.Int:
		i, ok := n.Val.(int64)
		if !ok {
			d.Fault(n, key, "want a whole number, found %s", n.What())
		}
		v.SetInt(i)
	default:
		panic("cases: no rule to decode " + v.Type().String())
	}
}

// List reads an array of any length.
func (d *Decoder) List(v reflect.Value, n *Node, key string, tag reflect.StructTag) {
	items, ok := n.Val.([]*Node)
	if !ok {
		want := "a list"
		if v.Type().Elem().Kind() == reflect.Struct {
			want = fmt.Sprintf("a list of tables, [[%s]]", key)
		}
		d.Fault(n, key, "want %s, found %s", want, n.What())
		return
	}
	if most := tag.Get("most"); most != "" && tagNumber(most) < float64(len(items)) {
		d.Fault(n, key, "want at most %s, found %d", most, len(items))
		return
	}
	v.Set(reflect.MakeSlice(v.Type(), len(items), len(items)))
	for i, item := range items {
		d.Decode(v.Index(i), item, EntryKey(key, i+1), tag)
	}
}

// Tuple reads an array of fixed length: a point, a size, a force.
func (d *Decoder) Tuple(v reflect.Value, n *Node, key string, tag reflect.StructTag) {
	items, ok := n.Val.([]*Node)
	if !ok || len(items) != v.Len() {
		d.Fault(n, key, "want %d numbers [%s], found %s", v.Len(), strings.Join([]string{"x", "y", "z"}[:v.Len()], ", "), n.What())
		return
	}
	for i, item := range items {
		if v.Type().Elem() == reflect.TypeFor[float64]() { // a place: its numbers are lengths
			dim, _ := DimensionOf(Length(0))
			v.Index(i).SetFloat(d.Quantity(dim, item, key, tag))
			continue
		}
		d.Decode(v.Index(i), item, EntryKey(key, i+1), tag)
	}
}

// namedTables reads a table of tables whose names are the user's.
func (d *Decoder) namedTables(v reflect.Value, n *Node, key string, tag reflect.StructTag) {
	kids, ok := n.Val.(map[string]*Node)
	if !ok {
		d.Fault(n, key, "want tables [%s.NAME], found %s", key, n.What())
		return
	}
	if most := tag.Get("most"); most != "" && tagNumber(most) < float64(len(kids)) {
		d.Fault(n, key, "want at most %s, found %d", most, len(kids))
		return
	}
	v.Set(reflect.MakeMap(v.Type()))
	for _, name := range SortedKeys(kids) {
		e := reflect.New(v.Type().Elem()).Elem()
		d.Decode(e, kids[name], JoinKey(key, name), "")
		v.SetMapIndex(reflect.ValueOf(name), e)
	}
}

// Table reads a struct: known keys, defaults for those absent, a fault for
// each unknown one.
func (d *Decoder) Table(v reflect.Value, n *Node, key string) {
	kids, ok := n.Val.(map[string]*Node)
	if !ok {
		d.Fault(n, key, "want a table, found %s", n.What())
		return
	}
	var known []string
	for _, f := range CaseFields(v.Type()) {
		name := f.Tag.Get("toml")
		known = append(known, name)
		sub := JoinKey(key, name)
		if kid, ok := kids[name]; ok {
			d.Decode(v.FieldByIndex(f.Index), kid, sub, f.Tag)
		} else if need := f.Tag.Get("need"); need != "" {
			d.Fault(n, sub, "missing, want %s", need)
		} else {
			d.absent(v.FieldByIndex(f.Index), sub, f)
		}
	}
	for _, name := range SortedKeys(kids) {
		if slices.Contains(known, name) {
			continue
		}
		d.unknown(kids[name], JoinKey(key, name), name, known)
	}
}

// unknown records an unknown key and the known one it resembles.
func (d *Decoder) unknown(n *Node, key, name string, known []string) {
	if d.Rep.full() {
		return
	}
	if like := Nearest(name, known); like != "" {
		d.Fault(n, key, "unknown key; did you mean %q?%s", like, d.listed())
		return
	}
	if home := homesOf(d.Root, "", name); len(home) > 0 {
		d.Fault(n, key, "unknown key here; want it in [%s]%s", strings.Join(home, "] or ["), d.listed())
		return
	}
	d.Fault(n, key, "unknown key; known here: %s%s", strings.Join(known, ", "), d.listed())
}

// listed points to where all keys are explained.
func (d *Decoder) listed() string {
	if d.Listed == "" {
		return ""
	}
	return " (" + d.Listed + " explains all)"
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
	for _, f := range CaseFields(t) {
		key := f.Tag.Get("toml")
		if key == name && table != "" {
			out = append(out, table)
		}
		out = append(out, homesOf(f.Type, JoinKey(table, key), name)...)
	}
	return out
}

// absent fills in the default of a key that is not in the file.
func (d *Decoder) absent(v reflect.Value, key string, f reflect.StructField) {
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
	quiet.Rep = NewFaultLog()
	quiet.Decode(v, Grow(&Source{Label: "default"}, tree["v"], "", 1, nil), key, f.Tag)
	if err := quiet.Rep.Err(); err != nil {
		panic("cases: " + err.Error())
	}
}

// defaultsBelow fills an absent table's own defaults; a table that reads
// itself does so from nothing.
func (d *Decoder) defaultsBelow(v reflect.Value, key string) {
	if _, ok := v.Addr().Interface().(nodeDecoder); ok {
		return
	}
	for _, f := range CaseFields(v.Type()) {
		d.absent(v.FieldByIndex(f.Index), JoinKey(key, f.Tag.Get("toml")), f)
	}
}

// CaseFields returns the fields of a struct that are keys of a case file.
func CaseFields(t reflect.Type) []reflect.StructField {
	var out []reflect.StructField
	for _, f := range reflect.VisibleFields(t) {
		if f.Tag.Get("toml") != "" {
			out = append(out, f)
		}
	}
	return out
}
