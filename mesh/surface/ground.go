package surface

import (
	"cmp"
	"sync"

	"archload/mesh/plane"
)

// ground is what a fit takes from the outline and the kind of its data alone: the
// equations without the data, on the cells of the first passes and on the final ones,
// each made when first asked for. Fits share it; none changes it.
type ground struct {
	outline plane.Region
	roughness
	size         float64 // of the final cells, mm
	coarse, fine func() (*system, error)
}

func newGround(outline plane.Region, r roughness, size float64) *ground {
	const coarser = 2 // cells of the first passes, over the final size
	on := func(size float64) func() (*system, error) {
		return sync.OnceValues(func() (*system, error) {
			s, err := newSystem(gridOver(r.rim.lo, r.rim.hi, size))
			if err == nil {
				s.addRoughness(r)
			}
			return s, err
		})
	}
	return &ground{outline: outline, roughness: r, size: size, coarse: on(coarser * size), fine: on(size)}
}

// under is the ground that a surface was fitted on; nil if it is not known.
func (s *Spline) under() *ground {
	if s == nil {
		return nil
	}
	return s.ground
}

// rimOn is the outline as a polyline, that of g if it is the same outline.
func (g *ground) rimOn(outline plane.Region) (*rimLine, error) {
	if g != nil && g.outline == outline {
		return g.rim, nil
	}
	return rimOf(outline)
}

// alike says whether g serves for the other.
func (g *ground) alike(o *ground) bool {
	return g != nil && g.roughness == o.roughness && g.size == o.size
}

// roughnessOf is the roughness for some data, which may show a trough along the edge.
func roughnessOf(d *Data, rim *rimLine, trough bool) roughness {
	r := roughness{rim: rim, flat: flatWeight}
	if d.Rim == nil {
		r.flat = flatOpen
	}
	if trough {
		r.strip = cmp.Or(d.RecurveAt, usualAt) / usualAt
	}
	return r
}
