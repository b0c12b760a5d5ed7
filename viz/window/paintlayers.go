//go:build cgo

package window

import (
	"image"
	"image/color"
	"math"
	"unsafe"

	"github.com/go-gl/gl/v3.3-core/gl"

	"archload/viz/desk"
	"archload/viz/scale"
	"archload/viz/scene"
)

// paintPanels draws the page's list of triangles over what is there.
func (p *Painter) paintPanels(f *desk.Frame) {
	l := f.Panels
	if l == nil || l.Atlas == nil || len(l.Vertices) == 0 {
		return
	}
	c := p.flats.corners[:0]
	for i := range l.Vertices {
		v := &l.Vertices[i]
		c = append(c, corner{float32(v.X), float32(v.Y), float32(v.U), float32(v.V), bytesOf(v.Paint)})
	}
	p.flats.corners = c
	sheet := p.sheets.get(l.Atlas, func() texture { return newSheet(l.Atlas) })
	blend()
	gl.UseProgram(p.flat.id)
	gl.Uniform2f(p.flat.at["page"], float32(f.Width), float32(f.Height))
	gl.Uniform1i(p.flat.at["atlas"], 0)
	gl.ActiveTexture(gl.TEXTURE0)
	gl.BindTexture(gl.TEXTURE_2D, sheet.id)
	gl.BindVertexArray(p.flats.array)
	gl.BindBuffer(gl.ARRAY_BUFFER, p.flats.buffer)
	gl.BufferData(gl.ARRAY_BUFFER, len(c)*int(unsafe.Sizeof(c[0])), gl.Ptr(c), gl.STREAM_DRAW)
	gl.DrawArrays(gl.TRIANGLES, 0, int32(len(c)/3*3))
	gl.Disable(gl.BLEND)
	p.sheets.sweep()
}

// paintSolids draws the skins of a view: the opaque ones, then those that
// show what lies behind them. Opaque skins are closed, their backs not drawn.
func (p *Painter) paintSolids(v *desk.View, clip *[16]float32, density float64, corner image.Point) {
	l, k := v.Camera.Light(), scene.TheLooks()
	for _, skins := range []*program{&p.wood, &p.solid} {
		gl.UseProgram(skins.id)
		gl.UniformMatrix4fv(skins.at["clip"], 1, false, &clip[0])
		uniform3(skins.at["light"], l)
		gl.Uniform4f(skins.at["shade"], float32(k.Darkest), float32(k.Brightest), float32(k.TurnedOff), float32(k.TurnedOn))
	}
	p.field(v, density, corner)
	p.grain(v, k)
	gl.Enable(gl.CULL_FACE)
	p.paintSkins(v, true)
	gl.Disable(gl.CULL_FACE)
	gl.DepthMask(false)
	blend()
	p.paintSkins(v, false)
}

// paintSkins draws either the opaque skins or the others.
func (p *Painter) paintSkins(v *desk.View, opaque bool) {
	for _, o := range v.Scene.Solids {
		if o.Soft {
			continue
		}
		k := p.skins.get(skinKey{o, v.Scene.Scale != nil}, func() skin { return newSkin(o, v.Scene.Scale != nil) })
		if k.corners == 0 || (o.Paint.A == 255) != opaque || opaque && !o.Faces(v.Camera) {
			continue
		}
		c := sharesOf(o.Paint)
		if k.wood {
			gl.UseProgram(p.wood.id)
			gl.Uniform4f(p.wood.at["paint"], c[0], c[1], c[2], c[3])
			uniform3(p.wood.at["along"], o.Along)
		} else {
			gl.UseProgram(p.solid.id)
			gl.Uniform4f(p.solid.at["paint"], c[0], c[1], c[2], c[3])
		}
		gl.BindVertexArray(k.array)
		gl.DrawElementsWithOffset(gl.TRIANGLES, k.corners, gl.UNSIGNED_INT, 0)
	}
}

// paintDusk takes from the paper what the soft solids of a view leave of its light.
func (p *Painter) paintDusk(paper color.NRGBA, v *desk.View) {
	m := matrix(v)
	gl.UseProgram(p.dusk.id)
	gl.UniformMatrix4fv(p.dusk.at["clip"], 1, false, &m[0])
	if v.Light { // else the depths have gone with the samples
		gl.Enable(gl.DEPTH_TEST)
		gl.DepthMask(false)
	}
	gl.Enable(gl.BLEND)
	gl.BlendEquationSeparate(gl.FUNC_REVERSE_SUBTRACT, gl.FUNC_ADD)
	gl.BlendFuncSeparate(gl.ONE_MINUS_DST_ALPHA, gl.ONE, gl.ZERO, gl.ONE)
	for _, o := range v.Scene.Solids {
		if !o.Soft {
			continue
		}
		k := p.skins.get(skinKey{o, v.Scene.Scale != nil}, func() skin { return newSkin(o, v.Scene.Scale != nil) })
		if k.corners == 0 {
			continue
		}
		c, ground := sharesOf(o.Paint), sharesOf(paper)
		gl.Uniform3f(p.dusk.at["takes"], c[3]*max(0, ground[0]-c[0]), c[3]*max(0, ground[1]-c[1]), c[3]*max(0, ground[2]-c[2]))
		gl.BindVertexArray(k.array)
		gl.DrawElementsWithOffset(gl.TRIANGLES, k.corners, gl.UNSIGNED_INT, 0)
	}
	gl.BlendEquation(gl.FUNC_ADD)
	gl.Disable(gl.BLEND)
	gl.Disable(gl.DEPTH_TEST)
	gl.DepthMask(true)
}

// grain sets what wood looks like in the view.
func (p *Painter) grain(v *desk.View, k scene.Looks) {
	at := p.wood.at
	gl.UseProgram(p.wood.id)
	gl.ActiveTexture(gl.TEXTURE1)
	gl.BindTexture(gl.TEXTURE_2D, p.late.id)
	gl.ActiveTexture(gl.TEXTURE0)
	gl.Uniform1i(at["late"], 1)
	last := float32(len(scene.LateSums())) - 1.001
	gl.Uniform3f(at["sizes"], float32(k.LateStep), last, float32(k.LeastWide))
	uniform3(at["takes"], k.Late)
	uniform3(at["warm"], k.Warm)
	uniform3(at["gloss"], k.Gloss)
	uniform3(at["halfway"], v.Camera.Halfway())
}

func uniform3(at int32, v [3]float64) {
	gl.Uniform3f(at, float32(v[0]), float32(v[1]), float32(v[2]))
}

// field sets the colours and the contour lines of the view's scale; the view's left and top lie at
// corner of what is drawn into, pixels from its left and bottom.
func (p *Painter) field(v *desk.View, density float64, corner image.Point) {
	at, s := p.solid.at, v.Scene.Scale
	gl.ActiveTexture(gl.TEXTURE0)
	gl.Uniform1i(at["bands"], 0)
	gl.Uniform4f(at["lines"], 0, 0, 1, 0)
	gl.Uniform4f(at["scale"], 0, 1, 1, 0)
	gl.Uniform3f(at["cell"], 0, 0, 0)
	gl.Uniform3f(at["hatch"], 0, 1, 0)
	if s == nil {
		gl.BindTexture(gl.TEXTURE_2D, 0)
		return
	}
	gl.BindTexture(gl.TEXTURE_2D, p.bands.get(bandKey(*s), func() texture { return newBands(s) }).id)
	if s.Step == 0 { // one colour from end to end
		return
	}
	gl.Uniform4f(at["scale"], float32(s.Lo), float32(s.Step), float32(s.Bands()), float32(math.Round(-s.Lo/s.Step)))
	if v.Contours {
		k := scene.TheLooks()
		if s.Kind != scale.Counting {
			gl.Uniform3f(at["cell"], float32(k.DashCell*density), float32(corner.X), float32(corner.Y))
		}
		n := math.Max(2, math.Round(k.HatchCell*density)) // pixels from line to line
		gl.Uniform3f(at["hatch"], float32(s.HatchedSide()), float32(1/n), float32(0.5-(math.Floor(n/2)+1)/n))
		gl.Uniform3f(at["slant"], float32(k.HatchInk*(k.HatchHalf*density+0.5)), float32(k.HatchInk*n/math.Sqrt2), float32(k.HatchInk))
		gl.Uniform4f(at["lines"], float32(k.ContourHalf*density), float32(k.ZeroHalf*density), float32(k.ContourRoom*density), float32(k.ContourInk))
	}
}

// paintLines draws the lines of a view with their beads: those that solids
// hide, then those over everything.
func (p *Painter) paintLines(v *desk.View, clip *[16]float32, density float64) {
	if len(v.Scene.Lines) == 0 {
		return
	}
	at, k := p.line.at, scene.TheLooks()
	near, far := v.Camera.Clip()
	gl.UseProgram(p.line.id)
	gl.UniformMatrix4fv(at["clip"], 1, false, &clip[0])
	gl.Uniform2f(at["view"], float32(v.Where.Dx()), float32(v.Where.Dy()))
	gl.Uniform1f(at["density"], float32(density))
	gl.Uniform3f(at["close"], float32(near), float32(k.Nearer), float32(2*far*near/(near-far)))
	edge := sharesOf(k.HaloPaint)
	gl.Uniform3f(at["edge"], edge[0], edge[1], edge[2])
	blend()
	gl.DepthMask(false)
	r := p.lines.get(v.Scene, func() ribbons { return newRibbons(v.Scene) })
	for i := range r {
		if i == 1 {
			gl.Disable(gl.DEPTH_TEST)
		}
		r[i].draw()
		p.paintBeads(v, i)
	}
}

// paintBeads draws the beads of one layer where they are at the view's phase.
func (p *Painter) paintBeads(v *desk.View, on int) {
	if !(v.Phase > 0) {
		return
	}
	p.dots = p.dots[:0]
	first := math.Mod(v.Phase, 1) * scene.TheLooks().BeadSpacing
	for _, l := range v.Scene.Lines {
		if l.Beads && layer(l) == on {
			p.dots = appendBeads(p.dots, l, first)
		}
	}
	p.beads.upload(p.dots, gl.STREAM_DRAW)
	p.beads.draw()
}
