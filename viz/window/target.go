//go:build cgo

package window

import (
	"fmt"
	"image"

	"github.com/go-gl/gl/v3.3-core/gl"
)

// target is a picture in the graphics memory that can be drawn into.
type target struct {
	id      uint32
	buffers [2]uint32 // colour, depth
	size    image.Point
}

// newTarget makes a target with so many samples to a pixel; 0: one, without
// multisampling. Depth is left out where it is not wanted.
func newTarget(size image.Point, samples int32, depth bool) (target, error) {
	t := target{size: size}
	gl.GenFramebuffers(1, &t.id)
	gl.BindFramebuffer(gl.FRAMEBUFFER, t.id)
	kinds := []struct{ format, at uint32 }{{gl.RGBA8, gl.COLOR_ATTACHMENT0}, {gl.DEPTH_COMPONENT24, gl.DEPTH_ATTACHMENT}}
	if !depth {
		kinds = kinds[:1]
	}
	for i, k := range kinds {
		gl.GenRenderbuffers(1, &t.buffers[i])
		gl.BindRenderbuffer(gl.RENDERBUFFER, t.buffers[i])
		gl.RenderbufferStorageMultisample(gl.RENDERBUFFER, samples, k.format, int32(size.X), int32(size.Y))
		gl.FramebufferRenderbuffer(gl.FRAMEBUFFER, k.at, gl.RENDERBUFFER, t.buffers[i])
	}
	if s := gl.CheckFramebufferStatus(gl.FRAMEBUFFER); s != gl.FRAMEBUFFER_COMPLETE {
		t.drop()
		return target{}, fmt.Errorf("the graphics driver gives no picture of %d x %d pixels with %d samples (status 0x%x)", size.X, size.Y, samples, s)
	}
	return t, nil
}

// drop frees the graphics memory.
func (t *target) drop() {
	gl.DeleteFramebuffers(1, &t.id) // of which 0, the window's own, is none
	gl.DeleteRenderbuffers(2, &t.buffers[0])
	*t = target{}
}

// copyTo copies a rectangle, given from the top left of the page, to the same
// place of another framebuffer of the same size.
func (t *target) copyTo(id uint32, r image.Rectangle) {
	gl.BindFramebuffer(gl.READ_FRAMEBUFFER, t.id)
	gl.BindFramebuffer(gl.DRAW_FRAMEBUFFER, id)
	x0, x1 := int32(r.Min.X), int32(r.Max.X)
	y0, y1 := int32(t.size.Y-r.Max.Y), int32(t.size.Y-r.Min.Y)
	gl.BlitFramebuffer(x0, y0, x1, y1, x0, y0, x1, y1, gl.COLOR_BUFFER_BIT, gl.NEAREST)
}

// resolveTo brings the samples of its lower left corner together into a rectangle of another
// target, given from the top left of the page.
func (t *target) resolveTo(to *target, r image.Rectangle) {
	gl.BindFramebuffer(gl.READ_FRAMEBUFFER, t.id)
	gl.BindFramebuffer(gl.DRAW_FRAMEBUFFER, to.id)
	gl.BlitFramebuffer(0, 0, int32(r.Dx()), int32(r.Dy()), int32(r.Min.X), int32(to.size.Y-r.Max.Y), int32(r.Max.X), int32(to.size.Y-r.Min.Y),
		gl.COLOR_BUFFER_BIT, gl.NEAREST)
}

// read fetches the picture, its first row at the top.
func (t *target) read() *image.NRGBA {
	img := image.NewNRGBA(image.Rectangle{Max: t.size})
	if t.size.X == 0 || t.size.Y == 0 {
		return img
	}
	rows := make([]uint8, len(img.Pix))
	gl.BindFramebuffer(gl.READ_FRAMEBUFFER, t.id)
	gl.PixelStorei(gl.PACK_ALIGNMENT, 1)
	gl.ReadPixels(0, 0, int32(t.size.X), int32(t.size.Y), gl.RGBA, gl.UNSIGNED_BYTE, gl.Ptr(rows))
	n := img.Stride
	for y := range t.size.Y {
		copy(img.Pix[y*n:(y+1)*n], rows[(t.size.Y-1-y)*n:])
	}
	for i := 3; i < len(img.Pix); i += 4 {
		img.Pix[i] = 255
	}
	return img
}
