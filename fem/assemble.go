package fem

import (
	"fmt"
	"sync"

	"archload/fem/element"
	"archload/fem/parallel"
	"archload/fem/sparse"
	"archload/mesh"
)

// Assemble builds all elements and sums their stiffness. workers goroutines
// build elements into their own slots; the sum runs in index order, so the
// result does not depend on their number.
func Assemble(m *Model, workers int) (*System, error) {
	s, err := Loose(m, workers)
	if err != nil {
		return nil, err
	}
	s.sum(workers, nil)
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

// sum adds the elements in index order, then the springs; other nodes that are to couple too have room.
func (s *System) sum(workers int, others [][]int32) {
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
	s.K = sparse.NewMatrix(len(s.Model.Nodes), append(couples, others...))
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
// has room. Each worker sums into rows of its own, in the order of the elements; an element whose
// nodes lie in the rows of two is computed by both, which costs less than handing it over.
func (s *System) addMatrices(k *sparse.Matrix, workers int, of func(e Element, buf []float64) []float64) {
	count := 1
	if workers > 1 {
		count = 2*workers + 4 // some more than workers, so that all end together
	}
	owner, strips := s.strips(count)
	parallel.Chunks(workers, len(strips), 1, func(strip, _ int) {
		var buf []float64
		for _, i := range strips[strip] {
			e := s.Elements[i]
			buf = of(e, buf)
			k.AddRows(e.Nodes(), buf, owner, int32(strip))
		}
	})
}

// strips parts the nodes into so many strips across the model's longer side, of about as many nodes each, and lists
// the elements that have nodes in each, rising.
func (s *System) strips(count int) (strip []int32, elements [][]int32) {
	nodes := s.Model.Nodes
	strip = make([]int32, len(nodes))
	elements = make([][]int32, max(1, min(count, len(nodes))))
	across := levels(nodes)
	var before [stripLevels + 1]int // nodes below each level
	for _, l := range across {
		before[l+1]++
	}
	for l := range stripLevels {
		before[l+1] += before[l]
	}
	for n, l := range across {
		strip[n] = int32(before[l] * len(elements) / len(nodes))
	}
	for i, e := range s.Elements {
		for _, n := range e.Nodes() {
			in := &elements[strip[n]]
			if k := len(*in); k == 0 || (*in)[k-1] != int32(i) {
				*in = append(*in, int32(i))
			}
		}
	}
	return strip, elements
}

// stripLevels is how finely the strips of a model are cut.
const stripLevels = 512

// levels is how far each node stands along the model's longer side, 0 to stripLevels - 1.
func levels(nodes []mesh.Node) []int32 {
	lo, hi := nodes[0].P, nodes[0].P
	for i := range nodes {
		for k, v := range nodes[i].P {
			lo[k], hi[k] = min(lo[k], v), max(hi[k], v)
		}
	}
	along := 0
	if hi[1]-lo[1] > hi[0]-lo[0] {
		along = 1
	}
	out := make([]int32, len(nodes))
	if hi[along] == lo[along] {
		return out
	}
	for i := range nodes {
		out[i] = int32((nodes[i].P[along] - lo[along]) / (hi[along] - lo[along]) * (stripLevels - 1))
	}
	return out
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
