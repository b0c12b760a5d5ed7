package study

import (
	"io/fs"
	"maps"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"archload/cases/tree"
)

const broad, narrow = "x_mm,y_mm\n-90,-150\n90,-150\n90,150\n-90,150\n", "x_mm,y_mm\n-80,-150\n80,-150\n80,150\n-80,150\n"

// outlines are the files of a case whose outline is a key of the series.
func outlines() fstest.MapFS {
	return fstest.MapFS{"o.toml": {Data: []byte("format = 1\nbase = \"flat-plate\"\n[plate]\noutline = \"a.csv\"\n")},
		"a.csv": {Data: []byte(broad)}, "b.csv": {Data: []byte(narrow)}}
}

func planned(t *testing.T, fsys fs.FS, program string, texts ...string) *Series {
	t.Helper()
	var changes []tree.Change
	for _, text := range texts {
		changes = append(changes, mustChange(t, text))
	}
	s, err := NewSeries(fsys, "o.toml", changes, SeriesOptions{Refine: 0.25, Part: [2]int{1, 1}, Program: program})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestSeriesReadsOnce: what happens to the files once a series is planned does
// not matter to its rows, neither to points that are still to come nor to those
// that name other files.
func TestSeriesReadsOnce(t *testing.T) {
	change := `plate.outline = ["a.csv", "b.csv", "c.csv"]`
	want := collect(t, planned(t, outlines(), "", change), 1)
	files := outlines()
	s := planned(t, files, "", change)
	for name := range maps.Clone(files) {
		files[name] = &fstest.MapFile{Data: []byte("x_mm,y_mm\n-50,-90\n50,-90\n50,90\n-50,90\n")}
	}
	files["c.csv"] = files["a.csv"]
	got := collect(t, s, 1)
	if !slices.Equal(got, want) {
		t.Errorf("rows after an edit\n%s\nwant\n%s", got, want)
	}
	if !strings.Contains(got[2], `"failed":"--change:1: plate.outline:`) || strings.Contains(got[1], `"failed":"-`) || got[0] == got[1] {
		t.Errorf("rows %s\nwant two sound ones and one without its file", got)
	}
}

// TestSeriesFingerprint: the fingerprint is that of the program and of all
// files that a point may read, not of those of the first point alone.
func TestSeriesFingerprint(t *testing.T) {
	texts := []string{"bridge.relief.depth = [0, 0.1]", `plate.outline = ["a.csv", "b.csv", "c.csv"]`}
	mark := func(program string, edit func(fstest.MapFS)) string {
		files := outlines()
		edit(files)
		return planned(t, files, program, texts...).Head.Fingerprint
	}
	seen := map[string]string{}
	for _, c := range []struct {
		name, program string
		edit          func(fstest.MapFS)
	}{
		{"as it is", "1", func(fstest.MapFS) {}},
		{"another program", "2", func(fstest.MapFS) {}},
		{"the case", "1", func(f fstest.MapFS) { f["o.toml"].Data = append(f["o.toml"].Data, "thickness = 4\n"...) }},
		{"first outline", "1", func(f fstest.MapFS) { f["a.csv"].Data = []byte(narrow) }},
		{"second outline", "1", func(f fstest.MapFS) { f["b.csv"].Data = []byte(broad) }},
		{"third outline, missing so far", "1", func(f fstest.MapFS) { f["c.csv"] = f["b.csv"] }},
	} {
		p := mark(c.program, c.edit)
		if other, same := seen[p]; same {
			t.Errorf("%s: the fingerprint is that of %q", c.name, other)
		}
		seen[p] = c.name
	}
	if p := mark("1", func(f fstest.MapFS) { f["z.csv"] = f["b.csv"] }); seen[p] != "as it is" {
		t.Error("a file that no point reads changes the fingerprint")
	}
}

// TestSteadyClosed: a file that was not read when the series was planned is
// told so, also if it is there.
func TestSteadyClosed(t *testing.T) {
	s := newSteady(outlines())
	if _, err := fs.ReadFile(s, "a.csv"); err != nil {
		t.Fatal(err)
	}
	s.close()
	if data, err := fs.ReadFile(s, "a.csv"); err != nil || string(data) != broad {
		t.Errorf("a file that was read: %q, %v", data, err)
	}
	for _, name := range []string{"b.csv", "none.csv", "."} {
		if _, err := s.Open(name); err == nil || !strings.Contains(err.Error(), "when the series was planned") {
			t.Errorf("%s: %v, want that it was not read", name, err)
		}
		if _, err := fs.Stat(s, name); err == nil {
			t.Errorf("%s: found by Stat", name)
		}
	}
}

func TestMayName(t *testing.T) {
	for v, want := range map[any]bool{"a.csv": true, "1.csv": true, "12a.csv": true, "sitka-spruce": true, "../x": true,
		"5 mm": false, "0.016 in": false, "-3": false, "11.5GPa": false, "1.85e-4 lb/in": false, 5.0: false, int64(3): false, true: false} {
		if got := mayName(v); got != want {
			t.Errorf("%v may name a file: %v, want %v", v, got, want)
		}
	}
	if !mayName([]any{1.0, map[string]any{"wood": "own.toml"}}) || mayName([]any{1.0, "2 mm"}) {
		t.Error("lists and tables are not looked into")
	}
}
