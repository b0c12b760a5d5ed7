package reference

import (
	"math"

	"archload/materials"
)

// Law is what an orthotropic plate is to a series: N·mm and N/mm.
type Law struct {
	d11, d22, d12, d66 float64
	s13, s23           float64 // shear stiffness k G h, k = 5/6; +Inf for Kirchhoff
}

// PlateLaw returns the rigidities of a plate with the grain along x and the
// rings across y: D11 = E1 h³/(12 (1 - nu12 nu21)) and so on.
func PlateLaw(w materials.Orthotropic, h float64) Law {
	nu21 := w.NuLR * w.ER / w.EL
	c := h * h * h / 12 / (1 - w.NuLR*nu21)
	return Law{d11: c * w.EL, d22: c * w.ER, d12: c * w.NuLR * w.ER, d66: w.GLR * h * h * h / 12,
		s13: 5.0 / 6 * w.GLT * h, s23: 5.0 / 6 * w.GRT * h}
}

// thin returns the law without shear strain.
func (p Law) thin() Law {
	p.s13, p.s23 = math.Inf(1), math.Inf(1)
	return p
}
