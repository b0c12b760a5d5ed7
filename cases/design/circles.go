package design

import (
	"math"

	"archload/fem/parallel"
	"archload/mesh"
)

// Circles lists the triangles under the circle about each triangle's centre, as wide
// as the plate is thick there; nil where it would cross an edge.
func (p *Top) Circles() [][]int32 {
	c := p.circles
	c.once.Do(func() {
		shape := Circle()
		c.tris = make([][]int32, len(p.Built.Mesh.Tris))
		p.Each(len(c.tris), func(i int) { c.tris[i], _ = p.Built.CircleAt(i, shape) })
	})
	return c.tris
}

// Each calls do(0) to do(n-1), shared between the workers. The calls must not
// depend on each other.
func (p *Top) Each(n int, do func(i int)) {
	const turns = 64 // at a time: one is short
	parallel.Chunks(p.Workers, n, turns, func(from, to int) {
		for i := from; i < to; i++ {
			do(i)
		}
	})
}

// Circle holds sample places of a circle of diameter 1 about the origin, all
// of the same weight.
func Circle() []mesh.Point {
	pts := []mesh.Point{{0, 0}}
	for k := range 6 {
		s, c := math.Sincos(float64(k) * math.Pi / 3)
		pts = append(pts, mesh.Point{0.25 * c, 0.25 * s})
	}
	for k := range 12 {
		s, c := math.Sincos((float64(k) + 0.5) * math.Pi / 6)
		pts = append(pts, mesh.Point{0.45 * c, 0.45 * s})
	}
	return pts
}

// CircleAt lists the triangles under the circle about triangle i's centre.
func (b *Built) CircleAt(i int, shape []mesh.Point) (tris []int32, whole bool) {
	return b.place.circle(b.Centroid(i), meanThickness(b.Mesh, i), shape)
}

// CircleAbout lists the triangles under a circle of diameter h about c.
func (b *Built) CircleAbout(c mesh.Point, h float64, shape []mesh.Point) (tris []int32, whole bool) {
	return b.place.circle(c, h, shape)
}

// CircleAt is Built.CircleAt for triangle i of the back's mesh.
func (k *Back) CircleAt(i int, shape []mesh.Point) (tris []int32, whole bool) {
	return k.place.circle(centroid(k.Mesh, i), meanThickness(k.Mesh, i), shape)
}

// meanThickness is that of a triangle, mm.
func meanThickness(m *mesh.Mesh, i int) (h float64) {
	for _, n := range m.Tris[i] {
		h += m.Nodes[n].H / 3
	}
	return h
}

// circle lists the triangles of the plan under a circle of diameter h about c.
func (p placer) circle(c mesh.Point, h float64, shape []mesh.Point) (tris []int32, whole bool) {
	for _, q := range shape {
		t, _, inside := p.loc.Find(mesh.Point{c[0] + h*q[0], c[1] + h*q[1]})
		if !inside {
			return nil, false
		}
		tris = append(tris, t)
	}
	return tris, true
}

// Centroid is the centre of a triangle of the plate in plan, mm.
func (b *Built) Centroid(i int) mesh.Point { return centroid(b.Mesh, i) }

func centroid(m *mesh.Mesh, i int) mesh.Point {
	var c mesh.Point
	for _, n := range m.Tris[i] {
		c[0] += m.Points[n][0] / 3
		c[1] += m.Points[n][1] / 3
	}
	return c
}
