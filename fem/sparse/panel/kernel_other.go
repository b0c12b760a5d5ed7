//go:build !amd64 || purego

package panel

// Without assembly the portable kernels stand in; they are never reached.

func gemmAVX2(c, a, b []float64, off []int32)              { gemmGo(c, a, b, off) }
func gemm0AVX2(c, a, b []float64, off []int32)             { gemmGo(c, a, b, off) }
func solveAVX2(a, b []float64, off []int32, tri []float64) { solveGo(a, b, off, tri) }
func trsmAVX2(c, tri []float64)                            { trsmGo(c, tri) }
func trsmtAVX2(c, tri []float64)                           { trsmtGo(c, tri) }
func gemmtAVX2(c, a, s []float64, stride int)              { gemmtGo(c, a, s, stride) }
func gemvAVX2(y, a, x []float64)                           { gemvGo(y, a, x) }
func gemvtAVX2(x, a, y []float64)                          { gemvtGo(x, a, y) }
func addPairsAVX2(dst, src []float64)                      { addPairsGo(dst, src, len(dst)/Rows+1) }

func addPanelAVX2(_, _, _, _ *float64, _ []float64) { panic("sparse: no AVX2") }

func prefetchAVX2(_ []float64) {}
