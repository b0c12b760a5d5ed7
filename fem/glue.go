package fem

import (
	"slices"

	"archload/fem/element"
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
	plate *element.Shell
	on    SurfacePoint // of it
	at    [3]int       // place in nodes of its corners
	lean  int          // place in nodes of the one that keeps the lean; -1 where braces are joined
	axis  [3]float64   // about which it leans
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
	g.plate, g.on = &s.Shells[p.Shell], p
	move := s.Shells[p.Shell].RowsAt(p.L, p.Zeta)
	for c, n := range corners {
		at := 6 * slices.Index(g.nodes, n)
		g.at[c] = at / 6
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
	if g.lean, g.axis = at/6, b.Across; b.Joined[end] {
		g.lean = -1
	}
	for a := range 3 {
		if b.Joined[end] {
			g.rows[3+a][at+3+a] = 1
			continue
		}
		g.rows[3+a][at+leanDof] = b.Across[a]
	}
	return g
}

// gluedBeam is a beam whose ends are glued to the plate's face.
type gluedBeam struct {
	beam  *element.Beam
	of    *BeamElem
	nodes []int32 // of both ends, each once
	glue  [2]glue
	at    [2][]int32 // place in nodes of each end's nodes
	rows  []float64  // the twelve movements of the ends over the nodes' freedoms, row-major
}

func newGluedBeam(b *element.Beam, of *BeamElem, first, second glue) *gluedBeam {
	e := &gluedBeam{beam: b, of: of, glue: [2]glue{first, second}}
	e.nodes = append(slices.Clone(first.nodes), second.nodes...)
	slices.Sort(e.nodes)
	e.nodes = slices.Compact(e.nodes)
	width := 6 * len(e.nodes)
	e.rows = make([]float64, 12*width)
	for end := range 2 {
		g := &e.glue[end]
		for c, n := range g.nodes {
			at := slices.Index(e.nodes, n)
			e.at[end] = append(e.at[end], int32(at))
			for k := range g.rows {
				copy(e.rows[(6*end+k)*width+6*at:], g.rows[k][6*c:6*c+6])
			}
		}
	}
	return e
}

func (e *gluedBeam) Nodes() []int32 { return e.nodes }
func (e *gluedBeam) Part() Part     { return e.of.Part }

func (e *gluedBeam) StiffnessTo(k []float64) {
	var kb [144]float64
	e.beam.StiffnessTo(&kb)
	congruentTo(k, kb[:], e.rows)
}

func (e *gluedBeam) MassTo(m []float64) {
	var mb [144]float64
	e.beam.MassTo(&mb, e.of.Mass)
	congruentTo(m, mb[:], e.rows)
}

func (e *gluedBeam) Energy(u []float64) Strain {
	ub := e.ends(u)
	return Strain{Other: e.beam.Energy(&ub)}
}

func (e *gluedBeam) with(b *element.Beam) beamTie {
	q := *e
	q.beam = b
	return &q
}

// ends are the movements of both ends.
func (e *gluedBeam) ends(u []float64) (ub [12]float64) {
	for end := range 2 {
		g := &e.glue[end]
		for k := range 6 {
			v := 0.0
			for c, at := range e.at[end] {
				for d := range 6 {
					v += g.rows[k][6*c+d] * u[6*int(at)+d]
				}
			}
			ub[6*end+k] = v
		}
	}
	return ub
}

// onNodes are the forces on the nodes from those on the ends.
func (e *gluedBeam) onNodes(f *[12]float64) []float64 {
	width := 6 * len(e.nodes)
	out := make([]float64, width)
	for k, v := range f {
		for j, r := range e.rows[k*width : (k+1)*width] {
			out[j] += v * r
		}
	}
	return out
}

// congruentTo sets out to TᵀKT, row-major, K being 12×12, of a beam, and T 12×m.
func congruentTo(out, k, t []float64) {
	const n = 12
	m := len(t) / n
	kt := make([]float64, n*m)
	for r := range n {
		for q := range n {
			for c := range m {
				kt[r*m+c] += k[n*r+q] * t[q*m+c]
			}
		}
	}
	clear(out)
	for r := range n {
		for a := range m {
			if v := t[r*m+a]; v != 0 {
				for c := range m {
					out[a*m+c] += v * kt[r*m+c]
				}
			}
		}
	}
}
