package answer

import (
	"cmp"
	"math"

	"archload/cases"
	"archload/materials"
)

// softer is the smaller of the strengths that are known of some woods, which
// keys of the case name, MPa; 0 if none is known.
func softer(c *cases.Case, of func(materials.Strength) float64, keys ...string) float64 {
	limit := 0.0
	for _, key := range keys {
		card, err := c.Wood(key)
		if err != nil {
			continue
		}
		if v := of(card.Strength); v > 0 && v < cmp.Or(limit, math.Inf(1)) {
			limit = v
		}
	}
	return limit
}

// CrushingLimit is the strength across the grain of the softer wood at the
// foot, MPa; NaN if the plate's is not known, as the bridge's alone says
// nothing of the softer one.
func CrushingLimit(c *cases.Case) float64 {
	across := func(m materials.Strength) float64 { return m.CompressionPerp }
	if softer(c, across, "plate.wood") == 0 {
		return math.NaN()
	}
	return softer(c, across, "plate.wood", "bridge.wood")
}

// HoffmanUsed is the share of the strength used by stresses in the plate's wood
// plane, 1: 1 over the load factor to Hoffman's criterion. across and shear are
// the components that InPlane names.
func HoffmanUsed(s [6]float64, across, shear int, st materials.Strength) float64 {
	_, factor := materials.Hoffman([3]float64{s[0], s[across], s[shear]}, st.Limits())
	return 1 / factor
}

// shearUsed is the greatest of some shear stresses over its limit, 1; NaN if the
// limit is not known.
func shearUsed(limit float64, stress ...float64) float64 {
	if limit <= 0 {
		return math.NaN()
	}
	worst := 0.0
	for _, v := range stress {
		worst = math.Max(worst, math.Abs(v)/limit)
	}
	return worst
}
