package vibration

import (
	"slices"

	"archload/fem"
	"archload/fem/contact"
	"archload/fem/eigen"
	"archload/fem/element"
	"archload/fem/sparse"
	"archload/fem/vec3"
)

// Pad is a contact point that bears.
type Pad struct {
	contact.Pad
	Rows int // that carry: 1 the normal alone, 3 with both tangents
}

// Stay is a spring between a point of the body and the ground, or a node of the plate.
type Stay struct {
	Node      int32
	At        [3]float64    // mm
	Stiffness [3][3]float64 // symmetric, N/mm

	Far   int32      // 1 + node of the plate that its far end goes with as a rigid arm; 0: it hangs on the ground
	FarAt [3]float64 // mm, where that end is
}

// Input is what vibrates.
type Input struct {
	Plate   *fem.System
	Body    *contact.Body // nil: the plate alone
	Pads    []Pad
	Stays   []Stay
	Loaded  []float64 // movements of the plate whose membrane forces lend stiffness; nil: none
	Workers int
}

// Structure has stiffness and mass of what vibrates, the nodes of the body after the plate's.
type Structure struct {
	K, M  *sparse.Matrix // fixed freedoms taken out
	fixed []int32
	plan  *sparse.Analysis

	in    Input
	first int32 // node of the body
	beams []element.Beam
}

// New sums stiffness and mass and finds an order of elimination. An error is that of a beam of the
// body, or says that no order can be found.
func New(in Input) (*Structure, error) {
	s, err := Sum(in)
	if err != nil {
		return nil, err
	}
	s.plan, err = sparse.Analyse(s.K, s.inPlan(), nil)
	return s, err
}

// Sum sums stiffness and mass of what is asked for no more than its Quotient. An error is that of a
// beam of the body.
func Sum(in Input) (*Structure, error) {
	s := &Structure{in: in, first: int32(len(in.Plate.Model.Nodes))}
	if in.Body != nil {
		if err := s.frame(); err != nil {
			return nil, err
		}
	}
	s.K = sparse.NewMatrix(s.nodes(), s.couples())
	s.M = s.K.Like()
	in.Plate.AddStiffness(s.K, in.Workers)
	in.Plate.AddMass(s.M)
	s.addBody()
	if in.Loaded != nil {
		in.Plate.AddStressStiffness(s.K, in.Loaded)
	}
	s.fixed = in.Plate.FixedDofs()
	s.K.Fix(s.fixed)
	s.M.Fix(s.fixed)
	return s, nil
}

// Quotient returns uᵀ K u and uᵀ M u under movements u of all nodes in which no fixed freedom moves:
// their quotient is Rayleigh's.
func (s *Structure) Quotient(u []float64) (stiff, mass float64) {
	v := make([]float64, len(u))
	s.K.MulTo(v, u)
	stiff = dot(u, v)
	s.M.MulTo(v, u)
	return stiff, dot(u, v)
}

// nodes is the number of nodes.
func (s *Structure) nodes() int {
	n := int(s.first)
	if s.in.Body != nil {
		n += len(s.in.Body.Nodes)
	}
	return n
}

// frame builds the body's beams.
func (s *Structure) frame() error {
	b := s.in.Body
	s.beams = make([]element.Beam, len(b.Beams))
	for i := range b.Beams {
		e := &b.Beams[i]
		var err error
		s.beams[i], err = element.NewBeam(element.BeamInput{
			X:      [2][3]float64{b.Nodes[e.Nodes[0]], b.Nodes[e.Nodes[1]]},
			Offset: e.Offset, Up: e.Up, Section: e.Section})
		if err != nil {
			return err
		}
	}
	return nil
}

// inPlan are the nodes' places in plan.
func (s *Structure) inPlan() [][2]float64 {
	var xy [][2]float64
	for i := range s.in.Plate.Model.Nodes {
		p := s.in.Plate.Model.Nodes[i].P
		xy = append(xy, [2]float64{p[0], p[1]})
	}
	if s.in.Body != nil {
		for _, p := range s.in.Body.Nodes {
			xy = append(xy, [2]float64{p[0], p[1]})
		}
	}
	return xy
}

// couples lists the nodes of every element, beam and pad.
func (s *Structure) couples() [][]int32 {
	var list [][]int32
	for _, e := range s.in.Plate.Elements {
		list = append(list, e.Nodes())
	}
	if s.in.Body == nil {
		return list
	}
	for i := range s.in.Body.Beams {
		list = append(list, s.bodyNodes(i))
	}
	for i := range s.in.Pads {
		list = append(list, s.padNodes(i))
	}
	for i := range s.in.Stays {
		list = append(list, s.stayNodes(&s.in.Stays[i]))
	}
	return list
}

// bodyNodes are the nodes of beam i of the body.
func (s *Structure) bodyNodes(i int) []int32 {
	n := s.in.Body.Beams[i].Nodes
	return []int32{s.first + n[0], s.first + n[1]}
}

// padNodes are the nodes that pad i ties together, the body's last.
func (s *Structure) padNodes(i int) []int32 {
	var nodes []int32
	p := &s.in.Pads[i]
	for _, at := range p.Spread {
		nodes = append(nodes, s.in.Plate.Model.Shells[at.Shell].Nodes[:]...)
	}
	slices.Sort(nodes)
	return append(slices.Compact(nodes), s.first+p.Node)
}

// addBody adds beams, pads and stays.
func (s *Structure) addBody() {
	var k [144]float64
	for i := range s.beams {
		s.beams[i].StiffnessTo(&k)
		s.K.Add(s.bodyNodes(i), k[:])
		s.beams[i].MassTo(&k, s.in.Body.Beams[i].Mass)
		s.M.Add(s.bodyNodes(i), k[:])
	}
	for i := range s.bodyMasses() {
		p := &s.in.Body.Masses[i]
		s.M.Add([]int32{s.first + p.Node}, s.bodyMass(p))
	}
	for i := range s.in.Pads {
		s.addPad(i)
	}
	for i := range s.in.Stays {
		s.addStay(&s.in.Stays[i])
	}
}

// bodyMasses are what only weighs on the body; none without one.
func (s *Structure) bodyMasses() []contact.BodyMass {
	if s.in.Body == nil {
		return nil
	}
	return s.in.Body.Masses
}

// bodyMass is the mass matrix of a mass on the body at its node, 6×6: Aᵀ m A, A the movement of its place.
func (s *Structure) bodyMass(p *contact.BodyMass) []float64 {
	m := make([]float64, 36)
	for a := range 3 {
		var dir [3]float64
		dir[a] = 1
		row := contact.ArmRow(s.in.Body.Nodes[p.Node], p.At, dir)
		for i, x := range row {
			for j, y := range row {
				m[6*i+j] += p.Mass * x * y
			}
		}
	}
	return m
}

// addPad adds the bedding's stiffness along the rows of pad i.
func (s *Structure) addPad(i int) {
	p, nodes := &s.in.Pads[i], s.padNodes(i)
	n := 6 * len(nodes)
	k := make([]float64, n*n)
	for a := range p.Rows {
		row := make([]float64, n)
		col := s.in.Plate.Column(p.Spread, p.Dir[a])
		for j, d := range col.Dofs {
			row[6*slices.Index(nodes, d/6)+int(d%6)] = col.Vals[j]
		}
		arm := contact.ArmRow(s.in.Body.Nodes[p.Node], p.At, p.Dir[a])
		for d, v := range arm {
			row[n-6+d] -= v
		}
		stiff := 1 / p.Bedding[min(a, 1)]
		for r, x := range row {
			if x == 0 {
				continue
			}
			for c, y := range row {
				k[n*r+c] += stiff * x * y
			}
		}
	}
	s.K.Add(nodes, k)
}

// addStay adds Aᵀ S A, A giving the movement of its point on the body less that of its
// far end.
func (s *Structure) addStay(t *Stay) {
	nodes := s.stayNodes(t)
	n := 6 * len(nodes)
	var rows [3][]float64
	for a := range 3 {
		var dir [3]float64
		dir[a] = 1
		rows[a] = make([]float64, n)
		near := contact.ArmRow(s.in.Body.Nodes[t.Node], t.At, dir)
		copy(rows[a][n-6:], near[:])
		if t.Far > 0 {
			for d, v := range contact.ArmRow(s.in.Plate.Model.Nodes[t.Far-1].P, t.FarAt, dir) {
				rows[a][d] = -v
			}
		}
	}
	k := make([]float64, n*n)
	for a := range 3 {
		for b := range 3 {
			for r, x := range rows[a] {
				for c, y := range rows[b] {
					k[n*r+c] += t.Stiffness[a][b] * x * y
				}
			}
		}
	}
	s.K.Add(nodes, k)
}

// stayNodes are the nodes that a stay ties together, the body's last.
func (s *Structure) stayNodes(t *Stay) []int32 {
	if t.Far > 0 {
		return []int32{t.Far - 1, s.first + t.Node}
	}
	return []int32{s.first + t.Node}
}

// BodyNode is the number of a node of the body among all nodes.
func (s *Structure) BodyNode(n int32) int32 { return s.first + n }

// Problem is k x = λ m x over the structure's freedoms, for two matrices of the pattern of K, whose
// held freedoms it takes out.
func (s *Structure) Problem(k, m *sparse.Matrix) *eigen.Problem {
	k.Fix(s.fixed)
	m.Fix(s.fixed)
	return &eigen.Problem{K: k, M: m, Fixed: s.fixed, Plan: s.plan}
}

// PlatePort is the mean movement of some places of the plate along a direction.
func (s *Structure) PlatePort(at []fem.SurfacePoint, dir [3]float64) sparse.Column {
	return s.in.Plate.Column(at, dir)
}

// BodyPort is the movement along a direction of a point on a rigid arm from a node of the body.
func (s *Structure) BodyPort(node int32, at, dir [3]float64) sparse.Column {
	var c sparse.Column
	for d, v := range contact.ArmRow(s.in.Body.Nodes[node], at, dir) {
		if v != 0 {
			c.Dofs = append(c.Dofs, 6*(s.first+node)+int32(d))
			c.Vals = append(c.Vals, v)
		}
	}
	return c
}

// BodyMotion is the rigid motion nearest to the movements u of the body's nodes: that of a place
// and the rotation, by least squares over the nodes, each with the same weight.
func (s *Structure) BodyMotion(u []float64, at [3]float64) (move, turn [3]float64) {
	b := s.in.Body
	n := float64(len(b.Nodes))
	for i := range b.Nodes {
		v := u[6*(int(s.first)+i):][:6]
		turn = vec3.Add(turn, vec3.Scale([3]float64{v[3], v[4], v[5]}, 1/n))
	}
	for i, p := range b.Nodes {
		v := u[6*(int(s.first)+i):][:6]
		d := vec3.Add([3]float64{v[0], v[1], v[2]}, vec3.Cross(turn, vec3.Sub(at, p)))
		move = vec3.Add(move, vec3.Scale(d, 1/n))
	}
	return move, turn
}

// VolumePort is the volume that the first nodes' surface sweeps, mm³ for each mm: the integral of
// the movement square to the plate's facets, of those triangles whose corners are all among them.
func (s *Structure) VolumePort(nodes int) sparse.Column {
	sum := make([]float64, 6*nodes)
	sys := s.in.Plate
	for i := range sys.Shells {
		c := sys.Model.Shells[i].Nodes
		if int(max(c[0], c[1], c[2])) >= nodes {
			continue
		}
		n, share := sys.Shells[i].Frame()[2], sys.Shells[i].Area()/3
		for _, v := range c {
			for k := range 3 {
				sum[6*int(v)+k] += share * n[k]
			}
		}
	}
	for _, d := range s.fixed {
		if int(d) < len(sum) {
			sum[d] = 0
		}
	}
	var col sparse.Column
	for d, v := range sum {
		if v != 0 {
			col.Dofs, col.Vals = append(col.Dofs, int32(d)), append(col.Vals, v)
		}
	}
	return col
}
