package answer

import (
	"math"

	"archload/cases/design"
	"archload/fem"
	"archload/materials"
	"archload/mesh"
)

// inWood is the stress at one face in wood axes, MPa, positive in tension.
type inWood struct {
	Along  float64 `json:"along"`
	Across float64 `json:"across"`
	Shear  float64 `json:"shear"`
}

// faceStress picks the three stresses in the plate's own wood plane.
func faceStress(s *design.Solution, shell int, zeta float64) inWood {
	t := s.Result.ShellStress(shell, zeta)
	m := s.Top.Built.Model
	across, shear := lying(m.Sections[m.Shells[shell].Section].Axes)
	return inWood{Along: t[0], Across: t[across], Shear: t[shear]}
}

// InPlane says which stress components lie in the plate: with R across the
// plate RR and LR, with T across it TT and LT.
func InPlane(b *design.Built) (across, shear int) {
	return lying(b.Model.Sections[0].Axes)
}

// lying is InPlane for a plate whose wood has these axes.
func lying(axes materials.Axes) (across, shear int) {
	if math.Abs(axes[1][2]) > math.Abs(axes[2][2]) {
		return 2, 4
	}
	return 1, 5
}

// stressAround averages the stress at one face over a circle as wide as the
// plate is thick, so that it does not depend on which triangle the place falls
// into; where the circle would cross an edge, it is that triangle's alone.
func stressAround(s *design.Solution, q mesh.Point, at fem.SurfacePoint, zeta float64) inWood {
	tris, whole := s.Top.Built.CircleAbout(q, s.Top.Built.Plate.Thickness.At(q).Z, design.Circle())
	if !whole {
		return faceStress(s, int(at.Shell), zeta)
	}
	var m inWood
	for _, t := range tris {
		f := faceStress(s, int(t), zeta)
		m.Along += f.Along / float64(len(tris))
		m.Across += f.Across / float64(len(tris))
		m.Shear += f.Shear / float64(len(tris))
	}
	return m
}

// MeanStress is the mean over some triangles of a stress per triangle, MPa.
func MeanStress(stress [][6]float64, tris []int32) (m [6]float64) {
	for _, t := range tris {
		for k := range m {
			m[k] += stress[t][k] / float64(len(tris))
		}
	}
	return m
}
