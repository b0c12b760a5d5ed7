package design

import (
	"errors"
	"io/fs"
	"os"
	"path"
	"strings"
	"testing"

	"archload/cases"
	"archload/cases/shape"
	"archload/cases/tree"
	"archload/mesh"
)

// wantedFaults reads testdata/bad/want.txt: for each case file the lines it
// must be refused with, all of them in this order.
func wantedFaults(t *testing.T) (names []string, want map[string]string) {
	t.Helper()
	data, err := os.ReadFile("../testdata/bad/want.txt")
	if err != nil {
		t.Fatal(err)
	}
	want = map[string]string{}
	for _, section := range strings.Split(string(data), "== ")[1:] {
		name, lines, _ := strings.Cut(section, "\n")
		names = append(names, name)
		want[name] = strings.TrimSpace(lines)
	}
	return names, want
}

// shapeFile loads a case and makes its plan and surfaces, up to the mesh.
func shapeFile(fsys fs.FS, name string) error {
	c, err := cases.Load(fsys, name)
	if err != nil {
		return err
	}
	if err := c.AtRest(); err != nil {
		return err
	}
	g, err := shape.NewGeometry(c)
	if err != nil {
		return err
	}
	if _, err = mesh.Triangulate(g.Domain()); err != nil || g.Back == nil {
		return g.PlaceFault(err)
	}
	_, err = mesh.Triangulate(g.Back.Domain())
	return g.Back.PlaceFault(err)
}

func TestBadCases(t *testing.T) {
	t.Parallel()
	dir := os.DirFS("../testdata/bad")
	names, want := wantedFaults(t)
	for _, name := range names {
		err := shapeFile(dir, name)
		if err == nil {
			t.Errorf("%s: no fault found, want\n%s", name, want[name])
			continue
		}
		if got := err.Error(); got != want[name] {
			t.Errorf("%s: got\n%s\nwant\n%s", name, got, want[name])
		}
		var fault *tree.FileError
		if !errors.As(err, &fault) || fault.Line < 1 {
			t.Errorf("%s: %v carries no file and line", name, err)
		}
	}
}

// TestBadCasesAreListed keeps want.txt and the folder together.
func TestBadCasesAreListed(t *testing.T) {
	_, want := wantedFaults(t)
	files, err := fs.Glob(os.DirFS("../testdata/bad"), "*.toml")
	if err != nil || len(files) < 30 {
		t.Fatalf("%d bad cases, %v, want 30 at least", len(files), err)
	}
	for _, f := range files {
		if _, ok := want[path.Base(f)]; !ok && f != "card-with-faults.toml" {
			t.Errorf("%s has no entry in want.txt", f)
		}
	}
}
