//go:build cgo

package window

import (
	"image/color"
	"unsafe"

	"github.com/go-gl/gl/v3.3-core/gl"

	"archload/viz/panel"
	"archload/viz/scale"
)

// bandKey and sheetKey are what textures are made from.
type (
	bandKey  scale.Scale
	sheetKey *panel.Atlas
)

// texture is a picture that shaders look colours up in.
type texture struct{ id uint32 }

func (t texture) drop() { gl.DeleteTextures(1, &t.id) }

// newTexture uploads pixels, four bytes or one to each, row by row.
func newTexture(w, h int, pix []uint8, channels int, filter int32) texture {
	var t texture
	gl.GenTextures(1, &t.id)
	gl.BindTexture(gl.TEXTURE_2D, t.id)
	gl.TexParameteri(gl.TEXTURE_2D, gl.TEXTURE_MIN_FILTER, filter)
	gl.TexParameteri(gl.TEXTURE_2D, gl.TEXTURE_MAG_FILTER, filter)
	gl.TexParameteri(gl.TEXTURE_2D, gl.TEXTURE_WRAP_S, gl.CLAMP_TO_EDGE)
	gl.TexParameteri(gl.TEXTURE_2D, gl.TEXTURE_WRAP_T, gl.CLAMP_TO_EDGE)
	gl.PixelStorei(gl.UNPACK_ALIGNMENT, 1)
	inside, format := int32(gl.RGBA8), uint32(gl.RGBA)
	if channels == 1 {
		inside, format = gl.R8, gl.RED
	}
	gl.TexImage2D(gl.TEXTURE_2D, 0, inside, int32(w), int32(h), 0, format, gl.UNSIGNED_BYTE, gl.Ptr(pix))
	return t
}

// newSheet uploads an atlas.
func newSheet(a *panel.Atlas) texture {
	w, h := a.Image.Rect.Dx(), a.Image.Rect.Dy()
	pix := make([]uint8, 0, w*h)
	for y := range h {
		pix = append(pix, a.Image.Pix[y*a.Image.Stride:y*a.Image.Stride+w]...)
	}
	return newTexture(w, h, pix, 1, gl.NEAREST)
}

// corner is a vertex of the panels as the graphics memory holds it.
type corner struct {
	x, y, u, v float32
	paint      [4]uint8
}

// flats is the one buffer through which all panels go.
type flats struct {
	array, buffer uint32
	corners       []corner // kept, so that a frame makes no garbage
}

func newFlats() flats {
	var f flats
	gl.GenVertexArrays(1, &f.array)
	gl.BindVertexArray(f.array)
	gl.GenBuffers(1, &f.buffer)
	gl.BindBuffer(gl.ARRAY_BUFFER, f.buffer)
	const size = int32(unsafe.Sizeof(corner{}))
	attribute(0, 2, gl.FLOAT, size, unsafe.Offsetof(corner{}.x))
	attribute(1, 2, gl.FLOAT, size, unsafe.Offsetof(corner{}.u))
	attribute(2, 4, gl.UNSIGNED_BYTE, size, unsafe.Offsetof(corner{}.paint))
	return f
}

func (f *flats) drop() {
	gl.DeleteVertexArrays(1, &f.array)
	gl.DeleteBuffers(1, &f.buffer)
	*f = flats{}
}

// attribute describes one vertex attribute of the bound buffer; bytes are
// read as shares of 255.
func attribute(at uint32, n int32, kind uint32, stride int32, offset uintptr) {
	gl.EnableVertexAttribArray(at)
	gl.VertexAttribPointerWithOffset(at, n, kind, kind == gl.UNSIGNED_BYTE, stride, offset)
}

// blend lays what is drawn over what is there, whose alpha says how much of the paper is covered.
func blend() {
	gl.Enable(gl.BLEND)
	gl.BlendFuncSeparate(gl.SRC_ALPHA, gl.ONE_MINUS_SRC_ALPHA, gl.ONE, gl.ONE_MINUS_SRC_ALPHA)
}

func sharesOf(c color.NRGBA) [4]float32 {
	return [4]float32{float32(c.R) / 255, float32(c.G) / 255, float32(c.B) / 255, float32(c.A) / 255}
}

func bytesOf(c color.NRGBA) [4]uint8 { return [4]uint8{c.R, c.G, c.B, c.A} }
