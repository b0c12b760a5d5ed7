package shape

import (
	"slices"

	"archload/cases"
	"archload/mesh"
	"archload/mesh/plane"
	"archload/mesh/surface"
)

// graduation is a thickness fitted to data, held to what was measured: beyond the
// outermost data, the hull of all their places, it stays what it is there, and it
// is nowhere thinner than the thinnest of them or thicker than the thickest. A smooth
// surface left to itself goes on falling or rising beyond its data, and wood that
// nobody measured would be computed with. It is told from others by its address.
type graduation struct {
	fit         surface.Surface
	hull        []mesh.Point
	least, most float64 // mm
}

// newGraduation holds a fit to the tables that it was fitted to.
func newGraduation(fit surface.Surface, tables []cases.KeyedTable) *graduation {
	g := &graduation{fit: fit}
	var at []mesh.Point
	var heights []float64
	for _, t := range tables {
		if t.Table == nil {
			continue
		}
		heights = append(heights, t.Table.Height...)
		for i := range t.Table.X {
			at = append(at, mesh.Point{t.Table.X[i], t.Table.Y[i]})
		}
	}
	g.hull, g.least, g.most = plane.Hull(at), slices.Min(heights), slices.Max(heights)
	return g
}

// At returns thickness and derivatives at a place: beyond the hull those along its
// nearest side alone, where it is held none.
func (g *graduation) At(p mesh.Point) surface.Jet {
	q, u := plane.NearestOnHull(g.hull, p)
	j := g.fit.At(q)
	switch {
	case j.Z <= g.least:
		return surface.Jet{Z: g.least}
	case j.Z >= g.most:
		return surface.Jet{Z: g.most}
	case q == p:
		return j
	}
	slope := j.Zx*u[0] + j.Zy*u[1]
	bend := j.Zxx*u[0]*u[0] + 2*j.Zxy*u[0]*u[1] + j.Zyy*u[1]*u[1]
	return surface.Jet{Z: j.Z, Zx: slope * u[0], Zy: slope * u[1], Zxx: bend * u[0] * u[0], Zxy: bend * u[0] * u[1], Zyy: bend * u[1] * u[1]}
}
