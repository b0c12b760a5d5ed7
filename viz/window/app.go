package window

import (
	"archload/viz/desk"
	"archload/viz/panel"
)

// App is what Run shows and what it tells of the hands. All methods are
// called on the goroutine that called Run.
type App interface {
	// Frame is one pass: input in, page out. Width and height are those of
	// the page in pixels; density is pixels to a point of the layout.
	Frame(width, height int, density float64, in panel.Input) *desk.Frame
	// Moving tells whether another frame is wanted without any input.
	Moving() bool
	// Done tells whether the window shall close.
	Done() bool
	// Waker hands over a function that any goroutine may call to ask for a
	// frame. It is called once, before the first Frame.
	Waker(wake func())
	// Clipboard returns text to put on the clipboard, once.
	Clipboard() (text string, ok bool)
	// Drawn is called after a frame is on the screen, with the processor
	// time that all threads took for it and the time that went by, seconds.
	Drawn(cpu, wall float64)
}

// software is how Picture names the painters that need no graphics driver.
const software = "software"
