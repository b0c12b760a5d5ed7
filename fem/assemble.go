package fem

import (
	"fmt"
	"sync"

	"archload/fem/element"
	"archload/fem/sparse"
	"archload/fem/vec3"
)

// System is a model with its elements built and its stiffness summed.
type System struct {
	Model  *Model
	Shells []element.Shell
	Beams  []element.Beam
	K      *sparse.Matrix // with the fixed freedoms taken out
	fixed  []bool         // one for each freedom
	ribbed []bool         // nodes that a brace runs along
	glues  []*[2]glue     // of the beams; nil for one on nodes
}

// Assemble builds all elements and sums their stiffness. workers goroutines
// build elements into their own slots; the sum runs in index order, so the
// result does not depend on their number.
func Assemble(m *Model, workers int) (*System, error) {
	s := &System{Model: m, Shells: make([]element.Shell, len(m.Shells)), Beams: make([]element.Beam, len(m.Beams)), ribbed: make([]bool, len(m.Nodes))}
	for i := range m.Beams {
		for _, n := range m.Beams[i].Nodes {
			s.ribbed[n] = true
		}
	}
	if err := s.buildShells(workers); err != nil {
		return nil, err
	}
	if err := s.buildBeams(); err != nil {
		return nil, err
	}
	s.sum(workers)
	s.fix()
	return s, nil
}

func (s *System) buildBeams() error {
	s.glues = make([]*[2]glue, len(s.Beams))
	for i := range s.Model.Beams {
		b := &s.Model.Beams[i]
		in := element.BeamInput{Offset: b.Offset, Up: b.Up, Section: b.Section,
			X: [2][3]float64{s.Model.Nodes[b.Nodes[0]].P, s.Model.Nodes[b.Nodes[1]].P}}
		if b.Glued {
			s.glues[i] = new([2]glue)
			for e := range 2 {
				s.glues[i][e] = s.newGlue(b, e)
				in.X[e] = s.Model.Place(b.Glue[e])
			}
		}
		var err error
		if s.Beams[i], err = element.NewBeam(in); err != nil {
			return fmt.Errorf("beam %d: %w", i, err)
		}
	}
	return nil
}

// shellInput returns the element input of triangle i. Where a brace is glued
// on, the membrane shear jumps from one side to the other, and the nodes'
// drilling must not tie the two together.
func (s *System) shellInput(i int) element.ShellInput {
	m := s.Model
	e := &m.Shells[i]
	sec := &m.Sections[e.Section]
	in := element.ShellInput{H: e.H, Wood: sec.Wood, Axes: sec.Axes, Pressed: sec.Pressed}
	h := 0.0
	for k, n := range e.Nodes {
		in.X[k] = m.Nodes[n].P
		in.Kink[k] = s.ribbed[n]
		if !e.Flat {
			in.N[k] = m.Nodes[n].N
		}
		h += m.Nodes[n].H / 3
	}
	if in.H == 0 {
		in.H = h
	}
	return in
}

func (s *System) buildShells(workers int) error {
	m := s.Model
	errs := make([]error, max(1, workers))
	var wg sync.WaitGroup
	for w := range errs {
		wg.Add(1)
		go func() {
			defer wg.Done()
			for i := w; i < len(m.Shells) && errs[w] == nil; i += len(errs) {
				el, err := element.NewShell(s.shellInput(i))
				if err != nil {
					p := m.Nodes[m.Shells[i].Nodes[0]].P
					errs[w] = fmt.Errorf("shell %d at (%.1f, %.1f): %w", i, p[0], p[1], err)
				}
				s.Shells[i] = el
			}
		}()
	}
	wg.Wait()
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

func (s *System) sum(workers int) {
	m := s.Model
	elems := make([][]int32, 0, len(m.Shells)+len(m.Beams))
	for i := range m.Shells {
		elems = append(elems, m.Shells[i].Nodes[:])
	}
	for i := range m.Beams {
		elems = append(elems, s.beamNodes(i))
	}
	s.K = sparse.NewMatrix(len(m.Nodes), elems)
	s.sumShells(workers)
	for i := range s.Beams {
		s.K.Add(s.beamStiffness(i))
	}
	for i := range m.Springs {
		nodes, row := s.springRow(i)
		var k [324]float64
		for a := range row {
			for b := range row {
				k[18*a+b] = m.Springs[i].K * row[a] * row[b]
			}
		}
		s.K.Add(nodes, k[:])
	}
}

// sumShells adds the shells in index order; workers goroutines compute the
// stiffness of some at a time.
func (s *System) sumShells(workers int) {
	const batch = 512
	ks := make([][324]float64, min(batch, len(s.Shells)))
	for from := 0; from < len(s.Shells); from += batch {
		part := s.Shells[from:min(from+batch, len(s.Shells))]
		var wg sync.WaitGroup
		for w := range max(1, workers) {
			wg.Go(func() {
				for i := w; i < len(part); i += max(1, workers) {
					part[i].StiffnessTo(&ks[i])
				}
			})
		}
		wg.Wait()
		for i := range part {
			s.K.Add(s.Model.Shells[from+i].Nodes[:], ks[i][:])
		}
	}
}

// springRow gives the movement of spring i's place along it as a row over the
// freedoms of its triangle.
func (s *System) springRow(i int) (nodes []int32, row [18]float64) {
	sp := &s.Model.Springs[i]
	move := s.Shells[sp.At.Shell].RowsAt(sp.At.L, sp.At.Zeta)
	for j := range row {
		row[j] = sp.Dir[0]*move[0][j] + sp.Dir[1]*move[1][j] + sp.Dir[2]*move[2][j]
	}
	return s.Model.Shells[sp.At.Shell].Nodes[:], row
}

// springMove is how far spring i's place moves along it, mm.
func (s *System) springMove(i int, u []float64) float64 {
	sp := &s.Model.Springs[i]
	return vec3.Dot(sp.Dir, s.moveAt(u, sp.At))
}

func (s *System) fix() {
	s.fixed = make([]bool, 6*len(s.Model.Nodes))
	var dofs []int32
	for _, f := range s.Model.Fixed {
		d := 6*f.Node + int32(f.Dof)
		if !s.fixed[d] {
			s.fixed[d] = true
			dofs = append(dofs, d)
		}
	}
	s.K.Fix(dofs)
}

// Prepared is a system with its factor: the expensive part of a solve, kept
// while only strings, bridge or relief change.
type Prepared struct {
	*System
	Factor *sparse.Factor
}

// Analyse orders the unknowns: nested dissection on the plan, contact nodes
// last.
func (s *System) Analyse() (*sparse.Analysis, error) {
	xy := make([][2]float64, len(s.Model.Nodes))
	for i := range xy {
		p := s.Model.Nodes[i].P
		xy[i] = [2]float64{p[0], p[1]}
	}
	return sparse.Analyse(s.K, xy, s.Model.Zone)
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

// solve replaces the nodal load f (N, N·mm) by the displacement; fixed
// freedoms come out zero.
func (p *Prepared) solve(f []float64) {
	for i, fix := range p.fixed {
		if fix {
			f[i] = 0
		}
	}
	p.Factor.Solve(f)
}
