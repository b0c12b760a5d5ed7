package sparse

import (
	"fmt"
	"math"
	"slices"
)

// chosenBatch is how many columns of the factor are gathered before the rest of
// the matrix is brought up to date: a multiple of two, for the kernels.
const chosenBatch = 48

// leastPart is the smallest part of its own diagonal that a row must add.
const leastPart = 1e-14

// Chosen is the Cholesky factor of some rows of a dense symmetric matrix, taken
// one after the other in any order that the caller chooses as it goes. What is left
// of the other rows stays at hand: their Schur complement, brought up to date a
// batch of columns at a time, as the blocked factor of a front is (J. J. Dongarra
// et al., the right-looking Cholesky factorisation of LAPACK; from memory).
//
// Sides are vectors that go along, such as a right-hand side b: of each the factor
// keeps L⁻¹b over the rows taken and b less L L⁻¹b over the others.
type Chosen struct {
	kern    kernels
	workers int
	n       int
	width   int       // columns of a panel of s
	place   []int32   // of each row of the matrix
	row     []int32   // at each place
	s       []float64 // lower triangle in panels of eight rows, up to date but for the present batch
	own     []float64 // diagonal of the matrix, by places
	taken   []bool    // by places
	left    []int     // rows of each panel that are not taken
	full    []*chosenCols
	now     *chosenCols
	off     []int32 // where pairs of rows begin in a batch
	col     []float64
	sides   []*Side
}

// chosenCols are the columns of a batch.
type chosenCols struct {
	w   []float64 // in panels of eight rows; zero in rows taken before
	tri []float64 // rows taken in this batch, up to their diagonal, in panels of eight
	inv []float64 // of the diagonal, 1/value
	at  []int32   // places of the rows taken
	pan []int32   // panels that had rows left when it began
}

// NewChosen takes the n×n row-major matrix a with no row taken yet. order lists
// all rows, those that will be taken first in front: a good guess saves work. The
// factor does not depend on the number of workers.
func NewChosen(a []float64, order []int32, workers int) *Chosen {
	n := len(order)
	np := panels(n)
	c := &Chosen{kern: fastKernels(), workers: max(1, workers), n: n, width: panelRows*np + Block, row: order,
		place: make([]int32, n), own: make([]float64, n), taken: make([]bool, panelRows*np), left: make([]int, np), col: make([]float64, panelRows*np)}
	c.s = make([]float64, panelRows*np*c.width)
	for i, r := range order {
		c.place[r], c.own[i] = int32(i), a[int(r)*n+int(r)]
		c.left[i/panelRows]++
	}
	for i := n; i < len(c.taken); i++ {
		c.taken[i] = true // beyond the last row
	}
	for i := 0; i < panelRows*np+2*panelRows; i += 2 {
		c.off = append(c.off, int32(i/panelRows*panelRows*chosenBatch+i%panelRows))
	}
	c.share(np, func(p int) { c.load(a, p) })
	c.now = c.begin()
	return c
}

// load copies a panel of the matrix up to the end of its diagonal block.
func (c *Chosen) load(a []float64, p int) {
	pan := c.s[panelRows*c.width*p:]
	rows := c.row[panelRows*p : min(panelRows*(p+1), c.n)]
	cols := c.row[:min(panelRows*(p+1), c.n)]
	for j0 := 0; j0 < len(cols); j0 += loadCols {
		some := cols[j0:min(j0+loadCols, len(cols))]
		for i, r := range rows {
			src, dst := a[int(r)*c.n:int(r+1)*c.n], pan[panelRows*j0+i:]
			for j, q := range some {
				dst[panelRows*j] = src[q]
			}
		}
	}
}

// loadCols is how many columns of a panel are copied at a time, which the first
// cache holds.
const loadCols = 96

// share calls do for each of n panels, the dear last ones first.
func (c *Chosen) share(n int, do func(p int)) {
	t := newTeam(c.workers)
	t.each(n, func(i int) { do(n - 1 - i) })
}

// Workers is the number of workers that the factor was made by.
func (f *Factor) Workers() int { return f.workers }

func (c *Chosen) begin() *chosenCols {
	b := &chosenCols{w: make([]float64, panelRows*chosenBatch*(len(c.left)+1)), tri: make([]float64, chosenBatch*chosenBatch), inv: make([]float64, chosenBatch)}
	for p, n := range c.left {
		if n > 0 {
			b.pan = append(b.pan, int32(p))
		}
	}
	return b
}

// Len is the number of rows taken.
func (c *Chosen) Len() int { return len(c.full)*chosenBatch + len(c.now.at) }

// InBatch says whether Cut can give back the row that was taken at this place in
// the order.
func (c *Chosen) InBatch(at int) bool { return at >= len(c.full)*chosenBatch }

// Room is the number of rows that can still be taken before the batch ends.
func (c *Chosen) Room() int { return chosenBatch - len(c.now.at) }

// Taken says whether a row is taken.
func (c *Chosen) Taken(row int32) bool { return c.taken[c.place[row]] }

// Place is where a row stands in vectors by places.
func (c *Chosen) Place(row int32) int { return int(c.place[row]) }

// Places is the length of vectors by places.
func (c *Chosen) Places() int { return len(c.taken) }

// Take takes a row. It fails if the rows taken and this one are not positive
// definite.
func (c *Chosen) Take(r int32) error {
	c.Ready()
	k, b := int(c.place[r]), c.now
	j := len(b.at)
	var row [chosenBatch]float64
	x := row[:j+1]
	wk := b.w[k/panelRows*panelRows*chosenBatch+k%panelRows:]
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
		dst := (*[panelRows]float64)(b.w[at*chosenBatch+panelRows*j:])
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
func (b *chosenCols) setRow(j int, x []float64) {
	pan := b.tri[j/panelRows*panelRows*chosenBatch+j%panelRows:]
	for i, v := range x {
		pan[panelRows*i] = v
	}
	b.inv[j] = 1 / x[j]
}

// column sets col to what is left of column k, x being its row of the present
// batch.
func (c *Chosen) column(k int, x []float64) {
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
		c.kern.gemv(dst, c.now.w[at*chosenBatch:], x)
	}
}

// Ready ends the present batch if it is full.
func (c *Chosen) Ready() {
	if c.Room() == 0 {
		c.flush()
	}
}

// flush ends the batch.
func (c *Chosen) flush() {
	b := c.now
	y := make([]float64, 0, chosenBatch)
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
		pan, a := c.s[panelRows*c.width*p:][:panelRows*c.width], b.w[panelRows*chosenBatch*p:][:panelRows*chosenBatch]
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
func (c *Chosen) runs() (out [][2]int) {
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
func (c *Chosen) Cut(rows int) bool {
	b := c.now
	keep := rows - len(c.full)*chosenBatch
	if keep < 0 {
		return false
	}
	for _, k := range b.at[keep:] {
		c.taken[k] = false
		c.left[k/panelRows]++
	}
	for _, p := range b.pan {
		clear(b.w[panelRows*(chosenBatch*int(p)+keep) : panelRows*chosenBatch*int(p+1)])
	}
	b.at = b.at[:keep]
	for _, s := range c.sides {
		s.Y = s.Y[:rows]
	}
	return true
}

// Back solves Lᵀx = t, t in the order in which rows were taken, for several t at
// once; each may stop short of the last rows taken. x is by places, zero in rows
// not taken. The t are used up.
func (c *Chosen) Back(xs, ts [][]float64) {
	for _, x := range xs {
		clear(x)
	}
	groups := min(c.workers, len(xs))
	newTeam(groups).each(groups, func(g int) {
		for q := len(c.full); q >= 0; q-- {
			b := c.now
			if q < len(c.full) {
				b = c.full[q]
			}
			for i := g; i < len(xs); i += groups {
				t := ts[i]
				t = t[min(q*chosenBatch, len(t)):min(q*chosenBatch+len(b.at), len(t))]
				c.back(b, xs[i], t)
			}
		}
	})
}

// back does one batch of Back: what the rows taken later carry, then the rows of
// the batch, eight at a time.
func (c *Chosen) back(b *chosenCols, x, t []float64) {
	if len(t) == 0 {
		return
	}
	for _, p := range b.pan {
		if c.left[p] == panelRows {
			continue
		}
		at := panelRows * int(p)
		if y := (*[panelRows]float64)(x[at:]); y[0] != 0 || y[1] != 0 || y[2] != 0 || y[3] != 0 || y[4] != 0 || y[5] != 0 || y[6] != 0 || y[7] != 0 {
			c.kern.gemvt(t, b.w[at*chosenBatch:], y[:])
		}
	}
	var own [panelRows]float64
	for p := panels(len(t)) - 1; p >= 0; p-- {
		pan, at := b.tri[panelRows*chosenBatch*p:], panelRows*p
		rows := min(panelRows, len(t)-at)
		own = [panelRows]float64{}
		for j := rows - 1; j >= 0; j-- {
			col := (*[panelRows]float64)(pan[panelRows*(at+j):])
			v := t[at+j]
			for i := j + 1; i < rows; i++ {
				v -= col[i] * own[i]
			}
			own[j] = v * b.inv[at+j]
			x[b.at[at+j]] = own[j]
		}
		c.kern.gemvt(t[:at], pan, own[:])
	}
}
