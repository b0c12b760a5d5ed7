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
	// Soon returns within how many seconds a better page than the last is due, so that
	// showing that one would only put the better one off; 0: none is.
	Soon() float64
	// Moving tells whether another frame is wanted without any input.
	Moving() bool
	// Done tells whether the window shall close.
	Done() bool
	// Waker hands over a function that any goroutine may call to ask for a
	// frame. It is called once, before the first Frame.
	Waker(wake func())
	// Title is what stands over the window now.
	Title() string
	// Clipboard returns text to put on the clipboard, once.
	Clipboard() (text string, ok bool)
	// Drawn is called after a page is on the screen, with the processor time that all
	// threads took while it was made and painted and the time that went by, seconds.
	Drawn(cpu, wall float64)
}

// software is how Picture names the painters that need no graphics driver.
const software = "software"
