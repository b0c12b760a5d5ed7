package fem

import (
	"slices"
)

// glue ties the end of a brace to the plate: the movement of the plate's face
// there, and the plate's rotation, as rows over the plate's freedoms. The
// section's lean in the plane of bending is its own, kept by an extra node:
// plate and brace share the glue face, not their shear strains, which differ
// as their shear stiffnesses and loads do. Where braces are let into each other
// the joint's three rotations are common to them.
type glue struct {
	nodes []int32
	rows  [6][]float64 // each 6·len(nodes)
}

// newGlue makes the tie of one end of a beam.
func (s *System) newGlue(b *BeamElem, end int) glue {
	p := b.Glue[end]
	corners := s.Model.Shells[p.Shell].Nodes
	g := glue{nodes: append(corners[:len(corners):len(corners)], b.Lean[end])}
	slices.Sort(g.nodes)
	for k := range g.rows {
		g.rows[k] = make([]float64, 6*len(g.nodes))
	}
	move := s.Shells[p.Shell].RowsAt(p.L, p.Zeta)
	for c, n := range corners {
		at := 6 * slices.Index(g.nodes, n)
		for a := range 3 {
			copy(g.rows[a][at:at+6], move[a][6*c:6*c+6])
			if b.Joined[end] {
				continue
			}
			for d := range 3 { // rotation without its part about Across
				g.rows[3+a][at+3+d] = -p.L[c] * b.Across[a] * b.Across[d]
			}
			g.rows[3+a][at+3+a] += p.L[c]
		}
	}
	at := 6 * slices.Index(g.nodes, b.Lean[end])
	for a := range 3 {
		if b.Joined[end] {
			g.rows[3+a][at+3+a] = 1
			continue
		}
		g.rows[3+a][at+leanDof] = b.Across[a]
	}
	return g
}

// moveTo writes the six movements of the end.
func (g *glue) moveTo(dst []float64, u []float64) {
	for k := range 6 {
		v := 0.0
		for c, n := range g.nodes {
			for d := range 6 {
				v += g.rows[k][6*c+d] * u[6*int(n)+d]
			}
		}
		dst[k] = v
	}
}

// beamMove returns the movements of both ends of beam i.
func (s *System) beamMove(i int, u []float64) (ub [12]float64) {
	if s.glues[i] == nil {
		gather(ub[:], u, s.Model.Beams[i].Nodes[:])
		return ub
	}
	for e := range 2 {
		s.glues[i][e].moveTo(ub[6*e:6*e+6], u)
	}
	return ub
}

// beamNodes lists the nodes that beam i is tied to.
func (s *System) beamNodes(i int) []int32 {
	if s.glues[i] == nil {
		return s.Model.Beams[i].Nodes[:]
	}
	n := append(slices.Clone(s.glues[i][0].nodes), s.glues[i][1].nodes...)
	slices.Sort(n)
	return slices.Compact(n)
}

// beamRows spreads the twelve end movements of a glued beam over its nodes:
// row-major 12 × 6·len(nodes).
func (s *System) beamRows(i int, nodes []int32) []float64 {
	width := 6 * len(nodes)
	t := make([]float64, 12*width)
	for e := range 2 {
		g := &s.glues[i][e]
		for k := range 6 {
			row := t[(6*e+k)*width : (6*e+k+1)*width]
			for c, n := range g.nodes {
				copy(row[6*slices.Index(nodes, n):], g.rows[k][6*c:6*c+6])
			}
		}
	}
	return t
}

// beamStiffness returns the stiffness of beam i over its nodes, row-major.
func (s *System) beamStiffness(i int) (nodes []int32, k []float64) {
	var kb [144]float64
	s.Beams[i].StiffnessTo(&kb)
	nodes = s.beamNodes(i)
	if s.glues[i] == nil {
		return nodes, kb[:]
	}
	return nodes, congruent(kb[:], s.beamRows(i, nodes), 12)
}

// congruent returns TᵀKT, row-major, K being n×n and T n×m.
func congruent(k, t []float64, n int) []float64 {
	m := len(t) / n
	kt := make([]float64, n*m)
	for r := range n {
		for q := range n {
			for c := range m {
				kt[r*m+c] += k[n*r+q] * t[q*m+c]
			}
		}
	}
	out := make([]float64, m*m)
	for r := range n {
		for a := range m {
			if v := t[r*m+a]; v != 0 {
				for c := range m {
					out[a*m+c] += v * kt[r*m+c]
				}
			}
		}
	}
	return out
}
