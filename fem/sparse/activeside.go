package sparse

import (
	"slices"

	"archload/fem/sparse/panel"
	"archload/fem/sparse/team"
)

// next is the side's value for the row at place k, whose factor row in the present
// batch is x.
func (s *Side) next(k int, x []float64) float64 {
	j := len(x) - 1
	v := s.rest[k]
	for i, y := range s.Y[len(s.Y)-j:] {
		v -= x[i] * y
	}
	return v / x[j]
}

// subtract takes the columns of a batch times y off a vector by places, where it is kept up to date.
func (c *ActiveCholesky) subtract(v []float64, b *columnBatch, y []float64) {
	c.subtractIn(v, b, y, 0, c.kept)
}

// subtractIn is subtract in the panels from..to alone.
func (c *ActiveCholesky) subtractIn(v []float64, b *columnBatch, y []float64, from, to int) {
	for _, p := range b.pan {
		if at := panelRows * int(p); from <= int(p) && int(p) < to {
			c.kern.Gemv(v[at:at+panelRows], b.w[at*batchColumns:], y)
		}
	}
}

// AddSide adds a vector, given by the rows of the matrix.
func (c *ActiveCholesky) AddSide(v []float64) *Side {
	s := c.Forward(v)
	c.sides = append(c.sides, s)
	return s
}

// Forward is what AddSide adds, without adding it.
func (c *ActiveCholesky) Forward(v []float64) *Side {
	s := &Side{Y: make([]float64, 0, c.n), rest: make([]float64, c.Places())}
	for i, r := range c.row {
		s.rest[i] = v[r]
	}
	for _, b := range c.full {
		if y := c.forward(b, s); slices.ContainsFunc(y, func(v float64) bool { return v != 0 }) {
			c.subtract(s.rest, b, y)
		}
	}
	c.forward(c.now, s)
	return s
}

// forward goes on with a side through the rows taken in a batch, eight at a time, and
// returns what it adds.
func (c *ActiveCholesky) forward(b *columnBatch, s *Side) []float64 {
	from := len(s.Y)
	var own [panelRows]float64
	for at := 0; at < len(b.at); at += panelRows {
		places := b.at[at:min(at+panelRows, len(b.at))]
		for i, k := range places {
			own[i] = s.rest[k]
		}
		pan := b.tri[batchColumns*at:]
		c.kern.Gemv(own[:], pan, s.Y[from:])
		for j := range places {
			v := own[j] * b.inv[at+j]
			s.Y = append(s.Y, v)
			col := (*[panelRows]float64)(pan[panelRows*(at+j):])
			for i := j + 1; i < panelRows; i++ {
				own[i] -= col[i] * v
			}
		}
	}
	return s.Y[from:]
}

// DropSide takes a side away.
func (c *ActiveCholesky) DropSide(s *Side) {
	for i, o := range c.sides {
		if o == s {
			c.sides = append(c.sides[:i], c.sides[i+1:]...)
			return
		}
	}
}

// Rest sets dst, by places, to the sum of what is left of some sides times coef, in
// the followed rows that are not taken. Its other values mean nothing.
func (c *ActiveCholesky) Rest(dst []float64, sides []*Side, coef []float64) {
	var y [batchColumns]float64
	m := len(c.now.at)
	for i, s := range sides {
		f := coef[i]
		for k, v := range s.Y[len(s.Y)-m:] {
			y[k] += f * v
		}
	}
	for _, p := range c.now.pan {
		if int(p) >= c.front {
			break
		}
		if c.left[p] == 0 {
			continue
		}
		at := panelRows * int(p)
		var own [panelRows]float64
		for i, s := range sides {
			f := coef[i]
			for k, v := range (*[panelRows]float64)(s.rest[at:]) {
				own[k] += f * v
			}
		}
		c.kern.Gemv(own[:], c.now.w[at*batchColumns:], y[:m])
		copy(dst[at:], own[:])
	}
}

// Back solves Lᵀx = t, t in the order in which rows were taken, for several t at
// once; each may stop short of the last rows taken. Of each x, which is zero in rows not
// taken, it writes the values of as many rows as dst has room for.
func (c *ActiveCholesky) Back(dst [][]float64, rows []int32, ts [][]float64) {
	if len(ts) == 1 {
		c.backOne(dst[0], rows, ts[0])
		return
	}
	eights := panels(len(ts))
	team.New(min(c.workers, eights)).Each(eights, func(g int) {
		lo, hi := panelRows*g, min(panelRows*(g+1), len(ts))
		x := c.room.Get(panelRows * len(c.taken)) // value r at a place stands at 8 place + r
		defer c.room.Put(x)
		clear(x)
		for q := len(c.full); q >= 0; q-- {
			c.back(q, x, ts[lo:hi])
		}
		for r, d := range dst[lo:hi] {
			for k := range d {
				d[k] = x[panelRows*int(c.place[rows[k]])+r]
			}
		}
	})
}

// backOne is Back for one t.
func (c *ActiveCholesky) backOne(dst []float64, rows []int32, t []float64) {
	x, own := c.room.Get(len(c.taken)), [batchColumns]float64{}
	defer c.room.Put(x)
	clear(x)
	for q := len(c.full); q >= 0; q-- {
		b := c.batch(q)
		v := own[:copy(own[:], t[min(q*batchColumns, len(t)):min(q*batchColumns+len(b.at), len(t))])]
		for _, p := range b.pan {
			if c.left[p] < panelRows && b != c.now {
				c.kern.GemvT(v, b.w[panelRows*batchColumns*int(p):], x[panelRows*int(p):])
			}
		}
		for j := len(v) - 1; j >= 0; j-- {
			at := j / panelRows * panelRows
			col := b.tri[batchColumns*at+panelRows*j:]
			for i := j + 1; i < min(at+panelRows, len(v)); i++ {
				v[j] -= col[i-at] * v[i]
			}
			v[j] *= b.inv[j]
			x[b.at[j]] = v[j]
			if j == at {
				var eight [panelRows]float64
				copy(eight[:], v[at:])
				c.kern.GemvT(v[:at], b.tri[batchColumns*at:], eight[:])
			}
		}
	}
	for k := range dst {
		dst[k] = x[c.place[rows[k]]]
	}
}

// back does batch q of Back: what the rows taken later carry, then the rows of
// the batch, eight at a time.
func (c *ActiveCholesky) back(q int, x []float64, ts [][]float64) {
	b, cols := c.batch(q), 0
	var room [panelRows * batchColumns]float64
	for r, t := range ts {
		t = t[min(q*batchColumns, len(t)):min(q*batchColumns+len(b.at), len(t))]
		cols = max(cols, len(t))
		for l, v := range t {
			room[panelRows*l+r] = v
		}
	}
	t := room[:panelRows*roundUp(cols)]
	for _, p := range b.pan {
		if c.left[p] < panelRows && b != c.now {
			c.kern.GemmT(t, x[panelRows*panelRows*int(p):][:panelRows*panelRows], b.w[panelRows*batchColumns*int(p):], 0)
		}
	}
	for at := panelRows * (panels(cols) - 1); at >= 0; at -= panelRows {
		var own [panelRows * panelRows]float64
		pan := b.tri[batchColumns*at:]
		for j := min(panelRows, cols-at) - 1; j >= 0; j-- {
			v, col := t[panelRows*(at+j):][:panelRows], pan[panelRows*(at+j):]
			for i := j + 1; i < min(panelRows, cols-at); i++ {
				panel.Axpy8(v, own[panelRows*i:], col[i])
			}
			panel.Scale8(v, b.inv[at+j])
			copy(own[panelRows*j:], v)
			copy(x[panelRows*int(b.at[at+j]):], v)
		}
		c.kern.GemmT(t[:panelRows*roundUp(at)], own[:], pan, 0)
	}
}
