package fem

import (
	"slices"

	"archload/fem/sparse"
	"archload/fem/vec3"
)

// addSprings adds K row ⊗ row of every spring, whose place moves along it by
// row · u.
func (s *System) addSprings(m *sparse.Matrix) {
	for i := range s.Model.Springs {
		nodes, row := s.springRow(i)
		m.Add(nodes, outer(s.Model.Springs[i].K, row))
	}
}

// outer is c row ⊗ row, row-major.
func outer(c float64, row []float64) []float64 {
	k := make([]float64, len(row)*len(row))
	for a, x := range row {
		for b, y := range row {
			k[len(row)*a+b] = c * x * y
		}
	}
	return k
}

// springRow gives how far spring i's place moves along it, away from its far end, as a
// row over the freedoms of the triangles at its ends.
func (s *System) springRow(i int) (nodes []int32, row []float64) {
	sp := &s.Model.Springs[i]
	nodes, row = s.rowAt(sp.At, sp.Dir)
	if sp.Far != nil {
		far, minus := s.rowAt(*sp.Far, vec3.Scale(sp.Dir, -1))
		nodes, row = slices.Concat(nodes, far), append(row, minus...)
	}
	return nodes, row
}

// springMove is how far spring i's place moves along it, away from its far end, mm.
func (s *System) springMove(i int, u []float64) float64 {
	sp := &s.Model.Springs[i]
	v := s.MoveAt(u, sp.At)
	if sp.Far != nil {
		v = vec3.Sub(v, s.MoveAt(u, *sp.Far))
	}
	return vec3.Dot(sp.Dir, v)
}

// SpringPush returns what spring i does to the nodes of the triangles at its ends under
// the movements u, N and N·mm, six each.
func (s *System) SpringPush(i int, u []float64) (nodes []int32, force []float64) {
	nodes, row := s.springRow(i)
	push := -s.Model.Springs[i].K * (s.springMove(i, u) + s.springBeyond(i))
	force = make([]float64, len(row))
	for j, r := range row {
		force[j] = push * r
	}
	return nodes, force
}
