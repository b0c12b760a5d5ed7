//go:build amd64 && !purego

package element

// The AVX2 kernels compute what their portable namesakes do, to the same bits: products are rounded
// before they are summed.

//go:noescape
func forcesAVX2(t, rows *[numRows][18]float64, c *laws)

//go:noescape
func productAVX2(k *[324]float64, rows, t *[numRows][18]float64)
