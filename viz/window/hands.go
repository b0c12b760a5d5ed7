package window

import (
	"slices"
	"unicode"

	"archload/viz/panel"
)

// happening is one thing that a hand did.
type happening struct {
	kind   happeningKind
	x, y   float64 // units of the window: where the pointer went; or notches of the wheel
	button int     // 0 to 2
	key    panel.KeyPress
	letter rune
	held   bool // a button or key went down, the pointer left, not the other way round
}

type happeningKind uint8

const (
	pointerMoved happeningKind = iota
	pointerLeft
	buttonTurned
	wheelTurned
	keyPressed
	shiftTurned
	ctrlTurned
	letterTyped
)

// hands collects what hands do between two frames. A page that is built in
// one pass can be told of one press at a time, at one place; take therefore
// deals everything out in as many passes as it needs, so that nothing is lost
// when a frame takes long.
type hands struct {
	queue []happening
	state panel.Input // what lasts: place, buttons and keys held
	away  bool        // the pointer is outside of the window
	point [2]float64  // points of the layout to a unit of the window
}

// add notes one thing.
func (h *hands) add(e happening) { h.queue = append(h.queue, e) }

// any tells whether something happened since the last take.
func (h *hands) any() bool { return len(h.queue) > 0 }

// edges tells whether a button, a key or a letter is among it, which should
// not wait.
func (h *hands) edges() bool {
	return slices.ContainsFunc(h.queue, func(e happening) bool {
		return e.kind == buttonTurned || e.kind == keyPressed || e.kind == letterTyped
	})
}

// take returns what happened as inputs for one pass each, at least one, and
// forgets it. Now is in seconds.
func (h *hands) take(now float64) []panel.Input {
	var passes []panel.Input
	c := collected{hands: h}
	h.state.Now = now
	c.begin()
	for _, e := range h.queue {
		if !c.takes(e) {
			passes = append(passes, c.end())
			c.begin()
		}
		c.add(e)
	}
	h.queue = h.queue[:0]
	for i := range passes {
		passes[i].More = true
	}
	return append(passes, c.end())
}

// collected is the pass that take is filling.
type collected struct {
	*hands
	in           panel.Input
	moved, edged bool // it has a movement; a press or release of a button
}

func (c *collected) begin() { c.in, c.moved, c.edged = c.state, false, false }

// end finishes the pass and returns it.
func (c *collected) end() panel.Input {
	c.in.Away = c.away && c.in.Down == [3]bool{}
	in := c.in
	c.state = panel.Input{X: in.X, Y: in.Y, Away: in.Away, Down: in.Down, Shift: in.Shift, Ctrl: in.Ctrl, Now: in.Now}
	return in
}

// takes tells whether the event can join the pass without blurring the order
// of things: a press happens where the pointer is after it has moved there,
// and a letter that follows a backspace is not deleted by it.
func (c *collected) takes(e happening) bool {
	keyed := len(c.in.Keys)+len(c.in.Text) > 0
	switch e.kind {
	case pointerMoved, pointerLeft, wheelTurned:
		return !c.edged
	case buttonTurned:
		return !c.edged && !c.moved && !keyed
	case keyPressed:
		return !c.edged && len(c.in.Text) == 0
	case letterTyped:
		return !c.edged
	}
	return !c.edged && !keyed
}

// add puts the event into the pass.
func (c *collected) add(e happening) {
	switch e.kind {
	case pointerMoved:
		c.in.X, c.in.Y, c.moved, c.away = e.x*c.point[0], e.y*c.point[1], true, false
	case pointerLeft:
		c.away, c.moved = e.held, true
	case buttonTurned:
		c.edged = true
		c.in.Down[e.button] = e.held
		if e.held {
			c.in.Pressed[e.button] = true
		} else {
			c.in.Released[e.button] = true
		}
	case wheelTurned:
		c.in.Wheel[0] += e.x
		c.in.Wheel[1] += e.y
	case keyPressed:
		c.in.Keys = append(c.in.Keys, e.key)
	case shiftTurned:
		c.in.Shift = e.held
	case ctrlTurned:
		c.in.Ctrl = e.held
	case letterTyped:
		if unicode.IsPrint(e.letter) {
			c.in.Text = append(c.in.Text, e.letter)
		}
	}
}
