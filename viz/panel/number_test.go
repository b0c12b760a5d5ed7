package panel

import (
	"errors"
	"math"
	"strings"
	"testing"
)

func TestNumberTakesAndGivesBack(t *testing.T) {
	for _, c := range []struct {
		typed  string
		end    Key
		want   float64
		typing bool
	}{
		{"12.5", KeyEnter, 12.5, false},
		{"12,5", KeyEnter, 12.5, false},
		{" 7 mm ", KeyEnter, 7, false},
		{"7mm", KeyEnter, 7, false},
		{"1e1", KeyEnter, 10, false},
		{"4", KeyEnter, 4, false},
		{"30", KeyEnter, 30, false},
		{"30.1", KeyEnter, 13, true},
		{"−5", KeyEnter, 13, true},
		{"wide", KeyEnter, 13, true},
		{"NaN", KeyEnter, 13, true},
		{"inf", KeyEnter, 13, true},
		{"12.5", KeyEscape, 13, false},
		{"12.5", KeyTab, 12.5, false},
		{"99", KeyTab, 13, false},
	} {
		s := newPage(t, 1)
		s.click(s.find(t, "width").At.Centre())
		s.write(c.typed)
		if got := s.find(t, "width").Value; got != c.typed {
			t.Errorf("typed %q, shown %q", c.typed, got)
		}
		s.keys(c.end)
		if s.width != c.want || (s.entry.id == "width") != c.typing {
			t.Errorf("%q: %g, typing %v; want %g, %v", c.typed, s.width, s.entry.id, c.want, c.typing)
		}
		if c.typing && !strings.HasPrefix(s.entry.fault, "want ") {
			t.Errorf("%q: fault %q", c.typed, s.entry.fault)
		}
	}
}

func TestNumberFaultIsShown(t *testing.T) {
	s := newPage(t, 1)
	s.click(s.find(t, "width").At.Centre())
	s.write("300")
	s.step(Input{Away: true})
	plain := len(s.list.Vertices)
	s.keys(KeyEnter)
	if got, want := s.entry.fault, "want 4 to 30 mm"; got != want || len(s.list.Vertices) < plain+6*len(want)/2 {
		t.Errorf("fault %q, want %q; %d vertices, %d before", got, want, len(s.list.Vertices), plain)
	}
	s.keys(KeyBackspace)
	if s.entry.fault != "" {
		t.Errorf("fault %q after a letter was taken away", s.entry.fault)
	}
	s.keys(KeyEnter)
	if s.width != 30 {
		t.Errorf("width %g, want 30", s.width)
	}
}

func TestNumberEditing(t *testing.T) {
	s := newPage(t, 1)
	s.click(s.find(t, "height").At.Centre()) // 24.5, all selected
	s.keys(KeyEnd, KeyLeft, KeyLeft, KeyBackspace)
	s.write("7")
	s.keys(KeyHome, KeyDelete)
	s.write("3")
	if got, want := string(s.entry.text), "37.5"; got != want {
		t.Errorf("edited to %q, want %q", got, want)
	}
	s.step(Input{Away: true, Keys: []KeyPress{{Key: LetterKey('a'), Ctrl: true}}})
	s.write("41")
	s.keys(KeyEnter)
	if s.height != 41 {
		t.Errorf("height %g, want 41", s.height)
	}
	s.keys(KeyUp, KeyUp)
	if s.height != 42 {
		t.Errorf("two steps up: %g, want 42", s.height)
	}
	s.keys(KeyEnter, KeyDown)
	if s.height != 41.5 || s.find(t, "height").Value != "41.5" {
		t.Errorf("a step down while typing: %g, shown %q", s.height, s.find(t, "height").Value)
	}
	s.write(strings.Repeat("9", 100))
	if len(s.entry.text) != longestEntry {
		t.Errorf("%d letters, want at most %d", len(s.entry.text), longestEntry)
	}
	s.keys(KeyEscape)
	if s.height != 41.5 {
		t.Errorf("Escape: %g, want 41.5", s.height)
	}
}

// TestNumberKeepsHiddenDigits: opening and accepting changes nothing.
func TestNumberKeepsHiddenDigits(t *testing.T) {
	s := newPage(t, 1)
	s.width = 13.0049
	s.click(s.find(t, "width").At.Centre())
	s.keys(KeyEnter)
	if s.width != 13.0049 {
		t.Errorf("width %.6g, want 13.0049", s.width)
	}
}

// TestNumberTakenByAClick: leaving by a click elsewhere takes a good number.
func TestNumberTakenByAClick(t *testing.T) {
	for _, at := range []Point{{318, 300}, {500, 40}} {
		s := newPage(t, 1)
		s.click(s.find(t, "width").At.Centre())
		s.write("17")
		s.click(at)
		s.step(Input{Away: true})
		if s.width != 17 || s.entry.id != "" {
			t.Errorf("clicked at %v: width %g, want 17", at, s.width)
		}
	}
}

func TestNumberParse(t *testing.T) {
	n := Number{Min: 0, Max: 100, Unit: "mm", Parse: func(text string) (float64, error) {
		if text != "1 in" {
			return 0, errors.New("want an inch")
		}
		return 25.4, nil
	}}
	if v, err := n.read("1 in"); v != 25.4 || err != nil {
		t.Errorf("read %g, %v", v, err)
	}
	if v, err := n.read("2"); v != 2 || err != nil {
		t.Errorf("a plain number is read as %g, %v", v, err)
	}
	if _, err := n.read("2 ft"); err == nil || err.Error() != "want an inch" {
		t.Errorf("the caller's fault is lost: %v", err)
	}
}

func TestNumberWords(t *testing.T) {
	for _, c := range []struct {
		v        float64
		decimals int
		want     string
	}{{-0.001, 2, "0.00"}, {-0.04, 2, "−0.04"}, {12, 0, "12"}, {0.125, 3, "0.125"}, {math.Copysign(0, -1), 1, "0.0"}} {
		if got := number(c.v, c.decimals); got != c.want {
			t.Errorf("%g is written %q, want %q", c.v, got, c.want)
		}
	}
}
