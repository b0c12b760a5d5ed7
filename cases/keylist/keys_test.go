package keylist

import (
	"errors"
	"reflect"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"archload/cases"
	"archload/cases/tree"

	"github.com/pelletier/go-toml/v2"
)

// TestKeyExamples writes every example of the list of keys where it belongs,
// alone, and wants it read without a fault.
func TestKeyExamples(t *testing.T) {
	tables, err := All()
	if err != nil {
		t.Fatal(err)
	}
	count := 0
	for _, table := range tables {
		if strings.HasPrefix(table.Head, "[wood.") {
			continue // its numbers depend on each other
		}
		for _, k := range table.Keys {
			count++
			if err := readExample(k, table.Head); err != nil {
				t.Errorf("%s: example %q: %v", k.Path, k.Example, err)
			}
		}
	}
	if count < 90 {
		t.Errorf("%d keys were tried, want 90 at least", count)
	}
}

// readExample decodes one key into an empty case; what else is missing is not
// looked at.
func readExample(k Entry, head string) error {
	files := fstest.MapFS{
		"f-hole.csv":    {Data: []byte("x_mm,y_mm\n0,0\n10,0\n10,10\n")},
		"contours.csv":  {Data: []byte("line,height_mm,x_mm,y_mm\n1,5,0,0\n1,5,10,0\n1,5,10,10\n")},
		"templates.csv": {Data: []byte("station,x_mm,y_mm,height_mm\n1,0,0,5\n1,10,0,6\n")},
		"points.csv":    {Data: []byte("x_mm,y_mm,height_mm\n0,0,5\n1,0,6\n")},
		"case.toml":     {Data: []byte(head + "\n" + k.Example + "\n")},
	}
	src, err := tree.OpenSource(files, "case.toml", "case.toml")
	if err != nil {
		return err
	}
	var values map[string]any
	if err := toml.Unmarshal(src.Data, &values); err != nil {
		return err
	}
	d := cases.NewDecoder()
	d.Table(reflect.ValueOf(&cases.Case{}).Elem(), tree.Grow(src, values, "", 1, nil), "")
	var faults tree.Faults
	if errors.As(d.Rep.Err(), &faults) {
		for _, f := range faults {
			if text := f.Err.Error(); !strings.HasPrefix(text, "missing, want") && !strings.HasPrefix(text, "want exactly one of") {
				return f
			}
		}
	}
	return nil
}

// TestKeysAreAll holds the list against the schema: every key that a complete
// case lists is in it.
func TestKeysAreAll(t *testing.T) {
	tables, err := All()
	if err != nil {
		t.Fatal(err)
	}
	listed := map[string]bool{}
	for _, table := range tables {
		for _, k := range table.Keys {
			if listed[k.Path] {
				t.Errorf("%s is listed twice", k.Path)
			}
			listed[k.Path] = true
			if strings.Contains(k.What, "default:") || strings.HasPrefix(k.What, "mm") {
				t.Errorf("%s: default or unit left in %q", k.Path, k.What)
			}
		}
	}
	infos, err := cases.Bundled()
	if err != nil {
		t.Fatal(err)
	}
	for _, info := range infos {
		c, err := cases.Open(nil, info.Name)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range cases.Resolved(c) {
			plain := entryNumber().ReplaceAllString(s.Key, "")
			if !listed[plain] && !strings.HasPrefix(plain, "wood.") {
				t.Errorf("%s of %s is not in the list of keys", plain, info.Name)
			}
		}
	}
}

// TestParted takes comments apart.
func TestParted(t *testing.T) {
	for _, c := range []struct{ note, what, unit, fallback string }{
		{"mm, its width across; default: 60", "its width across", "mm", "60"},
		{"mm; default: level", "", "mm", "level"},
		{"mm from the middle; default: [-30, 30]", "from the middle", "mm", "[-30, 30]"},
		{"1, multiplies; default: 1", "multiplies", "", "1"},
		{"mm, off it; default with neck_angle: 0.5", "off it", "mm", "0.5 with neck_angle"},
		{"a name. Default: none", "a name", "", "none"},
		{"number of things", "number of things", "", ""},
	} {
		if what, unit, fallback := parted(c.note); what != c.what || unit != c.unit || fallback != c.fallback {
			t.Errorf("parted(%q) = %q, %q, %q, want %q, %q, %q", c.note, what, unit, fallback, c.what, c.unit, c.fallback)
		}
	}
}

// entryNumber matches the number of an entry in a key's path.
func entryNumber() *regexp.Regexp { return regexp.MustCompile(`\[\d+\]`) }
