package sparse

import "math"

// Square is a dense matrix without symmetry, and then its factors M = L U. Pivots are taken as they come, none is
// exchanged: it serves matrices that hold together by themselves, such as the compliance of pads that rub, and says
// where one does not. L, with a unit diagonal, and Uᵀ lie in the panels of a front, so that the inner loops of Cholesky's
// factorisation do each half of the work. Its zero value is a matrix of order 0.
type Square struct {
	n, order int       // as asked for, and as kept: whole nodes, with ones on the diagonal
	low, up  []float64 // L and Uᵀ; at first the lower triangle with the diagonal's blocks, and the upper one turned over
	off      []int32
	factored bool
}

// Reset makes it a matrix of order n without values, in the memory that it has.
func (s *Square) Reset(n int) {
	nodes := (n + Block - 1) / Block
	s.n, s.order, s.factored = n, Block*nodes, false
	s.low, s.up = emptied(s.low, triLen(s.order)), emptied(s.up, triLen(s.order))
	if len(s.off) != 3*nodes {
		s.off = triRows(nodes)
	}
	for i := n; i < s.order; i++ {
		s.low[s.at(i)+panelRows*i] = 1
	}
}

// emptied is a slice of n zeros, in the memory of v if it is long enough.
func emptied(v []float64, n int) []float64 { return append(v[:0], make([]float64, n)...) }

// at is where row i of a triangle begins; its next value lies panelRows on.
func (s *Square) at(i int) int { return triOff(i/panelRows) + i%panelRows }

// SetRow sets row i, all n values of it.
func (s *Square) SetRow(i int, row []float64) {
	last := min(Block*(i/Block+1), s.n) // of the lower triangle
	low := s.low[s.at(i):]
	for j, v := range row[:last] {
		low[panelRows*j] = v
	}
	for j := last; j < s.n; j++ {
		s.up[s.at(j)+panelRows*i] = row[j]
	}
}

// Factorize computes the factors in place of the matrix. It is false if a pivot vanishes beside what it was taken from.
func (s *Square) Factorize() bool {
	nodes := s.order / Block
	triL, triU := make([]float64, blockLen*nodes), make([]float64, blockLen*nodes)
	kern := fastKernels()
	end := panels(s.order)
	for j0 := 0; j0 < nodes; j0 += blockNodes {
		j1 := min(j0+blockNodes, nodes)
		s.update(kern, j0, j1)
		if !s.diagonal(kern, triL, triU, j0, j1) {
			return false
		}
		off := s.off[3*j0 : 3*j1]
		for p := panels(Block * j1); p < end; p++ {
			at := triOff(p) + tileLen*j0
			kern.Solve(s.low[at:], s.up[tileLen*j0:], off, triU[blockLen*j0:])
			kern.Solve(s.up[at:], s.low[tileLen*j0:], off, triL[blockLen*j0:])
		}
	}
	s.factored = true
	return true
}

// update subtracts from the node columns j0..j1 of both triangles the products of those before j0.
func (s *Square) update(kern kernels, j0, j1 int) {
	for l0 := 0; l0 < j0; l0 += chunkNodes {
		l1 := min(l0+chunkNodes, j0)
		for p := Block * j0 / panelRows; p < panels(s.order); p++ {
			at, jn := triOff(p), min(j1, triWidth(p)/Block)
			off := s.off[3*j0 : 3*jn]
			kern.Gemm(s.low[at+tileLen*j0:], s.low[at+tileLen*l0:at+tileLen*l1], s.up[tileLen*l0:], off)
			kern.Gemm(s.up[at+tileLen*j0:], s.up[at+tileLen*l0:at+tileLen*l1], s.low[tileLen*l0:], off)
		}
	}
}

// diagonal factorises the diagonal block of the node columns j0..j1, which has all updates of earlier ones.
func (s *Square) diagonal(kern kernels, triL, triU []float64, j0, j1 int) bool {
	last := panels(Block * j1)
	for j := j0; j < j1; j++ {
		first, off := Block*j/panelRows, s.off[3*j:3*j+3]
		for p := first; p < last; p++ {
			at := triOff(p)
			kern.Gemm(s.low[at+tileLen*j:], s.low[at+tileLen*j0:at+tileLen*j], s.up[tileLen*j0:], off)
			kern.Gemm(s.up[at+tileLen*j:], s.up[at+tileLen*j0:at+tileLen*j], s.low[tileLen*j0:], off)
		}
		l, u := triL[blockLen*j:][:blockLen], triU[blockLen*j:][:blockLen]
		loadBlock(l, s.low[tileLen*j:], off)
		if !split6(l, u) {
			return false
		}
		for p := first; p < last; p++ {
			kern.Trsm(s.low[triOff(p)+tileLen*j:], u)
			kern.Trsm(s.up[triOff(p)+tileLen*j:], l)
		}
		clearAbove(s.low[triOff(first)+tileLen*j:], Block*j%panelRows)
		clearAbove(s.up[triOff(first)+tileLen*j:], Block*j%panelRows)
		storeBlock(s.low[tileLen*j:], l, off)
		storeBlock(s.up[tileLen*j:], u, off)
	}
	return true
}

// split6 replaces a 6 x 6 block by its factor L and sets u to Uᵀ, both row by row with the reciprocal of their diagonal, which
// is 1 in L. It is false if a pivot vanishes.
func split6(l, u []float64) bool {
	for k := range Block {
		most := 0.0
		for j := range Block {
			most = max(most, math.Abs(l[Block*k+j]))
		}
		for j := k; j < Block; j++ { // row k of U
			for m := range k {
				l[Block*k+j] -= l[Block*k+m] * l[Block*m+j]
			}
		}
		pivot := l[Block*k+k]
		if !(math.Abs(pivot) > 1e-12*most) {
			return false
		}
		for i := k + 1; i < Block; i++ { // column k of L
			for m := range k {
				l[Block*i+k] -= l[Block*i+m] * l[Block*m+k]
			}
			l[Block*i+k] /= pivot
		}
	}
	turnOver(l, u)
	return true
}

// turnOver takes U out of both factors in one block, turned over, and leaves L.
func turnOver(l, u []float64) {
	for k := range Block {
		for j := range Block {
			switch {
			case j > k:
				u[Block*j+k], l[Block*k+j] = l[Block*k+j], 0
			case j < k:
				u[Block*j+k] = 0
			default:
				u[Block*k+k], l[Block*k+k] = 1/l[Block*k+k], 1
			}
		}
	}
}

// Solve replaces b by M⁻¹ b. It panics if M is not factorised, or b has another length.
func (s *Square) Solve(b []float64) {
	if !s.factored || len(b) != s.n {
		panic("sparse: Square.Solve wants a factor and a right side of its order")
	}
	kern := fastKernels()
	count := panels(s.order)
	x := make([]float64, panelRows*count)
	copy(x, b)
	for p := range count {
		first := panelRows * p
		y, panel := x[first:first+panelRows], s.low[triOff(p):]
		kern.Gemv(y, panel[:panelRows*first], x[:first])
		for c := range min(panelRows, s.order-first) {
			for r := c + 1; r < panelRows; r++ {
				y[r] -= panel[panelRows*(first+c)+r] * y[c]
			}
		}
	}
	for p := count - 1; p >= 0; p-- {
		first := panelRows * p
		y, panel := x[first:first+panelRows], s.up[triOff(p):]
		for c := min(panelRows, s.order-first) - 1; c >= 0; c-- {
			for r := c + 1; r < panelRows; r++ { // of Uᵀ: a later unknown
				y[c] -= panel[panelRows*(first+c)+r] * y[r]
			}
			y[c] /= panel[panelRows*(first+c)+c]
		}
		kern.GemvT(x[:first], panel[:panelRows*first], y)
	}
	copy(b, x)
}
