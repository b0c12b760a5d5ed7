package eigen

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"
)

const (
	goodGap = 5e-3 // relative; the first gap as wide is taken
	fairGap = 1e-6 // the widest gap of a few is taken if it is at least as wide
	window  = 8    // so many
)

// project solves the projected problem of the blocks that have been through the operator.
func (l *lanczos) project() {
	n := width * (l.size - 1)
	sym := mat.NewSymDense(n, nil)
	for i := range n {
		for k := range i + 1 {
			sym.SetSym(i, k, l.at(i, k))
		}
	}
	var e mat.EigenSym
	if !e.Factorize(sym, true) {
		panic("eigen: the projected problem does not converge")
	}
	r := &l.ritz
	r.shift, r.rows, r.vectors = l.shift, n, new(mat.Dense)
	e.VectorsTo(r.vectors)
	values := e.Values(nil)
	r.theta, r.residual = r.theta[:0], r.residual[:0]
	for i := n - 1; i >= 0; i-- {
		if !(values[i] > leastTheta*values[n-1]) {
			break
		}
		r.theta = append(r.theta, values[i])
		r.residual = append(r.residual, r.rest(n-1-i))
	}
}

// gap finds where to cut. It fails when the eigenvalues are not yet known well enough.
func (l *lanczos) gap() bool {
	r, n := &l.ritz, l.o.Count+l.o.Free
	if l.whole && len(r.theta) <= n {
		top := r.value(len(r.theta) - 1)
		l.cut = cut{below: len(r.theta), lo: top, hi: 4*math.Abs(top) + l.shift}
		return true
	}
	best := 0.0
	for j := n; j < len(r.theta) && (j < n+window || best < fairGap); j++ {
		lo, hi := r.value(j-1), r.value(j)
		g := (hi - lo) / (math.Abs(lo) + l.shift)
		if r.residual[j-1] > l.o.tolerance()*r.theta[j-1] || r.residual[j] > 0.1*g*r.theta[j] {
			return false
		}
		if g > best {
			best, l.cut = g, cut{below: j, lo: lo, hi: hi}
		}
		if g >= goodGap {
			return true
		}
	}
	return best >= fairGap
}

// converged reports whether all pairs before a gap are found to the tolerance.
func (l *lanczos) converged() bool {
	l.project()
	r, n := &l.ritz, l.o.Count+l.o.Free
	if len(r.theta) <= n && !l.whole {
		return false
	}
	for i := range min(n, len(r.theta)) {
		if r.residual[i] > l.o.tolerance()*r.theta[i] {
			return false
		}
	}
	return l.gap()
}

// converge takes steps until all is found.
func (l *lanczos) converge() error {
	for {
		// The projected problem is worth solving only when it may be the last time.
		if l.size > 1 && (l.whole || width*(l.size-1) > l.o.Count+l.o.Free) && l.converged() {
			return nil
		}
		if l.whole && l.empty() {
			return fmt.Errorf("eigen: no gap after %d eigenvalues among all %d", l.o.Count, len(l.ritz.theta))
		}
		if l.steps >= mostBlocks {
			return fmt.Errorf("eigen: %d eigenvalues have not converged in %d steps of %d vectors", l.o.Count, l.steps, width)
		}
		if l.size > l.most {
			l.restart(l.keep())
		}
		l.step()
	}
}

// empty reports whether the last block is all zeros.
func (l *lanczos) empty() bool {
	for _, v := range l.octet(l.size - 1) {
		if v != 0 {
			return false
		}
	}
	return true
}

// keep returns how many octets of vectors a restart keeps.
func (l *lanczos) keep() int {
	return min((l.o.Count+l.o.Free+spare+width-1)/width, l.most-2)
}

// restart replaces the basis by its best vectors, some octets of them, and the block that
// comes next.
func (l *lanczos) restart(keep int) {
	l.project()
	r := &l.ritz
	keep = min(keep, len(r.theta)/width)
	next := append([]float64(nil), l.octet(l.size-1)...)
	l.compress(keep)
	copy(l.octet(keep), next)
	for i := range width * keep {
		for a, v := range r.coupled(i) {
			l.set(width*keep+a, i, v)
		}
	}
	l.size, l.from = keep+1, 0
	l.thick++
}

// compress makes the best pairs, some octets of them, the basis, and their thetas the
// projection.
func (l *lanczos) compress(keep int) {
	r := &l.ritz
	best := make([]float64, keep*l.alg.Len())
	for q := range keep {
		l.pairs(best[q*l.alg.Len():][:l.alg.Len()], width*q)
	}
	copy(l.v, best)
	clear(l.t)
	for i := range width * keep {
		l.set(i, i, r.theta[i])
	}
	l.size = keep
}

// pairs sets the octet w to the vectors of the eight pairs from first on; zeros where
// there are none.
func (l *lanczos) pairs(w []float64, first int) {
	r := &l.ritz
	h := make([]float64, width*r.rows)
	for k := range r.rows {
		for i := first; i < min(first+width, len(r.theta)); i++ {
			h[width*k+i-first] = r.entry(k, i)
		}
	}
	l.alg.Combine(w, l.octets(0, r.rows/width), h)
}
