// Package casetest holds what the tests of the stages share: small case files
// as text, and cases opened without faults.
package casetest

import (
	"io/fs"
	"math"
	"testing"
	"testing/fstest"

	"archload/cases"
)

// TopText is a plate that loads alone, and RestText what stands on it; more
// keys of the bridge may follow.
const (
	TopText = `format = 1
[plate]
wood = "sitka-spruce"
outline = [[0, -250], [200, -130], [140, 0], [150, 150], [0, 240], [-150, 150], [-140, 0], [-200, -130]]
thickness = 5
arch.formula = { height = 20 }
`
	RestText = `[strings]
front_angle = 5
back_angle = 9
each = [{ name = "a", tension = 100 }, { name = "b", tension = 100 }]
[bridge]
`
)

// Files is a file system of the named texts: name, text, name, text ...
func Files(nameText ...string) fs.FS {
	m := fstest.MapFS{}
	for i := 0; i < len(nameText); i += 2 {
		m[nameText[i]] = &fstest.MapFile{Data: []byte(nameText[i+1])}
	}
	return m
}

// Load loads a case that has no faults.
func Load(t testing.TB, fsys fs.FS, name string) *cases.Case {
	t.Helper()
	c, err := cases.Load(fsys, name)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// Open opens a bundled case.
func Open(t testing.TB, name string) *cases.Case {
	t.Helper()
	c, err := cases.Open(nil, name)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// Within fails unless got lies within tol, relative to scale, of want.
func Within(t testing.TB, what string, got, want, scale, tol float64) {
	t.Helper()
	if e := (got - want) / scale; !(math.Abs(e) <= tol) {
		t.Errorf("%s = %.6g, want %.6g: off by %.2f %%, allowed %.2g %%", what, got, want, 100*e, 100*tol)
	}
}

// Near reports whether got is want to within tol.
func Near(got, want, tol float64) bool { return math.Abs(got-want) <= tol }
