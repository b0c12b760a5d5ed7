package fem

import "archload/fem/sparse"

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
