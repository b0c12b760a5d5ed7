package aging

import (
	"math"

	"archload/cases/answer"
	"archload/cases/design"
)

// across finds the greatest tension across the grain: where wood splits as it dries.
func across(s *design.Solution) AcrossReport {
	r := AcrossReport{Stress: answer.None(), Used: answer.None(), X: answer.None(), Y: answer.None()}
	b := s.Top.Built
	k, _ := answer.InPlane(b)
	outer, inner := make([][6]float64, len(b.Mesh.Tris)), make([][6]float64, len(b.Mesh.Tris))
	for i := range outer {
		outer[i], inner[i], _ = s.Result.ShellStresses(i)
	}
	most := math.Inf(-1)
	for i, tris := range s.Top.Circles() {
		if tris == nil {
			continue
		}
		for f, face := range [][][6]float64{outer, inner} {
			if v := answer.MeanStress(face, tris)[k]; v > most {
				most = v
				c := b.Centroid(i)
				r.Stress, r.X, r.Y, r.Surface = answer.Num(v), answer.Num(c[0]), answer.Num(c[1]), [2]string{"outer", "inner"}[f]
			}
		}
	}
	card, err := b.Case.Wood("plate.wood")
	if err == nil && card.Strength.TensionPerp > 0 && most > math.Inf(-1) {
		r.Used = answer.Num(math.Max(0, most) / card.Strength.TensionPerp)
	}
	return r
}
