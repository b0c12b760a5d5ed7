package materials

import "math"

// StiffnessScatter is the coefficient of variation of a clear wood's modulus of
// elasticity from plank to plank of its species, 1 (Wood Handbook, FPL-GTR-282,
// table 5-6: 22 %).
const StiffnessScatter = 0.22

// Scatter returns the coefficient of variation of one of a card's numbers from
// plank to plank of the same wood, 1, and where it comes from: Wood Handbook,
// table 5-6, clear wood. The table has one line for the modulus of elasticity,
// which is measured along the grain; other moduli are assumed to scatter as
// much. Poisson's ratios follow the moduli (see Varied) and have none of their
// own: 0, as of a key that is no number of a card. What water and time do has no line in the table; "swelling" and
// "creep" are all of a plank's of a kind together.
func Scatter(key string) (cv float64, from Source) {
	table := func(cv float64, line, mark string) (float64, Source) {
		return cv, Source{Text: "Wood Handbook, table 5-6, " + line, Mark: mark}
	}
	assumed := func(cv float64, like string) (float64, Source) {
		return cv, Source{Text: "assumed as " + like + ": common practice, no published source"}
	}
	switch key {
	case "EL":
		return table(StiffnessScatter, "modulus of elasticity", MarkRead)
	case "ER", "ET", "GLR", "GLT", "GRT":
		return assumed(StiffnessScatter, "the modulus of elasticity")
	case "density":
		return table(0.10, "specific gravity", MarkMemory)
	case "MOR":
		return table(0.16, "modulus of rupture", MarkRead)
	case "compression_along":
		return table(0.18, "compression parallel to grain", MarkMemory)
	case "compression_across":
		return table(0.28, "compression perpendicular to grain", MarkMemory)
	case "shear_along":
		return table(0.14, "shear parallel to grain", MarkMemory)
	case "tension_across":
		return assumed(0.25, "tension parallel to grain")
	case "swelling":
		return 0.15, Source{Text: "Wood Handbook, chapter 4, variability of shrinkage: about 15 %", Mark: MarkMemory}
	case "creep":
		return 0.30, Source{Text: "assumed so that nine planks in ten creep by half to 4/3 of the card: common practice, no published source"}
	case "rolling_shear":
		return assumed(0.14, "shear parallel to grain")
	}
	return 0, Source{}
}

// Words is the source with its mark, on one line.
func (s Source) Words() string {
	if s.Mark == "" {
		return s.Text
	}
	return s.Text + " (" + s.Mark + ")"
}

// Varied returns the card of another plank of the same wood: times holds, by
// key, how many times as great a number is. Poisson's ratios follow so that the
// plank can exist: with S' = D S D, D diagonal, the compliance stays positive
// definite for all factors, and
//
//	nuIJ' = nuIJ sqrt((EI'/EI) / (EJ'/EJ)).
func (c Card) Varied(times map[string]float64) Card {
	slots := c.slots()
	factor := func(key string) float64 {
		if t, ok := times[key]; ok {
			return t
		}
		return 1
	}
	for i, f := range fields() {
		*slots[i] *= factor(f.key)
	}
	w := &c.Wood
	w.NuLR *= math.Sqrt(factor("EL") / factor("ER"))
	w.NuLT *= math.Sqrt(factor("EL") / factor("ET"))
	w.NuRT *= math.Sqrt(factor("ER") / factor("ET"))
	return c
}
