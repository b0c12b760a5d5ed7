package answer

import (
	"math"

	"archload/cases/design"
)

// meshOrder is the power of the triangles' size with which the error falls on
// the bundled cases, 1.2 to 1.5: the sharp ends of foot and braces hold it
// below the element's own 2.
const meshOrder = 1.3

// MeshRange is what the mesh may cost a number whose value on the case's own
// and on twice as large triangles is known. With an error that falls as the
// size to the power p, their difference over 2^p - 1 is left (L. F.
// Richardson's extrapolation); of a peak of stress the whole difference.
func MeshRange(fine, coarse Num, peak bool) Num {
	d := math.Abs(float64(fine - coarse))
	if peak {
		return Num(d)
	}
	return Num(d / (math.Exp2(meshOrder) - 1))
}

// discretisation estimates the relative error of the bridge's sink (without a
// bridge, of the deepest place's) from the same case on triangles twice as
// large; NaN if that was not solved.
func discretisation(s *design.Solution) Num {
	if s.Coarse == nil {
		return None()
	}
	fine, coarse := Num(Sink(s)), Num(Sink(s.Coarse))
	if fine == 0 {
		return None()
	}
	return MeshRange(fine, coarse, false) / Num(math.Abs(float64(fine)))
}
