package sliding

import (
	"archload/cases/verify/reference"
	"archload/fem"
	"archload/fem/contact"
	"archload/fem/element"
	"archload/materials"
	"archload/mesh"
)

// firm is the bedding of a pad on firm ground, mm/N: too little to count, enough to
// tell pads apart.
const firm = 1e-9

// stand is a bar along x on pads of firm ground, each on a triangle of its own that
// nothing moves.
type stand struct {
	model fem.Model
	pads  []contact.Pad
	body  contact.Body
}

// bar lays the bar through the places xs, all at the height z.
func (s *stand) bar(sec element.Rectangle, z float64, xs []float64) {
	for i, x := range xs {
		s.body.Nodes = append(s.body.Nodes, [3]float64{x, 0, z})
		if i > 0 {
			s.body.Beams = append(s.body.Beams, contact.BodyBeam{Nodes: [2]int32{int32(i - 1), int32(i)}, Up: [3]float64{0, 0, 1}, Section: sec})
		}
	}
}

// pad puts a pad with its normal and tangents under a node of the bar.
func (s *stand) pad(node int32, at [3]float64, dir [3][3]float64) {
	if s.model.Sections == nil {
		s.model.Sections = []fem.Section{{Wood: reference.Isotropic(1e4, 0).Compliance(), Axes: materials.GlobalAxes()}}
	}
	first := int32(len(s.model.Nodes))
	for _, d := range [][2]float64{{1, 0}, {-0.5, 0.75}, {-0.5, -0.75}} {
		n := int32(len(s.model.Nodes))
		s.model.Nodes = append(s.model.Nodes, mesh.Node{P: [3]float64{at[0] + d[0], at[1] + d[1], at[2]}, H: 1})
		s.model.Zone = append(s.model.Zone, n)
		for k := range 6 {
			s.model.Fixed = append(s.model.Fixed, fem.Fix{Node: n, Dof: k})
		}
	}
	s.model.Shells = append(s.model.Shells, fem.ShellElem{Nodes: [3]int32{first, first + 1, first + 2}})
	on := fem.SurfacePoint{Shell: int32(len(s.model.Shells) - 1), L: [3]float64{1.0 / 3, 1.0 / 3, 1.0 / 3}}
	s.pads = append(s.pads, contact.Pad{Node: node, At: at, Dir: dir, Spread: []fem.SurfacePoint{on}, Area: 1, Bedding: [2]float64{firm, firm}})
}

// level are the directions of a pad on level ground.
func level() [3][3]float64 { return [3][3]float64{{0, 0, 1}, {1, 0, 0}, {0, 1, 0}} }

// load puts a force on a node of the bar, N.
func (s *stand) load(node int32, at, f [3]float64) {
	s.body.Loads = append(s.body.Loads, contact.BodyLoad{Node: node, At: at, F: f})
}

// guide holds a movement of a node, if friction does not hold the bar.
func (s *stand) guide(node int32, dir [3]float64, turn bool) {
	s.body.Guides = append(s.body.Guides, contact.Guide{Node: node, At: s.body.Nodes[node], Dir: dir, Turn: turn})
}

// rub raises the load with a coefficient of friction.
func (s *stand) rub(coefficient float64) (*contact.Result, error) {
	c, err := s.settle(coefficient, make([]float64, len(s.pads)))
	if err != nil {
		return nil, err
	}
	return c.now, nil
}
