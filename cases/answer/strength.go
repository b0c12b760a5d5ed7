package answer

import (
	"math"

	"archload/cases/design"
	"archload/mesh"
)

// Strength finds the worst place of the plate. Stress is averaged over a
// circle as wide as the plate is thick, which does not cross an edge or a
// hole, because clear wood does not fail by a peak narrower than that.
func Strength(s *design.Solution) StrengthReport {
	r := StrengthReport{Used: None(), X: None(), Y: None(), RollingShearUsed: None(), ShearUsed: None(),
		FootPressure: None(), FootUsed: None()}
	card, err := s.Top.Built.Case.Wood("plate.wood")
	if err != nil {
		return r
	}
	all := plateStresses(s)
	f := circleField(s, all, card.Strength)
	for i := range f.used {
		r.take(f, i, s.Top.Built.Centroid(i))
	}
	edge, at := edgeField(s, all, card.Strength)
	for i := range edge.used {
		r.take(edge, i, at[i])
	}
	r.SetFootPressure(s)
	return r
}

// take counts entry i of a field, which belongs to the place p.
func (r *StrengthReport) take(f strengthField, i int, p mesh.Point) {
	if u := f.used[i]; !math.IsNaN(u) && !(float64(r.Used) >= u) {
		r.Used, r.Surface = Num(u), f.face[i]
		r.X, r.Y = Num(p[0]), Num(p[1])
	}
	r.RollingShearUsed = r.RollingShearUsed.Max(f.rolling[i])
	r.ShearUsed = r.ShearUsed.Max(f.shear[i])
}

// SetFootPressure finds the greatest mean pressure under the foot and compares it
// with the softer wood's crushing strength.
func (r *StrengthReport) SetFootPressure(s *design.Solution) {
	if s.Top.Built.Bridge == nil {
		return
	}
	worst := 0.0
	for _, m := range FootMeans(s) {
		worst = math.Max(worst, m.Pressure)
	}
	r.FootPressure = Num(worst)
	if limit := CrushingLimit(s.Top.Built.Case); limit > 0 {
		r.FootUsed = Num(worst / limit)
	}
}

// StrengthReport is how much of the wood's short-term strength is used.
type StrengthReport struct {
	Used             Num    `json:"used"` // 1 over the load factor to the Hoffman criterion
	X                Num    `json:"x"`
	Y                Num    `json:"y"`
	Surface          string `json:"surface"` // "outer" or "inner"
	RollingShearUsed Num    `json:"rolling_shear_used"`
	ShearUsed        Num    `json:"longitudinal_shear_used"`
	FootPressure     Num    `json:"foot_pressure"` // MPa, mean over 8 mm of foot
	FootUsed         Num    `json:"foot_used"`
}
