//go:build !cgo

package window

import (
	"errors"
	"image"

	"archload/viz/desk"
)

// errNoC is the answer of everything here that needs a screen.
var errNoC = errors.New("this program was built without C (CGO_ENABLED=0) and cannot open a window; build it with a C compiler, or ask for a picture instead")

// Run would open a window; this build cannot and returns an error.
func Run(title string, size [2]int, app App) error { return errNoC }

// Picture paints a frame in software and says so.
func Picture(f *desk.Frame) (img *image.NRGBA, how string, err error) {
	return desk.Software(f), software, nil
}
