package tool

import (
	"math"
	"testing"

	"archload/cases"
	"archload/materials"
)

// A bar that is moved by hand keeps its slant, and lies where the slider says; the
// slider's range does not follow it.
func TestBarMovesAcross(t *testing.T) {
	cards, err := materials.Cards()
	if err != nil {
		t.Fatal(err)
	}
	find := func(c *cases.Case) Tool {
		for _, o := range Of(c, cards) {
			if o.ID == "brace[1].across" {
				return o
			}
		}
		t.Fatal("no tool moves the first bar")
		return Tool{}
	}
	c, err := cases.Open(nil, "course-guitar")
	if err != nil {
		t.Fatal(err)
	}
	was := find(c)
	moved, err := cases.OpenChanged(nil, "course-guitar", "hand", was.Set(was.Value+7.5))
	if err != nil {
		t.Fatal(err)
	}
	for i, p := range moved.Braces[0].Line {
		q := c.Braces[0].Line[i]
		if math.Abs(p[0]-q[0]-7.5) > 1e-5 || p[1] != q[1] {
			t.Errorf("point %d went from %v to %v; want 7.5 mm toward the treble", i, q, p)
		}
	}
	if now := find(moved); math.Abs(now.Value-was.Value-7.5) > 1e-5 || now.Least != was.Least || now.Most != was.Most {
		t.Errorf("the slider stands at %g of %g..%g; it stood at %g of %g..%g", now.Value, now.Least, now.Most, was.Value, was.Least, was.Most)
	}
}
