package window

import (
	"fmt"
	"strings"
	"testing"

	"archload/viz/panel"
)

// told writes the passes in short: one bracket each.
func told(passes []panel.Input) string {
	var b strings.Builder
	for _, in := range passes {
		fmt.Fprintf(&b, "[%g,%g", in.X, in.Y)
		for _, w := range []struct {
			word string
			is   bool
		}{{"away", in.Away}, {"press", in.Pressed[0]}, {"down", in.Down[0]}, {"release", in.Released[0]}, {"shift", in.Shift}, {"ctrl", in.Ctrl}} {
			if w.is {
				b.WriteString(" " + w.word)
			}
		}
		if in.Wheel != [2]float64{} {
			fmt.Fprintf(&b, " wheel %g,%g", in.Wheel[0], in.Wheel[1])
		}
		if len(in.Keys) > 0 {
			fmt.Fprintf(&b, " keys %d", len(in.Keys))
		}
		if len(in.Text) > 0 {
			fmt.Fprintf(&b, " text %s", string(in.Text))
		}
		b.WriteString("]")
	}
	return b.String()
}

func TestHandsDealOutPasses(t *testing.T) {
	move := func(x, y float64) happening { return happening{kind: pointerMoved, x: x, y: y} }
	press, release := happening{kind: buttonTurned, held: true}, happening{kind: buttonTurned}
	key := happening{kind: keyPressed, key: panel.KeyPress{Key: panel.KeyBackspace}}
	letter := func(r rune) happening { return happening{kind: letterTyped, letter: r} }
	for _, c := range []struct {
		name  string
		queue []happening
		want  string
	}{
		{"nothing is one pass", nil, "[0,0]"},
		{"movements join", []happening{move(1, 1), move(2, 3)}, "[2,3]"},
		{"a click within one frame is not lost", []happening{press, release}, "[0,0 press down][0,0 release]"},
		{"a press happens where the pointer has gone", []happening{move(5, 6), press, move(9, 9), release}, "[5,6][5,6 press down][9,9 down][9,9 release]"},
		{"two clicks are four passes", []happening{press, release, press, release}, "[0,0 press down][0,0 release][0,0 press down][0,0 release]"},
		{"the wheel adds up, also by parts of a notch", []happening{{kind: wheelTurned, y: 0.25}, {kind: wheelTurned, x: 1, y: 0.5}}, "[0,0 wheel 1,0.75]"},
		{"a key and its letter join", []happening{key, letter('a')}, "[0,0 keys 1 text a]"},
		{"a letter before a key stays before it", []happening{letter('5'), key, letter('7')}, "[0,0 text 5][0,0 keys 1 text 7]"},
		{"control signs are not letters", []happening{letter('\n'), letter('é')}, "[0,0 text é]"},
		{"a key after a press waits", []happening{press, key}, "[0,0 press down][0,0 down keys 1]"},
		{"shift goes down before the key", []happening{{kind: shiftTurned, held: true}, key, {kind: shiftTurned}}, "[0,0 shift keys 1][0,0]"},
		{"the pointer leaves", []happening{{kind: pointerLeft, held: true}}, "[0,0 away]"},
		{"a drag goes on outside", []happening{press, {kind: pointerLeft, held: true}, release}, "[0,0 press down][0,0 down][0,0 away release]"},
		{"and it comes back", []happening{{kind: pointerLeft, held: true}, move(4, 4)}, "[4,4]"},
	} {
		h := hands{point: [2]float64{1, 1}, queue: c.queue}
		passes := h.take(3)
		if got := told(passes); got != c.want {
			t.Errorf("%s: got %s, want %s", c.name, got, c.want)
		}
		for i, in := range passes {
			if in.More != (i < len(passes)-1) {
				t.Errorf("%s: pass %d of %d says that more follow: %v", c.name, i+1, len(passes), in.More)
			}
		}
		if h.any() {
			t.Errorf("%s: the queue is not empty after take", c.name)
		}
	}
}

func TestHandsRememberWhatIsHeld(t *testing.T) {
	h := hands{point: [2]float64{0.5, 0.25}} // a screen of two pixels to a point
	h.add(happening{kind: pointerMoved, x: 10, y: 20})
	h.add(happening{kind: buttonTurned, held: true})
	if !h.edges() {
		t.Error("a press does not count as one")
	}
	h.take(1)
	h.add(happening{kind: pointerMoved, x: 30, y: 40})
	if h.edges() {
		t.Error("a movement counts as a press")
	}
	in := h.take(2)[0]
	if got, want := told([]panel.Input{in}), "[15,10 down]"; got != want {
		t.Errorf("second frame: got %s, want %s", got, want)
	}
	if in.Now != 2 {
		t.Errorf("second frame: now %g s, want 2", in.Now)
	}
	if got := h.take(3)[0]; got.Wheel != [2]float64{} || got.Pressed != [3]bool{} || !got.Down[0] {
		t.Errorf("third frame: got %+v, want the button held and nothing new", got)
	}
}
