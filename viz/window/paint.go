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
	fresh, err := p.resize(image.Pt(f.Width, f.Height))
	if err != nil {
		return err
	}
	gl.Disable(gl.FRAMEBUFFER_SRGB)
	passes := len(f.Was) > 0
	if passes {
		err = p.paintWas(f)
	}
	if err == nil && (fresh || !p.looks(p.last, f.Views, f)) {
		err = p.paintViews(f)
	}
	if err != nil {
		return err
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
	return p.page.size == image.Pt(f.Width, f.Height) && len(f.Was) == 0 && !p.passed && p.looks(p.last, f.Views, f) && p.panels.Same(f.Panels)
}

// looks tells whether a picture painted of some views is one of others, in a frame: painted with as much
// care as they want or with more.
func (p *Painter) looks(painted, views []desk.View, f *desk.Frame) bool {
	return p.paper == f.Paper && p.density == f.Density && slices.EqualFunc(painted, views, func(is, want desk.View) bool {
		is.Light = is.Light || want.Light
		return is == want
	})
}

// paintViews draws all scenes, each in its rectangle of the still picture.
func (p *Painter) paintViews(f *desk.Frame) error {
	gl.Disable(gl.SCISSOR_TEST)
	p.still.clear(f.Paper)
	parts, most := p.parts(f)
	if err := p.makeMany(most); err != nil {
		return err
	}
	for i := range f.Views {
		if r := parts[i]; !r.Empty() && f.Views[i].Light {
			p.paintPart(f, &f.Views[i], &p.still, r, image.Pt(0, f.Height))
		} else if !r.Empty() {
			p.many.clear(f.Paper)
			p.paintPart(f, &f.Views[i], &p.many, r, image.Pt(r.Min.X, r.Max.Y))
			p.many.resolveTo(&p.still, r)
		}
		p.paintShadows(f, &f.Views[i])
	}
	p.last, p.paper, p.density = append(p.last[:0], f.Views...), f.Paper, f.Density
	p.skins.sweep()
	p.bands.sweep()
	p.lines.sweep()
	return nil
}

// parts are the rectangles of the page that the scenes of the views can reach, and the size that
// holds each of those to be drawn with several samples to a pixel; zero: there is none. To clear
// samples and to bring them together costs as much as to draw, so that there are no more than it takes.
func (p *Painter) parts(f *desk.Frame) (parts []image.Rectangle, most image.Point) {
	parts = make([]image.Rectangle, len(f.Views))
	for i := range f.Views {
		v := &f.Views[i]
		r := v.Where.Intersect(image.Rectangle{Max: p.still.size})
		if r.Empty() || v.Scene == nil {
			continue
		}
		if parts[i] = r; v.Light {
			continue
		}
		parts[i] = r.Intersect(v.Scene.Reach(v.Camera, v.Where.Dx(), v.Where.Dy(), f.LineDensity(v)).Add(v.Where.Min))
		most = image.Pt(max(most.X, parts[i].Dx()), max(most.Y, parts[i].Dy()))
	}
	return parts, most
}

// paintShadows darkens the paper that a view's solids leave free, once they are drawn: a shadow
// lies behind everything and has no edges, so that it takes one sample to a pixel.
func (p *Painter) paintShadows(f *desk.Frame, v *desk.View) {
	if r := v.Where.Intersect(image.Rectangle{Max: p.still.size}); v.Scene != nil && !r.Empty() {
		p.within(f, v, &p.still, r, image.Pt(0, f.Height), func(float64, image.Point) { p.paintDusk(f.Paper, v) })
	}
}

// paintPart draws a view's part r on a target whose lower left pixel is origin of the page.
func (p *Painter) paintPart(f *desk.Frame, v *desk.View, on *target, r image.Rectangle, origin image.Point) {
	p.within(f, v, on, r, origin, func(density float64, corner image.Point) { p.paintScene(v, density, corner) })
}

// within lets draw a view's part r on such a target: told are the pixels to a point, and how far the view's left and
// top lie from the target's left and bottom, pixels.
func (p *Painter) within(f *desk.Frame, v *desk.View, on *target, r image.Rectangle, origin image.Point, draw func(density float64, corner image.Point)) {
	gl.BindFramebuffer(gl.FRAMEBUFFER, on.id)
	box := func(set func(x, y, w, h int32), r image.Rectangle) {
		set(int32(r.Min.X-origin.X), int32(origin.Y-r.Max.Y), int32(r.Dx()), int32(r.Dy()))
	}
	box(gl.Viewport, v.Where)
	box(gl.Scissor, r)
	gl.Enable(gl.SCISSOR_TEST)
	draw(f.LineDensity(v), image.Pt(v.Where.Min.X-origin.X, origin.Y-v.Where.Min.Y))
	gl.Disable(gl.SCISSOR_TEST)
}

// paintScene draws one view, whose left and top lie so many pixels from the target's left and
// bottom: solids, then the lines on and over them.
func (p *Painter) paintScene(v *desk.View, density float64, corner image.Point) {
	m := matrix(v)
	gl.Enable(gl.DEPTH_TEST)
	gl.DepthMask(true)
	gl.DepthFunc(gl.LESS)
	gl.Disable(gl.BLEND)
	p.paintSolids(v, &m, density, corner)
	p.paintLines(v, &m, density)
	gl.DepthMask(true)
	gl.Disable(gl.BLEND)
	gl.Disable(gl.DEPTH_TEST)
}

// matrix takes the scene's axes to the view's clip space.
func matrix(v *desk.View) (m [16]float32) {
	for i, c := range v.Camera.Matrix(v.Where.Dx(), v.Where.Dy()) {
		m[i] = float32(c)
	}
	return m
}
