package tool

import (
	"math"
	"slices"
	"strings"
	"testing"

	"archload/cases"
	"archload/cases/tree"
	"archload/materials"
	"archload/mesh"
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

// The table of thicknesses has the bass side left and the middle in the middle, where places are missing over a
// hole, too; both sides alike means the mirror image.
func TestGraduationTable(t *testing.T) {
	c, err := cases.Open(nil, "course-guitar")
	if err != nil {
		t.Fatal(err)
	}
	edge := c.Plate.Outline.Points
	hole := func(p mesh.Point) (float64, bool) { return 5, math.Abs(p[0]) < 80 || math.Abs(p[0]) > 140 }
	g := GraduationOf(c, c, edge, hole)
	for range 2 {
		for _, q := range g {
			if side := q.Column - 2; float64(side)*q.At[0] < 0 || (side == 0) != (q.At[0] == 0) || math.Abs(q.Base+q.Change-5) > 0.41 {
				t.Errorf("x %g stands in column %d, %g mm and %g", q.At[0], q.Column, q.Base, q.Change)
			}
		}
		set := g.With(0, 4.6, true)
		if c, err = cases.OpenChanged(nil, "course-guitar", "hand", []tree.KeyValue{set}); err != nil {
			t.Fatal(err)
		}
		if n := len(c.Plate.ThicknessChange); n != len(g) || c.Plate.ThicknessChange[0][2] != -0.4 {
			t.Fatalf("%d places, the first changed by %v", n, c.Plate.ThicknessChange[0])
		}
		mirrored := 0
		for _, r := range c.Plate.ThicknessChange {
			if r[2] != 0 {
				mirrored++
			}
		}
		if mirrored != 2 {
			t.Errorf("%d places are changed, want the first and its mirror image", mirrored)
		}
		g = GraduationOf(c, c, edge, func(p mesh.Point) (float64, bool) {
			for _, r := range c.Plate.ThicknessChange {
				if float64(r[0]) == p[0] && float64(r[1]) == p[1] {
					return 5 + float64(r[2]), true
				}
			}
			return 5, true
		})
	}
}

// The saddle's slider goes as low as the case allows and stands where the case says, of one piece and
// on posts.
func TestSaddleHeight(t *testing.T) {
	for _, name := range []string{"course-guitar", "course-guitar-posts"} {
		c, err := cases.Open(nil, name)
		if err != nil {
			t.Fatal(err)
		}
		s := saddleTool(c.Bridge)
		if s.Value != float64(c.Bridge.SaddleHeight) || s.Least >= s.Value || s.Most <= s.Value {
			t.Errorf("%s: it stands at %g of %g..%g, the case says %g", name, s.Value, s.Least, s.Most, c.Bridge.SaddleHeight)
		}
		for _, v := range []float64{s.Least, s.Value + 0.3, s.Most} {
			set, err := cases.OpenChanged(nil, name, "hand", s.Set(v))
			if err != nil {
				t.Errorf("%s: at %g mm: %v", name, v, err)
			} else if now := saddleTool(set.Bridge); math.Abs(now.Value-v) > 1e-9 || now.Least != s.Least || now.Most != s.Most {
				t.Errorf("%s: set to %g mm it stands at %g of %g..%g", name, v, now.Value, now.Least, now.Most)
			}
		}
		if _, err := cases.OpenChanged(nil, name, "hand", s.Set(s.Least-0.2)); err == nil {
			t.Errorf("%s: a lower saddle than %g mm is possible too", name, s.Least)
		}
	}
}

// The woods of a list stand in the order of their words, and the one in use is chosen.
func TestWoodsByTheAlphabet(t *testing.T) {
	cards, err := materials.Cards()
	if err != nil {
		t.Fatal(err)
	}
	c, err := cases.Open(nil, "course-guitar")
	if err != nil {
		t.Fatal(err)
	}
	lists := 0
	for _, u := range Of(c, cards) {
		if !strings.Contains(u.ID, "wood") {
			continue
		}
		lists++
		if !slices.IsSorted(u.Words) || u.Pick(u.Chosen)[0].Value.Text == "" {
			t.Errorf("%s lists %q, %d chosen", u.ID, u.Words, u.Chosen)
		}
		again, err := cases.OpenChanged(nil, "course-guitar", "hand", u.Pick(u.Chosen))
		if err != nil || again.Plate.Wood != c.Plate.Wood || again.Bridge.Wood != c.Bridge.Wood {
			t.Errorf("%s: what is chosen is not the wood in use (%v)", u.ID, err)
		}
	}
	if lists < 2 {
		t.Errorf("%d lists of woods", lists)
	}
}
