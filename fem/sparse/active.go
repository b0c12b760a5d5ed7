package sparse

import (
	"slices"

	"archload/fem/sparse/team"
)

// batchColumns is how many columns of the factor are gathered before the rest of
// the matrix is brought up to date: a multiple of two, for the kernels.
const batchColumns = 48

// leastPart is the smallest part of its own diagonal that a row must add.
const leastPart = 1e-14

// ActiveCholesky is the Cholesky factor of some rows of a dense symmetric matrix, taken
// one after the other in any order that the caller chooses as it goes. What is left
// of the other rows stays at hand: their Schur complement, brought up to date a
// batch of columns at a time, as the blocked factor of a front is (J. J. Dongarra
// et al., the right-looking Cholesky factorisation of LAPACK; from memory).
//
// Sides are vectors that go along, such as a right-hand side b: of each the factor
// keeps L⁻¹b over the rows taken and b less L L⁻¹b over the others.
type ActiveCholesky struct {
	kern    kernels
	workers int
	a       []float64 // the matrix
	n       int
	front   int       // panels of rows that are followed at every step
	kept    int       // panels that are up to date; those beyond are as in a, but not yet copied
	place   []int32   // of each row of the matrix
	row     []int32   // at each place
	s       []float64 // lower triangle in panels of eight rows, up to date but for the present batch
	own     []float64 // diagonal of the matrix, by places
	taken   []bool    // by places
	left    []int     // rows of each panel that are not taken
	full    []*columnBatch
	now     *columnBatch
	off     []int32 // where pairs of rows begin in a batch
	sides   []*Side
	room    *team.Pool // of memory that is free
}

// ActiveOrder is a guess at how rows will be taken: a good one saves work and changes nothing.
type ActiveOrder struct {
	Rows   []int32 // all of them; those of each part that will be taken first come first
	Follow int     // so many from the first are told by Rest
	Likely int     // so many from the first are likely to be taken at all, or followed
}

// columnBatch holds the columns of a batch.
type columnBatch struct {
	w   []float64 // in panels of eight rows; zero in rows taken before, and beyond the front until the batch ends
	tri []float64 // rows taken in this batch, up to their diagonal, in panels of eight
	inv []float64 // of the diagonal, 1/value
	at  []int32   // places of the rows taken
	pan []int32   // panels that had rows left when it began
	run [][2]int  // stretches of tiles in which rows were left when it was full
}

// Reset takes the n×n row-major matrix a with no row taken yet, in the memory that the factor has. Rows that are not
// followed are brought up to date when a batch ends, those that are not likely to be taken when one
// of them is. The factor does not depend on the number of workers.
func (c *ActiveCholesky) Reset(a []float64, order ActiveOrder, workers int) {
	n := len(order.Rows)
	np := panels(n)
	if c.room == nil {
		c.room = &team.Pool{}
	} else {
		c.room.Put(c.s)
		for q := range len(c.full) + 1 {
			c.room.Put(c.batch(q).w)
		}
	}
	*c = ActiveCholesky{kern: fastKernels(), workers: max(1, workers), a: a, n: n, front: panels(order.Follow), kept: panels(max(order.Likely, order.Follow)),
		row: order.Rows, place: make([]int32, n), own: make([]float64, n), taken: make([]bool, panelRows*np), left: make([]int, np), room: c.room, s: c.room.Get(triOff(np))}
	for i, r := range order.Rows {
		c.place[r], c.own[i] = int32(i), a[int(r)*n+int(r)]
		c.left[i/panelRows]++
	}
	for i := n; i < len(c.taken); i++ {
		c.taken[i] = true // beyond the last row
	}
	for i := 0; i < panelRows*np+2*panelRows; i += 2 {
		c.off = append(c.off, int32(i/panelRows*panelRows*batchColumns+i%panelRows))
	}
	c.share(0, c.kept, c.load)
	c.now = c.begin()
}

// load copies a panel of the matrix up to the end of its diagonal block.
func (c *ActiveCholesky) load(p int) {
	pan := c.s[triOff(p):]
	rows := c.row[panelRows*p : min(panelRows*(p+1), c.n)]
	cols := c.row[:min(panelRows*(p+1), c.n)]
	for j0 := 0; j0 < len(cols); j0 += loadCols {
		some := cols[j0:min(j0+loadCols, len(cols))]
		for i, r := range rows {
			src, dst := c.a[int(r)*c.n:int(r+1)*c.n], pan[panelRows*j0+i:]
			for j, q := range some {
				dst[panelRows*j] = src[q]
			}
		}
	}
}

// loadCols is how many columns of a panel are copied at a time, which the first
// cache holds.
const loadCols = 96

// share calls do for each of the panels from..to, the dear last ones first.
func (c *ActiveCholesky) share(from, to int, do func(p int)) {
	team.New(c.workers).Each(to-from, func(i int) { do(to - 1 - i) })
}

// batch is batch q; the present one comes after the full ones.
func (c *ActiveCholesky) batch(q int) *columnBatch {
	if q < len(c.full) {
		return c.full[q]
	}
	return c.now
}

func (c *ActiveCholesky) begin() *columnBatch {
	b := &columnBatch{w: c.room.Get(panelRows * batchColumns * (len(c.left) + 1)), tri: make([]float64, batchColumns*batchColumns), inv: make([]float64, batchColumns)}
	clear(b.w[:panelRows*batchColumns*c.front])
	for p, n := range c.left {
		if n > 0 {
			b.pan = append(b.pan, int32(p))
		}
	}
	return b
}

// AsTaken is the factor as it stands, for Back beside taking more rows and giving those back.
func (c *ActiveCholesky) AsTaken() *ActiveCholesky {
	v, now := *c, *c.now
	now.tri = slices.Clone(now.tri) // in panels, of which rows may still be taken
	v.left, v.now = slices.Clone(c.left), &now
	return &v
}

// Len is the number of rows taken.
func (c *ActiveCholesky) Len() int { return len(c.full)*batchColumns + len(c.now.at) }

// InBatch says whether Cut can give back the row that was taken at this place in
// the order.
func (c *ActiveCholesky) InBatch(at int) bool { return at >= len(c.full)*batchColumns }

// Room is the number of rows that can still be taken before the batch ends.
func (c *ActiveCholesky) Room() int { return batchColumns - len(c.now.at) }

// Taken says whether a row is taken.
func (c *ActiveCholesky) Taken(row int32) bool { return c.taken[c.place[row]] }

// Place is where a row stands in vectors by places.
func (c *ActiveCholesky) Place(row int32) int { return int(c.place[row]) }

// Places is the length of vectors by places.
func (c *ActiveCholesky) Places() int { return len(c.taken) }

// Side is a vector that goes along with a factor.
type Side struct {
	Y    []float64 // L⁻¹b, in the order in which rows were taken
	rest []float64 // by places, up to date but for the present batch
}
