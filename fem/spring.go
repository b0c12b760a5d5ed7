package fem

import (
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

// springRow gives the movement of spring i's place along it as a row over the
// freedoms of its triangle.
func (s *System) springRow(i int) (nodes []int32, row []float64) {
	sp := &s.Model.Springs[i]
	return s.rowAt(sp.At, sp.Dir)
}

// springMove is how far spring i's place moves along it, mm.
func (s *System) springMove(i int, u []float64) float64 {
	sp := &s.Model.Springs[i]
	return vec3.Dot(sp.Dir, s.MoveAt(u, sp.At))
}

// SpringPush returns what spring i does to the nodes of its triangle under the
// movements u, N and N·mm, six each.
func (s *System) SpringPush(i int, u []float64) (nodes []int32, force []float64) {
	nodes, row := s.springRow(i)
	push := -s.Model.Springs[i].K * s.springMove(i, u)
	force = make([]float64, len(row))
	for j, r := range row {
		force[j] = push * r
	}
	return nodes, force
}
