package answer

import (
	"cmp"
	"math"

	"archload/cases"
	"archload/cases/design"
	"archload/materials"
)

// FootCell is one rectangle of the contact grid under the bridge.
type FootCell struct {
	Foot     int     // 0 is the bass foot
	X, Y     float64 // its middle from the bridge's middle, mm
	DX, DY   float64 // mm
	Pressure float64 // MPa, along the surface's normal
}

// FootCells lists the contact grid, bass first; nil without a bridge.
func FootCells(s *design.Solution) []FootCell {
	if s.Top.Built.Bridge == nil {
		return nil
	}
	var out []FootCell
	for i, c := range s.Top.Built.Bridge.Cells {
		f, _ := padForce(s, i)
		out = append(out, FootCell{Foot: c.Foot, X: c.X, Y: c.Y, DX: c.Dx, DY: c.Dy, Pressure: f / c.Area()})
	}
	return out
}

// FootWindow is the length of foot over which pressure is averaged, mm.
const FootWindow = 8

// meanPressure is the mean pressure over the length of foot that begins with
// cell i, MPa; not where the foot ends sooner.
func meanPressure(s *design.Solution, i int) (mean float64, ok bool) {
	cells := s.Top.Built.Bridge.Cells
	first := cells[i]
	lo := first.X - first.Dx/2
	if lo+FootWindow > float64(s.Top.Built.Case.Bridge.Feet[first.Foot].To)+1e-9 {
		return 0, false
	}
	force, area := 0.0, 0.0
	for k, c := range cells {
		if c.Foot == first.Foot && c.X > lo && c.X < lo+FootWindow {
			f, _ := padForce(s, k)
			force += f
			area += c.Area()
		}
	}
	return force / area, true
}

// FootMean is the mean pressure over 8 mm of foot.
type FootMean struct {
	Foot     int
	X        float64 // the middle of the 8 mm, from the bridge's middle, mm
	Pressure float64 // MPa
}

// FootMeans lists the mean pressures along the feet that StrengthReport's
// foot_pressure is the greatest of; nil without a bridge.
func FootMeans(s *design.Solution) []FootMean {
	if s.Top.Built.Bridge == nil {
		return nil
	}
	var out []FootMean
	for i, c := range s.Top.Built.Bridge.Cells {
		lo := c.X - c.Dx/2
		if n := len(out); n > 0 && out[n-1].Foot == c.Foot && out[n-1].X >= lo+FootWindow/2 {
			continue
		}
		if mean, ok := meanPressure(s, i); ok {
			out = append(out, FootMean{Foot: c.Foot, X: lo + FootWindow/2, Pressure: mean})
		}
	}
	return out
}

// CrushingLimit is the strength across the grain of the softer wood at the
// foot, MPa; NaN if the plate's is not known, as the bridge's alone says
// nothing of the softer one.
func CrushingLimit(c *cases.Case) float64 {
	across := func(m materials.Strength) float64 { return m.CompressionPerp }
	if softer(c, across, "plate.wood") == 0 {
		return math.NaN()
	}
	return softer(c, across, "plate.wood", "bridge.wood")
}

// softer is the smaller of the strengths that are known of some woods, which
// keys of the case name, MPa; 0 if none is known.
func softer(c *cases.Case, of func(materials.Strength) float64, keys ...string) float64 {
	limit := 0.0
	for _, key := range keys {
		card, err := c.Wood(key)
		if err != nil {
			continue
		}
		if v := of(card.Strength); v > 0 && v < cmp.Or(limit, math.Inf(1)) {
			limit = v
		}
	}
	return limit
}

// StrengthFields are the shares of the plate's strength used at each triangle
// of the plan, percent: Hoffman's criterion at the worse face, and rolling
// shear. NaN where a circle of one thickness would cross an edge.
func StrengthFields(s *design.Solution) (used, rolling []float64) {
	card, err := s.Top.Built.Case.Wood("plate.wood")
	if err != nil {
		card.Strength = materials.Strength{}
	}
	f := circleField(s, plateStresses(s), card.Strength)
	for i := range f.used {
		f.used[i] *= 100
		f.rolling[i] *= 100
	}
	return f.used, f.rolling
}
