package fem

import (
	"slices"

	"archload/fem/sparse"
)

// Pad is one contact point of a body's bearing area.
type Pad struct {
	Node    int32          // body node that carries it on a rigid arm
	At      [3]float64     // on the plate's unloaded outer surface, mm
	Dir     [3][3]float64  // unit vectors: outward normal, two tangents
	Spread  []SurfacePoint // where its force goes, in equal parts
	Area    float64        // mm²
	Gap     float64        // before loading, mm
	Bedding [2]float64     // squash under 1 N, normal and tangential, mm/N
}

// Hold says how a closed pad is held sideways.
type Hold uint8

// The kinds of hold.
const (
	Grip Hold = iota // a closed pad sticks where it is
	Slip             // frictionless
)

func (h Hold) rows() int {
	if h == Slip {
		return 1
	}
	return 3
}

// Condensed is the plate reduced to its pads: the compliance between all pad
// movements, and what the loads on the plate itself move there. It costs the
// root of the factor once and serves every bridge, relief and string set over
// the same bearing area.
type Condensed struct {
	plate  *Prepared
	pads   []Pad // geometry only: gaps and bedding come with the problem
	hold   Hold
	cols   []sparse.Column // one for each row: pad-major, normal first
	c      []float64       // len(cols)², mm/N, row-major
	loadF  []float64       // nodal loads on the plate at full load
	loadU  []float64       // displacement under them; nil without loads
	loadAt []float64       // movement of each row under them, mm
	loadE  float64         // loads' own work coefficient F·K⁻¹F, N·mm
}

// Condense reduces the plate to the given pads. loads act on the plate itself
// and rise with the string load.
func (p *Prepared) Condense(pads []Pad, hold Hold, loads []PointForce) *Condensed {
	c := &Condensed{plate: p, pads: pads, hold: hold}
	for i := range pads {
		for a := range hold.rows() {
			c.cols = append(c.cols, p.column(pads[i].Spread, pads[i].Dir[a]))
		}
	}
	if len(c.cols) > 0 {
		c.c = p.Factor.Compliance(c.cols)
	}
	c.setLoads(loads)
	return c
}

func (c *Condensed) setLoads(loads []PointForce) {
	c.loadF = make([]float64, 6*len(c.plate.Model.Nodes))
	c.loadAt = make([]float64, len(c.cols))
	for i := range loads {
		c.plate.addForce(c.loadF, loads[i].At, loads[i].F)
	}
	if len(loads) == 0 {
		return
	}
	c.loadU = slices.Clone(c.loadF)
	c.plate.solve(c.loadU)
	for i := range c.cols {
		c.loadAt[i] = dotColumn(c.cols[i], c.loadU)
	}
	for i, f := range c.loadF {
		c.loadE += f * c.loadU[i]
	}
}

// column gathers the mean movement of the points along dir as a row over the
// nodal freedoms; fixed freedoms are left out.
func (s *System) column(points []SurfacePoint, dir [3]float64) sparse.Column {
	sum := map[int32]float64{}
	w := 1 / float64(len(points))
	for _, p := range points {
		rows := s.Shells[p.Shell].RowsAt(p.L, p.Zeta)
		nodes := s.Model.Shells[p.Shell].Nodes
		for j := range 18 {
			v := w * (dir[0]*rows[0][j] + dir[1]*rows[1][j] + dir[2]*rows[2][j])
			d := 6*nodes[j/6] + int32(j%6)
			if v != 0 && !s.fixed[d] {
				sum[d] += v
			}
		}
	}
	c := sparse.Column{Dofs: make([]int32, 0, len(sum)), Vals: make([]float64, 0, len(sum))}
	for d := range sum {
		c.Dofs = append(c.Dofs, d)
	}
	slices.Sort(c.Dofs)
	for _, d := range c.Dofs {
		c.Vals = append(c.Vals, sum[d])
	}
	return c
}

// addForce adds a force on a place of a shell to the nodal loads f.
func (s *System) addForce(f []float64, at SurfacePoint, force [3]float64) {
	rows := s.Shells[at.Shell].RowsAt(at.L, at.Zeta)
	nodes := s.Model.Shells[at.Shell].Nodes
	for j := range 18 {
		f[6*int(nodes[j/6])+j%6] += rows[0][j]*force[0] + rows[1][j]*force[1] + rows[2][j]*force[2]
	}
}

// moveAt returns the displacement of a place of a shell, mm.
func (s *System) moveAt(u []float64, at SurfacePoint) [3]float64 {
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
