package sparse

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
	"sync"

	"archload/fem/pages"
	"archload/fem/sparse/team"
)

// Factor is the Cholesky factor L of a matrix, P K Pᵀ = L Lᵀ. It is read only
// after Factorize, so that any number of goroutines may solve with it.
type Factor struct {
	a       *Analysis
	kern    kernels
	workers int
	parts   [][]float64 // each front's panels
	tri     []float64   // factors of the diagonal blocks, 36 by place, reciprocal diagonal
	signs   signs       // by place; nil: Cholesky
	kept    [][]float64 // updates of some fronts, for Renew; nil: none, and no part is another factor's
}

// pivotTolerance is the smallest pivot accepted, relative to the diagonal of the
// matrix at that degree of freedom.
const pivotTolerance = 1e-13

// PivotError says that the matrix is not positive definite in working precision (or,
// for a signed factor, that a pivot vanishes):
// a node that nothing holds, a mechanism, or a bad element. It names the worst
// pivot: first those without a positive finite diagonal, then the smallest
// relative to its diagonal.
type PivotError struct {
	Node     int     // node
	Dof      int     // 0..5: ux uy uz rx ry rz
	Pivot    float64 // what elimination left of the diagonal
	Diagonal float64 // value on the diagonal of the matrix
	Count    int     // how many pivots failed; about the number of mechanisms
}

// Error says where, what was found and what was wanted.
func (e *PivotError) Error() string {
	name := [Block]string{"ux", "uy", "uz", "rx", "ry", "rz"}[e.Dof]
	return fmt.Sprintf("sparse: not positive definite at node %d, %s: "+
		"pivot %.3g, want more than %.0e of the diagonal %.3g (%d such pivots)",
		e.Node, name, e.Pivot, pivotTolerance, e.Diagonal, e.Count)
}

// severity orders pivot errors, the worst lowest.
func (e *PivotError) severity() float64 {
	s := e.Pivot / e.Diagonal
	if !(e.Diagonal > 0) || math.IsInf(e.Diagonal, 1) || math.IsNaN(s) {
		return math.Inf(-1)
	}
	return s
}

// Factorize computes the Cholesky factor of m with at most the given number of
// goroutines (0 counts as 1). The result does not depend on that number, to the
// last bit. The error is a *PivotError if m is not positive definite, or says that
// a was made for another pattern.
func Factorize(m *Matrix, a *Analysis, workers int) (*Factor, error) {
	return newFactor(a, workers, fastKernels()).first(m)
}

func newFactor(a *Analysis, workers int, kern kernels) *Factor {
	f := &Factor{a: a, kern: kern, workers: max(workers, 1), parts: make([][]float64, len(a.fronts)), tri: make([]float64, blockLen*a.n)}
	f.allot()
	return f
}

// allot gives memory, all zeros, to all fronts.
func (f *Factor) allot() {
	val := make([]float64, f.a.sizes.factor)
	if f.workers > 1 {
		pages.Wide(val)
	}
	for k := range f.parts {
		n := f.a.fronts[k].size()
		f.parts[k], val = val[:n:n], val[n:]
	}
}

// first computes the first factor in f.
func (f *Factor) first(m *Matrix) (*Factor, error) {
	if err := f.compute(m, true); err != nil {
		return nil, err
	}
	return f, nil
}

// Refactor computes the Cholesky factor of other values of the same pattern in the memory
// of f, which must not be in use elsewhere. After an error f is void.
func (f *Factor) Refactor(m *Matrix) error {
	f.signs = nil
	return f.again(m)
}

// again computes the factor of other values in memory of its own.
func (f *Factor) again(m *Matrix) error {
	if f.kept != nil {
		f.kept = nil
		f.allot()
	}
	return f.compute(m, false)
}

// Analysis returns the analysis that the factor was made with; it serves every
// matrix of the same pattern.
func (f *Factor) Analysis() *Analysis { return f.a }

// compute runs the numerical factorisation.
func (f *Factor) compute(m *Matrix, fresh bool) error {
	if m.n != f.a.n || !slices.Equal(m.ptr, f.a.ptr) || !slices.Equal(m.col, f.a.col) {
		return errors.New("sparse: the analysis was made for another pattern")
	}
	return f.computation(m, fresh, f.a.all()).run()
}

// computation prepares a factorisation of m.
func (f *Factor) computation(m *Matrix, fresh bool, todo []bool) *computation {
	return &computation{
		f: f, m: m, fresh: fresh, todo: todo,
		updates: make([][]float64, len(f.a.fronts)),
		dense:   dense{kernels: f.kern, team: team.New(f.workers), triRow: f.a.triRow},
	}
}

// run computes what is to do.
func (c *computation) run() error {
	c.pool = c.f.a.buffers()
	c.runTree()
	c.f.a.idle.Put(c.pool)
	if len(c.bad) > 0 {
		return c.worst()
	}
	return nil
}

// computation is the state of one factorisation.
type computation struct {
	f       *Factor
	m       *Matrix
	fresh   bool        // the factor's memory is still all zeros
	todo    []bool      // by front: whether it is computed; those above one that is are so too
	keep    []bool      // by front: whether its update is kept; nil: none
	updates [][]float64 // by front, from its end to its use
	pool    *team.Pool
	dense   dense

	mu  sync.Mutex
	bad []*PivotError
}

// runTree eliminates all fronts. With several workers, whole subtrees up to a
// certain cost are tasks, and each front above them.
func (c *computation) runTree() {
	fronts := c.f.a.fronts
	if c.f.workers == 1 {
		c.dense.team.Enter()
		c.runTask(int32(len(fronts))-1, 0)
		return
	}
	q, waiting := c.tasks()
	var wg sync.WaitGroup
	for range c.f.workers {
		wg.Go(func() {
			for task, ok := q.Pop(); ok; task, ok = q.Pop() {
				c.dense.team.Enter()
				first := task
				if waiting[task] < 0 {
					first = fronts[task].subtree
				}
				c.runTask(task, first)
				c.dense.team.Leave()
				q.Finish(fronts[task].parent, waiting)
			}
		})
	}
	wg.Wait()
}

// tasks cuts the tree into tasks. waiting counts the unfinished children of the
// fronts that are tasks alone; it is -1 where the whole subtree is the task.
func (c *computation) tasks() (q *team.Queue, waiting []int32) {
	fronts := c.f.a.fronts
	total, all := c.costs()
	grain := all / float64(24*c.f.workers)
	q = team.NewQueue() // filled in ascending order, so that it is a heap
	waiting = make([]int32, len(fronts))
	for k := range fronts {
		f := &fronts[k]
		switch {
		case !c.todo[k]:
		case total[k] > grain:
			q.Expect()
			for _, ch := range f.children {
				if c.todo[ch] {
					waiting[k]++
				}
			}
			if waiting[k] == 0 {
				q.Ready(int32(k))
			}
		default:
			waiting[k] = -1
			if f.parent < 0 || total[f.parent] > grain {
				q.Expect()
				q.Ready(int32(k))
			}
		}
	}
	return q, waiting
}

// costs sums what is to do in each subtree, and in all, in units of etree.Cost.
func (c *computation) costs() (subtree []float64, all float64) {
	fronts := c.f.a.fronts
	subtree = make([]float64, len(fronts))
	for k := range fronts {
		if !c.todo[k] {
			continue
		}
		subtree[k] += fronts[k].cost
		all += fronts[k].cost
		if up := fronts[k].parent; up >= 0 {
			subtree[up] += subtree[k]
		}
	}
	return subtree, all
}

// runTask eliminates what is to do of the fronts from the first to the last.
func (c *computation) runTask(last, first int32) {
	for k := first; k <= last; k++ {
		if c.todo[k] {
			c.eliminate(k)
		}
	}
}

// eliminate assembles front k and eliminates its pivots. What the children bring
// to a large update is added as soon as some of its rows are there.
func (c *computation) eliminate(k int32) {
	if c.f.parts[k] == nil { // by whoever needs it, so that the workers share the clearing
		c.f.parts[k] = make([]float64, c.f.a.fronts[k].size())
	}
	fd := c.f.data(k)
	kern := c.dense.kernels
	if !c.fresh {
		clear(fd.d)
		clear(fd.s)
	}
	fd.u = c.pool.Get(triLen(fd.r()))
	fd.addMatrix(c.m, c.f.a.entries[fd.entry:fd.entry+fd.entryN])
	children := make([]childData, len(fd.children))
	for i, ch := range fd.children {
		children[i] = childOf(&c.f.a.fronts[ch], c.updates[ch], int(fd.pivots))
		fd.addPivots(kern, &children[i])
	}
	nodes := int(fd.pivots)
	tri := c.f.tri[blockLen*int(fd.first):]
	factor6 := c.factor6
	if c.f.signs != nil {
		factor6 = c.signed6
	}
	w := c.dense
	w.signs = c.f.signs.from(fd.first)
	w.pivots(fd.d, tri, nodes, func(j int, blk []float64) { factor6(fd.first+int32(j), blk) })
	w.rows(fd.s, fd.d, tri, nodes)
	add := func(lo, hi int) {
		for i := range children {
			fd.addUpdate(kern, &children[i], lo, hi)
		}
	}
	update := product{u: fd.u, s: fd.s, count: len(fd.rows), nodes: nodes, done: add}
	if len(fd.u) <= smallUpdate {
		update.done = nil
	}
	w.schur(update)
	if update.done == nil {
		add(0, update.count)
	}
	for _, ch := range fd.children {
		switch {
		case c.keep != nil && c.keep[ch]:
			c.f.kept[ch] = c.updates[ch]
		case c.todo[ch]:
			c.pool.Put(c.updates[ch])
		}
		c.updates[ch] = nil
	}
	c.updates[k] = fd.u
}

// factor6 replaces the 6 x 6 block of the node at a place by its Cholesky factor
// with the reciprocal diagonal. A bad pivot is noted and its column set to zero,
// as if it were fixed, so that the others can still be judged.
func (c *computation) factor6(place int32, blk []float64) {
	for j := range Block {
		row := blk[Block*j:][:Block]
		inv := c.reciprocalRoot(place, j, row[j])
		row[j] = inv
		for i := j + 1; i < Block; i++ {
			ri := blk[Block*i:][:Block]
			ri[j] *= inv
			if inv == 0 {
				ri[j] = 0
			}
		}
		for i := j + 1; i < Block; i++ {
			ri := blk[Block*i:][:Block]
			for l := j + 1; l <= i; l++ {
				ri[l] -= ri[j] * blk[Block*l+j]
			}
		}
	}
}

// reciprocalRoot returns 1/sqrt(pivot), or 0 for a bad pivot, which it notes.
func (c *computation) reciprocalRoot(place int32, dof int, pivot float64) float64 {
	node := int(c.f.a.order[place])
	diagonal := c.m.Diagonal(Block*node + dof)
	if pivot > 0 && pivot > pivotTolerance*diagonal && diagonal > 0 && !math.IsInf(pivot, 1) {
		return 1 / math.Sqrt(pivot)
	}
	return c.note(&PivotError{Node: node, Dof: dof, Pivot: pivot, Diagonal: diagonal})
}

// note keeps a bad pivot; its column is scaled by the 0 returned.
func (c *computation) note(bad *PivotError) float64 {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.bad = append(c.bad, bad)
	return 0
}

// worst returns the worst of the bad pivots; of equals the first node.
func (c *computation) worst() *PivotError {
	worst := slices.MinFunc(c.bad, func(a, b *PivotError) int {
		return cmp.Or(cmp.Compare(a.severity(), b.severity()), cmp.Compare(a.Node, b.Node), cmp.Compare(a.Dof, b.Dof))
	})
	worst.Count = len(c.bad)
	return worst
}

// Workers is the number of workers that the factor was made by.
func (f *Factor) Workers() int { return f.workers }
