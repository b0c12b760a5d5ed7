package live

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/tree"
)

// reopened loads a kept file from a folder that holds it alone beside others.
func reopened(t *testing.T, files map[string]string, name string) *cases.Case {
	t.Helper()
	fsys := fstest.MapFS{}
	for k, v := range files {
		fsys[k] = &fstest.MapFile{Data: []byte(v)}
	}
	c, err := cases.Load(fsys, name)
	if err != nil {
		t.Fatalf("%v in\n%s", err, files[name])
	}
	return c
}

func mustKeep(t *testing.T, l *Live, file string) string {
	t.Helper()
	data, err := l.Kept(file)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// TestKept: a kept design solves to the same numbers, entries of lists among
// the keys.
func TestKept(t *testing.T) {
	l := mustSet(t, mustBegin(t, "course-guitar-relief", quick()), tree.KeyValue{Key: "bridge.relief.depth", Value: tree.Valued(0.1)},
		tree.KeyValue{Key: "brace[1].height", Value: tree.Valued(9.0)}, tree.KeyValue{Key: "brace[2].fitted", Value: tree.Valued(false)}, tree.KeyValue{Key: "strings.each[1].plain", Value: tree.Valued("0.013 in")},
		tree.KeyValue{Key: "plate.wood", Value: tree.Valued("engelmann-spruce")}, tree.KeyValue{Key: "title", Value: tree.Valued("Bar 1 at 9 mm")})
	text := mustKeep(t, l, "mine/kept.toml")
	c := reopened(t, map[string]string{"mine/kept.toml": text}, "mine/kept.toml")
	want, err := l.Report(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	s, err := design.Solve(context.Background(), c, design.Options{Workers: 2, Refine: quick().Refine, NoError: true})
	if err != nil {
		t.Fatal(err)
	}
	sameReports(t, answer.Summarize(s), want)
	if c.Title != "Bar 1 at 9 mm" || c.Base != "course-guitar-relief" {
		t.Errorf("kept as %q on %q, want the title set and the case opened", c.Title, c.Base)
	}
	for _, line := range []string{"# Bar 1 at 9 mm", "[[brace]]", "[bridge.relief]", "depth = 0.1", "height = 9", "fitted = false"} {
		if !strings.Contains(text, line+"\n") {
			t.Errorf("no line %q in\n%s", line, text)
		}
	}
}

// TestKeptEdits: every edit alone is kept as the case that it is.
func TestKeptEdits(t *testing.T) {
	l := mustSet(t, mustBegin(t, "course-guitar", quick()), tree.KeyValue{Key: "bridge.hollow.wall", Value: tree.Valued(3.0)}, tree.KeyValue{Key: "bridge.hollow.depth", Value: tree.Valued(2.0)})
	edits := []tree.KeyValue{
		{Key: "strings.each[2]", Value: tree.ChangeValue{Text: "string", Value: map[string]any{"name": "2", "plain": "0.017 in"}}},
		{Key: "plate.arch.formula", Value: tree.ChangeValue{Text: "formula", Value: map[string]any{"height": 19.0, "apex": []any{3.0, 0.0}}}},
		{Key: "gauge", Value: tree.ChangeValue{Text: "gauges", Value: []any{map[string]any{"at": []any{10.0, 20.0}, "measured": 0.2}}}},
		{Key: "wood.mine", Value: tree.ChangeValue{Text: "wood", Value: map[string]any{"like": "sitka-spruce", "EL": 9000.0}}},
	}
	for _, e := range liveEdits() {
		edits = append(edits, tree.KeyValue{Key: e.key, Value: e.value})
	}
	for _, e := range edits {
		from, err := l.from.with(tree.Laid(l.keys, e))
		if err != nil {
			t.Errorf("%s: %v", e.Key, err)
			continue
		}
		q := &Live{from: from, c: from.last, keys: tree.Laid(l.keys, e)}
		text := mustKeep(t, q, "kept.toml")
		c := reopened(t, map[string]string{"kept.toml": text}, "kept.toml")
		if want := q.title(); c.Title != want {
			t.Errorf("%s: kept under the title %q, want %q", e.Key, c.Title, want)
		}
		for _, k := range design.ChangedKeys(q.c, c) {
			if k != "base" && k != "title" {
				t.Errorf("%s: the kept case differs in %s\n%s", e.Key, k, text)
			}
		}
	}
}

// TestKeptResolved: setting any key to the value it has costs nothing, for the
// values are compared as read, and is kept.
func TestKeptResolved(t *testing.T) {
	l := mustBegin(t, "octave-mandola", quick())
	for _, s := range cases.Resolved(l.Case()) {
		v, err := tree.ParseValues(s.Value)
		if err != nil || len(v) != 1 || strings.Contains(s.Value, "rows)") || strings.Contains(s.Value, "points)") || s.Key == "format" || s.Key == "base" {
			continue // tables and values of several parts
		}
		if c, err := costFrom(l, tree.KeyValue{Key: s.Key, Value: v[0]}); err != nil || c != design.Nothing {
			t.Errorf("%s = %s as it is costs %q (%v), want %q", s.Key, s.Value, c, err, design.Nothing)
		}
	}
}

// TestKeptFiles: names of files in a kept case lead from where it lies to the
// files of the case that was opened.
func TestKeptFiles(t *testing.T) {
	square := "x_mm,y_mm\n-100,-100\n100,-100\n100,100\n-100,100\n"
	base := `format = 1
[plate]
wood = "sitka-spruce"
outline = "../curves/edge.csv"
thickness = 4
arch = { formula = { height = 12 } }
[[plate.hole]]
outline = "hole.csv"
[[plate.hole]]
outline = "ROSE.SVG#rose"
[[load]]
at = [60, 0]
force = [0, 0, -10]
`
	files := map[string]string{"bench/a.toml": base, "curves/edge.csv": square, "bench/hole.csv": "x_mm,y_mm\n-10,-10\n10,-10\n10,10\n-10,10\n",
		"bench/ROSE.SVG": `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="200mm" viewBox="0 0 200 200"><circle id="origin" cx="100" cy="100" r="1"/>` +
			`<circle id="neck" cx="100" cy="20" r="1"/><circle id="treble" cx="160" cy="100" r="1"/><rect id="rose" x="90" y="40" width="20" height="20"/></svg>`}
	fsys := fstest.MapFS{}
	for k, v := range files {
		fsys[k] = &fstest.MapFile{Data: []byte(v)}
	}
	l, err := Begin(context.Background(), fsys, "bench/a.toml", quick())
	if err != nil {
		t.Fatal(err)
	}
	q := mustSet(t, l, tree.KeyValue{Key: "plate.hole[1].name", Value: tree.Valued("rose")}, tree.KeyValue{Key: "plate.outline", Value: tree.Valued("curves/edge.csv")})
	for _, at := range []string{"bench/b.toml", "kept.toml", "far/away/c.toml", "curves/d.toml"} {
		files[at] = mustKeep(t, q, at)
		c := reopened(t, files, at)
		if got, want := pointsOf(c), pointsOf(q.c); got != want {
			t.Errorf("%s: points %s, want %s", at, got, want)
		}
	}
	for _, at := range []string{"bench/a.toml", "bench/../bench/a.toml", "/somewhere/e.toml"} {
		if _, err := q.Kept(at); err == nil {
			t.Errorf("kept as %s, want a refusal", at)
		}
	}
	g := mustBegin(t, "course-guitar", quick())
	q = &Live{from: g.from, c: g.c, keys: []tree.KeyValue{{Key: "plate.hole[1].name", Value: tree.Valued("eye")}}}
	if _, err := q.Kept("kept.toml"); err == nil || !strings.Contains(err.Error(), "comes with the program") {
		t.Errorf("a list with a bundled file gives %v, want a refusal that says so", err)
	}
}

// pointsOf writes the points of the outline and of every hole.
func pointsOf(c *cases.Case) string {
	out := fmt.Sprintln(c.Plate.Outline.Points)
	for _, h := range c.Plate.Holes {
		out += fmt.Sprintln(h.Outline.Points)
	}
	return out
}
