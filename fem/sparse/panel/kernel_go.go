package panel

// The portable kernels. They are also the oracle of the assembly ones.

// gemmGo subtracts from consecutive tiles of c the product of the panel a (8
// rows, depth len(a)/8) and the transposed rows of b: tile t, element (r, s):
//
//	c[48t+8s+r] -= sum over l of a[8l+r] b[off[3t+s/2]+8l+s%2]
//
// off holds three offsets for each tile, one for each pair of rows.
func gemmGo(c, a, b []float64, off []int32) {
	for t := 0; 3*t < len(off); t++ {
		for q := range 3 {
			bq := b[off[3*t+q]:]
			cq := c[TileLen*t+2*Rows*q:][:2*Rows]
			gemm4x2(cq, a, bq)
			gemm4x2(cq[4:], a[min(4, len(a)):], bq)
		}
	}
}

// gemm4x2 subtracts from the four first rows of two columns of a tile. It takes two
// steps of the depth at once through arrays of known length, so that no index is
// checked.
func gemm4x2(c, a, b []float64) {
	const two = 2 * Rows
	var c00, c10, c20, c30, c01, c11, c21, c31 float64
	for len(a) >= two && len(b) >= two {
		x, y := (*[two]float64)(a), (*[two]float64)(b)
		b0, b1 := y[0], y[1]
		c00 += x[0] * b0
		c01 += x[0] * b1
		c10 += x[1] * b0
		c11 += x[1] * b1
		c20 += x[2] * b0
		c21 += x[2] * b1
		c30 += x[3] * b0
		c31 += x[3] * b1
		b0, b1 = y[8], y[9]
		c00 += x[8] * b0
		c01 += x[8] * b1
		c10 += x[9] * b0
		c11 += x[9] * b1
		c20 += x[10] * b0
		c21 += x[10] * b1
		c30 += x[11] * b0
		c31 += x[11] * b1
		a, b = a[two:], b[two:]
	}
	for len(a) >= 4 && len(b) >= 2 { // the last columns end early
		b0, b1 := b[0], b[1]
		c00 += a[0] * b0
		c01 += a[0] * b1
		c10 += a[1] * b0
		c11 += a[1] * b1
		c20 += a[2] * b0
		c21 += a[2] * b1
		c30 += a[3] * b0
		c31 += a[3] * b1
		a, b = a[min(Rows, len(a)):], b[min(Rows, len(b)):]
	}
	c = c[:12]
	c[0] -= c00
	c[1] -= c10
	c[2] -= c20
	c[3] -= c30
	c[8] -= c01
	c[9] -= c11
	c[10] -= c21
	c[11] -= c31
}

// trsmGo solves X Lᵀ = C for one tile in place. tri holds L row by row, 6 x 6,
// with the reciprocal of its diagonal on the diagonal.
func trsmGo(c, tri []float64) {
	for j := range Block {
		cj := c[Rows*j:][:Rows]
		for l := range j {
			Axpy8(cj, c[Rows*l:], tri[Block*j+l])
		}
		Scale8(cj, tri[Block*j+j])
	}
}

// trsmtGo solves X L = C for one tile in place.
func trsmtGo(c, tri []float64) {
	for j := Block - 1; j >= 0; j-- {
		cj := c[Rows*j:][:Rows]
		for l := j + 1; l < Block; l++ {
			Axpy8(cj, c[Rows*l:], tri[Block*l+j])
		}
		Scale8(cj, tri[Block*j+j])
	}
}

// Axpy8 subtracts v x from the eight values of y.
func Axpy8(y, x []float64, v float64) {
	y, x = y[:Rows], x[:Rows]
	for i := range y {
		y[i] -= x[i] * v
	}
}

// Scale8 multiplies the eight values of y by v.
func Scale8(y []float64, v float64) {
	for i := range y[:Rows] {
		y[i] *= v
	}
}

// solveGo solves a panel against a lower triangle, node by node from the left:
// tile j -= (tiles before j) (rows of node j)ᵀ, then trsm with tri of node j.
func solveGo(a, b []float64, off []int32, tri []float64) {
	for j := 0; 3*j < len(off); j++ {
		tile := a[TileLen*j:][:TileLen]
		if j > 0 {
			gemmGo(tile, a[:TileLen*j], b, off[3*j:3*j+3])
		}
		trsmGo(tile, tri[BlockLen*j:][:BlockLen])
	}
}

// gemmtGo subtracts from the tiles of c (eight right-hand sides in a row) the
// product of transposed panels, which begin every stride values of s, and the rows
// of a, eight for each panel: tile t, element (r, q):
//
//	c[48t+8q+r] -= sum over panels p and i < 8 of a[64p+8i+r] s[stride p+48t+8q+i]
func gemmtGo(c, a, s []float64, stride int) {
	for ; len(a) >= Rows*Rows; a = a[Rows*Rows:] {
		for q := 0; q+Rows <= len(c); q += Rows {
			cq, sq := c[q:][:Rows], s[q:][:Rows]
			for i, v := range sq {
				Axpy8(cq, a[Rows*i:], v)
			}
		}
		s = s[min(stride, len(s)):]
	}
}

// gemvGo subtracts from the eight values of y the panel a (len(x) columns) times x.
func gemvGo(y, a, x []float64) {
	var s0, s1, s2, s3, s4, s5, s6, s7 float64
	for l, v := range x {
		p := a[Rows*l:][:Rows]
		s0 += p[0] * v
		s1 += p[1] * v
		s2 += p[2] * v
		s3 += p[3] * v
		s4 += p[4] * v
		s5 += p[5] * v
		s6 += p[6] * v
		s7 += p[7] * v
	}
	for i, s := range [Rows]float64{s0, s1, s2, s3, s4, s5, s6, s7} {
		y[i] -= s
	}
}

// gemvtGo subtracts from x the transposed panel a (len(x) columns) times the
// eight values of y.
func gemvtGo(x, a, y []float64) {
	y = y[:Rows]
	for l := range x {
		p := a[Rows*l:][:Rows]
		x[l] -= (p[0]*y[0] + p[1]*y[1]) + (p[2]*y[2] + p[3]*y[3]) +
			((p[4]*y[4] + p[5]*y[5]) + (p[6]*y[6] + p[7]*y[7]))
	}
}

// addPairsGo adds pairs of rows: dst[8c], dst[8c+1] += src[8c], src[8c+1] for
// cols columns.
func addPairsGo(dst, src []float64, cols int) {
	n := Rows*(cols-1) + 2
	dst, src = dst[:n], src[:n]
	for c := 0; c+1 < n; c += Rows {
		dst[c] += src[c]
		dst[c+1] += src[c+1]
	}
}

// addPanelGo adds the four pairs of rows of the panel src to rows from dst[0][at],
// dst[1][at], dst[2][at] and dst[3][at] on.
func addPanelGo(dst *[Rows / 2][]float64, at int, src []float64) {
	for q := range dst {
		addPairsGo(dst[q][at:], src[2*q:], len(src)/Rows)
	}
}
