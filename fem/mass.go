package fem

import (
	"slices"

	"archload/fem/sparse"
	"archload/fem/vec3"
)

// Mass returns the consistent mass of the elements and point masses (tonne, tonne·mm,
// tonne·mm²), with the pattern of the stiffness. The fixed freedoms are still in it: see
// FixedDofs.
func (s *System) Mass() *sparse.Matrix {
	m := s.K.Like()
	s.AddMass(m)
	return m
}

// AddMass adds the mass to a matrix over the model's nodes, in which all that couples in
// the stiffness couples.
func (s *System) AddMass(m *sparse.Matrix) {
	var buf []float64
	for _, e := range s.Elements {
		h, ok := e.(Massive)
		if !ok {
			continue
		}
		n := 6 * len(e.Nodes())
		if cap(buf) < n*n {
			buf = make([]float64, n*n)
		}
		h.MassTo(buf[:n*n])
		m.Add(e.Nodes(), buf[:n*n])
	}
	for i := range s.Model.Masses {
		s.addPointMass(m, &s.Model.Masses[i])
	}
}

// addPointMass adds the kinetic energy ½ m |u|² of each share of a point mass.
func (s *System) addPointMass(m *sparse.Matrix, p *PointMass) {
	share := p.Mass / float64(len(p.At))
	for _, at := range p.At {
		for a := range 3 {
			var dir [3]float64
			dir[a] = 1
			nodes, row := s.rowAt(at, dir)
			m.Add(nodes, outer(share, row))
		}
	}
}

// FixedDofs lists the fixed freedoms, 6 node + 0..5, each once.
func (s *System) FixedDofs() []int32 {
	var list []int32
	for d, is := range s.fixed {
		if is {
			list = append(list, int32(d))
		}
	}
	return list
}

// Weight is a mass and its centre.
type Weight struct {
	Mass   float64    // tonne
	Centre [3]float64 // mm
}

// Weights sums mass and centre by part, from the elements' mass under rigid motions: what
// vibrates is what is weighed. Point masses count as none of them.
func (s *System) Weights() []Weight {
	var list []Weight
	for _, e := range s.Elements {
		h, ok := e.(Massive)
		if !ok {
			continue
		}
		for int(e.Part()) >= len(list) {
			list = append(list, Weight{})
		}
		w := s.weigh(h)
		sum := &list[e.Part()]
		sum.Mass += w.Mass
		sum.Centre = vec3.Add(sum.Centre, vec3.Scale(w.Centre, w.Mass))
	}
	for i := range list {
		if w := &list[i]; w.Mass > 0 {
			w.Centre = vec3.Scale(w.Centre, 1/w.Mass)
		}
	}
	return list
}

// weigh returns mass and centre of one element. With a the acceleration of a rigid
// translation and t that of a turn about an axis, aᵀ M a is the mass and aᵀ M t the
// mass times the centre's distance from the axis.
func (s *System) weigh(e Massive) Weight {
	n := 6 * len(e.Nodes())
	m := make([]float64, n*n)
	e.MassTo(m)
	push := [3][]float64{}
	for a := range 3 {
		push[a] = multiply(m, s.rigid(e, a, -1))
	}
	var w Weight
	for i, v := range s.rigid(e, 0, -1) {
		w.Mass += v * push[0][i]
	}
	if w.Mass == 0 {
		return w
	}
	for a := range 3 { // the turn about axis a+1 moves along a+2 by the place along a
		b, c := (a+1)%3, (a+2)%3
		for i, v := range s.rigid(e, -1, b) {
			w.Centre[a] -= v * push[c][i] / w.Mass
		}
	}
	return w
}

func multiply(m, u []float64) []float64 {
	out := make([]float64, len(u))
	for i := range out {
		for j, v := range u {
			out[i] += m[i*len(u)+j] * v
		}
	}
	return out
}

// rigid is the motion of an element's nodes along an axis, or about one; -1 is none.
func (s *System) rigid(e Element, along, about int) []float64 {
	nodes := e.Nodes()
	u := make([]float64, 6*len(nodes))
	for k, n := range nodes {
		if along >= 0 {
			u[6*k+along] = 1
		}
		if about >= 0 {
			var turn [3]float64
			turn[about] = 1
			move := vec3.Cross(turn, s.Model.Nodes[n].P)
			copy(u[6*k:], append(move[:], turn[:]...))
		}
	}
	if led, ok := e.(*ledMassive); ok {
		e = led.Element
	}
	if g, ok := e.(*gluedBeam); ok && about >= 0 {
		for end, lean := range g.of.Lean {
			if !g.of.Joined[end] { // it keeps the turn about the axis across alone
				u[6*slices.Index(nodes, lean)+leanDof] = g.of.Across[about]
			}
		}
	}
	return u
}
