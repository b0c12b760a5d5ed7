package fem

import (
	"cmp"
	"slices"

	"archload/fem/sparse"
	"archload/fem/vec3"
)

// Place returns where a surface point lies on its facet: the point whose
// movement the shell's interpolation gives, mm.
func (m *Model) Place(at SurfacePoint) [3]float64 {
	el := &m.Shells[at.Shell]
	var x [3][3]float64
	h := 0.0
	for k, n := range el.Nodes {
		x[k] = m.Nodes[n].P
		h += m.Nodes[n].H / 3
	}
	if el.H != 0 {
		h = el.H
	}
	n := vec3.Cross(vec3.Sub(x[1], x[0]), vec3.Sub(x[2], x[0]))
	n = vec3.Scale(n, at.Zeta*h/2/vec3.Norm(n))
	for k := range 3 {
		n = vec3.Add(n, vec3.Scale(x[k], at.L[k]))
	}
	return n
}

// Middle returns the mean of some places: where a force spread evenly over
// them acts, mm.
func (m *Model) Middle(points []SurfacePoint) [3]float64 {
	var sum [3]float64
	for _, p := range points {
		sum = vec3.Add(sum, m.Place(p))
	}
	return vec3.Scale(sum, 1/float64(len(points)))
}

// Column gathers the mean movement of the points along dir as a row over the
// nodal freedoms; fixed freedoms are left out.
func (s *System) Column(points []SurfacePoint, dir [3]float64) sparse.Column {
	return s.Columns(points, [][3]float64{dir})[0]
}

// Columns is Column along up to three directions, looked up together.
func (s *System) Columns(points []SurfacePoint, dirs [][3]float64) []sparse.Column {
	on := make([]nodeRows, 0, 12) // by node
	w := 1 / float64(len(points))
	for _, p := range points {
		rows := s.Shells[p.Shell].RowsAt(p.L, p.Zeta)
		for a, dir := range dirs {
			row := along(&rows, dir)
			nodes, led := s.ledRow(s.Model.Shells[p.Shell].Nodes[:], row[:])
			for k, n := range nodes {
				at, known := slices.BinarySearchFunc(on, n, func(r nodeRows, n int32) int { return cmp.Compare(r.node, n) })
				if !known {
					on = slices.Insert(on, at, nodeRows{node: n})
				}
				on[at].add(a, w, (*[6]float64)(led[6*k:]))
			}
		}
	}
	out := make([]sparse.Column, len(dirs))
	for a := range out {
		out[a] = s.free(on, a)
	}
	return out
}

// free is what row a of some nodes has at free freedoms.
func (s *System) free(on []nodeRows, a int) sparse.Column {
	c := sparse.Column{Dofs: make([]int32, 0, 6*len(on)), Vals: make([]float64, 0, 6*len(on))}
	for i := range on {
		for k, v := range on[i].vals[a] {
			if d := 6*on[i].node + int32(k); on[i].met[a][k] && !s.fixed[d] {
				c.Dofs, c.Vals = append(c.Dofs, d), append(c.Vals, v)
			}
		}
	}
	return c
}

// nodeRows are rows over the freedoms of one node; met are those that something moves.
type nodeRows struct {
	node int32
	met  [3][6]bool
	vals [3][6]float64
}

// add adds w times a row to row a.
func (r *nodeRows) add(a int, w float64, row *[6]float64) {
	for k, v := range row {
		if v *= w; v != 0 {
			r.vals[a][k] += v
			r.met[a][k] = true
		}
	}
}

// rowAt gives the movement of a place of a shell along dir as a row over the
// freedoms of the nodes of its triangle, or of those that lead them.
func (s *System) rowAt(at SurfacePoint, dir [3]float64) ([]int32, []float64) {
	rows := s.Shells[at.Shell].RowsAt(at.L, at.Zeta)
	row := along(&rows, dir)
	return s.ledRow(s.Model.Shells[at.Shell].Nodes[:], row[:])
}

// along is the row of a movement along a direction, of those along the three axes.
func along(rows *[3][18]float64, dir [3]float64) (row [18]float64) {
	for j := range row {
		row[j] = dir[0]*rows[0][j] + dir[1]*rows[1][j] + dir[2]*rows[2][j]
	}
	return row
}

// AddLoad adds a force on a place of a shell, or on a rigid body, to the nodal
// loads f.
func (s *System) AddLoad(f []float64, p PointForce) {
	if p.Body == 0 {
		s.AddForce(f, p.At, p.F)
		return
	}
	ref := s.Model.Bodies[p.Body-1].Ref
	turn := vec3.Cross(vec3.Sub(p.Place, s.Model.Nodes[ref].P), p.F)
	for k := range 3 {
		f[6*int(ref)+k] += p.F[k]
		f[6*int(ref)+3+k] += turn[k]
	}
}

// AddForce adds a force on a place of a shell to the nodal loads f.
func (s *System) AddForce(f []float64, at SurfacePoint, force [3]float64) {
	rows := s.Shells[at.Shell].RowsAt(at.L, at.Zeta)
	nodes := s.Model.Shells[at.Shell].Nodes
	for j := range 18 {
		f[6*int(nodes[j/6])+j%6] += rows[0][j]*force[0] + rows[1][j]*force[1] + rows[2][j]*force[2]
	}
}

// MoveAt returns the displacement of a place of a shell, mm.
func (s *System) MoveAt(u []float64, at SurfacePoint) [3]float64 {
	rows := s.Shells[at.Shell].RowsAt(at.L, at.Zeta)
	nodes := s.Model.Shells[at.Shell].Nodes
	var d [3]float64
	for j := range 18 {
		v := u[6*int(nodes[j/6])+j%6]
		for a := range 3 {
			d[a] += rows[a][j] * v
		}
	}
	return d
}
