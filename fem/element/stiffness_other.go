//go:build !amd64 || purego

package element

// Without assembly the portable kernels stand in; they are never reached.

func forcesAVX2(t, rows *[numRows][18]float64, c *laws)          { forcesGo(t, rows, c) }
func productAVX2(k *[324]float64, rows, t *[numRows][18]float64) { productGo(k, rows, t) }
