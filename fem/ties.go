package fem

import (
	"fmt"

	"archload/fem/element"
)

// tiedShell is a shell on its three nodes.
type tiedShell struct {
	shell   *element.Shell
	nodes   []int32
	section *Section
}

func (e *tiedShell) Nodes() []int32          { return e.nodes }
func (e *tiedShell) Part() Part              { return e.section.Part }
func (e *tiedShell) StiffnessTo(k []float64) { e.shell.StiffnessTo((*[324]float64)(k)) }
func (e *tiedShell) MassTo(m []float64)      { e.shell.MassTo((*[324]float64)(m), e.section.Density) }

func (e *tiedShell) Energy(u []float64) Strain {
	m, b, q := e.shell.Energy((*[18]float64)(u))
	return Strain{Membrane: m, Bending: b, Shear: q}
}

// tiedBeam is a beam that hangs on two nodes.
type tiedBeam struct {
	beam  *element.Beam
	nodes []int32
	of    *BeamElem
}

func (e *tiedBeam) Nodes() []int32          { return e.nodes }
func (e *tiedBeam) Part() Part              { return e.of.Part }
func (e *tiedBeam) StiffnessTo(k []float64) { e.beam.StiffnessTo((*[144]float64)(k)) }
func (e *tiedBeam) MassTo(m []float64)      { e.beam.MassTo((*[144]float64)(m), e.of.Mass) }

func (e *tiedBeam) ends(u []float64) [12]float64     { return [12]float64(u) }
func (e *tiedBeam) onNodes(f *[12]float64) []float64 { return f[:] }

func (e *tiedBeam) with(b *element.Beam) beamTie { return &tiedBeam{b, e.nodes, e.of} }

func (e *tiedBeam) Energy(u []float64) Strain {
	ub := e.ends(u)
	return Strain{Other: e.beam.Energy(&ub)}
}

// tieElements makes the elements of the model: the shells, which are built, unless they
// are given, then the beams, in their order.
func (s *System) tieElements(shells []Element) (err error) {
	m := s.Model
	if s.lead, err = m.followers(); err != nil {
		return err
	}
	s.Elements = append(make([]Element, 0, len(m.Shells)+len(m.Beams)), shells...)
	if shells == nil {
		s.tieShells()
	}
	s.Beams, s.beams = make([]element.Beam, len(m.Beams)), make([]beamTie, len(m.Beams))
	for i := range s.beams {
		if err := s.tieBeam(i); err != nil {
			return fmt.Errorf("beam %d: %w", i, err)
		}
		s.addElement(s.beams[i])
	}
	return nil
}

// tieShells adds the shells to the elements.
func (s *System) tieShells() {
	m := s.Model
	shells := make([]tiedShell, len(m.Shells))
	for i := range shells {
		el := &m.Shells[i]
		shells[i] = tiedShell{&s.Shells[i], el.Nodes[:], &m.Sections[el.Section]}
		s.addElement(&shells[i])
	}
}

// addElement adds an element; one that touches rigid bodies is hung on their nodes.
func (s *System) addElement(e Element) {
	if len(s.lead) > 0 {
		e = s.Model.lead(e, s.lead)
	}
	s.Elements = append(s.Elements, e)
}

// tieBeam builds beam i and ties it to its nodes, or glues it on.
func (s *System) tieBeam(i int) error {
	b := &s.Model.Beams[i]
	in := element.BeamInput{Offset: b.Offset, Up: b.Up, Section: b.Section,
		X: [2][3]float64{s.Model.Nodes[b.Nodes[0]].P, s.Model.Nodes[b.Nodes[1]].P}}
	if b.Glued {
		for e := range 2 {
			in.X[e] = s.Model.Place(b.Glue[e])
		}
	}
	var err error
	if s.Beams[i], err = element.NewBeam(in); err != nil {
		return err
	}
	if b.Glued {
		s.beams[i] = newGluedBeam(&s.Beams[i], b, s.newGlue(b, 0), s.newGlue(b, 1))
	} else {
		s.beams[i] = &tiedBeam{&s.Beams[i], b.Nodes[:], b}
	}
	return nil
}
