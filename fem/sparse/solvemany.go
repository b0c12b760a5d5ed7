package sparse

import (
	"fmt"

	"archload/fem/sparse/team"
)

const (
	batchEights = 8       // eights of right-hand sides that pass through a front together
	reuseValues = 1 << 15 // values of a front that all of them meet before the next, 256 kB
)

// SolveMany replaces the nrhs columns of x, each 6 values for every node, one
// column after the other, by K⁻¹ x. Columns are worked on in eights; batches of
// these are shared between the workers of Factorize. It panics if the length is
// wrong.
func (f *Factor) SolveMany(x []float64, nrhs int) {
	n := Block * f.a.n
	if nrhs < 0 || len(x) != n*nrhs {
		panic(fmt.Sprintf("sparse: SolveMany: want %d values, found %d", n*nrhs, len(x)))
	}
	eights := panels(nrhs)
	rounds := (eights + batchEights*f.workers - 1) / (batchEights * f.workers)
	jobs := min(rounds*f.workers, eights) // the same number for each worker
	spare := make(chan *batch, f.workers)
	for range f.workers {
		spare <- f.newBatch()
	}
	team.New(f.workers).Each(jobs, func(g int) {
		lo, hi := panelRows*(g*eights/jobs), min(panelRows*((g+1)*eights/jobs), nrhs)
		b := <-spare
		b.solve(x[n*lo : n*hi])
		spare <- b
	})
}

// batch is the work space for some eights of right-hand sides. In an eight, value
// r of degree of freedom i stands at 8i+r, so that a node is a tile.
type batch struct {
	f     *Factor
	ys    [][]float64 // each eight, all degrees of freedom in the order of elimination
	spare [][]float64 // eights not in use
	row   []float64   // rows of a front
	step  []float64   // rows of a step
	off   []int32
}

func (f *Factor) newBatch() *batch {
	return &batch{f: f, row: make([]float64, panelRows*roundUp(Block*f.a.sizes.rows)), step: make([]float64, panelRows*stepRows)}
}

// solve solves for the columns of x.
func (b *batch) solve(x []float64) {
	f, n := b.f, Block*b.f.a.n
	b.spare, b.ys = append(b.spare, b.ys...), b.ys[:0]
	for lo := 0; lo < len(x); lo += panelRows * n {
		y := b.eight()
		f.interleave(y, x[lo:min(lo+panelRows*n, len(x))])
		b.ys = append(b.ys, y)
	}
	b.pass()
	for i, y := range b.ys {
		f.separate(x[panelRows*n*i:min(panelRows*n*(i+1), len(x))], y)
	}
}

// eight returns an eight that is not in use.
func (b *batch) eight() []float64 {
	k := len(b.spare) - 1
	if k < 0 {
		return make([]float64, tileLen*b.f.a.n)
	}
	y := b.spare[k]
	b.spare = b.spare[:k]
	return y
}

// pass goes up the tree and down again with the eights.
func (b *batch) pass() {
	f := b.f
	for k := range f.a.fronts {
		b.forward(f.data(int32(k)))
	}
	for _, y := range b.ys {
		f.turn(y, panelRows)
	}
	for k := len(f.a.fronts) - 1; k >= 0; k-- {
		b.backward(f.data(int32(k)))
	}
}

// interleave copies up to eight columns to an eight; columns that are not there
// become zero.
func (f *Factor) interleave(y, x []float64) {
	n := Block * f.a.n
	if len(x) < panelRows*n {
		clear(y)
	}
	for p, v := range f.a.order {
		tile := y[tileLen*p:][:tileLen]
		for r := range len(x) / n {
			for d, val := range x[r*n+Block*int(v):][:Block] {
				tile[panelRows*d+r] = val
			}
		}
	}
}

// separate copies an eight back to columns.
func (f *Factor) separate(x, y []float64) {
	n := Block * f.a.n
	for p, v := range f.a.order {
		tile := y[tileLen*p:][:tileLen]
		for r := range len(x) / n {
			dst := x[r*n+Block*int(v):][:Block]
			for d := range dst {
				dst[d] = tile[panelRows*d+r]
			}
		}
	}
}

// forward solves with the front's part of L: each eight is treated as one more
// panel of the front.
func (b *batch) forward(fd frontData) {
	nodes, width := int(fd.pivots), fd.k()
	w := dense{kernels: b.f.kern, triRow: b.f.a.triRow}
	tri := b.f.tri[blockLen*int(fd.first):]
	for _, y := range b.ys {
		own := y[tileLen*int(fd.first):][:tileLen*nodes]
		for j0 := 0; j0 < nodes; j0 += blockNodes {
			w.rowBlock(own, fd.d, tri, rowBlock{nodes, tileLen * nodes, 0, 1, j0})
		}
	}
	b.off = rectRows(b.off, len(fd.rows), width)
	eachStrip(&fd, func(lo, hi int) {
		for _, y := range b.ys {
			b.forwardStrip(fd, y, lo, hi)
		}
	})
}

// eachStrip cuts the rows below a front's pivots into strips of nodes lo..hi, whole
// panels that stay in the cache.
func eachStrip(fd *frontData, do func(lo, hi int)) {
	nodes := max(reuseValues/(stepRows*fd.k()), 1) * stepNodes
	for lo := 0; lo < len(fd.rows); lo += nodes {
		do(lo, min(lo+nodes, len(fd.rows)))
	}
}

// forwardStrip subtracts a strip of the front times its pivots' values; rows that
// follow each other in the order go in one stroke.
func (b *batch) forwardStrip(fd frontData, y []float64, lo, hi int) {
	own := y[tileLen*int(fd.first):][:tileLen*int(fd.pivots)]
	for lo < hi {
		end := lo + 1
		for end < hi && fd.rows[end] == fd.rows[end-1]+1 {
			end++
		}
		at := y[tileLen*int(fd.rows[lo]):]
		for l0 := 0; l0 < int(fd.pivots); l0 += chunkNodes {
			l1 := min(l0+chunkNodes, int(fd.pivots))
			b.f.kern.Gemm(at, own[tileLen*l0:tileLen*l1], fd.s[tileLen*l0:], b.off[3*lo:3*end])
		}
		lo = end
	}
}

// backward solves with the transpose of the front's part of L.
func (b *batch) backward(fd frontData) {
	k := fd.k()
	eachStrip(&fd, func(lo, hi int) {
		count := panels(Block * (hi - lo))
		row := b.row[:panelRows*panelRows*count]
		clear(row[tileLen*(hi-lo):])
		strip := fd.s[panelRows*k*(Block*lo/panelRows):]
		for _, y := range b.ys {
			for i, p := range fd.rows[lo:hi] {
				copy(row[tileLen*i:][:tileLen], y[tileLen*int(p):])
			}
			b.f.kern.GemmT(y[tileLen*int(fd.first):][:tileLen*int(fd.pivots)], row, strip, panelRows*k)
		}
	})
	for _, y := range b.ys {
		own := y[tileLen*int(fd.first):][:tileLen*int(fd.pivots)]
		for i0 := (k - 1) / stepRows * stepRows; i0 >= 0; i0 -= stepRows {
			b.backwardStep(fd, own, i0)
		}
	}
}

// backwardStep solves the (up to) four nodes from row i0 on and applies their rows
// to the nodes before.
func (b *batch) backwardStep(fd frontData, own []float64, i0 int) {
	const square = panelRows * panelRows
	kern, tri := b.f.kern, b.f.tri[blockLen*int(fd.first):]
	j0, j1 := i0/Block, min(i0/Block+stepNodes, int(fd.pivots))
	p0, p1 := i0/panelRows, min(i0/panelRows+stepPanels, panels(fd.k()))
	clear(b.step) // rows not yet solved count as zero
	for j := j1 - 1; j >= j0; j-- {
		tile := own[tileLen*j:][:tileLen]
		for p := Block * (j + 1) / panelRows; p < p1; p++ {
			kern.GemmT(tile, b.step[square*(p-p0):][:square], fd.d[triOff(p)+tileLen*j:], 0)
		}
		kern.TrsmT(tile, tri[blockLen*j:])
		copy(b.step[tileLen*(j-j0):], tile)
	}
	for p := p0; p < p1; p++ {
		kern.GemmT(own[:tileLen*j0], b.step[square*(p-p0):][:square], fd.d[triOff(p):], 0)
	}
}
