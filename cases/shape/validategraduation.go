package shape

import (
	"fmt"
	"math"
	"slices"

	"archload/cases"
	"archload/cases/tree"
	"archload/mesh"
	"archload/mesh/plane"
)

// How far the smooth surface may leave what was measured before a word, and from how
// many times the median a datum is taken for a slip of the pen where the fit fails.
const (
	heldUnsaid = 0.15 // mm: less is within what a caliper by hand is off
	farDatum   = 3
	farPlace   = 50 // mm beyond the nearest datum
)

// extreme is a value and where it is taken.
type extreme struct {
	z  float64 // mm
	at mesh.Point
}

// graduated is the thickness as fitted to data.
func (g *Geometry) graduated() (*graduation, bool) {
	s, scaled := unchanged(g.Plate.Thickness).(scaledSurface)
	if !scaled {
		return nil, false
	}
	fit, fitted := s.Surface.(*graduation)
	return fit, fitted
}

// checkGraduation warns where a thickness had to be held to its data, and refuses
// data through which the fit leaves a hole.
func (f *fitter) checkGraduation(g *graduation, bends *bendMap) {
	thin, thick, far, hole := extreme{z: math.Inf(1)}, extreme{}, extreme{}, extreme{z: math.Inf(1)}
	for _, t := range f.c.Plate.Thickness.Tables() {
		if t.Table == nil {
			continue
		}
		bends.each(func(k int, p mesh.Point) {
			if math.IsNaN(bends.point[k]) || f.overHole(p) {
				return
			}
			z := g.fit.At(p).Z
			if z < hole.z {
				hole = extreme{z, p}
			}
			switch q, _ := plane.NearestOnHull(g.hull, p); {
			case q != p:
				if d := nearest(t.Table, p); d > far.z {
					far = extreme{d, p}
				}
			case z < thin.z:
				thin = extreme{z, p}
			case z > thick.z:
				thick = extreme{z, p}
			}
		})
		f.sayHeld("plate.thickness."+t.Key, g, thin, thick, far)
		f.checkSlip(t.Table, hole)
	}
}

// sayHeld warns where the thickness was held: at its thinnest and thickest datum,
// and beyond the last.
func (f *fitter) sayHeld(key string, g *graduation, thin, thick, far extreme) {
	if thin.z < g.least-heldUnsaid {
		f.warn(key, "a smooth surface through these would go down to %.2g mm at %s; held at the thinnest measured, %.3g mm", thin.z, tree.Spot(thin.at), g.least)
	}
	if thick.z > g.most+heldUnsaid {
		f.warn(key, "a smooth surface through these would go up to %.2g mm at %s; held at the thickest measured, %.3g mm", thick.z, tree.Spot(thick.at), g.most)
	}
	if far.z > farPlace {
		f.warn(key, "no thickness was measured within %.0f mm of %s; held there at that of the last reading, %.2g mm", far.z, tree.Spot(far.at), g.At(far.at).Z)
	}
}

// checkSlip refuses a datum that lies far above the others where the fit through it
// leaves a hole.
func (f *fitter) checkSlip(h *cases.HeightTable, hole extreme) {
	middle, most := cases.Median(h.Height), slices.Max(h.Height)
	if hole.z >= thinnest || most <= farDatum*middle {
		return
	}
	row := slices.Index(h.Height, most)
	f.rep.Add(h.Rows[row], "thickness", fmt.Errorf("want a thickness like the others, whose median is %.3g mm, found %g; the fit through it leaves %.2g mm at %s",
		middle, most, hole.z, tree.Spot(hole.at)))
}

// nearest returns the distance to the nearest datum, mm.
func nearest(h *cases.HeightTable, p mesh.Point) float64 {
	least := math.Inf(1)
	for i := range h.X {
		least = min(least, math.Hypot(h.X[i]-p[0], h.Y[i]-p[1]))
	}
	return least
}

// Limits on a carved plate.
const (
	thinnest   = 0.3 // mm: less is a hole
	dipAllowed = 2.0 // mm below z = 0 before a warning: a usual recurve dips by 1 to 1.5
)
