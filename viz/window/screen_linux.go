//go:build cgo && linux

package window

/*
#cgo LDFLAGS: -lX11
#include <X11/Xlib.h>
*/
import "C"

// noScreen says why there is no display server; empty if there is one. GLFW
// itself would print to the terminal and stop the program.
func noScreen() string {
	if d := C.XOpenDisplay(nil); d != nil {
		C.XCloseDisplay(d)
		return ""
	}
	name := C.GoString(C.XDisplayName(nil))
	if name == "" {
		return "there is no display server (DISPLAY is not set); start one, or run under xvfb-run (Debian: xvfb xauth)"
	}
	return "the display server " + name + " (from DISPLAY) does not answer"
}
