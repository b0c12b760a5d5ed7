package main

import (
	"os"
	"path/filepath"
	"slices"
	"testing"
)

// TestFloors takes one package at a time.
func TestFloors(t *testing.T) {
	m := &module{Path: "m", Main: true}
	f := floors{
		"m/cases":       {"m/mesh", "example.org/toml/..."},
		"m/mesh":        {"syscall"},
		"m/viz":         {},
		"m/cmd/tool":    {"m/cases"},
		"m/cmd/in/disk": {},
	}
	const listless = ": its line does not list it"
	for _, c := range []struct{ name, path, imported, want string }{
		{"cases", "m/cases", "m/mesh", ""},
		{"cases", "m/cases", "m/mesh/delaunay", listless},
		{"cases", "m/cases", "m/viz", listless},
		{"cases", "m/cases", "example.org/toml", ""},
		{"cases", "m/cases", "example.org/toml/unstable", ""},
		{"cases", "m/cases", "example.org/tomlet", listless},
		{"cases", "m/cases", "strings", ""},
		{"cases", "m/cases", "time", ""},
		{"cases", "m/cases", "io/fs", ""},
		{"cases", "m/cases", "os", ": only commands touch the system"},
		{"viz", "m/viz", "os/exec", ": only commands touch the system"},
		{"viz", "m/viz", "net/http", ": only commands touch the system"},
		{"viz", "m/viz", "log/slog", ": only commands touch the system"},
		{"viz", "m/viz", "flag", ": only commands touch the system"},
		{"viz", "m/viz", "syscall", ": only commands touch the system"},
		{"mesh", "m/mesh", "syscall", ""},
		{"mesh", "m/mesh", "time", ": the physics has no clock and no chance"},
		{"mesh", "m/mesh", "math/rand/v2", ": the physics has no clock and no chance"},
		{"mesh", "m/mesh", "crypto/rand", ": the physics has no clock and no chance"},
		{"mesh", "m/mesh", "math", ""},
		{"main", "m/cmd/tool", "os", ""},
		{"main", "m/cmd/tool", "m/mesh", listless},
		{"disk", "m/cmd/in/disk", "os", ""},
	} {
		p := listed{ImportPath: c.path, Name: c.name, Module: m, Imports: []string{c.imported}}
		if got := refused(p, f[c.path], c.imported); got != c.want {
			t.Errorf("%s imports %s: got %q, want %q", c.path, c.imported, got, c.want)
		}
	}
}

// TestFloorsAreWhole: a package without a line and a line without a package are faults.
func TestFloorsAreWhole(t *testing.T) {
	f := floors{"m/old": nil, "m/viz": nil}
	m := &module{Path: "m", Main: true}
	got := f.faults([]listed{
		{ImportPath: "m/new", Module: m},
		{ImportPath: "m/viz", Module: m, Imports: []string{"m/new"}},
		{ImportPath: "strings", DepOnly: true, Imports: []string{"os"}},
	})
	want := []string{
		"m/new has no floor; give it a line in .ci/floors",
		"m/old has a line in .ci/floors, but there is no such package",
		"m/viz may not import m/new: its line does not list it",
	}
	if !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestReadFloors(t *testing.T) {
	dir := t.TempDir()
	if err := os.Mkdir(filepath.Join(dir, ".ci"), 0o777); err != nil {
		t.Fatal(err)
	}
	write := func(text string) {
		if err := os.WriteFile(filepath.Join(dir, floorsFile), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	write("# a head\n\na  b c/... # why\nd\n")
	if f, err := readFloors(dir); err != nil || len(f) != 2 || !slices.Equal(f["a"], []string{"b", "c/..."}) || len(f["d"]) != 0 {
		t.Errorf("got %q, %v", f, err)
	}
	write("a b\na c\n")
	if _, err := readFloors(dir); err == nil {
		t.Error("two lines for one package were taken")
	}
}
