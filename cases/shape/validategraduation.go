package shape

import (
	"fmt"
	"math"
	"slices"

	"archload/cases"
	"archload/cases/tree"
	"archload/mesh"
)

// How far the fitted thickness may leave the range of its data before a
// warning, as a share, and from how many times the median a datum is taken for
// a slip of the pen where the fit fails.
const (
	belowData, aboveData = 0.8, 1.25
	farDatum             = 3
	farPlace             = 50 // mm from the nearest datum: worth a word where the fit fails
)

// extreme is a value and where it is taken.
type extreme struct {
	z  float64 // mm
	at mesh.Point
}

// checkGraduation warns where a thickness fitted to data runs away from them.
func (f *fitter) checkGraduation(thin, thick extreme) {
	thin.z /= f.c.Plate.ThicknessScale // as fitted
	thick.z /= f.c.Plate.ThicknessScale
	for _, t := range f.c.Plate.Thickness.Tables() {
		if t.Table == nil || math.IsInf(thin.z, 1) {
			continue
		}
		key := "plate.thickness." + t.Key
		if least := slices.Min(t.Table.Height); thin.z < belowData*least {
			f.warn(key, "no thickness was measured within %.0f mm of %s; the fit guesses %.3g mm, thinner than any measured (%.3g)",
				nearest(t.Table, thin.at), tree.Spot(thin.at), thin.z, least)
		}
		if most := slices.Max(t.Table.Height); thick.z > aboveData*most {
			f.warn(key, "no thickness was measured within %.0f mm of %s; the fit guesses %.3g mm, thicker than any measured (%.3g)",
				nearest(t.Table, thick.at), tree.Spot(thick.at), thick.z, most)
		}
	}
}

// tooThin reports a plate that is a hole somewhere: at the datum that the fit
// stumbles over, if one lies far above the others, or else at the thickness.
func (f *fitter) tooThin(thin extreme) {
	unmeasured := ""
	for _, t := range f.c.Plate.Thickness.Tables() {
		if t.Table == nil {
			continue
		}
		if far := nearest(t.Table, thin.at); far > farPlace {
			unmeasured = fmt.Sprintf("; no thickness was measured within %.0f mm of it", far)
		}
		middle, most := cases.Median(t.Table.Height), slices.Max(t.Table.Height)
		if most > farDatum*middle {
			row := slices.Index(t.Table.Height, most)
			f.rep.Add(t.Table.Rows[row], "height", fmt.Errorf("want a thickness like the others, whose median is %.3g mm, found %g; the fit through it leaves %.2g mm at %s",
				middle, most, thin.z, tree.Spot(thin.at)))
			return
		}
	}
	f.rep.AddKey("plate.thickness", "want >= %g mm everywhere, found %.2g at %s%s", thinnest, thin.z, tree.Spot(thin.at), unmeasured)
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
