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
	wood    bool      // drawn as wood: values are mm across the grain
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
	wood := s.Across != nil && !(valued && s.Values != nil)
	points := make([]skinPoint, len(s.Points))
	for i := range points {
		p := &points[i]
		p.dim = 1
		if i < len(s.Dim) {
			p.dim = float32(s.Dim[i])
		}
		for k := range 3 {
			p.point[k] = float32(s.Points[i][k])
			if i < len(s.Normals) { // what is not lit has none
				p.normal[k] = float32(s.Normals[i][k])
			}
		}
		if wood {
			p.value = float32(s.Across[i])
		}
		if valued && i < len(s.Values) && !math.IsNaN(s.Values[i]) {
			p.value, p.has = float32(s.Values[i]), 1
		}
	}
	k := skin{wood: wood}
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
	return []string{"clip", "light", "shade", "bands", "paint", "scale", "lines", "cell", "hatch", "slant"}
}

// newBands uploads the colours of a scale and the ink on each.
func newBands(s *scale.Scale) texture {
	const n = 1025
	tone, ink := scene.Tones(s, n)
	pix := make([]uint8, 0, 2*4*n)
	for _, c := range append(tone, ink...) {
		b := bytesOf(c)
		pix = append(pix, b[:]...)
	}
	return newTexture(n, 2, pix, 4, gl.NEAREST)
}

func woodUniforms() []string {
	return []string{"clip", "light", "shade", "halfway", "along", "gloss", "late", "paint", "sizes", "takes", "warm"}
}

// newLate uploads how much late wood there is from the joint outward.
func newLate() texture {
	sums := scene.LateSums()
	var t texture
	gl.GenTextures(1, &t.id)
	gl.BindTexture(gl.TEXTURE_2D, t.id)
	gl.TexParameteri(gl.TEXTURE_2D, gl.TEXTURE_MIN_FILTER, gl.NEAREST)
	gl.TexParameteri(gl.TEXTURE_2D, gl.TEXTURE_MAG_FILTER, gl.NEAREST)
	gl.TexImage2D(gl.TEXTURE_2D, 0, gl.R32F, int32(len(sums)), 1, 0, gl.RED, gl.FLOAT, gl.Ptr(sums))
	return t
}
