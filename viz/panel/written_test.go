package panel

import "testing"

// A watched page tells which words are shortened, cut by an area or covered, and forgets those that
// nobody sees.
func TestWritten(t *testing.T) {
	a, err := NewAtlas(1)
	if err != nil {
		t.Fatal(err)
	}
	var p Panel
	p.Watch()
	p.Begin(Input{Away: true}, a, 300, 200)
	l := p.List()
	wide := a.TextWidth(Body, "whole")
	l.TextIn(Rect{10, 10, 100, 20}, Body, Left, Ink(), "whole")
	l.TextIn(Rect{10, 40, wide - 4, 20}, Body, Left, Ink(), "whole")
	l.Clip(Rect{0, 70, 30, 20})
	l.TextIn(Rect{10, 70, 100, 20}, Body, Left, Ink(), "whole")
	l.TextIn(Rect{10, 170, 100, 20}, Body, Left, Ink(), "scrolled away")
	l.Unclip()
	l.TextIn(Rect{10, 100, 100, 20}, Body, Left, Ink(), "half")
	l.Rect(Rect{20, 90, 200, 40}, Paper())
	l.TextIn(Rect{10, 140, 100, 20}, Body, Left, Ink(), "gone")
	l.Rect(Rect{0, 130, 200, 40}, Paper())
	type found struct{ short, cut, under bool }
	var got []found
	for _, w := range l.Written() {
		got = append(got, found{w.Text != w.Whole, w.Seen.W < w.At.W-1, w.Under})
	}
	want := []found{{}, {short: true}, {cut: true}, {under: true}}
	if len(got) != len(want) {
		t.Fatalf("%d lines are kept, want %d: %+v", len(got), len(want), l.Written())
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("line %d: %+v, want %+v", i, got[i], want[i])
		}
	}
}

// Words that have no room beside a value have a line of their own, and are then whole.
func TestSliderWordsOnTheirOwnLine(t *testing.T) {
	a, err := NewAtlas(1)
	if err != nil {
		t.Fatal(err)
	}
	s := Slider{Control: Control{ID: "s", Label: "Thickness of the top at its thickest place"}, Max: 1, Decimals: 2, Typed: true}
	const wide = 230
	tall := s.Tall(a, wide, 0.5)
	if tall <= s.Height() || s.Tall(a, 2*wide, 0.5) != s.Height() {
		t.Fatalf("%.0f points high in %d, want more than %.0f, and no more in twice the width", tall, wide, s.Height())
	}
	var p Panel
	p.Watch()
	p.Begin(Input{Away: true}, a, 300, 200)
	s.At = Rect{10, 10, wide, tall}
	v := 0.5
	p.Slider(s, &v)
	for _, w := range p.List().Written() {
		if w.Text != w.Whole {
			t.Errorf("%q stands as %q", w.Whole, w.Text)
		}
	}
}
