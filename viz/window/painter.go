//go:build cgo

package window

import (
	"image"
	"image/color"

	"github.com/go-gl/gl/v3.3-core/gl"

	"archload/viz/desk"
	"archload/viz/panel"
)

// Painter draws frames with OpenGL. It belongs to the context that was
// current when it was made, and to that context's thread.
type Painter struct {
	solid, wood, line, flat, dusk program
	late                          texture
	fading                        fading

	many  target // a scene with several samples to a pixel, as much of the page as it reaches
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
	kept    []desk.View // and what fading has kept of before
	paper   color.NRGBA // and the colour behind it
	density float64     // and for what screen
	panels  *panel.List // over it
	passed  bool        // and what went out
	samples int32

	inWindow bool // the page is the window's own framebuffer
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
		{&p.wood, "wood", "wood", woodUniforms()},
		{&p.line, "line", "line", lineUniforms()},
		{&p.flat, "flat", "flat", []string{"page", "atlas"}},
		{&p.dusk, "dusk", "dusk", []string{"clip", "takes"}},
	} {
		if *want.to, err = newProgram(want.vert, want.frag, want.uniforms...); err != nil {
			p.Close()
			return nil, err
		}
	}
	if p.fading, err = newFading(); err != nil {
		p.Close()
		return nil, err
	}
	p.flats = newFlats()
	p.late = newLate()
	return p, nil
}

// resize gives the targets the size of the page; fresh: they are new.
func (p *Painter) resize(size image.Point) (fresh bool, err error) {
	if p.page.size != size {
		p.dropTargets()
		if p.inWindow {
			p.page.size = size
		} else if p.page, err = newTarget(size, 0, false); err != nil {
			return false, err
		}
		if p.still, err = newTarget(size, 0, true); err != nil {
			return false, err
		}
		fresh = true
	}
	return fresh, nil
}

// makeMany makes room for so many pixels with several samples; none: as it is.
func (p *Painter) makeMany(size image.Point) (err error) {
	const step = 64 // what a driver draws at a time
	size = image.Pt((size.X+step-1)/step*step, (size.Y+step-1)/step*step)
	if size == (image.Point{}) || p.many.size == size {
		return nil
	}
	p.many.drop()
	p.many, err = newTarget(size, p.samples, true)
	return err
}

// clear fills the target with one colour, of which nothing is covered, and its depth with the farthest.
func (t *target) clear(c color.NRGBA) {
	gl.BindFramebuffer(gl.FRAMEBUFFER, t.id)
	gl.ClearColor(float32(c.R)/255, float32(c.G)/255, float32(c.B)/255, 0)
	gl.DepthMask(true)
	gl.Clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT)
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
	p.fading.drop()
	p.late.drop()
	p.beads = quads{}
	for _, pr := range []*program{&p.solid, &p.wood, &p.line, &p.flat, &p.dusk} {
		gl.DeleteProgram(pr.id)
		*pr = program{}
	}
}

func (p *Painter) dropTargets() {
	p.many.drop()
	p.still.drop()
	p.page.drop()
	p.last, p.kept, p.panels = p.last[:0], p.kept[:0], nil
}
