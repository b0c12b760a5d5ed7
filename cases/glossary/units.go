package glossary

import "slices"

// ofUnits are the units of answers.
func ofUnits() []Term {
	return []Term{
		{Name: "MPa", Plain: true, Means: "Newtons on each square millimetre, the measure of stress: 1 MPa is the weight of about 10 kg on a square centimetre."},
		{Name: "N", Plain: true, Means: "A newton, the measure of force: the weight of about 102 g, so that 10 N are about that of a kilogram."},
		{Name: "deg", Plain: true, Means: "Degrees: over a length of 57 mm one degree is about a millimetre."},
	}
}

// UnitWords say what a unit is; "" for one that needs no words.
func UnitWords(unit string) string {
	for _, t := range slices.Concat(ofUnits(), ofTop(), ofBridge()) {
		if t.Name == unit || slices.Contains(t.Also, unit) {
			return t.Means
		}
	}
	return ""
}
