package sparse

import (
	"fmt"
	"sync"
	"sync/atomic"
)

// SolveLast is Solve for a right-hand side that is zero outside the last nodes of
// the analysis: elimination leaves it as it is up to their fronts, so that the
// solution is one pass down the tree from there. Subtrees are shared between the
// workers of Factorize; the result does not depend on their number. It panics if the
// length is wrong or the analysis has no last nodes; values elsewhere are taken for
// zero.
func (f *Factor) SolveLast(x []float64) {
	if len(x) != Block*f.a.n {
		panic(fmt.Sprintf("sparse: SolveLast: want %d values, found %d", Block*f.a.n, len(x)))
	}
	if len(f.a.last) == 0 {
		panic("sparse: SolveLast: the analysis has no last nodes")
	}
	y := make([]float64, len(x)) // in the order of elimination
	for p := f.a.end; p < f.a.n; p++ {
		copy(y[Block*p:][:Block], x[Block*f.a.order[p]:])
	}
	piv, row := f.stripes()
	for k := f.a.tail; k < len(f.a.fronts); k++ {
		f.forward(f.data(int32(k)), y, piv, row)
	}
	f.turn(y, 1)
	f.descend(y, piv, row)
	for p, v := range f.a.order {
		copy(x[Block*v:][:Block], y[Block*p:])
	}
}

// stripes is the work space of one right-hand side in a front.
func (f *Factor) stripes() (piv, row []float64) {
	return make([]float64, roundUp(Block*f.a.sizes.pivots)), make([]float64, roundUp(Block*f.a.sizes.rows))
}

// descend solves with the transpose of L. A front needs only the values of those
// above it: the upper ones come first, then the subtrees below them in any order.
func (f *Factor) descend(y, piv, row []float64) {
	if f.workers == 1 {
		for k := len(f.a.fronts) - 1; k >= 0; k-- {
			f.backward(f.data(int32(k)), y, piv, row)
		}
		return
	}
	upper, subtrees := f.a.partSubtrees(f.workers)
	for _, k := range upper {
		f.backward(f.data(k), y, piv, row)
	}
	var next atomic.Int64
	var wg sync.WaitGroup
	for range f.workers {
		wg.Go(func() {
			piv, row := f.stripes()
			for i := next.Add(1) - 1; i < int64(len(subtrees)); i = next.Add(1) - 1 {
				top := subtrees[i]
				for k := top; k >= f.a.fronts[top].subtree; k-- {
					f.backward(f.data(k), y, piv, row)
				}
			}
		})
	}
	wg.Wait()
}

// partSubtrees parts the fronts into the upper ones, from the root down, and the
// roots of the largest subtrees below them that are small enough to share out.
func (a *Analysis) partSubtrees(workers int) (upper, subtrees []int32) {
	grain := a.sizes.factor / (6 * workers)
	for k := int32(len(a.fronts)) - 1; k >= 0; {
		fr := &a.fronts[k]
		if fr.at+fr.size()-a.fronts[fr.subtree].at > grain {
			upper = append(upper, k)
			k--
			continue
		}
		subtrees = append(subtrees, k)
		k = fr.subtree - 1
	}
	return upper, subtrees
}
