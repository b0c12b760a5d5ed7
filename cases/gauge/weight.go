package gauge

import (
	"math"

	"archload/cases/tree"
)

// What a wound string is taken to be (common practice, no published source).
const (
	coreShare = 0.42 // 1, core over outer diameter
	// Spread is how far the unit weight of a wound string may be off, 1: its core, a flattened
	// or a double wrap (common practice, no published source).
	Spread = 0.05
)

// SteelDensity is the density of plain carbon steel strings, kg/m³ (handbook
// value, from memory).
const SteelDensity = 7850

// wraps are the densities of what a wound string is wrapped with, by the words for it, kg/m³
// (handbook values, from memory): phosphor bronze, brass of 80 parts copper and 20
// zinc, steel with or without a skin of nickel, pure nickel.
var wraps = map[string]tree.Density{"bronze": 8800, "brass": 8650, "steel": 7850, "nickel": 8900}

// PlainWeight returns the mass per length of a plain round string, kg/m:
// mu = rho pi d² / 4, d in mm.
func PlainWeight(d tree.Length, rho tree.Density) tree.LineMass {
	m := float64(d) / 1000
	return tree.LineMass(float64(rho) * math.Pi * m * m / 4)
}

// WoundWeight returns the mass per length of a wound string of an outer diameter in mm
// and a wrap by its word, kg/m (see the package). Without a word it is bronze.
func WoundWeight(d tree.Length, wrap string) tree.LineMass {
	rho, known := wraps[wrap]
	if !known {
		rho = wraps["bronze"]
	}
	const r2 = coreShare * coreShare
	return PlainWeight(d, SteelDensity*r2+rho*math.Pi/4*(1-r2))
}
