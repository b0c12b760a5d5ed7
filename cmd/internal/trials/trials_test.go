package main

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"archload/cases"
	"archload/cases/tree"
)

// TestTrials holds all laws to a handful of designs; the program itself goes on
// for as long as one likes.
func TestTrials(t *testing.T) {
	tl := newTally()
	for seed := range uint64(4) {
		tl.try(t.Context(), seed+2, 0.25)
	}
	var out strings.Builder
	tl.report(&out)
	if tl.broken > 0 || tl.unanswered > 2 {
		t.Errorf("laws broken, or too few designs with an answer:\n%s", &out)
	}
	for _, l := range laws() {
		if tl.tried[l.name] == 0 {
			t.Errorf("%s was never tried", l.name)
		}
	}
}

// TestLawsBite wants a law broken by a design that is no mirror image: its strings
// stay where they were.
func TestLawsBite(t *testing.T) {
	c, err := drawn(2, inMM)
	if err != nil {
		t.Fatal(err)
	}
	a, err := solve(t.Context(), c, 0.25)
	if err != nil {
		t.Fatal(err)
	}
	m := mirrored(c)
	m.Bridge.At[0] += 0.1
	b, err := solve(t.Context(), m, 0.25)
	if err != nil {
		t.Fatal(err)
	}
	if off, _ := a.mirrored().off(b); off < 1e-5 {
		t.Errorf("a bridge 0.1 mm beside its place: answers off by %.2g, want the law to see it", off)
	}
}

// TestBundledMirror mirrors every bundled case and compares all quantities.
func TestBundledMirror(t *testing.T) {
	infos, err := cases.Bundled()
	if err != nil {
		t.Fatal(err)
	}
	for _, info := range infos {
		c, err := cases.Open(nil, info.Name)
		if err != nil {
			t.Fatal(err)
		}
		a, err := solve(t.Context(), c, 0.2)
		if err != nil {
			t.Fatal(err)
		}
		b, err := solve(t.Context(), mirrored(c), 0.2)
		if err != nil {
			t.Fatal(err)
		}
		off, words := a.mirrored().off(b)
		t.Logf("%s: off by %.2g: %s", info.Name, off, words)
		most := exactly
		if rough(c) {
			most = closely
		}
		if off > most {
			t.Errorf("%s: off by %.2g, allowed %.2g: %s", info.Name, off, most, words)
		}
	}
}

// TestMutants tries some changed texts, and wants that most kinds of fate come up.
func TestMutants(t *testing.T) {
	b, err := newBreeder()
	if err != nil {
		t.Fatal(err)
	}
	tl := newTally()
	for seed := range uint64(60) {
		tl.breed(t.Context(), b, seed)
	}
	if n := tl.mutants; n.broken > 0 || n.refused == 0 || n.refused == n.all || n.solved == 0 {
		var out strings.Builder
		tl.report(&out)
		t.Errorf("broken laws, or mutants all of one kind:\n%s", &out)
	}
}

// TestMutantsBite wants what a mutant may not do to be seen.
func TestMutantsBite(t *testing.T) {
	files := fstest.MapFS{"a.toml": {Data: []byte("format = 1\n")}}
	for _, test := range []struct {
		err  error
		want string
	}{
		{errors.New("no"), "without a place"},
		{&tree.FileError{File: "a.toml", Line: 9, Err: errors.New("no")}, "line that is not there"},
		{&tree.FileError{File: "b.toml", Line: 1, Err: errors.New("no")}, "file that is not there"},
		{&tree.FileError{File: "a.toml", Line: 1, Err: fmt.Errorf("found %d%%!s(MISSING)", 1)}, "not told for people"},
		{&tree.FileError{File: "a.toml", Line: 1, Err: errors.New("want 1, found NaN")}, ""},
	} {
		if got := unclear(test.err, files); (got == "") != (test.want == "") || !strings.Contains(got, test.want) {
			t.Errorf("%v: said %q, want %q in it", test.err, got, test.want)
		}
	}
	var f fate
	if within(time.Minute, func() { panic("no") }, &f) || !strings.Contains(f.broken, "panic: no") {
		t.Errorf("a panic: %+v", f)
	}
	if within(time.Millisecond, func() { select {} }, &f) || !strings.Contains(f.broken, "not done") {
		t.Errorf("what hangs: %+v", f)
	}
}
