package sparse

import "slices"

// Side is a vector that goes along with a factor.
type Side struct {
	Y    []float64 // L⁻¹b, in the order in which rows were taken
	rest []float64 // by places, up to date but for the present batch
}

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

// subtract takes the columns of a batch times y off a vector by places.
func (c *Chosen) subtract(v []float64, b *chosenCols, y []float64) {
	for _, p := range b.pan {
		at := panelRows * int(p)
		c.kern.gemv(v[at:at+panelRows], b.w[at*chosenBatch:], y)
	}
}

// AddSide adds a vector, given by the rows of the matrix.
func (c *Chosen) AddSide(v []float64) *Side {
	s := c.Forward(v)
	c.sides = append(c.sides, s)
	return s
}

// Forward is what AddSide adds, without adding it.
func (c *Chosen) Forward(v []float64) *Side {
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
func (c *Chosen) forward(b *chosenCols, s *Side) []float64 {
	from := len(s.Y)
	var own [panelRows]float64
	for at := 0; at < len(b.at); at += panelRows {
		places := b.at[at:min(at+panelRows, len(b.at))]
		for i, k := range places {
			own[i] = s.rest[k]
		}
		pan := b.tri[chosenBatch*at:]
		c.kern.gemv(own[:], pan, s.Y[from:])
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
func (c *Chosen) DropSide(s *Side) {
	for i, o := range c.sides {
		if o == s {
			c.sides = append(c.sides[:i], c.sides[i+1:]...)
			return
		}
	}
}

// Rest sets dst, by places, to the sum of what is left of some sides times coef, in
// the rows not taken. Its other values mean nothing.
func (c *Chosen) Rest(dst []float64, sides []*Side, coef []float64) {
	var y [chosenBatch]float64
	m := len(c.now.at)
	for i, s := range sides {
		f := coef[i]
		for k, v := range s.Y[len(s.Y)-m:] {
			y[k] += f * v
		}
	}
	for _, p := range c.now.pan {
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
		c.kern.gemv(own[:], c.now.w[at*chosenBatch:], y[:m])
		copy(dst[at:], own[:])
	}
}
