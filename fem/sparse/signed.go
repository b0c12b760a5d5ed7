package sparse

import "math"

// FactorizeSigned computes P A Pᵀ = L S Lᵀ of a symmetric matrix that need not be
// definite; S is diagonal and holds 1 or -1. It takes the pivots in the order of the
// analysis and exchanges none: the structure stays that of Cholesky's factor, but
// nothing bounds the entries of L. Growth measures them afterwards; where it is large
// the factor is of little worth, as it is of none when a pivot vanishes, which is the
// *PivotError returned. By Sylvester's law of inertia Negative is the number of
// negative eigenvalues of A, or of a matrix that differs from A by the rounding that
// Growth bounds. For A = K - sigma M, M not indefinite, that is the number of
// eigenvalues of K x = lambda M x below sigma.
//
// The factor solves like one of Cholesky.
func FactorizeSigned(m *Matrix, a *Analysis, workers int) (*Factor, error) {
	f := newFactor(a, workers, fastKernels())
	f.signs = make(signs, a.n)
	return f.first(m)
}

// RefactorSigned computes the signed factor of other values of the same pattern in the memory
// of f, whichever kind it was, as FactorizeSigned does. After an error f is void.
func (f *Factor) RefactorSigned(m *Matrix) error {
	if f.signs == nil {
		f.signs = make(signs, f.a.n)
	}
	return f.again(m)
}

// signs keeps which columns of L carry a negative pivot: one set of bits for each
// place, a bit for each degree of freedom. Nil stands for none, Cholesky's factor.
type signs []uint8

// from returns the signs of the places from first on.
func (s signs) from(first int32) signs {
	if s == nil {
		return nil
	}
	return s[first:]
}

// any reports whether the nodes lo..hi have a negative column.
func (s signs) any(lo, hi int) bool {
	if s == nil {
		return false
	}
	var set uint8
	for _, b := range s[lo:hi] {
		set |= b
	}
	return set != 0
}

// flip changes the sign of the negative columns of consecutive tiles, which belong to
// the nodes from lo on.
func (s signs) flip(tiles []float64, lo int) {
	if s == nil {
		return
	}
	for j := 0; tileLen*j < len(tiles); j++ {
		set := s[lo+j]
		for c := 0; set != 0; c, set = c+1, set>>1 {
			if set&1 == 0 {
				continue
			}
			col := tiles[tileLen*j+panelRows*c:][:panelRows]
			for r, v := range col {
				col[r] = -v
			}
		}
	}
}

// subtract is gemm with the panel a of columns of L, from node lo on, times S.
func (w *dense) subtract(c, a, b []float64, off []int32, lo int) {
	if nodes := len(a) / tileLen; w.signs.any(lo, lo+nodes) {
		var turned [tileLen * chunkNodes]float64
		a = turned[:copy(turned[:], a)]
		w.signs.flip(a, lo)
	}
	w.Gemm(c, a, b, off)
}

// subtract0 is subtract with zeros for what stood in c.
func (w *dense) subtract0(c, a, b []float64, off []int32, lo int) {
	if nodes := len(a) / tileLen; w.signs.any(lo, lo+nodes) {
		var turned [tileLen * chunkNodes]float64
		a = turned[:copy(turned[:], a)]
		w.signs.flip(a, lo)
	}
	w.Gemm0(c, a, b, off)
}

// signed6 replaces the 6 x 6 block of the node at a place by its factor L with the
// reciprocal diagonal, L S Lᵀ, and notes the signs. A vanishing pivot is noted and
// its column set to zero.
func (c *computation) signed6(place int32, blk []float64) {
	set := &c.f.signs[place]
	*set = 0
	for j := range Block {
		row := blk[Block*j:][:Block]
		sign, pivot := 1.0, row[j]
		if pivot < 0 {
			sign, pivot = -1, -pivot
		}
		inv := c.pivotRoot(place, j, pivot)
		if sign < 0 && inv != 0 {
			*set |= 1 << j
		}
		row[j] = inv
		for i := j + 1; i < Block; i++ {
			ri := blk[Block*i:][:Block]
			ri[j] *= inv * sign
			if inv == 0 {
				ri[j] = 0
			}
		}
		for i := j + 1; i < Block; i++ {
			ri := blk[Block*i:][:Block]
			for l := j + 1; l <= i; l++ {
				ri[l] -= sign * ri[j] * blk[Block*l+j]
			}
		}
	}
}

// pivotRoot returns 1/sqrt(pivot), or 0 for a pivot that vanishes, which it notes.
func (c *computation) pivotRoot(place int32, dof int, pivot float64) float64 {
	node := int(c.f.a.order[place])
	diagonal := c.m.Diagonal(Block*node + dof)
	if pivot > 0 && pivot > pivotTolerance*math.Abs(diagonal) && !math.IsInf(pivot, 1) {
		return 1 / math.Sqrt(pivot)
	}
	return c.note(&PivotError{Node: node, Dof: dof, Pivot: pivot, Diagonal: diagonal})
}

// turn applies S to a vector in the order of elimination in which every degree of
// freedom has width values.
func (f *Factor) turn(y []float64, width int) {
	for p, set := range f.signs {
		for c := 0; set != 0; c, set = c+1, set>>1 {
			if set&1 == 0 {
				continue
			}
			at := y[width*(Block*p+c):][:width]
			for r, v := range at {
				at[r] = -v
			}
		}
	}
}

// Negative returns the number of negative pivots; 0 for a factor of Cholesky.
func (f *Factor) Negative() int {
	n := 0
	for _, set := range f.signs {
		for ; set != 0; set &= set - 1 {
			n++
		}
	}
	return n
}

// Growth returns the largest of sum over j of L_ij², by row i, over the diagonal
// |a_ii| of the matrix m that was factorised. It is 1 for a definite matrix. Rounding
// makes L S Lᵀ the exact factor of a matrix whose entry (i, j) differs from that of m
// by no more than a few times the machine's precision, times the operations on the
// longest row, times Growth, times the root of |a_ii a_jj| (N. J. Higham, Accuracy and
// Stability of Numerical Algorithms, 2nd ed. 2002, theorem 9.3; from memory).
func (f *Factor) Growth(m *Matrix) float64 {
	sum := make([]float64, Block*f.a.n) // by place
	for k := range f.a.fronts {
		f.addSquares(sum, int32(k))
	}
	most := 0.0
	for p, v := range f.a.order {
		for d := range Block {
			if s := sum[Block*p+d]; s > 0 {
				most = max(most, s/math.Abs(m.Diagonal(Block*int(v)+d)))
			}
		}
	}
	return most
}

// addSquares adds the squares of a front's columns of L to the sums of their rows,
// by place.
func (f *Factor) addSquares(sum []float64, k int32) {
	fd := f.data(k)
	own := sum[Block*int(fd.first):]
	for i := range fd.k() {
		row := fd.d[triOff(i/panelRows)+i%panelRows:]
		for c := range i + 1 {
			own[i] += row[panelRows*c] * row[panelRows*c]
		}
	}
	for p := range panels(fd.r()) {
		var add [panelRows]float64
		for panel := fd.s[panelRows*fd.k()*p:][:panelRows*fd.k()]; len(panel) > 0; panel = panel[panelRows:] {
			for r, v := range panel[:panelRows] {
				add[r] += v * v
			}
		}
		for r := range min(panelRows, fd.r()-panelRows*p) {
			i := panelRows*p + r
			sum[Block*int(fd.rows[i/Block])+i%Block] += add[r]
		}
	}
}
