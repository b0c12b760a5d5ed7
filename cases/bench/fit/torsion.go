package fit

import (
	"math"

	"archload/materials"
)

// curlShare is the share of the smaller bending stiffness with which package element holds the curl of the rotations,
// so that no free motion of a triangle is left without stiffness. In a plate that bends the curl vanishes; in the
// layers at the edges of a twisted bar it does not.
const curlShare = 0.1

// torsionMend is by how much the logarithm of a twisting tone of a straight bar is lower than the shells have it. With
// D of twisting, S = k G h of shear through the thickness along the bar, and r = T/D, T the stiffness of the
// curl, the layers at the edges, in which the rotation leaves the slope as sinh(λy), leave of 4 D b
//
//	J/(4 D b) = 1 - tanh(s)/((1 + r) s),   λ² = S/(D (1 + r)),   s = λ b/2                (2)
//
// per turn and length; r = 0 gives de Saint-Venant's torsion of a rectangle to 1 %, for widths of a thickness and more.
func torsionMend(f *flatPiece, w materials.Orthotropic) float64 {
	var q materials.Axes
	for i := range q {
		for k := range q {
			q[i][k] = f.axes[k][i]
		}
	}
	c := w.Compliance().Turned(q).Reduce()
	h := f.thickness[0]
	d := h * h * h / 12 / c.MM[2][2]
	shear := materials.ShearFactor * h / c.SS[1][1]
	bend := h * h * h / 12 / (1 - c.MM[0][1]*c.MM[0][1]/(c.MM[0][0]*c.MM[1][1]))
	r := curlShare * math.Min(bend/c.MM[0][0], bend/c.MM[1][1]) / d
	left := func(r float64) float64 {
		s := f.width / 2 * math.Sqrt(shear/(d*(1+r)))
		return 1 - math.Tanh(s)/((1+r)*s)
	}
	return math.Log(left(0)/left(r)) / 2
}
