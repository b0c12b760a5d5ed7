package materials

import "math"

// Creep says how the compliance of a wood grows under a load that stays, by kind: after t
// years it is 1 + a tⁿ times the elastic one (Schniewind and Barrett 1972 and others fit such
// powers; from memory).
type Creep struct {
	Along        float64 // a of EL
	Across       float64 // a of ER and ET
	Shear        float64 // a of GLR and GLT
	RollingShear float64 // a of GRT
	Power        float64 // n
}

// Crept returns the card of the same piece of wood with its moduli softened as after years of load, each
// amount of creep taken times share. Poisson's ratios follow as in Varied.
func (c Card) Crept(years, share float64) Card {
	grow := func(a float64) float64 { return 1 / (1 + share*a*math.Pow(years, c.Creep.Power)) }
	if years <= 0 {
		return c
	}
	k := &c.Creep
	return c.Varied(map[string]float64{"EL": grow(k.Along), "ER": grow(k.Across), "ET": grow(k.Across),
		"GLR": grow(k.Shear), "GLT": grow(k.Shear), "GRT": grow(k.RollingShear)})
}
