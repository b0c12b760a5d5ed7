package design

import (
	"math"

	"archload/materials"
)

// bedding is the wood's own squash between the foot's face and the middle of
// the plate, and between the face and the base's axis: what a shell and a
// beam, stiff through their depth, leave out.
type bedding struct {
	plate     materials.Compliance // 1/MPa, in the plate's wood axes
	plateAxes materials.Axes
	base      materials.Compliance // of the bridge, in its wood axes
	baseAxes  materials.Axes
	width     float64 // of the base, mm
}

func (b *Built) bedding(card materials.Card) bedding {
	sec := &b.Model.Sections[0]
	return bedding{
		plate: sec.Wood, plateAxes: sec.Axes,
		base: card.Wood.Compliance(), baseAxes: materials.BridgeAxes(float64(b.Case.Bridge.RingAngle)),
		width: float64(b.Case.Bridge.Width),
	}
}

// per returns the squash under 1 MPa, normal and tangential, mm/MPa: half the
// plate and half the base (at most half its width) in series, with the moduli
// along the contact normal; tangentially the same depths in shear, the mean of
// the two directions. dir holds the normal and two tangents.
func (bd bedding) per(dir [3][3]float64, height, thickness float64) (normal, tangential float64) {
	frame := materials.Axes{dir[1], dir[2], dir[0]} // the normal is axis 3
	p := bd.plate.Between(bd.plateAxes, frame)
	q := bd.base.Between(bd.baseAxes, frame)
	dp, dq := thickness/2, math.Min(height, bd.width)/2
	normal = dp*p[2][2] + dq*q[2][2]
	tangential = dp*(p[3][3]+p[4][4])/2 + dq*(q[3][3]+q[4][4])/2
	return normal, tangential
}
