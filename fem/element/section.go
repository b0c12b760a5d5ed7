package element

// Section answers for the cross-section of a beam. Its place is told in y, the
// width, and z, the height, from the beam's axis, mm; x runs along the beam.
type Section interface {
	// Check says what is unfit about the section; nil if nothing is.
	Check() error
	// Rigidity returns the stiffnesses about the axis. A zero one means none.
	Rigidity() Rigidity
	// Area returns the area of the wood, mm².
	Area() float64
	// Outline returns the corners (y, z) in order around the section,
	// anticlockwise with y to the right and z up. The axial stress of a bent
	// beam is greatest at one of them.
	Outline() [][2]float64
}

// Rigidity holds a beam section's stiffnesses about its own axis.
type Rigidity struct {
	EA       float64 // N
	GAy, GAz float64 // shear, with the shear factor, N
	GJ       float64 // torsion, N mm²
	EIy, EIz float64 // bending in the xz plane (about y) and in the xy plane, N mm²
}

// Width returns how far a section reaches from side to side, mm.
func Width(s Section) float64 {
	ring := s.Outline()
	lo, hi := ring[0][0], ring[0][0]
	for _, p := range ring {
		lo, hi = min(lo, p[0]), max(hi, p[0])
	}
	return hi - lo
}
