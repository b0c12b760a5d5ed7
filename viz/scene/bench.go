package scene

import (
	"image/color"
	"math"

	"archload/mesh"
)

// Sizes of the shadow on the bench.
const (
	shadowDrop  = 4.0  // mm, of the bench below what lies lowest
	shadowCore  = 0.88 // of the outline's size: within it the shadow is whole
	shadowHalf  = 1.12 // beyond it the shadow of the key light is gone
	shadowFar   = 1.32 // and that of the sky
	shadowRings = 14   // from the core outward
	shadowStep  = 14.0 // mm from place to place of the outline at least: what has no edge needs few
)

// shadowColor is the shadow's where it is whole, fainter the higher the plate is above the
// bench, mm; under a translucent body, which is seen through, it is fainter, too.
func shadowColor(body bool, high float64) color.NRGBA {
	const whole, half = 122, 40 // opacity, and mm at which half of it is left
	c := color.NRGBA{92, 68, 44, 60}
	if !body {
		c.A = uint8(whole * half / (half + math.Max(0, high)))
	}
	return c
}

// Shadow is the name of the solid that is the shadow on the bench: seen from
// below there is none.
const Shadow = "shadow"

// shadow lays a soft shadow under everything: the outline, on a bench that is seen by
// nothing else, whole within and gone without. It lies to the right of the plate, away
// from the light.
func (b *build) shadow() {
	low := math.Inf(1)
	for _, o := range b.scene.Solids {
		for _, p := range o.Points {
			low = math.Min(low, p[2])
		}
	}
	rim := b.k.bench
	n := int32(len(rim))
	o := &Solid{Name: Shadow, Paint: shadowColor(len(b.k.sides.tris) > 0, b.k.heights[0]-low+shadowDrop), Soft: true, Tris: append([][3]int32(nil), b.k.flat...)}
	for ring := range int32(shadowRings) {
		by := shadowCore + (shadowFar-shadowCore)*float64(ring)/(shadowRings-1)
		for _, p := range rim {
			o.Points = append(o.Points, b.onBench(p, by, low-shadowDrop))
			o.Normals = append(o.Normals, vec{0, 0, 1})
			o.Dim = append(o.Dim, shadowAt(by))
		}
		if ring > 0 {
			o.Tris = append(o.Tris, between(o.Points, (ring-1)*n, ring*n, n)...)
		}
	}
	b.solid(o)
}

// shadowOutline is the plate's outline as its shadow has it: every place that is far enough from the last.
func shadowOutline(m *mesh.Mesh) (line []mesh.Point) {
	for _, n := range m.Rim {
		p := m.Points[n]
		if len(line) == 0 || math.Hypot(p[0]-line[len(line)-1][0], p[1]-line[len(line)-1][1]) >= shadowStep {
			line = append(line, p)
		}
	}
	return line
}

// between covers what lies between two closed lines of n points each, which begin at two
// places of a list. Where the outer one turns inside of the inner, there is nothing.
func between(pts []vec, in, out, n int32) [][3]int32 {
	var tris [][3]int32
	for i := range n {
		j := (i + 1) % n
		a, b, c, d := pts[in+i], pts[in+j], pts[out+i], pts[out+j]
		if (d[0]-a[0])*(b[1]-c[1])-(d[1]-a[1])*(b[0]-c[0]) > 0 {
			tris = append(tris, [3]int32{in + i, out + i, out + j}, [3]int32{in + i, out + j, in + j})
		}
	}
	return tris
}

// onBench is where the shadow of a place of the outline falls that is drawn so many
// times as large.
func (b *build) onBench(p mesh.Point, by, z float64) vec {
	c := mesh.Point{(b.k.lo[0] + b.k.hi[0]) / 2, (b.k.lo[1] + b.k.hi[1]) / 2}
	return vec{c[0] + by*(p[0]-c[0]) + 9, c[1] + by*(p[1]-c[1]) - 5, z}
}

// shadowAt is the share of the shadow that is left on the outline drawn so many times as
// large, 1 in the core.
func shadowAt(by float64) float64 {
	fall := func(from, to float64) float64 {
		t := math.Min(1, math.Max(0, (by-from)/(to-from)))
		return 1 - t*t*(3-2*t)
	}
	const ofSky = 0.2
	return (1-ofSky)*fall(shadowCore, shadowHalf) + ofSky*fall(shadowCore, shadowFar)
}

// flatTris covers the region within a closed line of points, anticlockwise, with
// triangles between them: ears are cut off one after the other (G. H. Meisters,
// "Polygons have ears", 1975).
func flatTris(line []mesh.Point) [][3]int32 {
	left := make([]int32, len(line))
	for i := range left {
		left[i] = int32(i)
	}
	turn := func(i, j, k int32) float64 {
		p, q, r := line[i], line[j], line[k]
		return (q[0]-p[0])*(r[1]-p[1]) - (q[1]-p[1])*(r[0]-p[0])
	}
	var out [][3]int32
	for i, missed := 0, 0; len(left) > 3 && missed < len(left); {
		m := len(left)
		i %= m
		p, q, r := left[(i+m-1)%m], left[i], left[(i+1)%m]
		ear := turn(p, q, r) > 0
		for _, o := range left {
			if ear && o != p && o != q && o != r {
				ear = turn(p, q, o) < 0 || turn(q, r, o) < 0 || turn(r, p, o) < 0
			}
		}
		if !ear {
			i, missed = i+1, missed+1
			continue
		}
		out, missed = append(out, [3]int32{p, q, r}), 0
		left = append(left[:i:i], left[i+1:]...)
		i++ // not a fan of slivers from one corner
	}
	if len(left) == 3 {
		out = append(out, [3]int32{left[0], left[1], left[2]})
	}
	return out
}

// Above is the scene as it is seen from above the bench, or from below, where
// there is no shadow.
func (s *Scene) Above(c Camera) *Scene {
	if c.Pitch > 0 {
		return s
	}
	out := *s
	out.Solids = nil
	for _, o := range s.Solids {
		if o.Name != Shadow {
			out.Solids = append(out.Solids, o)
		}
	}
	return &out
}
