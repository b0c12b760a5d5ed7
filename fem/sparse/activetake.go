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
	if k >= panelRows*c.kept {
		c.keepMore(k/panelRows + 1)
	}
	j := len(b.at)
	var row [batchColumns]float64
	x := row[:j+1]
	c.rowOf(k, x[:j])
	d := c.s[triOff(k/panelRows)+panelRows*k+k%panelRows]
	for _, v := range x[:j] {
		d -= v * v
	}
	if !(d > leastPart*c.own[k]) {
		return fmt.Errorf("row %d adds no compliance (pivot %.3g of %.3g mm/N)", r, d, c.own[k])
	}
	x[j] = math.Sqrt(d)
	b.setRow(j, x)
	b.at = append(b.at, int32(k))
	for _, p := range b.pan {
		if int(p) >= c.front {
			break
		}
		if c.left[p] > 0 {
			c.column(b, int(p), j, x)
		}
	}
	for _, s := range c.sides {
		s.Y = append(s.Y, s.next(k, x))
	}
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

// rowOf sets x to the row of place k in the present batch.
func (c *ActiveCholesky) rowOf(k int, x []float64) {
	b := c.now
	if k < panelRows*c.front {
		wk := b.w[k/panelRows*panelRows*batchColumns+k%panelRows:]
		for i := range x {
			x[i] = wk[panelRows*i]
		}
		return
	}
	for i := range x {
		at := int(b.at[i])
		v := c.s[triOff(max(at, k)/panelRows)+panelRows*min(at, k)+max(at, k)%panelRows]
		own := b.tri[i/panelRows*panelRows*batchColumns+i%panelRows:]
		for m, y := range x[:i] {
			v -= y * own[panelRows*m]
		}
		x[i] = v * b.inv[i]
	}
}

// column sets column j of a batch in panel p; x is the row of the batch's own triangle
// that ends with its diagonal.
func (c *ActiveCholesky) column(b *columnBatch, p, j int, x []float64) {
	pan := b.w[panelRows*batchColumns*p:]
	dst := (*[panelRows]float64)(pan[panelRows*j:])
	c.lift(dst, p, int(b.at[j]))
	c.kern.Gemv(dst[:], pan, x[:j])
	inv, taken := b.inv[j], (*[panelRows]bool)(c.taken[panelRows*p:])
	for i, v := range dst {
		dst[i] = v * inv
		if taken[i] {
			dst[i] = 0
		}
	}
}

// lift copies what the rows of panel p have in the column of place k.
func (c *ActiveCholesky) lift(dst *[panelRows]float64, p, k int) {
	pk := k / panelRows
	if p >= pk {
		copy(dst[:], c.s[triOff(p)+panelRows*k:])
		return
	}
	own := c.s[triOff(pk)+panelRows*panelRows*p+k%panelRows:]
	for i := range dst {
		dst[i] = own[panelRows*i]
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
	c.catchUp(b, c.front, c.kept)
	for _, s := range c.sides {
		c.subtract(s.rest, b, s.Y[len(s.Y)-len(b.at):])
	}
	b.run = c.runs()
	c.update(b, 0)
	c.full = append(c.full, b)
	c.now = c.begin()
}

// catchUp sets the columns of a full batch in the panels from..to.
func (c *ActiveCholesky) catchUp(b *columnBatch, from, to int) {
	var tri [blockLen * batchColumns / Block]float64 // diagonal blocks of the batch's own triangle, as solve wants them
	for i := range batchColumns {
		row := tri[blockLen*(i/Block)+Block*(i%Block):]
		for j := range i % Block {
			row[j] = b.tri[i/panelRows*panelRows*batchColumns+i%panelRows+panelRows*(i/Block*Block+j)]
		}
		row[i%Block] = b.inv[i]
	}
	c.share(from, to, func(p int) {
		pan := b.w[panelRows*batchColumns*p:][:panelRows*batchColumns]
		if c.left[p] == 0 {
			clear(pan)
			return
		}
		for j, k := range b.at {
			c.lift((*[panelRows]float64)(pan[panelRows*j:]), p, int(k))
		}
		c.kern.Solve(pan, b.tri, c.off[:batchColumns/2], tri[:])
		for i, taken := range c.taken[panelRows*p:][:panelRows] {
			for j := i; taken && j < len(pan); j += panelRows {
				pan[j] = 0
			}
		}
	})
}

// update takes the columns of a full batch times their rows off the panels from the first on that are kept up
// to date, in the columns of rows that were left then.
func (c *ActiveCholesky) update(b *columnBatch, first int) {
	c.share(first, c.kept, func(p int) {
		if c.left[p] == 0 {
			return
		}
		end := triWidth(p) / Block
		pan, a := c.s[triOff(p):triOff(p+1)], b.w[panelRows*batchColumns*p:][:panelRows*batchColumns]
		for _, r := range b.run {
			if to := min(r[1], end); r[0] < to {
				c.kern.Gemm(pan[tileLen*r[0]:], a, b.w, c.off[3*r[0]:3*to])
			}
		}
	})
}

// keepMore brings panels up to one up to date, rows that were not likely to be taken, and some after it.
func (c *ActiveCholesky) keepMore(to int) {
	first := c.kept
	c.kept = min(to+spareKept, len(c.left))
	c.share(first, c.kept, c.load)
	for q, b := range c.full {
		c.catchUp(b, first, c.kept)
		c.update(b, first)
		for _, s := range c.sides {
			c.subtractIn(s.rest, b, s.Y[batchColumns*q:batchColumns*(q+1)], first, c.kept)
		}
	}
}

// spareKept is how many panels more are brought up to date than one asks for: each time costs a look at all that was taken.
const spareKept = 3

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
	for p := range c.front {
		clear(b.w[panelRows*(batchColumns*p+keep) : panelRows*batchColumns*(p+1)])
	}
	b.at = b.at[:keep]
	for _, s := range c.sides {
		s.Y = s.Y[:rows]
	}
	return true
}
