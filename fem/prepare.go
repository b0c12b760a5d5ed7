package fem

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"archload/fem/sparse"
)

// Prepared is a system with its factor: the expensive part of a solve, kept
// while only what stands on it changes.
type Prepared struct {
	*System
	Factor *sparse.Factor
}

// Analyse orders the unknowns: nested dissection on the plan, contact nodes
// last, told from one end of them to the other: a pad then touches only nodes that
// stand close together in that order, which makes a sparse.Reach thin.
func (s *System) Analyse() (*sparse.Analysis, error) {
	xy := make([][2]float64, len(s.Model.Nodes))
	for i := range xy {
		p := s.Model.Nodes[i].P
		xy[i] = [2]float64{p[0], p[1]}
	}
	return sparse.Analyse(s.K, xy, inRow(s.Model.Zone, xy))
}

// inRow sorts some nodes along x or y, whichever way they reach farther.
func inRow(nodes []int32, xy [][2]float64) []int32 {
	var reach [2]float64
	for k := range reach {
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, n := range nodes {
			lo, hi = min(lo, xy[n][k]), max(hi, xy[n][k])
		}
		reach[k] = hi - lo
	}
	along := 0
	if reach[1] > reach[0] {
		along = 1
	}
	out := slices.Clone(nodes)
	slices.SortStableFunc(out, func(a, b int32) int { return cmp.Compare(xy[a][along], xy[b][along]) })
	return out
}

// Prepare factorises the stiffness. A *sparse.PivotError is returned as an
// *UnsupportedError with the place on the plate.
func (s *System) Prepare(workers int) (*Prepared, error) {
	a, err := s.Analyse()
	if err != nil {
		return nil, err
	}
	f, err := sparse.Factorize(s.K, a, workers)
	if err != nil {
		return nil, s.explain(err)
	}
	return &Prepared{System: s, Factor: f}, nil
}

// Solve replaces the nodal load f (N, N·mm) by the displacement; fixed
// freedoms come out zero, those of nodes that follow a rigid body as it moves.
func (p *Prepared) Solve(f []float64) {
	p.Lead(f)
	p.Hold(f)
	p.Factor.Solve(f)
	p.Follow(f)
}

// Hold zeroes the held freedoms of movements or nodal forces.
func (s *System) Hold(f []float64) {
	for i, fix := range s.fixed {
		if fix {
			f[i] = 0
		}
	}
}

// Movable is a row over the freedoms without those that are held.
func (s *System) Movable(c sparse.Column) (out sparse.Column) {
	for i, d := range c.Dofs {
		if !s.fixed[d] {
			out.Dofs, out.Vals = append(out.Dofs, d), append(out.Vals, c.Vals[i])
		}
	}
	return out
}

// WithZone returns the system with other contact nodes.
func (s *System) WithZone(zone []int32) *System {
	m := *s.Model
	m.Zone = zone
	q := *s
	q.Model = &m
	return &q
}

// Alike says whether two systems may differ in numbers alone: whether the same nodes carry
// contact, and none couple that have no place in the other's stiffness. Then PrepareLike serves.
func (s *System) Alike(o *System) bool {
	a, b := s.Model, o.Model
	return len(a.Nodes) == len(b.Nodes) && slices.EqualFunc(a.Springs, b.Springs, couplesAlike) && slices.Equal(a.Zone, b.Zone) &&
		slices.EqualFunc(s.Elements, o.Elements, func(e, f Element) bool {
			return slices.Equal(e.Nodes(), f.Nodes()) || couplesIn(o.K, e.Nodes())
		})
}

// couplesIn says whether all pairs of some nodes couple in a matrix.
func couplesIn(k *sparse.Matrix, nodes []int32) bool {
	for i, u := range nodes {
		for _, v := range nodes[:i] {
			if !k.Couples(u, v) {
				return false
			}
		}
	}
	return true
}

// couplesAlike says whether two springs couple the same nodes of alike shells: one that
// stands on the ground couples none that its triangle does not.
func couplesAlike(a, b Spring) bool {
	if a.Far == nil || b.Far == nil {
		return a.Far == nil && b.Far == nil
	}
	return a.At.Shell == b.At.Shell && a.Far.Shell == b.Far.Shell
}

// PrepareLike factorises the stiffness in the order of unknowns of a prepared
// system that differs in its numbers alone: the same nodes, elements and
// contact zone in other wood or thickness. What the two factors have in common is shared.
// It is an error if they differ otherwise.
func (s *System) PrepareLike(p *Prepared, workers int) (*Prepared, error) {
	f, err := p.Factor.Renew(p.K, s.K, workers)
	if err != nil {
		return nil, s.explain(err)
	}
	return &Prepared{System: s, Factor: f}, nil
}

// explain puts a pivot that vanishes at its place on the plate.
func (s *System) explain(err error) error {
	var pe *sparse.PivotError
	if !errors.As(err, &pe) {
		return err
	}
	return &UnsupportedError{At: s.Model.Nodes[pe.Node].P, Dof: pe.Dof, Err: err}
}
