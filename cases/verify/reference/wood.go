package reference

import "archload/materials"

// The wood plates of the checks: WoodLong along the grain, WoodWide across, mm.
const (
	WoodLong = 400.0
	WoodWide = 300.0
)

// TestWood is the wood of the orthotropic checks, MPa: spruce-like, round
// numbers. What a check does not depend on (ET and its Poisson's ratios) is
// there to make the wood whole.
func TestWood() materials.Orthotropic {
	return materials.Orthotropic{
		EL: 10000, ER: 780, ET: 500, GLR: 640, GLT: 610, GRT: 30,
		NuLR: 0.37, NuLT: 0.4, NuRT: 0.4, Density: 400,
	}
}

// RigidInShear returns the wood with so large transverse shear moduli that
// plates of it obey Kirchhoff.
func RigidInShear(w materials.Orthotropic) materials.Orthotropic {
	w.GLT, w.GRT = 1e3*w.EL, 1e3*w.EL
	return w
}

// Isotropic returns a material of the same stiffness in all directions.
func Isotropic(e, nu float64) materials.Orthotropic {
	g := e / (2 * (1 + nu))
	return materials.Orthotropic{EL: e, ER: e, ET: e, GLR: g, GLT: g, GRT: g, NuLR: nu, NuLT: nu, NuRT: nu}
}
