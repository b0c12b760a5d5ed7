package answer

import (
	"archload/cases/design"
	"archload/mesh"
)

// SinkField is the sink of the outer surface at each node of the plan, mm.
func SinkField(s *design.Solution) []float64 {
	out := make([]float64, s.Top.Built.PlateN)
	for i := range out {
		n := s.Top.Built.Mesh.Nodes[i]
		u := s.Result.U[6*i : 6*i+6]
		// The outer surface lies half a thickness up the normal.
		lift := n.H / 2 * (u[3]*n.N[1] - u[4]*n.N[0])
		out[i] = -(u[2] + lift)
	}
	return out
}

// StressFields are the stresses at one face in each triangle of the plan, MPa,
// along and across the grain, tension positive. zeta is 1 for the outer and -1
// for the inner face.
func StressFields(s *design.Solution, zeta float64) (along, across []float64) {
	n := len(s.Top.Built.Mesh.Tris)
	along, across = make([]float64, n), make([]float64, n)
	s.Top.Each(n, func(i int) {
		f := faceStress(s, i, zeta)
		along[i], across[i] = f.Along, f.Across
	})
	return along, across
}

// Outlines returns the plate's edge and the edges of its holes, mm.
func Outlines(s *design.Solution) (edge []mesh.Point, holes [][]mesh.Point) {
	return OutlinesOf(s.Top.Built)
}

// OutlinesOf does it for a case that is built.
func OutlinesOf(b *design.Built) (edge []mesh.Point, holes [][]mesh.Point) {
	const chord = 0.1
	edge = b.Geometry.Outline.Polyline(chord)
	for _, h := range b.Geometry.Holes {
		holes = append(holes, h.Polyline(chord))
	}
	return edge, holes
}

// FootColumn is one station along the foot: its pads summed and averaged.
type FootColumn struct {
	X      float64 // on the plate, mm
	Foot   int     // 0 is the bass foot
	Relief float64 // gap as fitted, mm
	Gap    float64 // gap left at full load, mm
	Force  float64 // N
}

// FootColumns lists the stations along the foot, bass first; nil without a
// bridge.
func FootColumns(s *design.Solution) []FootColumn {
	if s.Top.Built.Bridge == nil {
		return nil
	}
	var out []FootColumn
	var area float64
	for i := range s.Top.Built.Bridge.Pads {
		p, k := &s.Top.Built.Bridge.Pads[i], s.Top.Built.Bridge.Cells[i]
		x := s.Top.Built.Case.Bridge.At[0] + k.X
		if n := len(out); n == 0 || out[n-1].X != x {
			out, area = append(out, FootColumn{X: x, Foot: k.Foot}), 0
		}
		c := &out[len(out)-1]
		f, _ := padForce(s, i)
		c.Force += f
		w := p.Area / (area + p.Area) // running mean
		area += p.Area
		c.Relief += w * (p.Gap - c.Relief)
		c.Gap += w * (s.Result.State.Gap[i] - c.Gap)
	}
	return out
}
