package materials

import "math"

// Strength holds short-term strengths of clear wood, MPa; 0 means not known.
type Strength struct {
	MOR             float64 // MPa, bending strength (modulus of rupture)
	CompressionL    float64 // MPa, crushing along the grain
	CompressionPerp float64 // MPa, across the grain at the proportional limit
	ShearL          float64 // MPa, along the grain
	TensionPerp     float64 // MPa, across the grain
	RollingShear    float64 // MPa, in the plane across the grain
}

// Limits are the five strengths of a plane stress criterion, MPa, all
// positive.
type Limits struct {
	XT, XC float64 // MPa, tension and compression along the grain
	YT, YC float64 // MPa, tension and compression across it
	S      float64 // MPa, shear between the two
}

// Limits returns the limits of Hoffman's criterion. The bending strength
// stands in for the tension strength along the grain.
func (s Strength) Limits() Limits {
	return Limits{XT: s.MOR, XC: s.CompressionL, YT: s.TensionPerp, YC: s.CompressionPerp, S: s.ShearL}
}

// Known reports whether all five limits are given.
func (l Limits) Known() bool {
	return l.XT > 0 && l.XC > 0 && l.YT > 0 && l.YC > 0 && l.S > 0
}

// Hoffman returns the value of Hoffman's criterion, 1 at failure, for the
// plane stress s = along the grain, across it, shear (MPa):
//
//	sL²/(XT XC) - sL sR/(XT XC) + sR²/(YT YC) + (t/S)² + (1/XT - 1/XC) sL + (1/YT - 1/YC) sR
//
// and the load factor: how many times the stress may grow until the value is
// 1, +Inf if it never gets there. 1/loadFactor is the strength used. Both are
// NaN unless all limits are known. Source: O. Hoffman, Journal of Composite
// Materials 1 (1967) 200-206, from memory.
func Hoffman(s [3]float64, st Limits) (value, loadFactor float64) {
	if !st.Known() {
		return math.NaN(), math.NaN()
	}
	along, across, shear := s[0], s[1], s[2]
	square := along*(along-across)/(st.XT*st.XC) + across*across/(st.YT*st.YC) + (shear/st.S)*(shear/st.S)
	linear := (1/st.XT-1/st.XC)*along + (1/st.YT-1/st.YC)*across
	// square f² + linear f = 1, the least positive root.
	under := linear*linear + 4*square
	if under < 0 {
		return square + linear, math.Inf(1)
	}
	below := linear + math.Sqrt(under)
	if below <= 0 {
		return square + linear, math.Inf(1)
	}
	return square + linear, 2 / below
}
