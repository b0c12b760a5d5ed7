package design

import (
	"archload/fem"
	"archload/mesh"
)

// placer finds the shell below a place of the outer surface, of the top or of the
// back.
type placer struct {
	plate mesh.Plate
	loc   *mesh.Locator
	first int32 // shell of the model
	below bool  // the back, whose triangles are listed as seen from below
}

func newPlacer(plate mesh.Plate, m *mesh.Mesh) placer {
	return placer{plate: plate, loc: mesh.NewLocator(m.Plan)}
}

// on finds places on another plate on the same plan of triangles.
func (p placer) on(plate mesh.Plate) placer {
	p.plate = plate
	return p
}

// Outer returns the place of the outer surface whose plan is q; inside is
// false if it lies beyond the plate's edge or over a hole.
func (p placer) Outer(q mesh.Point) (at fem.SurfacePoint, inside bool) {
	n := p.plate.FromOuter(q)
	return p.at(mesh.Point{n.P[0], n.P[1]}, 1)
}

// outerWithin is Outer without the nearest place of one that lies beyond the edge.
func (p placer) outerWithin(q mesh.Point) (at fem.SurfacePoint, inside bool) {
	n := p.plate.FromOuter(q)
	tri, bary, inside := p.loc.Within(mesh.Point{n.P[0], n.P[1]})
	if !inside {
		return at, false
	}
	return p.shell(tri, bary, 1), true
}

// inner returns the place of the inner surface whose plan is q.
func (p placer) inner(q mesh.Point) (at fem.SurfacePoint, inside bool) {
	m := q
	for range 3 { // the inner face lies half a thickness down the normal
		n := p.plate.Mid(m)
		m[0], m[1] = q[0]+n.H/2*n.N[0], q[1]+n.H/2*n.N[1]
	}
	return p.at(m, -1)
}

// middle returns the place of the mid-surface whose plan is q.
func (p placer) middle(q mesh.Point) (at fem.SurfacePoint, inside bool) { return p.at(q, 0) }

func (p placer) at(q mesh.Point, zeta float64) (fem.SurfacePoint, bool) {
	tri, bary, inside := p.loc.Find(q)
	return p.shell(tri, bary, zeta), inside
}

// shell is a place of a triangle of the plan as one of the model.
func (p placer) shell(tri int32, bary [3]float64, zeta float64) fem.SurfacePoint {
	if p.below {
		bary[1], bary[2] = bary[2], bary[1]
	}
	return fem.SurfacePoint{Shell: tri + p.first, L: bary, Zeta: zeta}
}

// spread returns nx × ny places evenly over a rectangle of the outer surface
// in plan, each the middle of an equal cell.
func (p placer) spread(lo, hi mesh.Point, nx, ny int) []fem.SurfacePoint {
	pts := make([]fem.SurfacePoint, 0, nx*ny)
	for i := range nx {
		for j := range ny {
			q := mesh.Point{
				lo[0] + (hi[0]-lo[0])*(float64(i)+0.5)/float64(nx),
				lo[1] + (hi[1]-lo[1])*(float64(j)+0.5)/float64(ny),
			}
			at, _ := p.Outer(q)
			pts = append(pts, at)
		}
	}
	return pts
}
