package answer

import (
	"math"
	"slices"

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

// FootMeans lists the pieces of the feet, FootWindow long and as wide as the
// foot, of whose mean pressures StrengthReport's foot_pressure is the greatest:
// from one end of each foot to the other. A shorter foot is one piece. Nil without
// a bridge.
//
// Force and area are spread evenly over each cell, so that between two lines of
// the grid the mean is a quotient of two linear functions of the place, which is
// greatest at an end: means that begin or end on a line of the grid hold the
// greatest of all.
func FootMeans(s *design.Solution) []FootCell {
	if s.Top.Built.Bridge == nil {
		return nil
	}
	var out []FootCell
	b := s.Top.Built.Case.Bridge
	for foot, f := range b.Feet {
		from, to := float64(f.From), float64(f.To)
		long := min(FootWindow, to-from)
		for _, lo := range windowStarts(s.Top.Built.Bridge, foot, from, to-long) {
			out = append(out, FootCell{Foot: foot, X: lo + long/2, DX: long, DY: float64(b.Width),
				Pressure: meanPressure(s, foot, lo, lo+long)})
		}
	}
	return out
}

// windowStarts are the places from first to last where a window begins or ends
// on a line of foot's contact grid, rising, mm.
func windowStarts(b *design.BridgeModel, foot int, first, last float64) []float64 {
	const same = 1e-9 // mm
	all := []float64{first, last}
	for _, c := range b.Cells {
		if c.Foot == foot {
			all = append(all, c.X-c.Dx/2, c.X+c.Dx/2-FootWindow)
		}
	}
	slices.Sort(all)
	all = slices.DeleteFunc(all, func(x float64) bool { return x < first || x > last })
	return slices.CompactFunc(all, func(a, b float64) bool { return math.Abs(b-a) < same })
}

// meanPressure is the mean pressure over a stretch of a foot, MPa. A cell counts
// with the part of it that lies in the stretch.
func meanPressure(s *design.Solution, foot int, lo, hi float64) float64 {
	force, area := 0.0, 0.0
	for k, c := range s.Top.Built.Bridge.Cells {
		part := (min(hi, c.X+c.Dx/2) - max(lo, c.X-c.Dx/2)) / c.Dx
		if c.Foot == foot && part > 0 {
			f, _ := padForce(s, k)
			force += part * f
			area += part * c.Area()
		}
	}
	return force / area
}
