//go:build cgo && !linux

package window

import "errors"

// Offscreen would open a context without a display; only Linux has one here.
func Offscreen() (*Context, error) {
	return nil, errors.New("no off-screen OpenGL: drawing without a window is for Linux with Mesa only")
}
