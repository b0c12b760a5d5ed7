package fem

import (
	"fmt"
	"slices"

	"archload/fem/sparse"
	"archload/fem/vec3"
	"archload/mesh"
)

// RigidBody is a part that moves as one and stores no energy: a block of wood
// behind a thin wall. Its nodes follow a node of its own:
//
//	u_n = u + φ × (x_n − x),  φ_n = φ
//
// with u, φ the movement and the turn of that node at x. The nodes keep no
// freedoms of their own: elements that hang on them are turned to Ref, forces on
// them act on it. Wood that swells does so within it too: see Swollen.
type RigidBody struct {
	Ref   int32      // its node, not among Nodes; no element needs to hang on it
	Nodes []int32    // that follow
	Swell [3]float64 // strain along x, y and z by itself for each unit of what makes it swell, see Swell
}

// AddBody adds a rigid body whose own node stands at a place, and returns that
// node.
func (m *Model) AddBody(at [3]float64, nodes []int32) int32 {
	ref := int32(len(m.Nodes))
	m.Nodes = append(m.Nodes, mesh.Node{P: at})
	m.Bodies = append(m.Bodies, RigidBody{Ref: ref, Nodes: nodes})
	return ref
}

// followers maps each node that follows to the node that leads it; it is an
// error if two lead one, or if one is held.
func (m *Model) followers() (map[int32]int32, error) {
	lead := map[int32]int32{}
	for i := range m.Bodies {
		b := &m.Bodies[i]
		for _, n := range b.Nodes {
			if _, twice := lead[n]; twice || n == b.Ref {
				return nil, fmt.Errorf("rigid body %d: node %d follows twice, or itself", i, n)
			}
			lead[n] = b.Ref
		}
	}
	for _, f := range m.Fixed {
		if _, follows := lead[f.Node]; follows {
			return nil, fmt.Errorf("node %d follows a rigid body and is held; want the body's node held", f.Node)
		}
	}
	return lead, nil
}

// ledElement is an element of which some nodes follow rigid bodies. With T the
// matrix that gives the element's freedoms from those of the leading nodes, its
// stiffness is Tᵀ K T.
type ledElement struct {
	Element
	nodes []int32
	place []int        // of each own node: its leading node among nodes
	arms  [][3]float64 // from that to it, mm
	t     []float64    // T, row-major: 6 per own node by 6 per leading node
	grown []float64    // what the bodies' own stretch adds to its own nodes' movements, see Swollen.Eased; nil: nothing
}

// ledMassive is one that has mass: Tᵀ M T.
type ledMassive struct{ ledElement }

// lead hangs an element on the nodes that lead its own; it is the element
// itself if none follows.
func (m *Model) lead(e Element, lead map[int32]int32) Element {
	own := e.Nodes()
	if !slices.ContainsFunc(own, func(n int32) bool { _, follows := lead[n]; return follows }) {
		return e
	}
	led := ledElement{Element: e}
	place := make([]int, len(own))
	for k, n := range own {
		ref, follows := lead[n]
		if !follows {
			ref = n
		}
		led.arms = append(led.arms, vec3.Sub(m.Nodes[n].P, m.Nodes[ref].P))
		place[k] = slices.Index(led.nodes, ref)
		if place[k] < 0 {
			place[k] = len(led.nodes)
			led.nodes = append(led.nodes, ref)
		}
	}
	led.place = place
	cols := 6 * len(led.nodes)
	led.t = make([]float64, 6*len(own)*cols)
	for k, n := range own {
		rigid := m.follow(n, led.nodes[place[k]])
		for i := range 6 {
			copy(led.t[(6*k+i)*cols+6*place[k]:], rigid[i][:])
		}
	}
	if _, ok := e.(Massive); ok {
		return &ledMassive{led}
	}
	return &led
}

// follow is the movement of node n as a row of those of the node that leads it:
// the identity if that is n itself.
func (m *Model) follow(n, ref int32) (t [6][6]float64) {
	for i := range 6 {
		t[i][i] = 1
	}
	if n == ref {
		return t
	}
	r := vec3.Sub(m.Nodes[n].P, m.Nodes[ref].P)
	for a := range 3 {
		var turn [3]float64
		turn[a] = 1
		for i, v := range vec3.Cross(turn, r) {
			t[i][3+a] = v
		}
	}
	return t
}

// Nodes lists the nodes that lead.
func (e *ledElement) Nodes() []int32 { return e.nodes }

// StiffnessTo sets k to Tᵀ K T.
func (e *ledElement) StiffnessTo(k []float64) { e.turnTo(k, stiffnessOf(e.Element, nil)) }

// MassTo sets m to Tᵀ M T.
func (e *ledMassive) MassTo(m []float64) {
	n := 6 * len(e.Element.Nodes())
	own := make([]float64, n*n)
	e.Element.(Massive).MassTo(own)
	e.turnTo(m, own)
}

// turnTo sets dst to Tᵀ a T, exactly symmetric.
func (e *ledElement) turnTo(dst, a []float64) {
	n, cols := 6*len(e.Element.Nodes()), 6*len(e.nodes)
	at := make([]float64, n*cols) // a T
	for i := range n {
		for j, v := range a[i*n : (i+1)*n] {
			if v != 0 {
				axpyRow(at[i*cols:(i+1)*cols], v, e.t[j*cols:(j+1)*cols])
			}
		}
	}
	clear(dst)
	for i := range n {
		for p, v := range e.t[i*cols : (i+1)*cols] {
			if v != 0 {
				axpyRow(dst[p*cols:(p+1)*cols], v, at[i*cols:(i+1)*cols])
			}
		}
	}
	for p := range cols {
		for q := range p {
			v := (dst[p*cols+q] + dst[q*cols+p]) / 2
			dst[p*cols+q], dst[q*cols+p] = v, v
		}
	}
}

func axpyRow(dst []float64, c float64, x []float64) {
	for i, v := range x {
		dst[i] += c * v
	}
}

// own gives the movements of the element's own freedoms from those of the nodes
// that lead.
func (e *ledElement) own(u []float64) []float64 {
	cols := len(u)
	out := make([]float64, 6*len(e.Element.Nodes()))
	for i := range out {
		for j, v := range u {
			out[i] += e.t[i*cols+j] * v
		}
	}
	return out
}

// Energy is that of the element's own movements.
func (e *ledElement) Energy(u []float64) Strain { return e.Element.Energy(e.own(u)) }

// AddStressStiffness adds to a matrix over the model's nodes what the membrane forces of
// the movements u lend the shells.
func (s *System) AddStressStiffness(m *sparse.Matrix, u []float64) {
	var k [324]float64
	var own [18]float64
	for i := range s.Shells {
		nodes := s.Model.Shells[i].Nodes[:]
		Gather(own[:], u, nodes)
		r := s.Shells[i].Resultants(&own)
		s.Shells[i].GeometricTo(&k, r.N)
		led, follows := s.Elements[i].(*ledMassive)
		if !follows {
			m.Add(nodes, k[:])
			continue
		}
		turned := make([]float64, 36*len(led.nodes)*len(led.nodes))
		led.turnTo(turned, k[:])
		m.Add(led.nodes, turned)
	}
}

// Follow completes the movements u: nodes that follow a rigid body take theirs
// from it.
func (s *System) Follow(u []float64) {
	for i := range s.Model.Bodies {
		b := &s.Model.Bodies[i]
		for _, n := range b.Nodes {
			t := s.Model.follow(n, b.Ref)
			for k := range 6 {
				v := 0.0
				for j := range 6 {
					v += t[k][j] * u[6*int(b.Ref)+j]
				}
				u[6*int(n)+k] = v
			}
		}
	}
}

// ledRow turns a row over the freedoms of some nodes into one over those of the
// nodes that lead them: the same nodes and row if none follows.
func (s *System) ledRow(nodes []int32, row []float64) ([]int32, []float64) {
	if !slices.ContainsFunc(nodes, func(n int32) bool { _, follows := s.lead[n]; return follows }) {
		return nodes, row
	}
	var on []int32
	var out []float64
	for k, n := range nodes {
		ref, follows := s.lead[n]
		if !follows {
			ref = n
		}
		at := slices.Index(on, ref)
		if at < 0 {
			at = len(on)
			on, out = append(on, ref), append(out, make([]float64, 6)...)
		}
		t := s.Model.follow(n, ref)
		for i := range 6 {
			axpyRow(out[6*at:6*at+6], row[6*k+i], t[i][:])
		}
	}
	return on, out
}

// Lead moves nodal forces f from the nodes that follow to those that lead.
func (s *System) Lead(f []float64) {
	for i := range s.Model.Bodies {
		b := &s.Model.Bodies[i]
		for _, n := range b.Nodes {
			t := s.Model.follow(n, b.Ref)
			for k := range 6 {
				v := f[6*int(n)+k]
				if v == 0 {
					continue
				}
				f[6*int(n)+k] = 0
				for j := range 6 {
					f[6*int(b.Ref)+j] += t[k][j] * v
				}
			}
		}
	}
}
