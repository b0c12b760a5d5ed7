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

// The range of creep, times that of the cards: half of it was seen in dry wood under little load (from
// memory); 4/3 is service class 2 of EN 1995-1-1, table 3.2, 0.80, over class 1, 0.60.
const (
	LeastCreep = 0.5
	MostCreep  = 4.0 / 3
)

// CreepKnown says whether the card tells how its wood creeps.
func (c Card) CreepKnown() bool { return len(c.Missing(CreepKeys()...)) == 0 }

// CreepKeys are the keys of a card that tell it.
func CreepKeys() []string {
	return []string{"creep_along", "creep_across", "creep_shear", "creep_rolling_shear", "creep_power"}
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
