//go:build amd64 && !purego

package panel

// The AVX2 kernels compute what their portable namesakes do, in another order of
// summation. They read len(a) and len(off) (gemm, gemm0), len(off) (solve), len(c)
// and len(a) (gemmt), len(x) (gemv, gemvt), len(dst) (addPairs) len(src)
// (addPanel) or len(a) (prefetch) and check nothing.

// gemmAVX2 wants an even number of columns in a.
//
//go:noescape
func gemmAVX2(c, a, b []float64, off []int32)

// gemm0AVX2 likewise.
//
//go:noescape
func gemm0AVX2(c, a, b []float64, off []int32)

//go:noescape
func solveAVX2(a, b []float64, off []int32, tri []float64)

//go:noescape
func trsmAVX2(c, tri []float64)

//go:noescape
func trsmtAVX2(c, tri []float64)

//go:noescape
func gemmtAVX2(c, a, s []float64, stride int)

//go:noescape
func gemvAVX2(y, a, x []float64)

//go:noescape
func gemvtAVX2(x, a, y []float64)

//go:noescape
func addPairsAVX2(dst, src []float64)

//go:noescape
func addPanelAVX2(d0, d1, d2, d3 *float64, src []float64)

//go:noescape
func prefetchAVX2(a []float64)
