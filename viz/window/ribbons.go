//go:build cgo

package window

import (
	"image/color"
	"math"
	"unsafe"

	"github.com/go-gl/gl/v3.3-core/gl"

	"archload/viz/scene"
)

// lineKey is what ribbons are made from: a scene never changes.
type lineKey *scene.Scene

// ribbons are the lines of a scene in the graphics memory: those that solids
// hide, and those drawn over everything.
type ribbons [2]quads

func (r ribbons) drop() {
	r[0].drop()
	r[1].drop()
}

// quads are stretches of lines in the graphics memory.
type quads struct {
	array   uint32
	buffers [2]uint32 // stretches, four times each; triangles
	corners int32     // of all triangles
}

func (q quads) drop() {
	gl.DeleteVertexArrays(1, &q.array)
	gl.DeleteBuffers(2, &q.buffers[0])
}

// stretch is a piece of a polyline as the graphics memory holds it, once for
// each corner of its ribbon.
type stretch struct {
	from, to      [4]float32 // mm, and arc length, mm
	before, after [3]float32 // the places before and after, mm; the end itself: there is none
	paint         [4]uint8
	style         style
}

// style is how a line looks.
type style struct {
	half   float32 // half width, points
	edge   float32 // how far its light edge stands out, points
	dash   float32 // of dash and of gap, mm; 0: unbroken
	opaque float32 // opacity of the edge, 0 to 1
}

// upload replaces the stretches.
func (q *quads) upload(list []stretch, usage uint32) {
	if q.corners = int32(6 * len(list)); len(list) == 0 {
		return
	}
	corners := make([]stretch, 0, 4*len(list))
	triangles := make([]uint32, 0, 6*len(list))
	for i, s := range list {
		k := uint32(4 * i)
		corners = append(corners, s, s, s, s)
		triangles = append(triangles, k, k+1, k+2, k+2, k+1, k+3)
	}
	const size = int32(unsafe.Sizeof(stretch{}))
	fresh := q.array == 0
	if fresh {
		gl.GenVertexArrays(1, &q.array)
		gl.GenBuffers(2, &q.buffers[0])
	}
	gl.BindVertexArray(q.array)
	gl.BindBuffer(gl.ARRAY_BUFFER, q.buffers[0])
	gl.BufferData(gl.ARRAY_BUFFER, len(corners)*int(size), gl.Ptr(corners), usage)
	gl.BindBuffer(gl.ELEMENT_ARRAY_BUFFER, q.buffers[1])
	gl.BufferData(gl.ELEMENT_ARRAY_BUFFER, len(triangles)*4, gl.Ptr(triangles), usage)
	if fresh {
		attribute(0, 4, gl.FLOAT, size, unsafe.Offsetof(stretch{}.from))
		attribute(1, 4, gl.FLOAT, size, unsafe.Offsetof(stretch{}.to))
		attribute(2, 3, gl.FLOAT, size, unsafe.Offsetof(stretch{}.before))
		attribute(3, 3, gl.FLOAT, size, unsafe.Offsetof(stretch{}.after))
		attribute(4, 4, gl.UNSIGNED_BYTE, size, unsafe.Offsetof(stretch{}.paint))
		attribute(5, 4, gl.FLOAT, size, unsafe.Offsetof(stretch{}.style))
	}
}

func (q *quads) draw() {
	if q.corners > 0 {
		gl.BindVertexArray(q.array)
		gl.DrawElementsWithOffset(gl.TRIANGLES, q.corners, gl.UNSIGNED_INT, 0)
	}
}

// newRibbons uploads the lines of a scene.
func newRibbons(s *scene.Scene) ribbons {
	k := scene.TheLooks()
	var lists [2][]stretch
	for _, l := range s.Lines {
		st := style{half: float32(l.Width / 2), dash: float32(l.Dash)}
		if l.Halo {
			st.edge, st.opaque = float32(k.Halo), float32(k.HaloPaint.A)/255*float32(l.Paint.A)/255
		}
		lists[layer(l)] = appendStretches(lists[layer(l)], l, st)
	}
	var r ribbons
	for i := range r {
		r[i].upload(lists[i], gl.STATIC_DRAW)
	}
	return r
}

// layer is 0 for a line that solids hide, 1 for one over everything.
func layer(l *scene.Line) int {
	if l.Over {
		return 1
	}
	return 0
}

// appendStretches cuts a polyline. A place that is not a number breaks it.
func appendStretches(to []stretch, l *scene.Line, st style) []stretch {
	arc, joined := 0.0, false
	for i := 1; i < len(l.Points); i++ {
		a, b := l.Points[i-1], l.Points[i]
		long := distance(a, b)
		if math.IsNaN(long) || long == 0 {
			joined = joined && long == 0
			continue
		}
		s := dot(a, l.Paint, st)
		s.to, s.after = place(b, arc+long), single(b)
		s.from[3] = float32(arc)
		if last := len(to) - 1; joined {
			s.before = [3]float32(to[last].from[:3])
			to[last].after = s.after
		}
		to = append(to, s)
		arc, joined = arc+long, true
	}
	return to
}

// appendBeads puts a bead on a line at a length of so many mm from its
// beginning, and at every spacing from there.
func appendBeads(to []stretch, l *scene.Line, first float64) []stretch {
	k := scene.TheLooks()
	half := float32(l.Width / 2)
	radius := float32(k.BeadRadius)
	st := style{half: radius, edge: float32(k.BeadEdge) * (radius - half), opaque: float32(k.BeadEdgeInk)}
	paint := l.Paint
	paint.A = 255
	arc, next := 0.0, first
	for i := 1; i < len(l.Points); i++ {
		a, b := l.Points[i-1], l.Points[i]
		long := distance(a, b)
		if math.IsNaN(long) {
			continue
		}
		for ; next < arc+long; next += k.BeadSpacing {
			t := (next - arc) / long
			to = append(to, dot([3]float64{a[0] + t*(b[0]-a[0]), a[1] + t*(b[1]-a[1]), a[2] + t*(b[2]-a[2])}, paint, st))
		}
		arc += long
	}
	return to
}

// dot is a stretch without length: a round spot.
func dot(p [3]float64, paint color.NRGBA, st style) stretch {
	q := single(p)
	return stretch{from: place(p, 0), to: place(p, 0), before: q, after: q, paint: bytesOf(paint), style: st}
}

func distance(a, b [3]float64) float64 {
	return math.Sqrt((b[0]-a[0])*(b[0]-a[0]) + (b[1]-a[1])*(b[1]-a[1]) + (b[2]-a[2])*(b[2]-a[2]))
}

func single(p [3]float64) [3]float32 {
	return [3]float32{float32(p[0]), float32(p[1]), float32(p[2])}
}

func place(p [3]float64, arc float64) [4]float32 {
	return [4]float32{float32(p[0]), float32(p[1]), float32(p[2]), float32(arc)}
}

func lineUniforms() []string { return []string{"clip", "view", "density", "close", "edge"} }
