package mesh

import (
	"cmp"

	"archload/mesh/plane"
)

// coarsestBend is how long an edge may be over the one that the surface asks for there,
// 1: in plans that were laid for their own surface the longest is 1.6 times as long
// (measured on the bundled cases, at half to twice the usual refinement).
const coarsestBend = 1.6

// Serves says whether a plan of the same outline, holes, lines and fine places that was
// laid for another surface is fine enough for this one: whether no edge is longer, over
// what the curvature asks for at its triangle, than in a plan that Triangulate lays.
func (d Domain) Serves(p *Plan) bool {
	if d.Curvature == nil {
		return true
	}
	d.Size, d.Scale = cmp.Or(d.Size, defaultSize), cmp.Or(d.Scale, 1)
	wanted := emptyField(&d).bends(&d)
	for _, t := range p.Tris {
		a, b, c := p.Points[t[0]], p.Points[t[1]], p.Points[t[2]]
		most := coarsestBend * wanted.at(Point{(a[0] + b[0] + c[0]) / 3, (a[1] + b[1] + c[1]) / 3})
		if max(plane.Dist(a, b), plane.Dist(b, c), plane.Dist(c, a)) > most {
			return false
		}
	}
	return true
}
