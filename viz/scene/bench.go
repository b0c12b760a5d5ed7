package scene

import (
	"image/color"
	"math"

	"archload/mesh"
)

// Sizes of the shadow on the bench.
const (
	shadowDrop  = 4.0    // mm, of the bench below what lies lowest
	shadowStep  = 0.0147 // by which each ring is larger than the one before
	shadowRings = 12
)

// shadowColor is the shadow's, one ring of it; under a translucent body, which is
// seen through, it is fainter.
func shadowColor(body bool) color.NRGBA {
	if body {
		return color.NRGBA{96, 88, 70, 5}
	}
	return color.NRGBA{102, 84, 62, 8}
}

// Shadow is the name of the solids that are the shadow on the bench: seen from
// below there is none.
const Shadow = "shadow"

// shadow lays a soft shadow under everything: the outline, smaller and larger,
// translucent one over the other, on a bench that is seen by nothing else. It lies
// to the right of the plate, away from the light.
func (b *build) shadow() {
	low := math.Inf(1)
	for _, o := range b.scene.Solids {
		for _, p := range o.Points {
			low = math.Min(low, p[2])
		}
	}
	c := mesh.Point{(b.k.lo[0] + b.k.hi[0]) / 2, (b.k.lo[1] + b.k.hi[1]) / 2}
	var rings []*Solid
	for ring := range shadowRings {
		by := 1 + shadowStep*(float64(ring)-0.6*shadowRings)
		o := &Solid{Name: Shadow, Paint: shadowColor(len(b.k.sides.tris) > 0), Tris: b.k.flat}
		for _, n := range b.k.mesh.Rim {
			p := b.k.mesh.Points[n]
			o.Points = append(o.Points, vec{c[0] + by*(p[0]-c[0]) + 9, c[1] + by*(p[1]-c[1]) - 5, low - shadowDrop - 0.05*float64(ring)})
			o.Normals = append(o.Normals, vec{0, 0, 1})
		}
		rings = append(rings, o)
	}
	b.scene.Solids = append(b.scene.Solids, rings...)
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
