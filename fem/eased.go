package fem

import (
	"slices"

	"archload/fem/element"
)

// Eased returns the system whose wood has stretched by itself at movements of any size: what PullTo and
// WithTangent tell counts its strains from those of the free movements, so that its pull where nothing moves is
// −Load. Its linear stiffness is that of the system. Springs are longer at rest as their places have moved with the
// faces of the wood, and nodes that follow a rigid body stand where its own stretch takes them.
func (w *Swollen) Eased() *System {
	s := *w.sys
	s.eased = w
	s.Shells, s.Beams = make([]element.Shell, len(s.Shells)), make([]element.Beam, len(s.Beams))
	s.Elements, s.beams = slices.Clone(s.Elements), slices.Clone(s.beams)
	for i := range s.Shells {
		s.Shells[i] = w.sys.Shells[i].Eased(&w.shells[i])
		own := *unled(s.Elements[i]).(*tiedShell)
		own.shell = &s.Shells[i]
		s.Elements[i] = w.led(s.Elements[i], &own)
	}
	for i := range s.Beams {
		s.Beams[i] = w.sys.Beams[i].Eased(&w.beams[i])
		s.beams[i] = s.beams[i].with(&s.Beams[i])
		at := len(s.Shells) + i
		s.Elements[at] = w.led(s.Elements[at], s.beams[i])
	}
	return &s
}

// led hangs an element as another one was on rigid bodies, which have grown.
func (w *Swollen) led(as, own Element) Element {
	was, follows := as.(*ledMassive)
	if !follows {
		return own
	}
	is := *was
	is.Element = own
	if w.grown != nil {
		is.grown = movesOf(own, w.grown, nil)
	}
	return &is
}

// springBeyond is how much more than its triangles tell spring i's place has moved by the wood's own stretch, mm.
func (s *System) springBeyond(i int) float64 {
	if s.eased == nil {
		return 0
	}
	return s.eased.springs[i]
}
