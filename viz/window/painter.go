//go:build cgo

package window

import (
	"fmt"
	"image"
	"image/color"
	"slices"

	"github.com/go-gl/gl/v3.3-core/gl"

	"archload/viz/desk"
)

// Painter draws frames with OpenGL. It belongs to the context that was
// current when it was made, and to that context's thread.
type Painter struct {
	solid, line, flat program

	many  target // scenes with several samples to a pixel
	still target // the scenes alone, so that panels can change over them
	page  target // scenes and panels, finished

	skins  cache[skinKey, skin]
	bands  cache[bandKey, texture]
	lines  cache[lineKey, ribbons]
	sheets cache[sheetKey, texture]
	flats  flats
	beads  quads
	dots   []stretch // beads of a frame; kept, so that it makes no garbage

	last    []desk.View // what still shows
	paper   color.NRGBA // and the colour behind it
	samples int32
}

// NewPainter compiles the shaders in the current context.
func NewPainter() (*Painter, error) {
	p := &Painter{samples: 4}
	var most int32
	gl.GetIntegerv(gl.MAX_SAMPLES, &most)
	p.samples = min(p.samples, most)
	var err error
	for _, want := range []struct {
		to         *program
		vert, frag string
		uniforms   []string
	}{
		{&p.solid, "solid", "solid", solidUniforms()},
		{&p.line, "line", "line", lineUniforms()},
		{&p.flat, "flat", "flat", []string{"page", "atlas"}},
	} {
		if *want.to, err = newProgram(want.vert, want.frag, want.uniforms...); err != nil {
			p.Close()
			return nil, err
		}
	}
	p.flats = newFlats()
	return p, nil
}

// Paint draws the frame into the painter's own page. Show or Read gives it out.
func (p *Painter) Paint(f *desk.Frame) error {
	if f.Width <= 0 || f.Height <= 0 {
		return fmt.Errorf("a page of %d x %d pixels cannot be painted", f.Width, f.Height)
	}
	fresh, err := p.resize(image.Pt(f.Width, f.Height), careful(f))
	if err != nil {
		return err
	}
	gl.Disable(gl.FRAMEBUFFER_SRGB)
	if fresh || p.paper != f.Paper || !slices.Equal(p.last, f.Views) {
		p.paintViews(f)
	}
	p.still.copyTo(p.page.id, image.Rectangle{Max: p.page.size})
	gl.BindFramebuffer(gl.FRAMEBUFFER, p.page.id)
	gl.Viewport(0, 0, int32(f.Width), int32(f.Height))
	p.paintPanels(f)
	if e := gl.GetError(); e != gl.NO_ERROR {
		return fmt.Errorf("the graphics driver reports error 0x%x", e)
	}
	return nil
}

// careful tells whether any view wants several samples to a pixel.
func careful(f *desk.Frame) bool {
	return slices.ContainsFunc(f.Views, func(v desk.View) bool { return !v.Light })
}

// resize gives the targets the size of the page; fresh: they are new.
func (p *Painter) resize(size image.Point, careful bool) (fresh bool, err error) {
	if p.page.size != size {
		p.dropTargets()
		if p.page, err = newTarget(size, 0, false); err != nil {
			return false, err
		}
		if p.still, err = newTarget(size, 0, true); err != nil {
			return false, err
		}
		fresh = true
	}
	if careful && p.many.size != size {
		p.many.drop()
		if p.many, err = newTarget(size, p.samples, true); err != nil {
			return false, err
		}
	}
	return fresh, nil
}

// paintViews draws all scenes, each in its rectangle of the still picture.
func (p *Painter) paintViews(f *desk.Frame) {
	gl.Disable(gl.SCISSOR_TEST)
	p.still.clear(f.Paper)
	if careful(f) {
		p.many.clear(f.Paper)
	}
	gl.Enable(gl.SCISSOR_TEST)
	for i := range f.Views {
		v := &f.Views[i]
		r := v.Where.Intersect(image.Rectangle{Max: p.still.size})
		if r.Empty() || v.Scene == nil {
			continue
		}
		on := &p.still
		if !v.Light {
			on = &p.many
		}
		gl.BindFramebuffer(gl.FRAMEBUFFER, on.id)
		box := func(set func(x, y, w, h int32), r image.Rectangle) {
			set(int32(r.Min.X), int32(f.Height-r.Max.Y), int32(r.Dx()), int32(r.Dy()))
		}
		box(gl.Viewport, v.Where)
		box(gl.Scissor, r)
		p.paintScene(v, max(f.Density, 0.1))
		gl.Disable(gl.SCISSOR_TEST)
		if !v.Light {
			p.many.copyTo(p.still.id, r)
		}
		gl.Enable(gl.SCISSOR_TEST)
	}
	gl.Disable(gl.SCISSOR_TEST)
	p.last, p.paper = append(p.last[:0], f.Views...), f.Paper
	p.skins.sweep()
	p.bands.sweep()
	p.lines.sweep()
}

// paintScene draws one view: solids, then the lines on and over them.
func (p *Painter) paintScene(v *desk.View, density float64) {
	clip := v.Camera.Matrix(v.Where.Dx(), v.Where.Dy())
	var m [16]float32
	for i, c := range clip {
		m[i] = float32(c)
	}
	gl.Enable(gl.DEPTH_TEST)
	gl.DepthMask(true)
	gl.DepthFunc(gl.LESS)
	gl.Disable(gl.BLEND)
	p.paintSolids(v, &m, density)
	p.paintLines(v, &m, density)
	gl.DepthMask(true)
	gl.Disable(gl.BLEND)
	gl.Disable(gl.DEPTH_TEST)
}

// clear fills the target with one colour, and its depth with the farthest.
func (t *target) clear(c color.NRGBA) {
	gl.BindFramebuffer(gl.FRAMEBUFFER, t.id)
	gl.ClearColor(float32(c.R)/255, float32(c.G)/255, float32(c.B)/255, 1)
	gl.DepthMask(true)
	gl.Clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT)
}

// show copies the finished page to the window's own framebuffer.
func (p *Painter) show() {
	p.page.copyTo(0, image.Rectangle{Max: p.page.size})
	gl.BindFramebuffer(gl.FRAMEBUFFER, 0)
}

// Read returns the page as it was painted last, first row at the top.
func (p *Painter) Read() *image.NRGBA { return p.page.read() }

// Close frees everything that the painter holds in the graphics memory.
func (p *Painter) Close() {
	p.dropTargets()
	p.skins.drop()
	p.bands.drop()
	p.lines.drop()
	p.sheets.drop()
	p.flats.drop()
	p.beads.drop()
	p.beads = quads{}
	for _, pr := range []*program{&p.solid, &p.line, &p.flat} {
		gl.DeleteProgram(pr.id)
		*pr = program{}
	}
}

func (p *Painter) dropTargets() {
	p.many.drop()
	p.still.drop()
	p.page.drop()
	p.last = p.last[:0]
}
