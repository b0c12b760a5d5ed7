package fem

import (
	"reflect"
	"slices"

	"archload/fem/element"
)

// AssembleLike is Assemble, to the same bits, for a model that may differ little from that
// of a system. What the two have in common is not made anew: where no more than wood
// differs, the triangles' frames and strains; where no more than beams and springs do, all
// of the shells, and what they add to the stiffness away from those; where the same nodes
// couple, the pattern of the stiffness.
func AssembleLike(m *Model, like *System, workers int) (*System, error) {
	s := &System{Model: m}
	s.findKinks()
	formed, same := s.formedLike(like), slices.Equal(m.Sections, like.Model.Sections)
	held := reflect.DeepEqual(m.Bodies, like.Model.Bodies) && slices.Equal(m.Fixed, like.Model.Fixed)
	if err := s.renewShells(like, formed, same, workers); err != nil {
		return nil, err
	}
	var shells []Element
	if formed && same && held {
		shells = like.Elements[:len(m.Shells)]
	}
	if err := s.tieElements(shells); err != nil {
		return nil, err
	}
	dofs := s.fix()
	switch alike := s.Alike(like); {
	case alike && shells != nil && s.couplesAs(like):
		s.patch(like, dofs)
		return s, nil
	case alike:
		s.K = like.K.Like()
		s.AddStiffness(s.K, workers)
	default:
		s.sum(workers, s.gone(like))
	}
	s.K.Fix(dofs)
	return s, nil
}

// couplesAs says whether the elements of two systems join the same nodes.
func (s *System) couplesAs(o *System) bool {
	return slices.EqualFunc(s.Elements, o.Elements, func(e, f Element) bool { return slices.Equal(e.Nodes(), f.Nodes()) })
}

// gone are the nodes that elements of another system join, where those of s join others. A bar that is glued to a surface
// hangs on the triangle above it, and on the next one when the surface leans: a stiffness with room for both takes the way back,
// or what comes of a hand that trembles, in one order of elimination.
func (s *System) gone(o *System) (nodes [][]int32) {
	if len(s.Elements) != len(o.Elements) || len(s.Model.Nodes) != len(o.Model.Nodes) || !slices.Equal(s.Model.Zone, o.Model.Zone) {
		return nil
	}
	for i, e := range s.Elements {
		switch n := o.Elements[i].Nodes(); {
		case slices.Equal(e.Nodes(), n):
		case i < len(s.Model.Shells):
			return nil // another mesh
		default:
			nodes = append(nodes, n)
		}
	}
	return nodes
}

// formedLike says whether the triangles have the form and the grain of those of another
// system.
func (s *System) formedLike(o *System) bool {
	a, b := s.Model, o.Model
	return slices.Equal(a.Nodes, b.Nodes) && slices.Equal(a.Shells, b.Shells) && slices.Equal(s.kinked, o.kinked) &&
		slices.EqualFunc(a.Sections, b.Sections, func(p, q Section) bool { return p.Axes == q.Axes && p.Pressed == q.Pressed })
}

// renewShells sets the shells, of which another system has those that are formed alike;
// same says that they are of the same wood too.
func (s *System) renewShells(like *System, formed, same bool, workers int) error {
	m := s.Model
	switch {
	case formed && same:
		s.Shells = like.Shells
		return nil
	case formed:
		s.Shells = make([]element.Shell, len(m.Shells))
		return s.buildShells(workers, func(i int) error {
			k := m.Shells[i].Section
			if m.Sections[k].Wood == like.Model.Sections[k].Wood {
				s.Shells[i] = like.Shells[i]
				return nil
			}
			return s.Shells[i].SetWood(&like.Shells[i], &m.Sections[k].Wood)
		})
	}
	s.Shells = make([]element.Shell, len(m.Shells))
	return s.setShells(workers)
}

// patch takes the stiffness of a system that differs in beams and springs alone, and sums
// anew what these touch.
func (s *System) patch(like *System, fixed []int32) {
	in := s.changed(like)
	touched := func(n int32) bool { return in[n] }
	k := like.K.Among(in)
	var buf []float64
	for _, e := range s.Elements {
		if slices.ContainsFunc(e.Nodes(), touched) {
			buf = stiffnessOf(e, buf)
			k.Add(e.Nodes(), buf)
		}
	}
	for i := range s.Model.Springs {
		if nodes, row := s.springRow(i); slices.ContainsFunc(nodes, touched) {
			k.Add(nodes, outer(s.Model.Springs[i].K, row))
		}
	}
	s.K = k.Fix(fixed)
}

// changed marks the nodes of beams and springs that differ from those of another system.
func (s *System) changed(like *System) []bool {
	in := make([]bool, len(s.Model.Nodes))
	a, b := s.Model, like.Model
	for i := range a.Beams {
		if !reflect.DeepEqual(a.Beams[i], b.Beams[i]) {
			for _, n := range s.Elements[len(a.Shells)+i].Nodes() {
				in[n] = true
			}
		}
	}
	for i := range a.Springs {
		if !reflect.DeepEqual(a.Springs[i], b.Springs[i]) {
			nodes, _ := s.springRow(i)
			for _, n := range nodes {
				in[n] = true
			}
		}
	}
	return in
}
