package fem

import (
	"slices"

	"archload/fem/sparse"
)

// Under returns the condensed plate under other pads, if they press on the
// same places in the same directions: what stands on them may differ.
func (c *Condensed) Under(pads []Pad) (*Condensed, bool) {
	if len(pads) != len(c.pads) {
		return nil, false
	}
	for i := range pads {
		if pads[i].Dir != c.pads[i].Dir || !slices.Equal(pads[i].Spread, c.pads[i].Spread) {
			return nil, false
		}
	}
	q := *c
	q.pads = pads
	return &q, true
}

// WithLoads returns the condensed plate under other loads on the plate itself.
func (c *Condensed) WithLoads(loads []PointForce) *Condensed {
	q := *c
	q.loadU, q.loadE = nil, 0
	q.setLoads(loads)
	return &q
}

// WithZone returns the system with other contact nodes.
func (s *System) WithZone(zone []int32) *System {
	m := *s.Model
	m.Zone = zone
	q := *s
	q.Model = &m
	return &q
}

// Alike says whether two systems differ in numbers alone: the same nodes
// couple, and the same ones carry contact. Then PrepareLike serves.
func (s *System) Alike(o *System) bool {
	a, b := s.Model, o.Model
	if len(a.Nodes) != len(b.Nodes) || len(a.Shells) != len(b.Shells) || len(a.Beams) != len(b.Beams) ||
		len(a.Springs) != len(b.Springs) || !slices.Equal(a.Zone, b.Zone) {
		return false
	}
	for i := range a.Shells {
		if a.Shells[i].Nodes != b.Shells[i].Nodes {
			return false
		}
	}
	for i := range a.Beams {
		if !slices.Equal(s.beamNodes(i), o.beamNodes(i)) {
			return false
		}
	}
	return true // springs hang on single triangles, which couple already
}

// PrepareLike factorises the stiffness in the order of unknowns of a prepared
// system that differs in its numbers alone: the same nodes, elements and
// contact zone in other wood or thickness. It is an error if they differ
// otherwise.
func (s *System) PrepareLike(p *Prepared, workers int) (*Prepared, error) {
	f, err := sparse.Factorize(s.K, p.Factor.Analysis(), workers)
	if err != nil {
		return nil, s.explain(err)
	}
	return &Prepared{System: s, Factor: f}, nil
}
