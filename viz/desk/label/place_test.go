package label

import (
	"math"
	"testing"

	"archload/viz/panel"
	"archload/viz/scene"
)

// page is 400 x 300 points with an object in its middle.
func page(t *testing.T) *Page {
	t.Helper()
	a, err := panel.NewAtlas(1)
	if err != nil {
		t.Fatal(err)
	}
	object := panel.Rect{X: 120, Y: 100, W: 160, H: 100}
	return &Page{Atlas: a, In: panel.Rect{W: 400, H: 300}, Middle: object.Centre(),
		Object: func(r panel.Rect) bool { return !r.Meet(object).Empty() },
		Bridge: func(r panel.Rect) bool { return !r.Meet(panel.Rect{X: 180, Y: 140, W: 40, H: 20}).Empty() }}
}

// The value of a line does not hide a place that a word names.
func TestLevelLeavesDots(t *testing.T) {
	p := page(t)
	dot := panel.Point{X: 150, Y: 120}
	words := []Word{{Text: "0.35", Kind: scene.Level, At: panel.Point{X: 156, Y: 122}}, {Text: "0.30", Kind: scene.Level, At: panel.Point{X: 156, Y: 180}}, {Text: "dial", Kind: scene.Part, At: dot}}
	for _, tag := range p.Place(words) {
		if tag.Kind == scene.Level && tag.Text != "0.30" {
			t.Errorf("%q stands over the place that is named", tag.Text)
		}
	}
	if n := len(page(t).Place(words[:2])); n != 2 {
		t.Errorf("without a named place %d of 2 values stand", n)
	}
}

// Words stand on the page, off the object and off each other, and the lines of no two cross.
func TestPlace(t *testing.T) {
	p := page(t)
	var words []Word
	for _, w := range []struct {
		text string
		x, y float64
	}{{"bass end 56 N", 190, 150}, {"middle 36 N", 200, 150}, {"treble end 56 N", 210, 150}, {"strings 156 N", 200, 140}, {"neck block", 200, 102}} {
		words = append(words, Word{Text: w.text, Kind: scene.Force, At: panel.Point{X: w.x, Y: w.y}, Off: panel.Point{Y: -1}})
	}
	tags := p.Place(words)
	if len(tags) != len(words) {
		t.Fatalf("%d of %d words have a place", len(tags), len(words))
	}
	for i, a := range tags {
		if p.Object(a.Box) || a.Box.X < 0 || a.Box.Y < 0 || a.Box.Right() > 400 || a.Box.Bottom() > 300 {
			t.Errorf("%q stands at %+v, on the object or off the page", a.Text, a.Box)
		}
		for _, b := range tags[:i] {
			if !a.Box.Meet(b.Box).Empty() {
				t.Errorf("%q lies over %q", a.Text, b.Text)
			}
			if a.led && b.led && crossing(a, b) {
				t.Errorf("the lines of %q and %q cross", a.Text, b.Text)
			}
		}
	}
}

// The value of a line stays where it is, or is left out: on the bridge, or on a word.
func TestPlaceOfValues(t *testing.T) {
	p := page(t)
	value := func(x, y float64) Word { return Word{Text: "0.25", Kind: scene.Level, At: panel.Point{X: x, Y: y}} }
	tags := p.Place([]Word{value(150, 120), value(200, 150), value(152, 122)})
	if len(tags) != 1 || tags[0].Box.Centre() != (panel.Point{X: 150, Y: 120}) {
		t.Errorf("places %+v; want the first value alone, where it is", tags)
	}
}

// Where a page is full a word of direction goes, and what must be said stands over the object.
func TestPlaceOnAFullPage(t *testing.T) {
	p := page(t)
	p.Object = func(panel.Rect) bool { return true }
	at := panel.Point{X: 150, Y: 120}
	tags := p.Place([]Word{{Text: "neck", Kind: scene.Orientation, At: at}, {Text: "post 65 N", Kind: scene.SectorForce, At: at}})
	if len(tags) != 1 || tags[0].Text != "post 65 N" || p.Bridge(tags[0].Box) {
		t.Errorf("places %+v; want the force alone, off the bridge", tags)
	}
}

// Where all of a word has no room beside the drawing its number stands there alone.
func TestShortWords(t *testing.T) {
	p := page(t)
	p.In = panel.Rect{X: 100, Y: 100, W: 100, H: 60}
	p.Object = func(r panel.Rect) bool { return !r.Meet(panel.Rect{X: 100, Y: 100, W: 60, H: 60}).Empty() }
	tags := p.Place([]Word{{Text: "treble side 58 N", Short: "58 N", Kind: scene.SectorForce, At: panel.Point{X: 155, Y: 130}}})
	if len(tags) != 1 || tags[0].Text != "58 N" || p.Object(tags[0].Box) {
		t.Errorf("places %+v; want the newtons alone, beside the drawing", tags)
	}
}

// Words of places that stand one over another, as arrows seen from their end do, lie so that no line runs through
// another word; and a value of a line keeps off those lines.
func TestNoLineRunsThroughAWord(t *testing.T) {
	p := page(t)
	var words []Word
	for i, text := range []string{"strings 156 N", "middle 36 N", "neck block 14 N", "tail block 25 N"} {
		words = append(words, Word{Text: text, Kind: scene.Force, At: panel.Point{X: 200, Y: 110 + 12*float64(i)}, Off: panel.Point{Y: -1}})
	}
	tags := p.Place(words)
	if len(tags) != len(words) {
		t.Fatalf("%d of %d words have a place", len(tags), len(words))
	}
	for _, a := range tags {
		for _, b := range tags {
			if a.Text != b.Text && a.led && cuts(a.At, a.end(), b.Box) {
				t.Errorf("the line of %q runs through %q", a.Text, b.Text)
			}
		}
	}
	led := tags[1]
	end := led.end()
	half := panel.Point{X: (led.At.X + end.X) / 2, Y: (led.At.Y + end.Y) / 2}
	p.Bridge, p.Taken = nil, nil
	if got := p.Place(append(words, Word{Text: "0.30", Kind: scene.Level, At: half})); len(got) != len(words) {
		t.Error("a value stands on a line that leads to a word")
	}
}

// A line through a corner of a rectangle cuts it, one beside it does not.
func TestCuts(t *testing.T) {
	r := panel.Rect{X: 10, Y: 10, W: 40, H: 20}
	for _, c := range []struct {
		x0, y0, x1, y1 float64
		want           bool
	}{{0, 20, 60, 20, true}, {5, 18, 18, 5, true}, {5, 12, 12, 5, false}, {20, 20, 25, 22, true}, {0, 20, 8, 20, false}, {30, 0, 30, 60, true}} {
		if got := cuts(panel.Point{X: c.x0, Y: c.y0}, panel.Point{X: c.x1, Y: c.y1}, r); got != c.want {
			t.Errorf("from %g, %g to %g, %g: %v", c.x0, c.y0, c.x1, c.y1, got)
		}
	}
}

// On a large page that the drawing fills but for a corner words stand on it, beside what they name and off the bridge.
func TestWordsStayNearOnAFullPage(t *testing.T) {
	p := page(t)
	p.In = panel.Rect{W: 900, H: 600}
	p.Object = func(r panel.Rect) bool { return r.X > 80 }
	p.Bridge = func(r panel.Rect) bool { return !r.Meet(panel.Rect{X: 500, Y: 200, W: 200, H: 30}).Empty() }
	at := panel.Point{X: 600, Y: 260}
	tags := p.Place([]Word{{Text: "treble end 56 N", Short: "56 N", Kind: scene.Force, At: at, Off: panel.Point{Y: 1}}})
	if len(tags) != 1 || tags[0].Text != "treble end 56 N" || math.Abs(tags[0].Box.Centre().X-at.X) > 60 || p.Bridge(tags[0].Box) {
		t.Errorf("places %+v; want all words beside %v", tags, at)
	}
}

// A word rather stands beside an arrow than on it.
func TestWordsLeaveArrowsFree(t *testing.T) {
	p := page(t)
	p.Object = func(panel.Rect) bool { return false }
	at := panel.Point{X: 200, Y: 200}
	w := []Word{{Text: "middle 36 N", Kind: scene.Force, At: at, Off: panel.Point{Y: -1}}}
	arrow := [2]panel.Point{{X: 210, Y: 120}, {X: 210, Y: 196}}
	if box := p.Place(w)[0].Box; !cuts(arrow[0], arrow[1], box) {
		t.Fatalf("without the arrow the word stands at %+v", box)
	}
	p.Taken, p.Arrows = nil, [][2]panel.Point{arrow}
	if box := p.Place(w)[0].Box; cuts(arrow[0], arrow[1], box) {
		t.Errorf("the word stands on the arrow, at %+v", box)
	}
}
