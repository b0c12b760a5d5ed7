package panel

import (
	"image/color"
	"slices"
	"strings"
	"testing"
)

func TestTabReachesEveryControl(t *testing.T) {
	s := newPage(t, 1)
	want := []string{"field", "load", "tint", "asleep", "lines", "beads", "bridge", "width", "height", "held", "side", "fit", "keep", "more"}
	var got []string
	for range want {
		s.keys(KeyTab)
		s.step(Input{Away: true}) // after scrolling
		got = append(got, s.Focus())
		q := s.find(t, s.Focus())
		if !q.Focus || q.Seen.H < q.At.H-0.5 {
			t.Errorf("%s has the keyboard, and only %g of its %g points show", q.ID, q.Seen.H, q.At.H)
		}
	}
	if !slices.Equal(got, want) {
		t.Errorf("Tab reaches %v, want %v", got, want)
	}
	s.keys(KeyTab)
	if s.Focus() != "field" {
		t.Errorf("after the last comes %q, want the first", s.Focus())
	}
	for i := len(want) - 1; i > 0; i-- {
		s.step(Input{Away: true, Keys: []KeyPress{{Key: KeyTab, Shift: true}}})
		if s.Focus() != want[i] {
			t.Errorf("Shift+Tab reaches %q, want %q", s.Focus(), want[i])
		}
	}
}

// TestFocusRing: the ring shows after Tab and not after a click.
func TestFocusRing(t *testing.T) {
	s := newPage(t, 1)
	rust := func() int {
		n := 0
		r := s.find(t, "lines").At.Inset(-3, -2)
		m := s.painted()
		for y := int(r.Y); y < int(r.Bottom()); y++ {
			if m.NRGBAAt(int(r.Right())-1, y) == Rust() {
				n++
			}
		}
		return n
	}
	s.click(s.find(t, "lines").At.Centre())
	if n := rust(); n > 0 || s.Focus() != "lines" {
		t.Errorf("after a click %d pixels of ring, focus %q", n, s.Focus())
	}
	s.SetFocus("lines")
	s.step(Input{Away: true})
	if n := rust(); n < 20 {
		t.Errorf("with the keyboard %d pixels of ring, want a whole side", n)
	}
}

func TestButtonToggleSection(t *testing.T) {
	s := newPage(t, 1)
	s.SetFocus("fit") // scrolls it into view
	s.step(Input{Away: true})
	s.step(Input{Away: true})
	at := s.find(t, "fit").At.Centre()
	s.press(at)
	if s.pressed != 0 {
		t.Error("the button acts before it is let go")
	}
	s.release(at)
	s.press(at)
	s.release(Point{700, 500}) // let go elsewhere
	if s.pressed != 1 {
		t.Errorf("pressed %d times, want 1: the second was let go elsewhere", s.pressed)
	}
	s.step(Input{X: at.X, Y: at.Y, Pressed: [3]bool{true}, Released: [3]bool{true}}) // within one frame
	s.SetFocus("fit")
	s.keys(KeySpace, KeyEnter)
	if s.pressed != 4 {
		t.Errorf("pressed %d times, want 4", s.pressed)
	}
	s.SetFocus("lines")
	s.keys(KeySpace)
	if s.lines || s.find(t, "lines").Value != "off" {
		t.Errorf("the toggle is %v, shown %q; want off", s.lines, s.find(t, "lines").Value)
	}
	s.SetFocus("beads")
	s.keys(KeySpace, KeyEnter)
	if s.beads {
		t.Error("a disabled toggle was ticked")
	}
	s.SetFocus("bridge")
	s.keys(KeyEnter)
	s.step(Input{Away: true})
	if _, ok := s.Find("width"); ok || s.open {
		t.Error("the section did not fold")
	}
}

func TestChoice(t *testing.T) {
	s := newPage(t, 1)
	s.click(s.find(t, "field/2").At.Centre())
	if s.field != 2 || s.find(t, "field").Value != "Flow" || s.find(t, "field/2").Label != "Flow [3]" {
		t.Errorf("chosen %d, %+v", s.field, s.find(t, "field"))
	}
	s.keys(KeyRight)
	s.keys(KeyLeft, KeyLeft)
	if s.field != 0 {
		t.Errorf("arrow keys lead to %d, want 0", s.field)
	}
	s.keys(KeyEnd)
	if s.field != 2 {
		t.Errorf("End leads to %d, want 2", s.field)
	}
	row := s.find(t, "field").At
	x := row.X
	for i := range 3 {
		c := s.find(t, "field/"+string(rune('0'+i))).At
		if abs(c.X-x) > 1e-9 {
			t.Errorf("word %d begins at %g, want %g", i, c.X, x)
		}
		x = c.Right()
	}
	if abs(x-row.Right()) > 1e-9 {
		t.Errorf("the words end at %g, the row at %g", x, row.Right())
	}
}

func TestHolds(t *testing.T) {
	s := newPage(t, 1)
	for _, c := range []struct {
		at   Point
		want bool
	}{{Point{318, 300}, false}, {Point{5, 5}, false}, {Point{50, 50}, true}, {Point{740, 500}, true}} {
		s.step(Input{X: c.at.X, Y: c.at.Y})
		if got, _ := s.Holds(); got != c.want {
			t.Errorf("at %v the pointer is the panel's: %v, want %v", c.at, got, c.want)
		}
	}
	s.press(Point{318, 300})
	s.drag(Point{100, 120}) // a turn of the scene that strays over the panel
	if s.load != 60 {
		t.Errorf("a drag from the scene moved the load to %g", s.load)
	}
	s.SetFocus("width")
	s.step(Input{Away: true})
	if _, keyboard := s.Holds(); !keyboard {
		t.Error("a number is being typed, and the keyboard is free")
	}
	s.step(Input{Away: true, Keys: []KeyPress{{Key: LetterKey('q')}}})
	if u := s.Unused(); len(u) != 0 {
		t.Errorf("unused keys %v while a number is typed", u)
	}
	s.step(Input{Away: true, Keys: []KeyPress{{Key: LetterKey('z'), Ctrl: true}, {Key: LetterKey('q'), Ctrl: true}}})
	if u := s.Unused(); len(u) != 1 || u[0].Key != LetterKey('q') {
		t.Errorf("unused keys %v while a number is typed, want Ctrl Q alone: one can always leave", u)
	}
	s.click(Point{318, 300})
	if _, keyboard := s.Holds(); keyboard || s.Focus() != "" {
		t.Error("a click on the scene did not free the keyboard")
	}
}

func TestTooltip(t *testing.T) {
	s := newPage(t, 1)
	at := s.find(t, "load").At.Centre()
	s.step(Input{X: at.X, Y: at.Y, Now: 10})
	if got := s.Wake(); s.TipShown() != "" || abs(got-tipDelay) > 1e-9 {
		t.Errorf("at once %q, wake after %g s; want none and %g s", s.TipShown(), got, tipDelay)
	}
	plain := len(s.list.Vertices)
	s.step(Input{X: at.X + 2, Y: at.Y, Now: 10.6})
	if !strings.HasPrefix(s.TipShown(), "How much of the strings") || len(s.list.Vertices) <= plain {
		t.Errorf("after 0.6 s %q, %d vertices after %d", s.TipShown(), len(s.list.Vertices), plain)
	}
	s.press(at)
	s.release(at)
	s.step(Input{X: at.X, Y: at.Y, Now: 20})
	if s.TipShown() != "" {
		t.Errorf("after a press %q still shows", s.TipShown())
	}
	s.step(Input{Away: true, Now: 21})
	at = s.find(t, "beads").At.Centre()
	s.step(Input{X: at.X, Y: at.Y, Now: 30})
	s.step(Input{X: at.X, Y: at.Y, Now: 31})
	if got, want := s.TipShown(), "Not now: no flow is shown"; got != want {
		t.Errorf("the disabled toggle says %q, want %q", got, want)
	}
	s.SetFocus("keep")
	s.step(Input{Away: true, Now: 40})
	s.step(Input{Away: true, Now: 41})
	s.step(Input{Away: true, Now: 42})
	if got, want := s.TipShown(), "Not now: nothing was changed"; got != want {
		t.Errorf("the disabled button reached by Tab says %q, want %q", got, want)
	}
}

// TestTooltipStaysOnThePage puts controls into every corner.
func TestTooltipStaysOnThePage(t *testing.T) {
	a := newAtlas(t, 1)
	for _, at := range []Rect{{0, 0, 30, 20}, {270, 0, 30, 20}, {0, 180, 30, 20}, {270, 180, 30, 20}} {
		var p Panel
		for _, now := range []float64{1, 2} {
			c := at.Centre()
			p.Begin(Input{X: c.X, Y: c.Y, Now: now}, a, 300, 200)
			p.Button(Control{ID: "b", At: at, Tip: "A long note that needs more than one line of the narrow page it is on."})
			l := p.End()
			for _, v := range l.Vertices {
				if v.X < 0 || v.X > 300 || v.Y < 0 || v.Y > 200 {
					t.Fatalf("%v: a vertex at %g, %g", at, v.X, v.Y)
				}
			}
			if now == 2 && p.TipShown() == "" {
				t.Errorf("%v: no note", at)
			}
		}
	}
}

func TestLid(t *testing.T) {
	a := newAtlas(t, 1)
	var p Panel
	below, above := 0, 0
	frame := func(in Input) {
		p.Begin(in, a, 300, 200)
		if p.Button(Control{ID: "below", At: Rect{20, 20, 200, 100}, Label: "Below"}) {
			below++
		}
		p.Lid(Rect{50, 10, 240, 180})
		if p.Button(Control{ID: "above", At: Rect{60, 40, 100, 26}, Label: "Above"}) {
			above++
		}
		p.End()
	}
	frame(Input{Away: true})
	click := func(x, y float64) {
		frame(Input{X: x, Y: y, Down: [3]bool{true}, Pressed: [3]bool{true}})
		frame(Input{X: x, Y: y, Released: [3]bool{true}})
	}
	click(80, 50)  // on the upper button, over the lower one
	click(180, 80) // on the lid, over the lower one
	if below != 0 || above != 1 {
		t.Errorf("pressed below %d, above %d; want 0 and 1", below, above)
	}
	for range 3 {
		frame(Input{Away: true, Keys: []KeyPress{{Key: KeyTab}}})
		if p.Focus() != "above" {
			t.Errorf("Tab reaches %q through the lid", p.Focus())
		}
	}
}

// TestDensities: places in points do not depend on the density, and corners
// in pixels scale with it.
func TestDensities(t *testing.T) {
	s := newPage(t, 1)
	for _, density := range densities[1:] {
		u := newPage(t, density)
		if len(u.Places()) != len(s.Places()) {
			t.Fatalf("density %g: %d places, want %d", density, len(u.Places()), len(s.Places()))
		}
		for i, q := range u.Places() {
			want := s.Places()[i]
			if q.Kind == WordPlace || q.ID == "left/bar" {
				continue // as wide as its letters
			}
			if q.ID != want.ID || q.At != want.At {
				t.Errorf("density %g: %q at %v, want %q at %v", density, q.ID, q.At, want.ID, want.At)
			}
		}
		l, m := NewList(s.atlas), NewList(u.atlas)
		for _, list := range []*List{l, m} {
			list.Rect(Rect{10, 20, 30, 40}, Ink())
			list.Frame(Rect{10, 20, 30, 40}, 2, Ink())
			list.Strip(Rect{10, 20, 30, 40}, []color.NRGBA{Ink(), Rust(), Blue()}, true)
		}
		for i := range l.Vertices {
			v, w := l.Vertices[i], m.Vertices[i]
			if v.X*density != w.X || v.Y*density != w.Y {
				t.Errorf("density %g: corner %d at %g, %g; want %g, %g", density, i, w.X, w.Y, v.X*density, v.Y*density)
			}
		}
		// The soft edges of a line are a pixel wide at any density; its middle scales.
		l.Vertices, m.Vertices = nil, nil
		l.Line(Point{3, 4}, Point{40, 44}, 2, Ink())
		m.Line(Point{3, 4}, Point{40, 44}, 2, Ink())
		x, y := middle(l.Vertices)
		if mx, my := middle(m.Vertices); abs(mx-density*x) > 1e-9 || abs(my-density*y) > 1e-9 {
			t.Errorf("density %g: the middle of a line at %g, %g; want %g, %g", density, mx, my, density*x, density*y)
		}
	}
}

// middle is the mean place of some corners.
func middle(v []Vertex) (x, y float64) {
	n := float64(len(v))
	for _, c := range v {
		x, y = x+c.X/n, y+c.Y/n
	}
	return x, y
}

func TestPageIsTheSameEveryTime(t *testing.T) {
	s, u := newPage(t, 1.5), newPage(t, 1.5)
	if !slices.Equal(s.list.Vertices, u.list.Vertices) {
		t.Error("two pages of the same input differ")
	}
}
