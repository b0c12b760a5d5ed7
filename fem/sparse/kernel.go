package sparse

import "archload/fem/avx"

// kernels are the inner loops of the solver: assembly where the processor has
// AVX2 and FMA, else portable Go. See kernel_go.go for what each computes.
type kernels struct{ avx2 bool }

// fastKernels returns the best kernels for this processor.
func fastKernels() kernels { return kernels{avx2: avx.Has()} }

func (kn kernels) gemm(c, a, b []float64, off []int32) {
	if !kn.avx2 {
		gemmGo(c, a, b, off)
		return
	}
	if len(off) == 0 || len(a) == 0 {
		return
	}
	_ = c[tileLen*(len(off)/3)-1]
	_ = b[int(off[len(off)-1])+len(a)-panelRows+1]
	gemmAVX2(c, a, b, off)
}

// gemm0 is gemm with zeros for what stood in c.
func (kn kernels) gemm0(c, a, b []float64, off []int32) {
	if !kn.avx2 {
		clear(c[:tileLen*(len(off)/3)])
		gemmGo(c, a, b, off)
		return
	}
	if len(off) == 0 || len(a) == 0 {
		clear(c[:tileLen*(len(off)/3)])
		return
	}
	_ = c[tileLen*(len(off)/3)-1]
	_ = b[int(off[len(off)-1])+len(a)-panelRows+1]
	gemm0AVX2(c, a, b, off)
}

func (kn kernels) solve(a, b []float64, off []int32, tri []float64) {
	if !kn.avx2 {
		solveGo(a, b, off, tri)
		return
	}
	if len(off) == 0 {
		return
	}
	nodes := len(off) / 3
	_, _ = a[tileLen*nodes-1], tri[blockLen*nodes-1]
	if nodes > 1 {
		_ = b[int(off[len(off)-1])+tileLen*(nodes-1)-panelRows+1]
	}
	solveAVX2(a, b, off, tri)
}

func (kn kernels) trsm(c, tri []float64) {
	if !kn.avx2 {
		trsmGo(c, tri)
		return
	}
	_, _ = c[tileLen-1], tri[blockLen-1]
	trsmAVX2(c, tri)
}

func (kn kernels) trsmt(c, tri []float64) {
	if !kn.avx2 {
		trsmtGo(c, tri)
		return
	}
	_, _ = c[tileLen-1], tri[blockLen-1]
	trsmtAVX2(c, tri)
}

func (kn kernels) gemmt(c, a, s []float64, stride int) {
	if !kn.avx2 {
		gemmtGo(c, a, s, stride)
		return
	}
	if len(c) == 0 || len(a) == 0 {
		return
	}
	_ = s[(len(a)/(panelRows*panelRows)-1)*stride+len(c)-1]
	gemmtAVX2(c, a, s, stride)
}

func (kn kernels) gemv(y, a, x []float64) {
	if !kn.avx2 {
		gemvGo(y, a, x)
		return
	}
	if len(x) == 0 {
		return
	}
	_, _ = y[panelRows-1], a[panelRows*len(x)-1]
	gemvAVX2(y, a, x)
}

func (kn kernels) gemvt(x, a, y []float64) {
	if !kn.avx2 {
		gemvtGo(x, a, y)
		return
	}
	if len(x) == 0 {
		return
	}
	_, _ = y[panelRows-1], a[panelRows*len(x)-1]
	gemvtAVX2(x, a, y)
}

func (kn kernels) addPairs(dst, src []float64, cols int) {
	if !kn.avx2 {
		addPairsGo(dst, src, cols)
		return
	}
	n := panelRows*(cols-1) + 2
	addPairsAVX2(dst[:n], src[:n])
}

// addPanel wants whole columns in src and rows of dst that do not overlap.
func (kn kernels) addPanel(dst *[panelRows / 2][]float64, at int, src []float64) {
	if !kn.avx2 {
		addPanelGo(dst, at, src)
		return
	}
	n := at + len(src) - panelRows + 2
	addPanelAVX2(&dst[0][:n][at], &dst[1][:n][at], &dst[2][:n][at], &dst[3][:n][at], src)
}

// prefetch asks for memory that is read soon; it changes nothing.
func (kn kernels) prefetch(a []float64) {
	if kn.avx2 {
		prefetchAVX2(a)
	}
}
