//go:build cgo

package window

import (
	"fmt"
	"image"
	"slices"

	"github.com/go-gl/gl/v3.3-core/gl"

	"archload/viz/desk"
)

// Paint draws the frame into the painter's own page, for Read, or into its window.
func (p *Painter) Paint(f *desk.Frame) error {
	if f.Width <= 0 || f.Height <= 0 {
		return fmt.Errorf("a page of %d x %d pixels cannot be painted", f.Width, f.Height)
	}
	fresh, err := p.resize(image.Pt(f.Width, f.Height), careful(f))
	if err != nil {
		return err
	}
	gl.Disable(gl.FRAMEBUFFER_SRGB)
	passes := len(f.Was) > 0
	if passes {
		p.paintWas(f)
	}
	if fresh || passes || !p.showsViews(f) {
		p.paintViews(f)
	}
	p.still.copyTo(p.page.id, image.Rectangle{Max: p.page.size})
	gl.BindFramebuffer(gl.FRAMEBUFFER, p.page.id)
	gl.Viewport(0, 0, int32(f.Width), int32(f.Height))
	if passes {
		p.fading.draw(1 - f.Share)
	}
	p.paintPanels(f)
	p.panels, p.passed = f.Panels, passes
	if e := gl.GetError(); e != gl.NO_ERROR {
		return fmt.Errorf("the graphics driver reports error 0x%x", e)
	}
	return nil
}

// Shows tells whether the page painted last looks like the frame.
func (p *Painter) Shows(f *desk.Frame) bool {
	return p.page.size == image.Pt(f.Width, f.Height) && len(f.Was) == 0 && !p.passed && p.showsViews(f) && p.panels.Same(f.Panels)
}

// showsViews tells whether the still picture is that of the frame's views: painted with as much
// care as they want or with more.
func (p *Painter) showsViews(f *desk.Frame) bool {
	return p.paper == f.Paper && slices.EqualFunc(p.last, f.Views, func(is, want desk.View) bool {
		is.Light = is.Light || want.Light
		return is == want
	})
}

// careful tells whether any view wants several samples to a pixel.
func careful(f *desk.Frame) bool {
	return slices.ContainsFunc(f.Views, func(v desk.View) bool { return !v.Light })
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
