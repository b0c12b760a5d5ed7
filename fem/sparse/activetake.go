package sparse

import (
	"fmt"
	"math"
	"slices"
)

// Take takes a row. It fails if the rows taken and this one are not positive
// definite.
func (c *ActiveCholesky) Take(r int32) error {
	c.Ready()
	k, b := int(c.place[r]), c.now
	j := len(b.at)
	var row [batchColumns]float64
	x := row[:j+1]
	wk := b.w[k/panelRows*panelRows*batchColumns+k%panelRows:]
	for i := range j {
		x[i] = wk[panelRows*i]
	}
	c.column(k, x[:j])
	d := c.col[k]
	if !(d > leastPart*c.own[k]) {
		return fmt.Errorf("row %d adds no compliance (pivot %.3g of %.3g mm/N)", r, d, c.own[k])
	}
	x[j] = math.Sqrt(d)
	inv := 1 / x[j]
	b.setRow(j, x)
	for _, p := range b.pan {
		if c.left[p] == 0 {
			continue
		}
		at := panelRows * int(p)
		dst := (*[panelRows]float64)(b.w[at*batchColumns+panelRows*j:])
		src, taken := (*[panelRows]float64)(c.col[at:]), (*[panelRows]bool)(c.taken[at:])
		for i, v := range src {
			dst[i] = v * inv
			if taken[i] {
				dst[i] = 0
			}
		}
	}
	for _, s := range c.sides {
		s.Y = append(s.Y, s.next(k, x))
	}
	b.at = append(b.at, int32(k))
	c.taken[k] = true
	c.left[k/panelRows]--
	return nil
}

// setRow notes the row of the batch's own triangle.
func (b *columnBatch) setRow(j int, x []float64) {
	pan := b.tri[j/panelRows*panelRows*batchColumns+j%panelRows:]
	for i, v := range x {
		pan[panelRows*i] = v
	}
	b.inv[j] = 1 / x[j]
}

// column sets col to what is left of column k, x being its row of the present
// batch.
func (c *ActiveCholesky) column(k int, x []float64) {
	pk := k / panelRows
	own := c.s[panelRows*c.width*pk+k%panelRows:]
	for _, p := range c.now.pan {
		if c.left[p] == 0 {
			continue
		}
		at := panelRows * int(p)
		dst := c.col[at : at+panelRows]
		if int(p) >= pk {
			copy(dst, c.s[c.width*at+panelRows*k:])
		} else {
			for i := range dst {
				dst[i] = own[panelRows*(at+i)]
			}
		}
		c.kern.gemv(dst, c.now.w[at*batchColumns:], x)
	}
}

// Ready ends the present batch if it is full.
func (c *ActiveCholesky) Ready() {
	if c.Room() == 0 {
		c.flush()
	}
}

// flush ends the batch.
func (c *ActiveCholesky) flush() {
	b := c.now
	y := make([]float64, 0, batchColumns)
	for _, s := range c.sides {
		y = append(y[:0], s.Y[len(s.Y)-len(b.at):]...)
		c.subtract(s.rest, b, y)
	}
	runs := c.runs()
	c.share(len(c.left), func(p int) {
		if c.left[p] == 0 {
			return
		}
		end := (panelRows*(p+1) + Block - 1) / Block
		pan, a := c.s[panelRows*c.width*p:][:panelRows*c.width], b.w[panelRows*batchColumns*p:][:panelRows*batchColumns]
		for _, r := range runs {
			if to := min(r[1], end); r[0] < to {
				c.kern.gemm(pan[tileLen*r[0]:], a, b.w, c.off[3*r[0]:3*to])
			}
		}
	})
	c.full = append(c.full, b)
	c.now = c.begin()
}

// runs are the stretches of tiles, six columns each, in which rows are left.
func (c *ActiveCholesky) runs() (out [][2]int) {
	for t := 0; Block*t < c.n; t++ {
		if !slices.Contains(c.taken[Block*t:min(Block*(t+1), c.n)], false) {
			continue
		}
		if n := len(out); n > 0 && out[n-1][1] == t {
			out[n-1][1]++
		} else {
			out = append(out, [2]int{t, t + 1})
		}
	}
	return out
}

// Cut gives the last rows back, until so many are left of those taken; it can give
// back no more than those of the present batch and says whether it could.
func (c *ActiveCholesky) Cut(rows int) bool {
	b := c.now
	keep := rows - len(c.full)*batchColumns
	if keep < 0 {
		return false
	}
	for _, k := range b.at[keep:] {
		c.taken[k] = false
		c.left[k/panelRows]++
	}
	for _, p := range b.pan {
		clear(b.w[panelRows*(batchColumns*int(p)+keep) : panelRows*batchColumns*int(p+1)])
	}
	b.at = b.at[:keep]
	for _, s := range c.sides {
		s.Y = s.Y[:rows]
	}
	return true
}
