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
		var k [324]float64
		for a := range row {
			for b := range row {
				k[18*a+b] = s.Model.Springs[i].K * row[a] * row[b]
			}
		}
		m.Add(nodes, k[:])
	}
}

// springRow gives the movement of spring i's place along it as a row over the
// freedoms of its triangle.
func (s *System) springRow(i int) (nodes []int32, row [18]float64) {
	sp := &s.Model.Springs[i]
	move := s.Shells[sp.At.Shell].RowsAt(sp.At.L, sp.At.Zeta)
	for j := range row {
		row[j] = sp.Dir[0]*move[0][j] + sp.Dir[1]*move[1][j] + sp.Dir[2]*move[2][j]
	}
	return s.Model.Shells[sp.At.Shell].Nodes[:], row
}

// springMove is how far spring i's place moves along it, mm.
func (s *System) springMove(i int, u []float64) float64 {
	sp := &s.Model.Springs[i]
	return vec3.Dot(sp.Dir, s.MoveAt(u, sp.At))
}

// SpringPush returns what spring i does to the nodes of its triangle under the
// movements u, N and N·mm, six each.
func (s *System) SpringPush(i int, u []float64) (nodes []int32, force [18]float64) {
	nodes, row := s.springRow(i)
	push := -s.Model.Springs[i].K * s.springMove(i, u)
	for j, r := range row {
		force[j] = push * r
	}
	return nodes, force
}
