package verify

import (
	"io/fs"
	"path"
	"strings"
	"testing"
	"testing/fstest"

	"archload/testdata"
)

// good is a row that lacks nothing.
const good = `[[check]]
name = "n"
quantity = "q"
problem = "scordelis"
read = "sink"
value = 1.5
unit = "mm"
by = "b"
source = "s"
obtained = "read"
kind = "published"
tolerance = 0.01
reason = "r"
`

// TestTableRefuses takes each line that a row needs out of it, or spoils it.
func TestTableRefuses(t *testing.T) {
	folder := func(text string) fs.FS {
		return fstest.MapFS{"verification/a.toml": {Data: []byte(text)}}
	}
	if all, err := table(folder(good), "verification/a.toml"); err != nil || len(all) != 1 {
		t.Fatalf("a whole row: %d rows, error %v, want one and none", len(all), err)
	}
	for _, c := range []struct{ from, to, want string }{
		{`unit = "mm"`, ``, "unit: want text, found none"},
		{`source = "s"`, `source = ""`, "source: want text, found none"},
		{`by = "b"`, ``, "by: want text"},
		{`obtained = "read"`, ``, "obtained: want text"},
		{`reason = "r"`, ``, "reason: want text"},
		{`kind = "published"`, `kind = "heard"`, `found "heard"`},
		{`tolerance = 0.01`, ``, "tolerance: want > 0, found 0"},
		{`tolerance = 0.01`, `tolerance = -1`, "tolerance: want > 0, found -1"},
		{`value = 1.5`, `value = 0`, "scale: want a scale"},
		{`tolerance = 0.01`, `bound = "about"`, `bound: want most, least or none, found "about"`},
		{`tolerance = 0.01`, "tolerance = 0.01\nbound = \"most\"", "tolerance: want none beside"},
		{`tolerance = 0.01`, `bars = [{ divisions = 1, regular = 0.1 }]`, "bars: want divisions >= 2"},
		{`tolerance = 0.01`, `bars = [{ divisions = 8 }]`, "bars: want divisions >= 2 and a tolerance > 0"},
		{`tolerance = 0.01`, "tolerance = 0.01\nsauce = 1", "sauce"},
		{good, `format = "none"`, "format"},
		{good, ``, "want at least one [[check]]"},
	} {
		_, err := table(folder(strings.Replace(good, c.from, c.to, 1)), "verification/a.toml")
		if err == nil || !strings.Contains(err.Error(), c.want) || !strings.Contains(err.Error(), "a.toml") {
			t.Errorf("%q for %q: error %v, want a.toml and %q", c.to, c.from, err, c.want)
		}
	}
}

// TestTablesAreWhole reads the shipped tables: every row names a problem,
// no two rows ask for the same, and the README tells of every table.
func TestTablesAreWhole(t *testing.T) {
	all, err := Tables()
	if err != nil {
		t.Fatal(err)
	}
	known, seen := problems(), map[string]bool{}
	used, told := map[string]bool{}, map[string]bool{}
	readme, err := fs.ReadFile(testdata.Files, "verification/README.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range all {
		if _, ok := known[c.Problem]; !ok {
			t.Errorf("%s: check %d: no problem %q", c.file, c.row, c.Problem)
		}
		used[c.Problem] = true
		told[path.Base(c.file)] = true
		if k := c.Name + ", " + c.Quantity; seen[k] {
			t.Errorf("%s: check %d: %s stands there twice", c.file, c.row, k)
		} else {
			seen[k] = true
		}
	}
	for file := range told {
		if row := "| `" + file + "` |"; !strings.Contains(string(readme), row) {
			t.Errorf("verification/README.md has no row %s", row)
		}
	}
	for name := range known {
		if !used[name] {
			t.Errorf("no table reads the problem %q", name)
		}
	}
}
