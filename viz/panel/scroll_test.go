package panel

import "testing"

func TestScroll(t *testing.T) {
	s := newPage(t, 1)
	area := s.find(t, "left").At
	in := Point{area.X + 60, s.find(t, "lines").At.Centre().Y}
	top := s.find(t, "field").At.Y
	for range 40 {
		s.step(Input{X: in.X, Y: in.Y, Wheel: [2]float64{0, -1}})
	}
	s.step(Input{Away: true})
	last := s.find(t, "more")
	if gap := area.Bottom() - last.At.Bottom(); gap < 0 || gap > 6 {
		t.Errorf("scrolled down, the last line ends %g points above the area's end, want 0 to 6", gap)
	}
	first := s.find(t, "field")
	if !first.Seen.Empty() {
		t.Errorf("the first control shows at %v, want hidden", first.Seen)
	}
	s.click(Point{first.At.Centre().X, max(0, first.At.Centre().Y)})
	if s.field != 0 {
		t.Error("a hidden control was clicked")
	}
	bar := s.find(t, "left/bar").At
	if abs(bar.Bottom()-area.Bottom()) > 0.5 {
		t.Errorf("the bar ends at %g, the area at %g", bar.Bottom(), area.Bottom())
	}
	s.press(Point{bar.Centre().X, bar.Y + 5})
	s.drag(Point{bar.Centre().X, -400})
	s.release(Point{400, -400})
	s.step(Input{Away: true})
	if got := s.find(t, "field").At.Y; got != top {
		t.Errorf("the bar dragged up, the first control is at %g, want %g", got, top)
	}
	s.step(Input{X: in.X, Y: in.Y, Keys: []KeyPress{{Key: KeyPageDown}}})
	if s.Wake() != 0 {
		t.Error("scrolled, and no frame is wanted")
	}
	s.step(Input{Away: true})
	if got := s.find(t, "field").At.Y; got >= top {
		t.Errorf("the page key left the first control at %g", got)
	}
	s.open = false // now everything has room
	s.step(Input{Away: true})
	s.step(Input{Away: true})
	if got := s.find(t, "field").At.Y; got != top {
		t.Errorf("folded, the first control is at %g, want %g", got, top)
	}
	if _, ok := s.Find("left/bar"); ok {
		t.Error("a bar where nothing can be scrolled")
	}
}

// TestScrollClips: nothing of the column shows outside its area.
func TestScrollClips(t *testing.T) {
	a := newAtlas(t, 1)
	var p Panel
	for range 2 {
		p.Begin(Input{Away: true}, a, 200, 200)
		c := NewColumn(p.Scroll("s", Rect{20, 30, 100, 60}), 4, 4)
		for i := range 20 {
			p.Button(Control{ID: string(rune('a' + i)), At: c.Row(26), Label: "Word"})
		}
		p.EndScroll(c.Used(4))
	}
	for _, v := range p.End().Vertices {
		if v.X < 20 || v.X > 120 || v.Y < 30 || v.Y > 90 {
			t.Fatalf("a vertex at %g, %g", v.X, v.Y)
		}
	}
}

func TestColumn(t *testing.T) {
	c := NewColumn(Rect{10, 20, 100, 200}, 5, 4)
	if got, want := c.Row(30), (Rect{15, 25, 90, 30}); got != want {
		t.Errorf("first row %v, want %v", got, want)
	}
	cells := c.Cells(20, 2)
	if got, want := cells[1], (Rect{62, 59, 43, 20}); got != want {
		t.Errorf("second cell %v, want %v", got, want)
	}
	if got, want := c.Used(5), 64.0; got != want {
		t.Errorf("used %g, want %g", got, want)
	}
	if got, want := c.Rest(), (Rect{15, 83, 90, 132}); got != want {
		t.Errorf("rest %v, want %v", got, want)
	}
}
