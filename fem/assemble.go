package fem

import (
	"fmt"
	"sync"

	"archload/fem/element"
	"archload/fem/parallel"
	"archload/fem/sparse"
)

// Assemble builds all elements and sums their stiffness. workers goroutines
// build elements into their own slots; the sum runs in index order, so the
// result does not depend on their number.
func Assemble(m *Model, workers int) (*System, error) {
	s, err := Loose(m, workers)
	if err != nil {
		return nil, err
	}
	s.sum(workers)
	s.K.Fix(s.fix())
	return s, nil
}

// Loose builds all elements and leaves them by themselves: the system has no stiffness (K is nil), for what is asked of the elements
// alone, as strain energies are.
func Loose(m *Model, workers int) (*System, error) {
	s := &System{Model: m, Shells: make([]element.Shell, len(m.Shells))}
	s.findKinks()
	if err := s.setShells(workers); err != nil {
		return nil, err
	}
	if err := s.tieElements(nil); err != nil {
		return nil, err
	}
	return s, nil
}

// findKinks marks the nodes of beams, and those where a wall meets a plate that keeps its surface
// normals.
func (s *System) findKinks() {
	s.kinked = make([]bool, len(s.Model.Nodes))
	for i := range s.Model.Beams {
		for _, n := range s.Model.Beams[i].Nodes {
			s.kinked[n] = true
		}
	}
	const plate, wall = 1, 2
	meet := make([]uint8, len(s.Model.Nodes))
	for i := range s.Model.Shells {
		e := &s.Model.Shells[i]
		kind := uint8(plate)
		if e.Flat {
			kind = wall
		}
		for _, n := range e.Nodes {
			if meet[n] |= kind; meet[n] == plate|wall {
				s.kinked[n] = true
			}
		}
	}
}

// shellInput returns the element input of triangle i. Where a brace is glued
// on, the membrane shear jumps from one side to the other, and the nodes'
// drilling must not tie the two together. Nor must it where a wall meets a
// plate: the drilling of each is there the bending of the other, and tied they
// converge at first order only, from the stiff side.
func (s *System) shellInput(i int) element.ShellInput {
	m := s.Model
	e := &m.Shells[i]
	sec := &m.Sections[e.Section]
	in := element.ShellInput{H: e.H, Wood: sec.Wood, Axes: sec.Axes, Pressed: sec.Pressed}
	h := 0.0
	for k, n := range e.Nodes {
		in.X[k] = m.Nodes[n].P
		in.Kink[k] = s.kinked[n]
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

// chunk is how many elements a worker takes at a time.
const chunk = 64

// setShells sets every shell from the model.
func (s *System) setShells(workers int) error {
	return s.buildShells(workers, func(i int) error {
		if i%chunk == 0 { // by whoever needs them, so that the workers share the clearing
			copy(s.Shells[i:], element.NewShells(min(chunk, len(s.Shells)-i)))
		}
		return s.Shells[i].Set(s.shellInput(i))
	})
}

// buildShells sets every shell, those of a chunk in their order; of several faults it tells that of the first.
func (s *System) buildShells(workers int, set func(i int) error) error {
	m := s.Model
	var mu sync.Mutex
	first, fault := len(m.Shells), error(nil)
	parallel.Chunks(workers, len(m.Shells), chunk, func(from, to int) {
		for i := from; i < to; i++ {
			var err error
			if err = set(i); err == nil {
				continue
			}
			mu.Lock()
			if i < first {
				p := m.Nodes[m.Shells[i].Nodes[0]].P
				first, fault = i, fmt.Errorf("shell %d at (%.1f, %.1f): %w", i, p[0], p[1], err)
			}
			mu.Unlock()
			return
		}
	})
	return fault
}

// sum adds the elements in index order, then the springs.
func (s *System) sum(workers int) {
	couples := make([][]int32, len(s.Elements))
	for i, e := range s.Elements {
		couples[i] = e.Nodes()
	}
	for i := range s.Model.Springs {
		if s.Model.Springs[i].Far != nil { // another's place lies in one triangle, whose nodes couple already
			nodes, _ := s.springRow(i)
			couples = append(couples, nodes)
		}
	}
	s.K = sparse.NewMatrix(len(s.Model.Nodes), couples)
	s.AddStiffness(s.K, workers)
}

// AddStiffness adds the stiffness, fixed freedoms and all, to a matrix over the model's nodes
// in which the nodes of each element couple. workers goroutines compute the stiffness of some
// elements at a time.
func (s *System) AddStiffness(k *sparse.Matrix, workers int) {
	s.addMatrices(k, workers, stiffnessOf)
	s.addSprings(k)
}

// addMatrices adds a matrix of each element over its freedoms, which of returns, in buf if it
// has room. Each worker sums into rows of its own, in the order of the elements: every so-many-th
// row, as the elements of a batch lie side by side and so do the numbers of their nodes.
func (s *System) addMatrices(k *sparse.Matrix, workers int, of func(e Element, buf []float64) []float64) {
	ks := make([][]float64, min(batchFor(workers), len(s.Elements)))
	shares := max(1, workers)
	s.inBatches(workers,
		func(i int, e Element) { ks[i] = of(e, ks[i]) },
		func(part []Element) {
			parallel.Chunks(workers, shares, 1, func(share, _ int) {
				for i, e := range part {
					k.AddRows(e.Nodes(), ks[i], int32(share), int32(shares))
				}
			})
		})
}

// batchFor is how many elements are computed before they are summed.
func batchFor(workers int) int { return 256 * max(2, workers) }

// inBatches computes every element, some at a time, and has each batch summed; i counts in the batch.
func (s *System) inBatches(workers int, compute func(i int, e Element), sum func(part []Element)) {
	batch := batchFor(workers)
	for from := 0; from < len(s.Elements); from += batch {
		part := s.Elements[from:min(from+batch, len(s.Elements))]
		parallel.Chunks(workers, len(part), chunk, func(lo, hi int) {
			for i := lo; i < hi; i++ {
				compute(i, part[i])
			}
		})
		sum(part)
	}
}

// fix marks the freedoms that are held or follow rigid bodies, and lists them.
func (s *System) fix() (dofs []int32) {
	s.fixed = make([]bool, 6*len(s.Model.Nodes))
	for _, f := range s.Model.Fixed {
		d := 6*f.Node + int32(f.Dof)
		if !s.fixed[d] {
			s.fixed[d] = true
			dofs = append(dofs, d)
		}
	}
	for i := range s.Model.Bodies {
		for _, n := range s.Model.Bodies[i].Nodes {
			for k := range int32(6) {
				s.fixed[6*n+k] = true
				dofs = append(dofs, 6*n+k)
			}
		}
	}
	return dofs
}
