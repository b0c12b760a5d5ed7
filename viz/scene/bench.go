package scene

import (
	"image/color"
	"math"
	"slices"

	"archload/mesh"
)

// Sizes of the shadow on the bench.
const (
	shadowDrop  = 4.0    // mm, of the bench below what lies lowest
	shadowStep  = 0.0147 // by which each ring is larger than the one before
	shadowRings = 12
)

// shadowColor is the shadow's where it lies under so many rings, each a little dark; under a
// translucent body, which is seen through, it is fainter.
func shadowColor(body bool, rings int) color.NRGBA {
	c, one := color.NRGBA{R: 102, G: 84, B: 62}, 8.0/255
	if body {
		c, one = color.NRGBA{R: 96, G: 88, B: 70}, 5.0/255
	}
	c.A = uint8(math.Round(255 * (1 - math.Pow(1-one, float64(rings)))))
	return c
}

// Shadow is the name of the solids that are the shadow on the bench: seen from
// below there is none.
const Shadow = "shadow"

// shadow lays a soft shadow under everything, on a bench that is seen by nothing else: as dark
// as that of the outline, smaller and larger, laid over itself. What lies under the smallest and
// between each two is drawn once, so that nothing is blended twelve times. It lies to the right
// of the plate, away from the light.
func (b *build) shadow() {
	low := math.Inf(1)
	for _, o := range b.scene.Solids {
		for _, p := range o.Points {
			low = math.Min(low, p[2])
		}
	}
	body := len(b.k.sides.tris) > 0
	at := b.shadowRing(0, low)
	rings := []*Solid{shadowPart(at, b.k.flat, shadowColor(body, shadowRings))}
	for ring := 1; ring < shadowRings; ring++ {
		next := b.shadowRing(ring, low)
		rings = append(rings, shadowPart(slices.Concat(at, next), between(at, next), shadowColor(body, shadowRings-ring)))
		at = next
	}
	b.scene.Solids = append(b.scene.Solids, rings...)
}

// shadowRing is the outline on the bench, so much larger; low is what lies lowest, mm.
func (b *build) shadowRing(ring int, low float64) []vec {
	c := mesh.Point{(b.k.lo[0] + b.k.hi[0]) / 2, (b.k.lo[1] + b.k.hi[1]) / 2}
	by := 1 + shadowStep*(float64(ring)-0.6*shadowRings)
	out := make([]vec, len(b.k.mesh.Rim))
	for i, n := range b.k.mesh.Rim {
		p := b.k.mesh.Points[n]
		out[i] = vec{c[0] + by*(p[0]-c[0]) + 9, c[1] + by*(p[1]-c[1]) - 5, low - shadowDrop}
	}
	return out
}

// between covers what lies between two closed lines of as many points, whose points follow each
// other in one list. Where the outer one turns inside of the inner, there is nothing.
func between(in, out []vec) [][3]int32 {
	n := int32(len(in))
	var tris [][3]int32
	for i := range n {
		j := (i + 1) % n
		a, b, c, d := in[i], in[j], out[i], out[j]
		if (d[0]-a[0])*(b[1]-c[1])-(d[1]-a[1])*(b[0]-c[0]) > 0 {
			tris = append(tris, [3]int32{i, n + i, n + j}, [3]int32{i, n + j, j})
		}
	}
	return tris
}

// shadowPart is one tone of the shadow, lit from above.
func shadowPart(pts []vec, tris [][3]int32, paint color.NRGBA) *Solid {
	o := &Solid{Name: Shadow, Paint: paint, Points: pts, Normals: make([]vec, len(pts)), Tris: tris}
	for i := range o.Normals {
		o.Normals[i] = vec{0, 0, 1}
	}
	return o
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
