package answer

import (
	"archload/cases/design"
)

// FootCell is one rectangle under the bridge and the mean pressure on it.
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

// FootMeans lists pieces of the feet, FootWindow long and as wide as the foot,
// one from each column of the contact grid on. StrengthReport's foot_pressure is
// the greatest of their pressures. Nil without a bridge.
func FootMeans(s *design.Solution) []FootCell {
	if s.Top.Built.Bridge == nil {
		return nil
	}
	var out []FootCell
	wide := float64(s.Top.Built.Case.Bridge.Width)
	for i, c := range s.Top.Built.Bridge.Cells {
		lo := c.X - c.Dx/2
		if n := len(out); n > 0 && out[n-1].Foot == c.Foot && out[n-1].X >= lo+FootWindow/2 {
			continue
		}
		if mean, ok := meanPressure(s, i); ok {
			out = append(out, FootCell{Foot: c.Foot, X: lo + FootWindow/2, DX: FootWindow, DY: wide, Pressure: mean})
		}
	}
	return out
}
