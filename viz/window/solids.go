//go:build cgo

package window

import (
	"math"
	"unsafe"

	"github.com/go-gl/gl/v3.3-core/gl"

	"archload/viz/desk"
	"archload/viz/scale"
	"archload/viz/scene"
)

// skinKey is what a skin is made from.
type skinKey struct {
	of     *scene.Solid
	valued bool // with its values
}

// skin is a solid in the graphics memory.
type skin struct {
	array   uint32
	buffers [2]uint32 // points, triangles
	corners int32     // of all triangles
}

func (s skin) drop() {
	gl.DeleteVertexArrays(1, &s.array)
	gl.DeleteBuffers(2, &s.buffers[0])
}

// skinPoint is a point of a skin as the graphics memory holds it.
type skinPoint struct {
	point, normal [3]float32
	value, has    float32
}

// newSkin uploads a solid, its values only where a field is shown.
func newSkin(s *scene.Solid, valued bool) skin {
	points := make([]skinPoint, len(s.Points))
	for i := range points {
		p := &points[i]
		for k := range 3 {
			p.point[k] = float32(s.Points[i][k])
			if i < len(s.Normals) {
				p.normal[k] = float32(s.Normals[i][k])
			}
		}
		if valued && i < len(s.Values) && !math.IsNaN(s.Values[i]) {
			p.value, p.has = float32(s.Values[i]), 1
		}
	}
	var k skin
	gl.GenVertexArrays(1, &k.array)
	gl.BindVertexArray(k.array)
	gl.GenBuffers(2, &k.buffers[0])
	if len(points) == 0 || len(s.Tris) == 0 {
		return k
	}
	const size = int32(unsafe.Sizeof(skinPoint{}))
	gl.BindBuffer(gl.ARRAY_BUFFER, k.buffers[0])
	gl.BufferData(gl.ARRAY_BUFFER, len(points)*int(size), gl.Ptr(points), gl.STATIC_DRAW)
	attribute(0, 3, gl.FLOAT, size, unsafe.Offsetof(skinPoint{}.point))
	attribute(1, 3, gl.FLOAT, size, unsafe.Offsetof(skinPoint{}.normal))
	attribute(2, 2, gl.FLOAT, size, unsafe.Offsetof(skinPoint{}.value))
	gl.BindBuffer(gl.ELEMENT_ARRAY_BUFFER, k.buffers[1])
	gl.BufferData(gl.ELEMENT_ARRAY_BUFFER, len(s.Tris)*12, gl.Ptr(s.Tris), gl.STATIC_DRAW)
	k.corners = int32(3 * len(s.Tris))
	return k
}

func solidUniforms() []string {
	return []string{"clip", "light", "shade", "bands", "paint", "scale", "lines"}
}

// paintSolids draws the skins of a view: the opaque ones, then those that
// show what lies behind them. Opaque skins are closed, their backs not drawn.
func (p *Painter) paintSolids(v *desk.View, clip *[16]float32, density float64) {
	at := p.solid.at
	gl.UseProgram(p.solid.id)
	gl.UniformMatrix4fv(at["clip"], 1, false, &clip[0])
	l, k := v.Camera.Light(), scene.TheLooks()
	gl.Uniform3f(at["light"], float32(l[0]), float32(l[1]), float32(l[2]))
	gl.Uniform4f(at["shade"], float32(k.Darkest), float32(k.Brightest), float32(k.TurnedOff), float32(k.TurnedOn))
	p.field(v, density)
	gl.Enable(gl.CULL_FACE)
	p.paintSkins(v.Scene, true)
	gl.Disable(gl.CULL_FACE)
	gl.DepthMask(false)
	blend()
	p.paintSkins(v.Scene, false)
}

// paintSkins draws either the opaque skins or the others.
func (p *Painter) paintSkins(s *scene.Scene, opaque bool) {
	for _, o := range s.Solids {
		k := p.skins.get(skinKey{o, s.Scale != nil}, func() skin { return newSkin(o, s.Scale != nil) })
		if k.corners == 0 || (o.Paint.A == 255) != opaque {
			continue
		}
		c := sharesOf(o.Paint)
		gl.Uniform4f(p.solid.at["paint"], c[0], c[1], c[2], c[3])
		gl.BindVertexArray(k.array)
		gl.DrawElementsWithOffset(gl.TRIANGLES, k.corners, gl.UNSIGNED_INT, 0)
	}
}

// field sets the colours and the contour lines of the view's scale.
func (p *Painter) field(v *desk.View, density float64) {
	at, s := p.solid.at, v.Scene.Scale
	gl.ActiveTexture(gl.TEXTURE0)
	gl.Uniform1i(at["bands"], 0)
	gl.Uniform4f(at["lines"], 0, 0, 1, 0)
	gl.Uniform4f(at["scale"], 0, 1, 1, 0)
	if s == nil {
		gl.BindTexture(gl.TEXTURE_2D, 0)
		return
	}
	gl.BindTexture(gl.TEXTURE_2D, p.bands.get(s, func() texture { return newBands(s) }).id)
	if s.Step == 0 { // one colour from end to end
		return
	}
	gl.Uniform4f(at["scale"], float32(s.Lo), float32(s.Step), float32(s.Bands()), float32(math.Round(-s.Lo/s.Step)))
	if v.Contours {
		k := scene.TheLooks()
		gl.Uniform4f(at["lines"], float32(k.ContourHalf*density), float32(k.ZeroHalf*density), float32(k.ContourRoom*density), float32(k.ContourInk))
	}
}

// newBands uploads the colours of a scale and the ink on each.
func newBands(s *scale.Scale) texture {
	const n = 256
	tone, ink := scene.Tones(s, n)
	pix := make([]uint8, 0, 2*4*n)
	for _, c := range append(tone, ink...) {
		b := bytesOf(c)
		pix = append(pix, b[:]...)
	}
	return newTexture(n, 2, pix, 4, gl.LINEAR)
}
