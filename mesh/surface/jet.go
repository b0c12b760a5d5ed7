package surface

import "archload/mesh/plane"

// Jet is the value of a function over the plan with its first and second
// derivatives.
type Jet struct {
	Z             float64 // mm
	Zx, Zy        float64 // 1
	Zxx, Zxy, Zyy float64 // 1/mm
}

// Surface is a smooth function over the plan: the outer surface's height, or
// the thickness. It is defined some millimetres beyond the outline too.
type Surface interface {
	At(p plane.Point) Jet
}

// Flat is the constant surface, mm.
type Flat float64

// At returns the constant with zero derivatives.
func (f Flat) At(plane.Point) Jet { return Jet{Z: float64(f)} }
