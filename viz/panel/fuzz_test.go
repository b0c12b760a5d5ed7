package panel

import (
	"math"
	"testing"
)

// FuzzPanel feeds any input to the page with every control: it must not
// panic, values stay within their ends, and every corner within the page.
func FuzzPanel(f *testing.F) {
	f.Add([]byte{})
	f.Add([]byte{1, 100, 60, 1, 2, 200, 60, 0, 3, 5, 5, 9})
	f.Add([]byte{1, 60, 192, 1, 5, '4', '2', 0, 4, 6, 0, 0, 6, 200, 3, 0})
	a := newAtlas(f, 1)
	f.Fuzz(func(t *testing.T, data []byte) {
		s := &page{load: 60, tint: 0.3, width: 13, height: 24.5, open: true, atlas: a, w: 760, h: 560}
		for len(data) >= 4 {
			s.step(fuzzedInput(data[:4], s.now))
			data = data[4:]
			s.inRange(t)
			if len(data) > 160 {
				data = data[:160] // long enough
			}
		}
	})
}

// fuzzedInput makes an input of a kind and three bytes.
func fuzzedInput(b []byte, now float64) Input {
	in := Input{X: float64(b[1]) * 3, Y: float64(b[2]) * 2.2, Now: now + float64(b[3]%16)/20 + 0.01}
	switch b[0] % 8 {
	case 1:
		in.Down[0], in.Pressed[0] = true, true
	case 2:
		in.Down[0] = true
	case 3:
		in.Released[0] = true
	case 4:
		in.Keys = []KeyPress{{Key: Key(b[1] % 24), Shift: b[2]&1 > 0, Ctrl: b[2]&2 > 0}, {Key: Key(b[3])}}
	case 5:
		in.Text = []rune{rune(b[1]), rune(b[2]) + rune(b[3])<<8}
	case 6:
		in.Wheel = [2]float64{0, (float64(b[3]) - 128) / 8}
	case 7:
		in.X, in.Wheel[1] = math.Inf(int(b[3])-128), math.NaN()
		in.Away = b[2]&1 > 0
	}
	return in
}

// inRange checks the values and the corners of the page.
func (s *page) inRange(t *testing.T) {
	t.Helper()
	for _, c := range []struct {
		name      string
		v, lo, hi float64
	}{{"load", s.load, 0, 100}, {"tint", s.tint, 0, 0.5}, {"width", s.width, 4, 30}, {"height", s.height, 5, 60}, {"field", float64(s.field), 0, 2}, {"side", float64(s.side), 0, 2}} {
		if !(c.v >= c.lo && c.v <= c.hi) {
			t.Fatalf("%s is %g, want %g to %g", c.name, c.v, c.lo, c.hi)
		}
	}
	for _, v := range s.list.Vertices {
		if !(v.X >= 0 && v.X <= s.w && v.Y >= 0 && v.Y <= s.h && v.U >= 0 && v.U <= 1 && v.V >= 0 && v.V <= 1) {
			t.Fatalf("a corner at %g, %g (%g, %g)", v.X, v.Y, v.U, v.V)
		}
	}
	if s.beads || len(s.entry.text) > longestEntry || s.entry.caret > len(s.entry.text) {
		t.Fatalf("disabled control %v, entry of %d letters with its caret at %d", s.beads, len(s.entry.text), s.entry.caret)
	}
}
