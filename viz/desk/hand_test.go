package desk

import (
	"strings"
	"testing"
	"time"

	"archload/cases/design"

	"archload/materials"
	"archload/viz/panel"
)

// hand drives a desk as a person would: it moves, presses and types, and waits
// for the answer.
type hand struct {
	t    *testing.T
	d    *Desk
	in   panel.Input
	bell chan struct{}
	kept map[string][]byte

	width, height int // of the page, pixels
}

// Size of the page in the tests, pixels, and how coarse their triangles are.
const (
	pageWidth, pageHeight = 1280, 800
	coarse                = 0.4
)

// late is how long a test waits for an answer, which only a worker that hangs does not
// give.
const late = 5 * time.Minute

// newHand sets up a desk on coarse triangles and waits for its first picture.
func newHand(t *testing.T, o Options) *hand {
	t.Helper()
	woods, err := materials.Cards()
	if err != nil {
		t.Fatal(err)
	}
	h := &hand{t: t, bell: make(chan struct{}, 1), kept: map[string][]byte{}, width: pageWidth, height: pageHeight}
	o.Woods = woods
	if o.Solve.Refine == 0 {
		o.Solve = design.Options{Workers: 2, Refine: coarse}
	}
	o.Keep = func(name string, data []byte) (string, error) {
		h.kept[name] = data
		return name, nil
	}
	if h.d, err = New(o); err != nil {
		t.Fatal(err)
	}
	h.d.Start(func() {
		select {
		case h.bell <- struct{}{}:
		default:
		}
	})
	t.Cleanup(h.d.Close)
	h.settle()
	return h
}

// frame shows one frame of what the hand does now.
func (h *hand) frame() {
	h.in.Now += 1.0 / 60
	h.d.Frame(h.width, h.height, 1, h.in)
	h.in.Keys, h.in.Wheel = nil, [2]float64{}
	h.in.Pressed, h.in.Released = [3]bool{}, [3]bool{}
}

// settle shows frames until everything is answered.
func (h *hand) settle() {
	h.t.Helper()
	for {
		h.frame()
		switch {
		case h.d.play.on:
			h.in.Now += 0.25 // in large strides: nobody looks
			continue
		case h.d.again:
			continue // what the next frame brings needs no answer
		case h.d.busy:
		case h.d.eased:
			h.in.Now += restTime // nobody looks
			continue
		case h.d.fault != "", h.d.shown.Settled() && h.d.shown.Want.Equal(h.d.want):
			return
		}
		select {
		case <-h.bell:
		case <-time.After(late):
			h.t.Fatal("no answer")
		}
	}
}

// appears shows frames until a control is there, which what is read beside the window brings.
func (h *hand) appears(id string) {
	h.t.Helper()
	for {
		h.frame()
		if p, ok := h.d.panel.Find(id); ok && !p.Seen.Empty() {
			return
		}
		select {
		case <-h.bell:
		case <-time.After(late):
			h.t.Fatalf("no %s comes", id)
		}
	}
}

// middle of a control.
func (h *hand) middle(id string) (x, y float64) {
	h.t.Helper()
	p, ok := h.d.panel.Find(id)
	if !ok || p.Seen.Empty() {
		var ids []string
		for _, q := range h.d.panel.Places() {
			ids = append(ids, q.ID)
		}
		h.t.Fatalf("no control %q to be seen; there are %s", id, strings.Join(ids, ", "))
	}
	c := p.Seen.Centre()
	return c.X, c.Y
}

// to moves the pointer.
func (h *hand) to(x, y float64) {
	h.in.X, h.in.Y = x, y
	h.frame()
}

func (h *hand) press(button int) {
	h.in.Pressed[button], h.in.Down[button] = true, true
	h.frame()
}

func (h *hand) let(button int) {
	h.in.Released[button], h.in.Down[button] = true, false
	h.frame()
}

// click presses and lets go of the left button at a place.
func (h *hand) click(x, y float64) {
	h.to(x, y)
	h.press(panel.LeftButton)
	h.let(panel.LeftButton)
	h.in.Now++ // the next click is not the second of two
}

// push clicks on a control and waits for what comes of it.
func (h *hand) push(id string) {
	h.t.Helper()
	x, y := h.middle(id)
	h.click(x, y)
	h.settle()
}

// drag holds a button from one place to another in a few steps.
func (h *hand) drag(button int, x0, y0, x1, y1 float64) {
	h.to(x0, y0)
	h.press(button)
	for k := 1; k <= 5; k++ {
		u := float64(k) / 5
		h.to(x0+u*(x1-x0), y0+u*(y1-y0))
	}
	h.let(button)
	h.in.Now++
}

// scrollTo turns the wheel over the side until a control can be seen.
func (h *hand) scrollTo(id string) {
	h.t.Helper()
	h.to(h.d.lay.Side.Centre().X, h.d.lay.Side.Centre().Y)
	for range 60 {
		if p, ok := h.d.panel.Find(id); ok && p.Seen.H >= p.At.H {
			return
		}
		h.in.Wheel[1] = -1
		h.frame()
		h.frame()
	}
	h.t.Fatalf("the wheel does not bring %q into sight", id)
}

// slide drags a slider's handle to a share of its rule.
func (h *hand) slide(id string, share float64) {
	h.t.Helper()
	x, y := h.middle(id + "/handle")
	track, _ := h.d.panel.Find(id + "/track")
	h.drag(panel.LeftButton, x, y, track.At.X+share*track.At.W, y)
	h.settle()
}

// key presses a key.
func (h *hand) key(k panel.Key) {
	h.in.Keys = []panel.KeyPress{{Key: k}}
	h.frame()
	h.settle()
}
