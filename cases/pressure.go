package cases

import (
	"math"

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
func (s *Solution) FootCells() []FootCell {
	if s.Top.Built.Bridge == nil {
		return nil
	}
	var out []FootCell
	for i, c := range s.Top.Built.Bridge.cells {
		f, _ := s.padForce(i)
		out = append(out, FootCell{Foot: c.foot, X: c.x, Y: c.y, DX: c.dx, DY: c.dy, Pressure: f / c.area()})
	}
	return out
}

// FootMean is the mean pressure over 8 mm of foot.
type FootMean struct {
	Foot     int
	X        float64 // the middle of the 8 mm, from the bridge's middle, mm
	Pressure float64 // MPa
}

// FootMeans lists the mean pressures along the feet that StrengthReport's
// foot_pressure is the greatest of.
func (s *Solution) FootMeans() []FootMean {
	if s.Top.Built.Bridge == nil {
		return nil
	}
	var out []FootMean
	for _, k := range s.Top.Built.Bridge.cells {
		lo := k.x - k.dx/2
		if n := len(out); lo+footWindow > float64(s.Top.Built.Case.Bridge.Feet[k.foot].To)+1e-9 ||
			n > 0 && out[n-1].Foot == k.foot && out[n-1].X >= lo+footWindow/2 {
			continue
		}
		force, area := 0.0, 0.0
		for i, c := range s.Top.Built.Bridge.cells {
			if c.foot == k.foot && c.x > lo && c.x < lo+footWindow {
				f, _ := s.padForce(i)
				force += f
				area += c.area()
			}
		}
		out = append(out, FootMean{Foot: k.foot, X: lo + footWindow/2, Pressure: force / area})
	}
	return out
}

// CrushingLimit is the strength across the grain of the softer wood at the
// foot, MPa; NaN if none is known.
func (s *Solution) CrushingLimit() float64 { return crushingLimit(s.Top.Built.Case) }

func crushingLimit(c *Case) float64 {
	limit := math.Inf(1)
	for _, key := range []string{"plate.wood", "bridge.wood"} {
		if card, err := c.wood(key); err == nil && card.Strength.CompressionPerp > 0 {
			limit = math.Min(limit, card.Strength.CompressionPerp)
		}
	}
	if math.IsInf(limit, 1) {
		return math.NaN()
	}
	return limit
}

// StrengthFields are the shares of the plate's strength used at each triangle
// of the plan, percent: Hoffman's criterion at the worse face, and rolling
// shear. NaN where a circle of one thickness would cross an edge.
func (s *Solution) StrengthFields() (used, rolling []float64) {
	card, err := s.Top.Built.Case.wood("plate.wood")
	if err != nil {
		card.Strength = materials.Strength{}
	}
	f := s.circleField(card.Strength)
	for i := range f.used {
		f.used[i] *= 100
		f.rolling[i] *= 100
	}
	return f.used, f.rolling
}
