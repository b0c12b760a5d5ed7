//go:build cgo

package window

import (
	"github.com/go-gl/gl/v3.3-core/gl"

	"archload/viz/desk"
)

// fading lays a picture that goes out over the one that comes.
type fading struct {
	program
	array uint32  // without attributes
	was   texture // the page's size
}

// newFading compiles its shaders.
func newFading() (f fading, err error) {
	if f.program, err = newProgram("fade", "fade", "was", "left"); err == nil {
		gl.GenVertexArrays(1, &f.array)
	}
	return f, err
}

// drop frees the graphics memory.
func (f *fading) drop() {
	gl.DeleteTextures(1, &f.was.id)
	gl.DeleteVertexArrays(1, &f.array)
	gl.DeleteProgram(f.id)
	*f = fading{}
}

// keep takes a target's colours for the picture that goes out.
func (f *fading) keep(t *target) {
	if f.was.id == 0 {
		gl.GenTextures(1, &f.was.id)
	}
	gl.ActiveTexture(gl.TEXTURE0)
	gl.BindTexture(gl.TEXTURE_2D, f.was.id)
	gl.TexParameteri(gl.TEXTURE_2D, gl.TEXTURE_MIN_FILTER, gl.NEAREST)
	gl.TexParameteri(gl.TEXTURE_2D, gl.TEXTURE_MAG_FILTER, gl.NEAREST)
	gl.BindFramebuffer(gl.READ_FRAMEBUFFER, t.id)
	gl.CopyTexImage2D(gl.TEXTURE_2D, 0, gl.RGBA8, 0, 0, int32(t.size.X), int32(t.size.Y), 0)
}

// draw lays it over the bound framebuffer.
func (f *fading) draw(left float64) {
	blend()
	gl.UseProgram(f.id)
	gl.ActiveTexture(gl.TEXTURE0)
	gl.BindTexture(gl.TEXTURE_2D, f.was.id)
	gl.Uniform1i(f.at["was"], 0)
	gl.Uniform1f(f.at["left"], float32(left))
	gl.BindVertexArray(f.array)
	gl.DrawArrays(gl.TRIANGLES, 0, 3)
	gl.Disable(gl.BLEND)
}

// paintWas keeps the picture of the views that go out, unless it is kept from the frame before; it is painted
// if the still picture is another.
func (p *Painter) paintWas(f *desk.Frame) error {
	if p.looks(p.kept, f.Was, f) {
		return nil
	}
	if !p.looks(p.last, f.Was, f) {
		out := *f
		out.Views = f.Was
		if err := p.paintViews(&out); err != nil {
			return err
		}
	}
	p.fading.keep(&p.still)
	p.kept = append(p.kept[:0], f.Was...)
	return nil
}
