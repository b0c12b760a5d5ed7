package panel

import "archload/fem/avx"

// Kernels are the inner loops of the solver: assembly where the processor has
// AVX2 and FMA, else portable Go.
type Kernels struct {
	AVX2 bool // false: portable
}

// Fast returns the best kernels for this processor.
func Fast() Kernels { return Kernels{AVX2: avx.Has()} }

// Gemm subtracts from consecutive tiles of c the product of the panel a (8 rows, len(a)/8 columns, an even number) and the
// transposed rows of b, of which off has where each pair begins, three pairs for each tile.
func (kn Kernels) Gemm(c, a, b []float64, off []int32) {
	if !kn.AVX2 {
		gemmGo(c, a, b, off)
		return
	}
	if len(off) == 0 || len(a) == 0 {
		return
	}
	_ = c[TileLen*(len(off)/3)-1]
	_ = b[int(off[len(off)-1])+len(a)-Rows+1]
	gemmAVX2(c, a, b, off)
}

// Gemm0 is Gemm with zeros for what stood in c.
func (kn Kernels) Gemm0(c, a, b []float64, off []int32) {
	if !kn.AVX2 {
		clear(c[:TileLen*(len(off)/3)])
		gemmGo(c, a, b, off)
		return
	}
	if len(off) == 0 || len(a) == 0 {
		clear(c[:TileLen*(len(off)/3)])
		return
	}
	_ = c[TileLen*(len(off)/3)-1]
	_ = b[int(off[len(off)-1])+len(a)-Rows+1]
	gemm0AVX2(c, a, b, off)
}

// Solve solves a panel against a lower triangle, node by node from the left: b are its rows, pair by pair at off, and tri
// the diagonal blocks with the reciprocal of their diagonals.
func (kn Kernels) Solve(a, b []float64, off []int32, tri []float64) {
	if !kn.AVX2 {
		solveGo(a, b, off, tri)
		return
	}
	if len(off) == 0 {
		return
	}
	nodes := len(off) / 3
	_, _ = a[TileLen*nodes-1], tri[BlockLen*nodes-1]
	if nodes > 1 {
		_ = b[int(off[len(off)-1])+TileLen*(nodes-1)-Rows+1]
	}
	solveAVX2(a, b, off, tri)
}

// Trsm solves one tile against the lower triangle of one diagonal block.
func (kn Kernels) Trsm(c, tri []float64) {
	if !kn.AVX2 {
		trsmGo(c, tri)
		return
	}
	_, _ = c[TileLen-1], tri[BlockLen-1]
	trsmAVX2(c, tri)
}

// TrsmT does so against its transpose.
func (kn Kernels) TrsmT(c, tri []float64) {
	if !kn.AVX2 {
		trsmtGo(c, tri)
		return
	}
	_, _ = c[TileLen-1], tri[BlockLen-1]
	trsmtAVX2(c, tri)
}

// GemmT subtracts from the tiles of c (eight right-hand sides in a row) the product of transposed panels, which begin every
// stride values of s, and the rows of a, eight for each panel.
func (kn Kernels) GemmT(c, a, s []float64, stride int) {
	if !kn.AVX2 {
		gemmtGo(c, a, s, stride)
		return
	}
	if len(c) == 0 || len(a) == 0 {
		return
	}
	_ = s[(len(a)/(Rows*Rows)-1)*stride+len(c)-1]
	gemmtAVX2(c, a, s, stride)
}

// Gemv subtracts from the eight values of y the panel a (len(x) columns) times x.
func (kn Kernels) Gemv(y, a, x []float64) {
	if !kn.AVX2 {
		gemvGo(y, a, x)
		return
	}
	if len(x) == 0 {
		return
	}
	_, _ = y[Rows-1], a[Rows*len(x)-1]
	gemvAVX2(y, a, x)
}

// GemvT subtracts from x the transposed panel a (len(x) columns) times the eight values of y.
func (kn Kernels) GemvT(x, a, y []float64) {
	if !kn.AVX2 {
		gemvtGo(x, a, y)
		return
	}
	if len(x) == 0 {
		return
	}
	_, _ = y[Rows-1], a[Rows*len(x)-1]
	gemvtAVX2(x, a, y)
}

// AddPairs adds pairs of rows: dst[8c], dst[8c+1] += src[8c], src[8c+1] for cols columns.
func (kn Kernels) AddPairs(dst, src []float64, cols int) {
	if !kn.AVX2 {
		addPairsGo(dst, src, cols)
		return
	}
	n := Rows*(cols-1) + 2
	addPairsAVX2(dst[:n], src[:n])
}

// AddPanel adds the four pairs of rows of the panel src to rows from dst[0][at], dst[1][at], dst[2][at] and dst[3][at] on.
// It wants whole columns in src and rows of dst that do not overlap.
func (kn Kernels) AddPanel(dst *[Rows / 2][]float64, at int, src []float64) {
	if !kn.AVX2 {
		addPanelGo(dst, at, src)
		return
	}
	n := at + len(src) - Rows + 2
	addPanelAVX2(&dst[0][:n][at], &dst[1][:n][at], &dst[2][:n][at], &dst[3][:n][at], src)
}

// Prefetch asks for memory that is read soon; it changes nothing.
func (kn Kernels) Prefetch(a []float64) {
	if kn.AVX2 {
		prefetchAVX2(a)
	}
}
