package design

import (
	"io/fs"
	"strings"
	"testing"

	"archload/cases"
	"archload/cases/casetest"
	"archload/cases/shape"
	"archload/mesh"
)

func TestBundled(t *testing.T) {
	list, err := cases.Bundled()
	if err != nil {
		t.Fatal(err)
	}
	want := "bench-plate bowed-layout bowed-layout-no-post course-guitar course-guitar-body course-guitar-body-relief " +
		"course-guitar-body-treble course-guitar-crossed course-guitar-elastic course-guitar-friction " +
		"course-guitar-neck course-guitar-posts course-guitar-posts-solid course-guitar-posts-spruce " +
		"course-guitar-relief course-guitar-seasons course-guitar-svg course-guitar-treble course-guitar-treble-relief " +
		"course-guitar-two-feet first flat-plate octave-mandola"
	var names []string
	for _, info := range list {
		names = append(names, info.Name)
		if info.Title == "" || len(info.Shows) < 40 || strings.Contains(info.Shows, "#") {
			t.Errorf("%s: title %q, shows %q, want a title and an opening paragraph", info.Name, info.Title, info.Shows)
		}
	}
	if got := strings.Join(names, " "); got != want {
		t.Errorf("bundled cases %s, want %s", got, want)
	}
}

// TestBundledOpenWithTheirCommand wants each bundled file to open with a
// comment that holds the command which runs it.
func TestBundledOpenWithTheirCommand(t *testing.T) {
	fsys, err := cases.BundledFS()
	if err != nil {
		t.Fatal(err)
	}
	files, err := fs.Glob(fsys, "*.toml")
	if err != nil || len(files) == 0 {
		t.Fatalf("%d files, %v", len(files), err)
	}
	for _, file := range files {
		data, err := fs.ReadFile(fsys, file)
		if err != nil {
			t.Fatal(err)
		}
		comment, _, _ := strings.Cut(string(data), "\nformat")
		if !strings.HasPrefix(comment, "# ") || !strings.Contains(comment, "#   archload ") || !strings.Contains(comment, strings.TrimSuffix(file, ".toml")) {
			t.Errorf("%s: opening comment lacks its command:\n%s", file, comment)
		}
	}
}

// TestFirstIsShort holds the promise of a case of about twelve lines.
func TestFirstIsShort(t *testing.T) {
	fsys, err := cases.BundledFS()
	if err != nil {
		t.Fatal(err)
	}
	data, err := fs.ReadFile(fsys, "first.toml")
	if err != nil {
		t.Fatal(err)
	}
	lines := 0
	for line := range strings.Lines(string(data)) {
		if s := strings.TrimSpace(line); s != "" && s[0] != '#' {
			lines++
		}
	}
	if lines > 16 {
		t.Errorf("first.toml has %d lines, want 16 at most", lines)
	}
}

// TestCourseGuitarGeometry makes the plan and surfaces of the two arches and
// looks at what the demonstration data say: apex 22 mm high at (0, 10) and at
// (22, 10), the rim at 5 mm.
func TestCourseGuitarGeometry(t *testing.T) {
	for _, c := range []struct {
		name string
		apex mesh.Point // mm
	}{{"course-guitar-relief", mesh.Point{0, 10}}, {"course-guitar-treble", mesh.Point{22, 10}}} {
		cs, err := cases.Open(casetest.Files(), c.name)
		if err != nil {
			t.Fatal(err)
		}
		notes, err := shape.NewGeometry(cs)
		if err != nil {
			t.Fatal(err)
		}
		d, plate := notes.Domain(), notes.Plate
		if got := plate.Outer.At(c.apex); !casetest.Near(got.Z, 22, 0.1) || !casetest.Near(got.Zx, 0, 0.01) || !casetest.Near(got.Zy, 0, 0.01) {
			t.Errorf("%s: apex %.3f mm, slopes %.4f %.4f, want 22, level", c.name, got.Z, got.Zx, got.Zy)
		}
		rim := notes.Outline.Polyline(0.1)[0]
		if got := plate.Outer.At(rim).Z; !casetest.Near(got, 5, 0.1) {
			t.Errorf("%s: rim %.3f mm high, want 5", c.name, got)
		}
		if len(d.Holes) != 2 || len(d.Lines) != 2 || len(notes.Warnings) > 0 {
			t.Errorf("%s: %d holes, %d braces, warnings %v; want 2, 2 and none", c.name, len(d.Holes), len(d.Lines), notes.Warnings)
		}
	}
}
