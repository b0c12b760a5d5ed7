package sparse

import "fmt"

// batchEights is how many eights of right-hand sides pass through a front while
// it is in the cache.
const batchEights = 4

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
	newTeam(f.workers).each(jobs, func(g int) {
		lo, hi := panelRows*(g*eights/jobs), min(panelRows*((g+1)*eights/jobs), nrhs)
		f.solveBatch(x[n*lo : n*hi])
	})
}

// batch is the work space for some eights of right-hand sides. In an eight, value
// r of degree of freedom i stands at 8i+r, so that a node is a tile.
type batch struct {
	f    *Factor
	ys   [][]float64 // each eight, all degrees of freedom in the order of elimination
	row  []float64   // rows of a front
	step []float64   // rows of a step
	off  []int32
}

// solveBatch solves for the columns of x.
func (f *Factor) solveBatch(x []float64) {
	n := Block * f.a.n
	b := &batch{
		f:    f,
		row:  make([]float64, panelRows*roundUp(Block*f.a.sizes.rows)),
		step: make([]float64, panelRows*stepRows),
	}
	for lo := 0; lo < len(x); lo += panelRows * n {
		b.ys = append(b.ys, f.interleave(x[lo:min(lo+panelRows*n, len(x))]))
	}
	for k := range f.a.fronts {
		b.forward(f.data(int32(k)))
	}
	for k := len(f.a.fronts) - 1; k >= 0; k-- {
		b.backward(f.data(int32(k)))
	}
	for i, y := range b.ys {
		f.separate(x[panelRows*n*i:min(panelRows*n*(i+1), len(x))], y)
	}
}

// interleave copies up to eight columns to an eight.
func (f *Factor) interleave(x []float64) []float64 {
	n := Block * f.a.n
	y := make([]float64, panelRows*n)
	for p, v := range f.a.order {
		tile := y[tileLen*p:][:tileLen]
		for r := range len(x) / n {
			for d, val := range x[r*n+Block*int(v):][:Block] {
				tile[panelRows*d+r] = val
			}
		}
	}
	return y
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
	b.off = rectRows(b.off, len(fd.rows), width)
	row := b.row[:tileLen*len(fd.rows)]
	for _, y := range b.ys {
		own := y[tileLen*int(fd.first):][:tileLen*nodes]
		for j0 := 0; j0 < nodes; j0 += blockNodes {
			w.rowBlock(own, fd.d, tri, rowBlock{nodes, 0, 1, 0, j0})
		}
		clear(row)
		for l0 := 0; l0 < nodes; l0 += chunkNodes {
			l1 := min(l0+chunkNodes, nodes)
			w.gemm(row, own[tileLen*l0:tileLen*l1], fd.s[min(tileLen*l0, len(fd.s)):], b.off)
		}
		for i, p := range fd.rows {
			addTile(y[tileLen*int(p):], row[tileLen*i:])
		}
	}
}

// addTile adds one tile to another.
func addTile(dst, src []float64) {
	dst, src = dst[:tileLen], src[:tileLen]
	for i, v := range src {
		dst[i] += v
	}
}

// backward solves with the transpose of the front's part of L.
func (b *batch) backward(fd frontData) {
	k, r := fd.k(), fd.r()
	row := b.row[:panelRows*panelRows*panels(r)]
	clear(row[panelRows*r:])
	for _, y := range b.ys {
		own := y[tileLen*int(fd.first):][:tileLen*int(fd.pivots)]
		for i, p := range fd.rows {
			copy(row[tileLen*i:][:tileLen], y[tileLen*int(p):])
		}
		b.f.kern.gemmt(own, row, fd.s, panelRows*k)
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
			kern.gemmt(tile, b.step[square*(p-p0):][:square], fd.d[triOff(p)+tileLen*j:], 0)
		}
		kern.trsmt(tile, tri[blockLen*j:])
		copy(b.step[tileLen*(j-j0):], tile)
	}
	for p := p0; p < p1; p++ {
		kern.gemmt(own[:tileLen*j0], b.step[square*(p-p0):][:square], fd.d[triOff(p):], 0)
	}
}
