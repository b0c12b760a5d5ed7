package body

import (
	"math"

	"archload/cases/design"
	"archload/fem/vec3"
)

// Motion is how a block moves as one.
type Motion struct {
	At   [3]float64 `json:"at"`   // mm, place of the block
	Move [3]float64 `json:"move"` // mm, there
	Turn [3]float64 `json:"turn"` // deg, about x, y and z
}

// of is the movement of a place that goes with the block, mm.
func (m *Motion) of(p [3]float64) [3]float64 {
	return vec3.Add(m.Move, vec3.Cross(vec3.Scale(m.Turn, math.Pi/180), vec3.Sub(p, m.At)))
}

// motion reads the movement of a block.
func motion(s *design.Solution, name string) Motion {
	n := s.Top.Built.BlockNode(name)
	u := s.Result.U[6*n : 6*n+6]
	return Motion{At: s.Top.Built.Model.Nodes[n].P, Move: [3]float64(u[:3]), Turn: vec3.Scale([3]float64(u[3:]), 180/math.Pi)}
}
