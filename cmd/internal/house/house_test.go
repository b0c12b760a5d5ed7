package main

import (
	"bytes"
	"errors"
	"io"
	"strings"
	"testing"
)

// TestCottage counts a small module whose numbers are known by looking.
func TestCottage(t *testing.T) {
	var got bytes.Buffer
	err := house([]string{"-C", "testdata/cottage"}, &got, io.Discard)
	if !errors.Is(err, errCrowded) {
		t.Errorf("a package in which 1 of 4 uses runs back ends with %v, want %v", err, errCrowded)
	}
	for _, want := range []string{
		"12 1 1 0 0 cottage/attic",
		"41 4 2 4 1! cottage/cellar",
	} {
		if !strings.Contains(spaced(got.String()), want) {
			t.Errorf("the table lacks %q:\n%s", want, &got)
		}
	}
	if err := house([]string{"-C", "testdata/cottage", "-report"}, io.Discard, io.Discard); err != nil {
		t.Errorf("-report fails: %v", err)
	}
}

func TestWhy(t *testing.T) {
	var got bytes.Buffer
	if err := house([]string{"-C", "testdata/cottage", "-why", "./cellar"}, &got, io.Discard); err != nil {
		t.Fatal(err)
	}
	const want = `cottage/cellar: 4 uses between files, 1 run back up. The files, lowest first:
	wine.go
	shelf.go
	list.go
wine.go uses shelf.go above it: thisYear
`
	if got.String() != want {
		t.Errorf("got\n%swant\n%s", &got, want)
	}
}

// TestRefused: what cannot be counted is said, not left out.
func TestRefused(t *testing.T) {
	for _, args := range [][]string{
		{"-C", "testdata/cottage", "-why", "./nowhere"},
		{"-C", "testdata/nowhere"},
		{"./cellar"},
		{"-what"},
	} {
		if err := house(args, io.Discard, io.Discard); err == nil {
			t.Errorf("house %v ends well", args)
		}
	}
}

// spaced puts one space for each run of blanks.
func spaced(s string) string { return strings.Join(strings.Fields(s), " ") }
