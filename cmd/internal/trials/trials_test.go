package main

import (
	"strings"
	"testing"

	"archload/cases"
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
		if off > exactly {
			t.Errorf("%s: off by %.2g, allowed %.2g: %s", info.Name, off, exactly, words)
		}
	}
}
