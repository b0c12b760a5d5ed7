package cases

import (
	"cmp"
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

// footWindow is the length of foot over which pressure is averaged, mm.
const footWindow = 8

// meanPressure is the mean pressure over the length of foot that begins with
// cell i, MPa; not where the foot ends sooner.
func (s *Solution) meanPressure(i int) (mean float64, ok bool) {
	cells := s.Top.Built.Bridge.cells
	first := cells[i]
	lo := first.x - first.dx/2
	if lo+footWindow > float64(s.Top.Built.Case.Bridge.Feet[first.foot].To)+1e-9 {
		return 0, false
	}
	force, area := 0.0, 0.0
	for k, c := range cells {
		if c.foot == first.foot && c.x > lo && c.x < lo+footWindow {
			f, _ := s.padForce(k)
			force += f
			area += c.area()
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
func (s *Solution) FootMeans() []FootMean {
	if s.Top.Built.Bridge == nil {
		return nil
	}
	var out []FootMean
	for i, c := range s.Top.Built.Bridge.cells {
		lo := c.x - c.dx/2
		if n := len(out); n > 0 && out[n-1].Foot == c.foot && out[n-1].X >= lo+footWindow/2 {
			continue
		}
		if mean, ok := s.meanPressure(i); ok {
			out = append(out, FootMean{Foot: c.foot, X: lo + footWindow/2, Pressure: mean})
		}
	}
	return out
}

// CrushingLimit is the strength across the grain of the softer wood at the
// foot, MPa; NaN if the plate's is not known, as the bridge's alone says
// nothing of the softer one.
func CrushingLimit(c *Case) float64 {
	across := func(m materials.Strength) float64 { return m.CompressionPerp }
	if c.softer(across, "plate.wood") == 0 {
		return math.NaN()
	}
	return c.softer(across, "plate.wood", "bridge.wood")
}

// softer is the smaller of the strengths that are known of some woods, which
// keys of the case name, MPa; 0 if none is known.
func (c *Case) softer(of func(materials.Strength) float64, keys ...string) float64 {
	limit := 0.0
	for _, key := range keys {
		card, err := c.wood(key)
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
func (s *Solution) StrengthFields() (used, rolling []float64) {
	card, err := s.Top.Built.Case.wood("plate.wood")
	if err != nil {
		card.Strength = materials.Strength{}
	}
	f := s.circleField(s.plateStresses(), card.Strength)
	for i := range f.used {
		f.used[i] *= 100
		f.rolling[i] *= 100
	}
	return f.used, f.rolling
}
