package panel

import (
	"math"
	"testing"
)

// find returns a place of the page.
func (s *page) find(t testing.TB, id string) Place {
	t.Helper()
	q, ok := s.Find(id)
	if !ok {
		t.Fatalf("there is no %q on the page", id)
	}
	return q
}

// press, drag and release move the pointer as a hand does.
func (s *page) press(at Point) {
	s.step(Input{X: at.X, Y: at.Y, Down: [3]bool{true}, Pressed: [3]bool{true}})
}

func (s *page) drag(at Point) { s.step(Input{X: at.X, Y: at.Y, Down: [3]bool{true}}) }

func (s *page) release(at Point) {
	s.step(Input{X: at.X, Y: at.Y, Released: [3]bool{true}})
}

// click presses and lets go; a second later, so that two are no double click.
func (s *page) click(at Point) {
	s.now++
	s.press(at)
	s.release(at)
}

// keys presses keys one after the other.
func (s *page) keys(keys ...Key) {
	for _, k := range keys {
		s.step(Input{Away: true, Keys: []KeyPress{{Key: k}}})
	}
}

// write types letters.
func (s *page) write(text string) { s.step(Input{Away: true, Text: []rune(text)}) }

var densities = []float64{1, 1.5, 2}

func TestSliderDragsToBothEnds(t *testing.T) {
	for _, density := range densities {
		s := newPage(t, density)
		// The handle is taken at its very edge, then dragged far beyond the ends.
		h := s.find(t, "load/handle").At
		s.press(Point{h.X + 0.5, h.Y + 3})
		if s.load != 60 {
			t.Errorf("density %g: taking the handle moved it to %g", density, s.load)
		}
		s.drag(Point{h.X + 0.5, h.Y + 3})
		if s.load != 60 {
			t.Errorf("density %g: holding the handle moved it to %g", density, s.load)
		}
		for _, c := range []struct{ x, want float64 }{{900, 100}, {-50, 0}, {740, 100}} {
			s.drag(Point{c.x, 400})
			if s.load != c.want {
				t.Errorf("density %g: dragged to x = %g the load is %g, want %g", density, c.x, s.load, c.want)
			}
		}
		if pointer, _ := s.Holds(); !pointer {
			t.Error("the pointer is dragging, and not the panel's")
		}
		s.release(Point{740, 400})
		// At full load the handle stands half beyond the rule; its outer edge
		// can still be taken.
		h = s.find(t, "load/handle").At
		s.press(Point{h.Right() - 0.5, h.Y + 3})
		s.drag(Point{h.Right() - 60.5, h.Y + 3})
		if s.load >= 100 || s.load < 60 {
			t.Errorf("density %g: dragged 60 points back from full the load is %g", density, s.load)
		}
		s.release(Point{h.X, h.Y})
		s.drag(Point{30, 30}) // let go: nothing is held
		if got := s.load; got < 60 {
			t.Errorf("density %g: after letting go the load followed to %g", density, got)
		}
	}
}

// TestSliderClick clicks places of the rule: the value there, on a step.
func TestSliderClick(t *testing.T) {
	s := newPage(t, 1)
	track := s.find(t, "tint/track").At
	for i := 0; i <= 20; i++ {
		f := float64(i) / 20
		s.click(Point{track.X + f*track.W, track.Y + 5})
		want := math.Round(0.5*f*100) / 100
		if math.Abs(s.tint-want) > 0.0101 {
			t.Errorf("clicked at %g of the rule: %g, want about %g", f, s.tint, want)
		}
		if on := math.Round(s.tint*100) / 100; s.tint != on {
			t.Errorf("%.17g is not on a step", s.tint)
		}
	}
	s.click(Point{track.X, track.Y - 12}) // on the words
	if s.tint != 0.5 || s.Focus() != "tint" {
		t.Errorf("a click on the words: %g, focus %q; want 0.5 and the focus", s.tint, s.Focus())
	}
}

func TestSliderWheel(t *testing.T) {
	s := newPage(t, 1)
	s.open = false // all of the column shows: the wheel is the slider's
	s.step(Input{Away: true})
	s.step(Input{Away: true})
	at := s.find(t, "load").At.Centre()
	turn := func(n float64) { s.step(Input{X: at.X, Y: at.Y, Wheel: [2]float64{0, n}}) }
	turn(3)
	if s.load != 63 || !s.WheelUsed() {
		t.Errorf("three notches: %g, used %v; want 63, used", s.load, s.WheelUsed())
	}
	turn(-1000)
	if s.load != 0 {
		t.Errorf("a hundred notches down and more: %g, want 0", s.load)
	}
	for range 10 { // a fine wheel
		turn(0.25)
	}
	if s.load != 2 {
		t.Errorf("ten quarter notches: %g, want 2", s.load)
	}
	s.step(Input{X: 700, Y: 30, Wheel: [2]float64{0, 5}})
	if s.load != 2 || s.WheelUsed() {
		t.Errorf("the wheel elsewhere: %g, used %v", s.load, s.WheelUsed())
	}
}

// TestSliderInScrollArea: where the column can scroll, the wheel scrolls, even
// if the slider has the focus.
func TestSliderInScrollArea(t *testing.T) {
	s := newPage(t, 1)
	at := s.find(t, "load").At.Centre()
	s.step(Input{X: at.X, Y: at.Y, Wheel: [2]float64{0, -1}})
	s.step(Input{Away: true})
	moved := at.Y - s.find(t, "load").At.Centre().Y
	if s.load != 60 || moved <= 0 || moved > notch {
		t.Errorf("load %g, scrolled %g points; want 60 and at most %d", s.load, moved, notch)
	}
	s.SetFocus("load")
	s.step(Input{Away: true})
	at = s.find(t, "load").At.Centre()
	s.step(Input{X: at.X, Y: at.Y, Wheel: [2]float64{0, -1}})
	if s.load != 60 {
		t.Errorf("with the focus the load is %g, want 60", s.load)
	}
}

func TestSliderKeys(t *testing.T) {
	s := newPage(t, 1)
	s.SetFocus("load")
	for _, c := range []struct {
		press KeyPress
		want  float64
	}{
		{KeyPress{Key: KeyRight}, 61}, {KeyPress{Key: KeyUp}, 62}, {KeyPress{Key: KeyLeft}, 61}, {KeyPress{Key: KeyDown}, 60},
		{KeyPress{Key: KeyRight, Shift: true}, 70}, {KeyPress{Key: KeyPageUp}, 80}, {KeyPress{Key: KeyPageDown}, 70},
		{KeyPress{Key: KeyEnd}, 100}, {KeyPress{Key: KeyRight}, 100}, {KeyPress{Key: KeyHome}, 0}, {KeyPress{Key: KeyLeft}, 0},
		{KeyPress{Key: KeyBackspace}, 100},
	} {
		s.step(Input{Away: true, Keys: []KeyPress{c.press, {Key: LetterKey('s')}}})
		if s.load != c.want {
			t.Errorf("after %+v the load is %g, want %g", c.press, s.load, c.want)
		}
		if u := s.Unused(); len(u) != 1 || u[0].Key != LetterKey('S') {
			t.Errorf("after %+v the unused keys are %v, want S", c.press, u)
		}
	}
}

// along is the place at a share of the load's track.
func (s *page) along(t testing.TB, share float64) Point {
	t.Helper()
	track := s.find(t, "load/track").At
	return Point{track.X + share*track.W, track.Y + 4}
}

func TestSliderDoubleClick(t *testing.T) {
	s := newPage(t, 1)
	at := s.along(t, 0.2)
	s.click(at)
	s.click(at)
	if s.load != 20 {
		t.Errorf("two slow clicks: %g, want 20", s.load)
	}
	s.now++
	s.press(at)
	s.release(at)
	s.press(at)
	s.release(at)
	if s.load != 100 {
		t.Errorf("a double click: %g, want the default, 100", s.load)
	}
}

// TestDragSoonAfterAClick: the handle that is taken soon after a click and moved goes along, and is not set to the
// default.
func TestDragSoonAfterAClick(t *testing.T) {
	s := newPage(t, 1)
	at := s.along(t, 0.2)
	s.click(at)
	s.press(at)
	if s.load != 20 {
		t.Errorf("pressed again: %g, want 20 as before", s.load)
	}
	s.drag(s.along(t, 0.5))
	s.release(s.along(t, 0.5))
	if s.load != 50 {
		t.Errorf("taken soon after a click and dragged: %g, want 50", s.load)
	}
}

// TestSliderLeavesTheProgramsValue: a value off the steps stays until the
// hand moves it.
func TestSliderLeavesTheProgramsValue(t *testing.T) {
	s := newPage(t, 1)
	for _, v := range []float64{41.37, math.NaN(), -7, 250} {
		s.load = v
		s.step(Input{Away: true})
		if s.load != v && !math.IsNaN(v) {
			t.Errorf("%g became %g by itself", v, s.load)
		}
	}
	s.load = math.NaN()
	s.SetFocus("load")
	s.keys(KeyLeft)
	if s.load != 99 {
		t.Errorf("a step down from no number: %g, want 99: the default less one", s.load)
	}
}

func TestDisabledSlider(t *testing.T) {
	s := newPage(t, 1)
	q := s.find(t, "asleep")
	s.click(q.At.Centre())
	if !q.Off || s.Focus() != "" {
		t.Errorf("off %v, focus %q after a click", q.Off, s.Focus())
	}
}

// Words under a slider's rule stand at their mark, or nowhere, however narrow it is.
func TestWordsStandAtTheirMark(t *testing.T) {
	a, err := NewAtlas(1)
	if err != nil {
		t.Fatal(err)
	}
	for wide := 120.0; wide < 900; wide += 7 {
		s := Slider{Control: Control{At: Rect{W: wide, H: 50}}, Max: 1,
			Marks: []Mark{{0.16, "the middle first touches"}, {0.18, "the middle has closed"}, {0, "slack"}, {1, "at pitch"}}}
		var taken [][2]float64
		for i, m := range s.Marks {
			left, ok := s.labelOf(a, i, taken)
			w := a.TextWidth(Small, m.Label)
			if taken = append(taken, [2]float64{left, left + w}); !ok {
				taken = taken[:len(taken)-1]
				continue
			}
			if x := s.placeOf(m.At); x < left-2 || x > left+w+2 {
				t.Errorf("%g points wide: %q stands from %g to %g, its mark at %g", wide, m.Label, left, left+w, x)
			} else if edge := math.Min(x-left, left+w-x); m.At > 0 && m.At < 1 && edge > 3 && left > 0 && math.Abs(x-left-w/2) > 1 {
				t.Errorf("%g points wide: %q is neither under its mark nor beside it", wide, m.Label)
			}
		}
	}
}
