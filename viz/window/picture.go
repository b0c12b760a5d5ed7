//go:build cgo

package window

import (
	"errors"
	"image"

	"github.com/go-gl/glfw/v3.3/glfw"

	"archload/viz/desk"
)

// Picture paints a frame without a window: with OpenGL off the screen, else
// with OpenGL in a window that stays hidden, else in software. How says which
// it was. Where it was software, err tells why the others could not; the
// picture is good all the same.
func Picture(f *desk.Frame) (img *image.NRGBA, how string, err error) {
	var why []error
	for _, open := range []func() (*Context, error){Offscreen, hidden} {
		c, err := open()
		if err != nil {
			why = append(why, err)
			continue
		}
		img, err := pictureIn(c, f)
		if err == nil {
			return img, c.how, nil
		}
		why = append(why, err)
	}
	return desk.Software(f), software, errors.Join(why...)
}

// pictureIn paints one frame in a context and closes it.
func pictureIn(c *Context, f *desk.Frame) (*image.NRGBA, error) {
	defer c.Close()
	p, err := NewPainter()
	if err != nil {
		return nil, err
	}
	defer p.Close()
	if err := p.Paint(f); err != nil {
		return nil, err
	}
	return p.Read(), nil
}

// hidden opens a window that never shows, for its context.
func hidden() (c *Context, err error) {
	defer plain(&err)
	if err := start(); err != nil {
		return nil, err
	}
	w, err := open("", [2]int{64, 64}, false)
	if err != nil {
		glfw.Terminate()
		return nil, err
	}
	return &Context{how: "OpenGL in a hidden window", close: func() {
		w.Destroy()
		glfw.Terminate()
	}}, nil
}
