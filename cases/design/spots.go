package design

import (
	"archload/cases"
	"archload/cases/tree"
	"archload/fem"
	"archload/mesh"
)

// spots are the places of the outer surface under a rectangle about a point, in steps of about a
// millimetre; the point alone without a size.
func (b *Built) spots(at mesh.Point, size *[2]tree.Length) []fem.SurfacePoint {
	if size == nil {
		return b.Place.spread(at, at, 1, 1)
	}
	lo, hi := rect(at, size)
	return b.Place.spread(lo, hi, cases.Pieces(float64(size[0]), 1), cases.Pieces(float64(size[1]), 1))
}

// masses puts what sits on the plate into the model.
func (b *Built) masses() {
	for i := range b.Case.Masses {
		m := &b.Case.Masses[i]
		b.Model.Masses = append(b.Model.Masses, fem.PointMass{At: b.spots(m.At, m.Size), Mass: float64(m.Mass) * tonnePerGram})
	}
}
