//go:build cgo

package window

import (
	"math"
	"unsafe"

	"github.com/go-gl/gl/v3.3-core/gl"

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
	dim           float32 // factor of light
}

// newSkin uploads a solid, its values only where a field is shown.
func newSkin(s *scene.Solid, valued bool) skin {
	points := make([]skinPoint, len(s.Points))
	for i := range points {
		p := &points[i]
		p.dim = 1
		if i < len(s.Dim) {
			p.dim = float32(s.Dim[i])
		}
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
	attribute(2, 3, gl.FLOAT, size, unsafe.Offsetof(skinPoint{}.value))
	gl.BindBuffer(gl.ELEMENT_ARRAY_BUFFER, k.buffers[1])
	gl.BufferData(gl.ELEMENT_ARRAY_BUFFER, len(s.Tris)*12, gl.Ptr(s.Tris), gl.STATIC_DRAW)
	k.corners = int32(3 * len(s.Tris))
	return k
}

func solidUniforms() []string {
	return []string{"clip", "light", "shade", "bands", "paint", "scale", "lines", "cell"}
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
