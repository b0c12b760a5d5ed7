package cases

import (
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"archload/cases/tree"
)

// Setting is one key of a case with the value it has, in the units of bare
// numbers.
type Setting struct {
	Key   string `json:"key"`   // "brace[1].width"
	Value string `json:"value"` // as it would be written, with its unit if it has one: "7 mm"
	Set   bool   `json:"set"`   // false: the default
}

// String reads "brace[1].width = 7 mm", with "(default)" behind a default.
func (s Setting) String() string {
	if s.Set {
		return s.Key + " = " + s.Value
	}
	return s.Key + " = " + s.Value + " (default)"
}

// SettingText is a type with its own way to be written; "" leaves it out.
type SettingText interface{ settingText() string }

// Resolved lists every key of the case, defaults included, in the order of
// the Case's fields. What is left out by default (no strings, no holes) is not
// listed.
func Resolved(c *Case) []Setting {
	var out []Setting
	c.listFields(&out, reflect.ValueOf(c).Elem(), "")
	return out
}

// listFields lists the keys of a table.
func (c *Case) listFields(out *[]Setting, v reflect.Value, key string) {
	for _, f := range tree.CaseFields(v.Type()) {
		_, hasDefault := f.Tag.Lookup("default")
		c.list(out, v.FieldByIndex(f.Index), tree.JoinKey(key, f.Tag.Get("toml")), hasDefault)
	}
}

// list lists one key and what is below it. A zero without a default says
// nothing and is left out.
func (c *Case) list(out *[]Setting, v reflect.Value, key string, hasDefault bool) {
	for v.Kind() == reflect.Pointer {
		if v.IsNil() {
			return
		}
		v = v.Elem()
	}
	if text, ok := valueText(v); ok {
		set := c.IsSet(key)
		if text != "" && (set || hasDefault || !v.IsZero()) {
			*out = append(*out, Setting{key, text, set})
		}
		return
	}
	switch v.Kind() {
	case reflect.Struct:
		c.listFields(out, v, key)
	case reflect.Slice:
		for i := range v.Len() {
			c.list(out, v.Index(i), tree.EntryKey(key, i+1), true)
		}
	case reflect.Map:
		for _, name := range sortedNames(v) {
			c.list(out, v.MapIndex(reflect.ValueOf(name)), tree.JoinKey(key, name), true)
		}
	}
}

// valueText writes a value that stands on one line; ok is false for tables
// and lists of tables.
func valueText(v reflect.Value) (text string, ok bool) {
	if s, ok := v.Interface().(SettingText); ok {
		return s.settingText(), true
	}
	if dim, ok := tree.DimensionOf(v.Interface()); ok {
		return tree.WithUnit(v.Float(), dim.Base()), true
	}
	switch v.Kind() {
	case reflect.String:
		if v.Len() == 0 {
			return "", true
		}
		return strconv.Quote(v.String()), true
	case reflect.Bool, reflect.Int:
		return fmt.Sprint(v.Interface()), true
	case reflect.Float64:
		return tree.WithUnit(v.Float(), ""), true
	case reflect.Array, reflect.Slice:
		return listText(v)
	}
	return "", false
}

// listText writes a list of values.
func listText(v reflect.Value) (text string, ok bool) {
	if v.Type().Elem().Kind() == reflect.Struct {
		return "", false
	}
	if v.Len() == 0 {
		return "", true
	}
	parts := make([]string, v.Len())
	for i := range parts {
		if parts[i], ok = valueText(v.Index(i)); !ok {
			return "", false
		}
	}
	return "[" + strings.Join(parts, ", ") + "]", true
}

func (o Outline) settingText() string {
	if o.File == "" {
		return fmt.Sprintf("%d points", len(o.Points))
	}
	return fmt.Sprintf("%q (%d points)", o.File, len(o.Points))
}

func (h HeightTable) settingText() string { return fmt.Sprintf("%q (%d rows)", h.File, len(h.X)) }

func (h Heights) settingText() string {
	if h.Const > 0 {
		return tree.WithUnit(float64(h.Const), "mm")
	}
	for _, t := range h.Tables() {
		if t.Table != nil {
			return t.Key + " " + t.Table.settingText()
		}
	}
	return ""
}

func (st Stations) settingText() string {
	if len(st) == 0 {
		return ""
	}
	parts := make([]string, len(st))
	for i, s := range st {
		parts[i] = fmt.Sprintf("[%g, %g]", s.At, s.Value)
	}
	return "[" + strings.Join(parts, ", ") + "] mm"
}

func (p Profile) settingText() string {
	if len(p.Stations) > 0 {
		return p.Stations.settingText()
	}
	return tree.WithUnit(float64(p.Const), "mm")
}

func (p Note) settingText() string {
	switch {
	case p.Freq == 0:
		return ""
	case p.Name == "":
		return tree.WithUnit(float64(p.Freq), "Hz")
	}
	return fmt.Sprintf("%q (%.6g Hz)", p.Name, p.Freq)
}

func (w Wood) settingText() string {
	parts := make([]string, 0, len(w.Values))
	for _, k := range tree.SortedKeys(w.Values) {
		parts = append(parts, fmt.Sprintf("%s = %v", k, w.Values[k]))
	}
	return "{ " + strings.Join(parts, ", ") + " }"
}

// sortedNames returns the keys of a table of named tables in order.
func sortedNames(v reflect.Value) []string {
	var names []string
	for _, k := range v.MapKeys() {
		names = append(names, k.String())
	}
	slices.Sort(names)
	return names
}
