package cases

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"archload/cases/tree"
)

// topText is a plate that loads alone, and restText what stands on it.
const (
	topText = `format = 1
[plate]
wood = "sitka-spruce"
outline = [[0, -250], [200, -130], [140, 0], [150, 150], [0, 240], [-150, 150], [-140, 0], [-200, -130]]
thickness = 5
arch.formula = { height = 20 }
`
	restText = `[strings]
front_angle = 5
back_angle = 9
each = [{ name = "a", tension = 100 }, { name = "b", tension = 100 }]
[bridge]
`
)

// files makes a file system of names and texts.
func files(nameText ...string) fs.FS {
	m := fstest.MapFS{}
	for i := 0; i < len(nameText); i += 2 {
		m[nameText[i]] = &fstest.MapFile{Data: []byte(nameText[i+1])}
	}
	return m
}

// mustLoad loads a case that has no faults.
func mustLoad(t *testing.T, fsys fs.FS, name string) *Case {
	t.Helper()
	c, err := Load(fsys, name)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// settings returns the resolved case by key.
func settings(c *Case) map[string]Setting {
	out := map[string]Setting{}
	for _, s := range Resolved(c) {
		out[s.Key] = s
	}
	return out
}

func TestDefaults(t *testing.T) {
	c := mustLoad(t, files("a.toml", topText+restText), "a.toml")
	got := settings(c)
	for _, want := range []Setting{
		{"plate.made", `"carved"`, false},
		{"plate.cut", `"quarter"`, false},
		{"plate.thickness", "5 mm", true},
		{"plate.arch.formula.height", "20 mm", true},
		{"plate.arch.formula.apex", "[0, 0]", false},
		{"plate.arch.formula.recurve_at", "22 mm", false},
		{"rim.support", `"body"`, false},
		{"rim.lining", "[6 mm, 14 mm]", false},
		{"rim.side_wood", `"sugar-maple"`, false},
		{"strings.spread", "52 mm", false},
		{"strings.each[1].tension", "100 N", true},
		{"bridge.hold", `"friction"`, false},
		{"bridge.wood", `"ebony"`, false},
		{"bridge.height", "12 mm", false},
		{"bridge.foot[1].from", "-70 mm", false},
		{"bridge.relief.depth", "0 mm", false},
		{"bridge.relief.shape", `"parabola"`, false},
		{"mesh.size", "6 mm", false},
		{"mesh.refine", "1", false},
	} {
		if got[want.Key] != want {
			t.Errorf("%s: got %q, want %q", want.Key, got[want.Key], want)
		}
	}
	for _, absent := range []string{"strings.scale", "strings.each[1].plain", "plate.hole", "base", "bridge.misfit"} {
		if s, ok := got[absent]; ok {
			t.Errorf("%s is listed as %q, want it left out", absent, s.Value)
		}
	}
}

// TestUnitsInFiles reads the same case in other units, with Windows line ends
// and a byte order mark, in TOML and CSV.
func TestUnitsInFiles(t *testing.T) {
	metric := topText + restText + "width = 12.7\n[[load]]\nat = [25.4, 0]\nforce = [0, 0, -9.80665]\n"
	other := strings.NewReplacer("thickness = 5", `thickness = "0.5 cm"`, "width = 12.7", `width = "0.5 in"`,
		"[25.4, 0]", `["1 in", 0]`, "-9.80665", `"-1 kg"`, "front_angle = 5", `front_angle = "5 deg"`,
		"outline = [[0, -250], [200, -130], [140, 0], [150, 150], [0, 240], [-150, 150], [-140, 0], [-200, -130]]", `outline = "o.csv"`,
		"\n", "\r\n").Replace(metric)
	csv := "\xef\xbb\xbfy_cm, x_mm\r\n-25,0\r\n-13,200\r\n0,140\r\n15,150\r\n\r\n24,0\r\n15,-150\r\n0,-140\r\n-13,-200\r\n"
	a := mustLoad(t, files("a.toml", metric), "a.toml")
	b := mustLoad(t, files("b.toml", "\xef\xbb\xbf"+other, "o.csv", csv), "b.toml")
	if !slices.Equal(a.Plate.Outline.Points, b.Plate.Outline.Points) {
		t.Errorf("outline %v, want %v", b.Plate.Outline.Points, a.Plate.Outline.Points)
	}
	want, got := settings(a), settings(b)
	for key, s := range want {
		if key != "plate.outline" && key != "title" && got[key] != s { // the title is the file's name by default
			t.Errorf("%s: got %q, want %q", key, got[key].Value, s.Value)
		}
	}
}

func TestBase(t *testing.T) {
	dir := files(
		"low/base.toml", strings.Replace(topText, "[plate]", "[plate]\nring_angle = 3", 1)+restText+"width = 15\n[[gauge]]\nname = \"g\"\nat = [0, 0]\n",
		"low/h.csv", "x_mm,y_mm,height_mm\n0,0,20\n",
		"mid.toml", "format = 1\nbase = \"low/base.toml\"\ntitle = \"mid\"\n[bridge]\nlength = 150\n[plate]\narch.points = \"low/h.csv\"\n",
		"top.toml", "format = 1\nbase = \"mid.toml\"\ngauge = []\n[bridge.relief]\ndepth = 0.1\n[strings]\neach = [{ tension = 50 }]\n",
	)
	c := mustLoad(t, dir, "top.toml")
	if c.Title != "mid" || c.Bridge.Width != 15 || c.Bridge.Length != 150 || c.Bridge.Relief.Depth != 0.1 || c.Plate.RingAngle != 3 {
		t.Errorf("title %q, width %g, length %g, relief %g, ring angle %g; want mid, 15, 150, 0.1, 3",
			c.Title, c.Bridge.Width, c.Bridge.Length, c.Bridge.Relief.Depth, c.Plate.RingAngle)
	}
	if len(c.Strings.Each) != 1 || len(c.Gauges) != 0 {
		t.Errorf("%d strings, %d gauges, want lists replaced whole: 1, 0", len(c.Strings.Each), len(c.Gauges))
	}
	if c.Plate.Arch.Formula != nil || c.Plate.Arch.Points == nil {
		t.Error("want the base's formula to give way to the points")
	}
	for _, w := range []struct {
		key, file string
		line      int
	}{
		{"bridge.width", "low/base.toml", 13}, {"bridge.length", "mid.toml", 5},
		{"bridge.relief.depth", "top.toml", 5}, {"bridge.hold", "top.toml", 4}, {"strings.each[1].tension", "top.toml", 7},
	} {
		if file, line := c.Place(w.key); file != w.file || line != w.line {
			t.Errorf("%s at %s:%d, want %s:%d", w.key, file, line, w.file, w.line)
		}
	}
	want := []string{"top.toml", "mid.toml", "low/base.toml", "low/h.csv"}
	if got := c.Files(); !slices.Equal(got, want) {
		t.Errorf("files %v, want %v", got, want)
	}
}

func TestBundledBase(t *testing.T) {
	c := mustLoad(t, files("mine.toml", "format = 1\nbase = \"first\"\n[bridge]\nrelief.depth = 0.2\n"), "mine.toml")
	if c.Bridge.Relief.Depth != 0.2 || len(c.Strings.Each) != 6 {
		t.Errorf("relief %g mm, %d strings, want 0.2 and the six of the bundled case", c.Bridge.Relief.Depth, len(c.Strings.Each))
	}
}

func TestWoods(t *testing.T) {
	text := strings.Replace(topText, `"sitka-spruce"`, `"mine"`, 1) + restText + "wood = \"cards/dark.toml\"\n" +
		"[[brace]]\nline = [[0, 0], [0, 50]]\nwidth = 7\nheight = 9\n" +
		"[wood.mine]\nlike = \"sitka-spruce\"\ndensity = \"0.41 g/cm3\"\nEL = \"11.5 GPa\"\n"
	c := mustLoad(t, files("a.toml", text, "cards/dark.toml", "like = \"ebony\"\ndensity = 1234\n"), "a.toml")
	for _, w := range []struct {
		key     string
		density float64 // kg/m³
	}{{"plate.wood", 410}, {"brace[1].wood", 410}, {"bridge.wood", 1234}} {
		card, err := c.Wood(w.key)
		if err != nil || card.Wood.Density != w.density {
			t.Errorf("%s: density %g kg/m³, %v, want %g", w.key, card.Wood.Density, err, w.density)
		}
	}
	mine, _ := c.Wood("plate.wood")
	if mine.Wood.EL != 11500 {
		t.Errorf("plate EL = %g MPa, want 11500", mine.Wood.EL)
	}
	if _, err := c.Wood("brace[2].wood"); err == nil {
		t.Error("brace[2].wood: want an error, the case has one brace")
	}
}

func TestOpen(t *testing.T) {
	if c, err := Open(files(), "first"); err != nil || c.Files()[0] != "bundled/first.toml" {
		t.Errorf("Open(first): %v, want the bundled case", err)
	}
	if _, err := Open(files("first.toml", topText+restText), "first.toml"); err != nil {
		t.Errorf("Open(first.toml): %v, want the file", err)
	}
	for _, c := range []struct{ name, want string }{
		{"frist", `frist:1: no bundled case of this name; did you mean "first"?`},
		{"frist.toml", `frist.toml:1: no such file; did you mean "first.toml"?`},
		{"../first.toml", "../first.toml:1: no such file"},
	} {
		_, err := Open(files("first.toml", ""), c.name)
		if err == nil || err.Error() != c.want {
			t.Errorf("Open(%s): %v, want %s", c.name, err, c.want)
		}
	}
}

func TestFaultsUnwrap(t *testing.T) {
	_, err := Load(os.DirFS("testdata/bad"), "negative.toml")
	var faults tree.Faults
	if !errors.As(err, &faults) || len(faults) != 4 {
		t.Fatalf("%v: want four faults", err)
	}
	want := tree.FileError{File: "negative.toml", Line: 6, Key: "plate.thickness"}
	if f := faults[0]; f.File != want.File || f.Line != want.Line || f.Key != want.Key || f.Unwrap() == nil {
		t.Errorf("first fault %+v, want %+v", f, want)
	}
}

func TestWarnings(t *testing.T) {
	tilted := strings.Replace(topText+restText, "back_angle = 9", "back_angle = 20", 1)
	for _, c := range []struct {
		text string
		want int
	}{{topText + restText, 0}, {tilted, 1}} {
		got := mustLoad(t, files("a.toml", c.text), "a.toml").Warnings()
		if len(got) != c.want {
			t.Errorf("warnings %v, want %d", got, c.want)
		}
	}
}

func TestSameCaseTwice(t *testing.T) {
	dir := os.DirFS("testdata/bad")
	_, first := Load(dir, "many-faults.toml")
	for range 20 {
		if _, err := Load(dir, "many-faults.toml"); fmt.Sprint(err) != fmt.Sprint(first) {
			t.Fatalf("the same file gives other faults: %v, want %v", err, first)
		}
	}
}

// FuzzLoad wants an error or a valid case from any text, and never a panic.
func FuzzLoad(f *testing.F) {
	dir := os.DirFS("testdata/bad")
	names, err := fs.Glob(dir, "*.toml")
	if err != nil {
		f.Fatal(err)
	}
	for _, name := range names {
		data, err := fs.ReadFile(dir, name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data, []byte("x_mm,y_mm\n0,0\n9,0\n0,9\n"))
	}
	f.Add([]byte(topText+restText), []byte("line,height,x,y\na,1,2,3\n"))
	f.Fuzz(func(t *testing.T, text, csv []byte) {
		fsys := fstest.MapFS{"a.toml": {Data: text}, "points.csv": {Data: csv}, "ring.csv": {Data: csv}, "lines.csv": {Data: csv}}
		c, err := Load(fsys, "a.toml")
		var faults tree.Faults
		switch {
		case err == nil:
			if len(Resolved(c)) == 0 || c.Plate.Thickness.settingText() == "" {
				t.Error("a valid case resolves to nothing")
			}
			c.Warnings()
		case !errors.As(err, &faults) || len(faults) == 0 || faults[0].Line < 1:
			t.Errorf("error %v carries no place", err)
		}
	})
}
