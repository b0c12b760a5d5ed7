package materials

import (
	"cmp"
	"math"
	"slices"
)

// Water is what moisture does to a wood. Values are those of a card: 0 means not known,
// except that a swelling of 0 which has a source means none.
type Water struct {
	Swell [3]float64 // strain along L, R and T for each percentage point of moisture, 1
	// Values of green wood over those at 12 %, 1.
	GreenStiffness, GreenMOR, GreenCompressionL, GreenCompressionPerp, GreenShear float64
	// GreenMoisture is the moisture Mp above which strength and stiffness no longer change, %.
	GreenMoisture float64
}

// CardMoisture is the moisture at which the values of the cards hold, %.
const CardMoisture = 12

// usualGreen is the moisture Mp of woods that the handbook's table 5-13 does not list, %.
const usualGreen = 25

// Trends of the moduli that the tables of green wood do not give, as values of green wood over those at
// 12 %: from the middle trends between 12 and 20 %, moduli across the grain -23 %, of shear -20 %
// (Wood Handbook, table of approximate middle trends of the effect of moisture; from memory), by equation 5-3
// with Mp = 25: 0.77 and 0.80 to the power 13/8.
const (
	greenAcross = 0.654
	greenShears = 0.696
)

// AtMoisture returns P at the moisture m, %, from p12, its value at 12 %, and green, its value in
// green wood over p12:
//
//	P = P12 (P12/Pg)^((12 − M)/(Mp − 12)),   M no more than Mp
//
// (Wood Handbook, FPL-GTR-282, equation 5-3). It is not for impact, nor for tension across the grain.
func AtMoisture(p12, green, m, mp float64) float64 {
	return p12 * math.Pow(1/green, (CardMoisture-min(m, mp))/(mp-CardMoisture))
}

// Missing lists the keys of a card that have no value of those asked for.
func (c Card) Missing(keys ...string) []string {
	return slices.DeleteFunc(slices.Clone(keys), func(k string) bool { _, ok := c.Sources[k]; return ok })
}

// Wetted returns the card of the same piece of wood at the moisture m, %: EL follows the handbook's modulus of
// elasticity, the other moduli its middle trends, strengths their own lines, tension across the grain stays.
// What the card does not tell stays as it is, all moduli if it does not tell green_stiffness. Swelling, Poisson's ratios and density stay.
func (c Card) Wetted(m float64) Card {
	mp := cmp.Or(c.Water.GreenMoisture, usualGreen)
	times := map[string]float64{}
	set := func(green float64, keys ...string) {
		if green > 0 {
			for _, k := range keys {
				times[k] = AtMoisture(1, green, m, mp)
			}
		}
	}
	w := &c.Water
	if set(w.GreenStiffness, "EL"); w.GreenStiffness > 0 {
		set(greenAcross, "ER", "ET")
		set(greenShears, "GLR", "GLT", "GRT")
	}
	set(w.GreenMOR, "MOR")
	set(w.GreenCompressionL, "compression_along")
	set(w.GreenCompressionPerp, "compression_across")
	set(w.GreenShear, "shear_along", "rolling_shear")
	nu := c.Wood
	out := c.Varied(times)
	out.Wood.NuLR, out.Wood.NuLT, out.Wood.NuRT = nu.NuLR, nu.NuLT, nu.NuRT
	if out.Wood.Check() != nil { // the ratios of such wood cannot be
		return c.Varied(times)
	}
	return out
}
