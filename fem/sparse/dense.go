package sparse

import "archload/fem/sparse/team"

const (
	smallUpdate = 1 << 14 // values of an update to which the children are added in one go
	blockNodes  = 16      // nodes of a block column: 96 columns, 12 panels
	groupSize   = 6       // panels worked on together, 48 rows
	chunkNodes  = 32      // nodes of the depth taken at a time: 192 columns
)

// dense does the arithmetic of one front, or of rows appended to one.
type dense struct {
	kernels
	team   *team.Team
	triRow []int32
	signs  signs // of the front's pivots; nil: all positive
}

// groups returns the number of groups of panels in [first, end) and a function
// that gives the panels of a group.
func groups(first, end int) (int, func(g int) (int, int)) {
	return (end - first + groupSize - 1) / groupSize, func(g int) (int, int) {
		lo := first + g*groupSize
		return lo, min(lo+groupSize, end)
	}
}

// pivots factorises the lower triangle d of the given number of nodes in place,
// block column by block column. It leaves in tri, for each node, its 6 x 6 factor
// with the reciprocal diagonal. factor6 does one such block.
func (w *dense) pivots(d, tri []float64, nodes int, factor6 func(j int, blk []float64)) {
	end := panels(Block * nodes)
	for j0 := 0; j0 < nodes; j0 += blockNodes {
		j1 := min(j0+blockNodes, nodes)
		top := Block * j0 / panelRows
		below := panels(Block * j1)
		depth := Block * float64(j0)
		n, group := groups(top, below)
		w.team.Split(n, float64((below-top)*(j1-j0))*depth/2, func(g int) {
			lo, hi := group(g)
			w.updateTri(d, lo, hi, j0, j1)
		})
		w.diagonalBlock(d, tri, j0, j1, factor6)
		n, group = groups(below, end)
		w.team.Split(n, float64((end-below)*(j1-j0))*(depth+48), func(g int) {
			lo, hi := group(g)
			w.updateTri(d, lo, hi, j0, j1)
			for p := lo; p < hi; p++ {
				w.Solve(d[triOff(p)+tileLen*j0:], d[tileLen*j0:], w.triRow[3*j0:3*j1], tri[blockLen*j0:])
				w.signs.flip(d[triOff(p)+tileLen*j0:][:tileLen*(j1-j0)], j0)
			}
		})
	}
}

// updateTri subtracts from the tiles of node columns j0..j1 in panels lo..hi of d
// the product of the columns before j0.
func (w *dense) updateTri(d []float64, lo, hi, j0, j1 int) {
	for l0 := 0; l0 < j0; l0 += chunkNodes {
		l1 := min(l0+chunkNodes, j0)
		for p := lo; p < hi; p++ {
			jn := min(j1, triWidth(p)/Block)
			panel := d[triOff(p):]
			w.subtract(panel[tileLen*j0:], panel[tileLen*l0:tileLen*l1], d[tileLen*l0:], w.triRow[3*j0:3*jn], l0)
		}
	}
}

// diagonalBlock factorises the diagonal block of node columns j0..j1 of d, which
// has all updates of earlier columns, node by node from the left.
func (w *dense) diagonalBlock(d, tri []float64, j0, j1 int, factor6 func(j int, blk []float64)) {
	end := panels(Block * j1)
	for j := j0; j < j1; j++ {
		first := Block * j / panelRows
		off := w.triRow[3*j : 3*j+3]
		for p := first; p < end; p++ {
			panel := d[triOff(p):]
			w.subtract(panel[tileLen*j:], panel[tileLen*j0:tileLen*j], d[tileLen*j0:], off, j0)
		}
		blk := tri[blockLen*j:][:blockLen]
		loadBlock(blk, d[tileLen*j:], off)
		factor6(j, blk)
		for p := first; p < end; p++ {
			w.Trsm(d[triOff(p)+tileLen*j:], blk)
			w.signs.flip(d[triOff(p)+tileLen*j:][:tileLen], j)
		}
		clearAbove(d[triOff(first)+tileLen*j:], Block*j%panelRows)
		storeBlock(d[tileLen*j:], blk, off)
	}
}

// loadBlock copies the 6 x 6 block whose row pairs begin at off to blk, row-major.
func loadBlock(blk, d []float64, off []int32) {
	for r := range Block {
		src := d[int(off[r/2])+r%2:]
		for c := range Block {
			blk[Block*r+c] = src[panelRows*c]
		}
	}
}

// storeBlock copies the factor of a node back, zero above the diagonal.
func storeBlock(d, blk []float64, off []int32) {
	for r := range Block {
		dst := d[int(off[r/2])+r%2:]
		for c := range Block {
			v := 0.0
			switch {
			case c < r:
				v = blk[Block*r+c]
			case c == r && blk[Block*r+r] != 0:
				v = 1 / blk[Block*r+r]
			}
			dst[panelRows*c] = v
		}
	}
}

// clearAbove zeroes the first rows of a tile, which lie above the diagonal.
func clearAbove(tile []float64, rows int) {
	for c := range Block {
		clear(tile[panelRows*c:][:rows])
	}
}

// rows solves the panels of s, nodes tiles wide, against the triangle d: each
// becomes s L⁻ᵀ.
func (w *dense) rows(s, d, tri []float64, nodes int) {
	count := len(s) / (tileLen * nodes)
	n, group := groups(0, count)
	work := float64(count) * float64(nodes*nodes) * Block / 2
	w.team.Split(n, work, func(g int) {
		lo, hi := group(g)
		for j0 := 0; j0 < nodes; j0 += blockNodes {
			w.rowBlock(s, d, tri, rowBlock{nodes, tileLen * nodes, lo, hi, j0})
		}
	})
}

// rowBlock names a group of panels, lo..hi, which begin some values after one another, and
// a block column at j0.
type rowBlock struct{ nodes, stride, lo, hi, j0 int }

// rowBlock solves one block column of a group of panels.
func (w *dense) rowBlock(s, d, tri []float64, b rowBlock) {
	width := tileLen * b.nodes
	j0, j1 := b.j0, min(b.j0+blockNodes, b.nodes)
	off := w.triRow[3*j0 : 3*j1]
	for l0 := 0; l0 < j0; l0 += chunkNodes {
		l1 := min(l0+chunkNodes, j0)
		for p := b.lo; p < b.hi; p++ {
			panel := s[p*b.stride:][:width]
			w.subtract(panel[tileLen*j0:], panel[tileLen*l0:tileLen*l1], d[tileLen*l0:], off, l0)
		}
	}
	for p := b.lo; p < b.hi; p++ {
		panel := s[p*b.stride:][:width]
		w.Solve(panel[tileLen*j0:], d[tileLen*j0:], off, tri[blockLen*j0:])
		w.signs.flip(panel[tileLen*j0:tileLen*j1], j0)
	}
}

// product is the lower triangle u = -s sᵀ of count nodes; s has nodes columns of
// nodes.
type product struct {
	u, s         []float64
	count, nodes int
	done         func(lo, hi int) // called when the rows of nodes lo..hi stand; may be nil
	off          []int32          // rows of s
}

// schur computes a product.
func (w *dense) schur(b product) {
	b.off = rectRows(nil, b.count, Block*b.nodes)
	n, group := groups(0, panels(Block*b.count))
	work := float64(b.count*b.count) * float64(b.nodes) * Block * Block / (2 * panelRows)
	w.team.Split(n, work, func(g int) {
		lo, hi := group(n - 1 - g) // the longest rows first
		for l0 := 0; l0 < b.nodes; l0 += chunkNodes {
			for j0 := 0; j0 < b.count; j0 += blockNodes {
				w.productBlock(&b, productBlock{lo: lo, hi: hi, l0: l0, j0: j0})
			}
		}
		if b.done != nil {
			b.done(panelRows*lo/Block, min(panelRows*hi/Block, b.count))
		}
	})
}

// productBlock names panels lo..hi and the block column at node j0 of u, and the
// chunk of the depth at node l0; the first chunk finds u undefined.
type productBlock struct{ lo, hi, l0, j0 int }

// productBlock does one block of a product.
func (w *dense) productBlock(b *product, at productBlock) {
	width := tileLen * b.nodes
	l1 := min(at.l0+chunkNodes, b.nodes)
	gemm := w.subtract
	if at.l0 == 0 {
		gemm = w.subtract0
	}
	for p := at.lo; p < at.hi; p++ {
		j1 := min(at.j0+blockNodes, b.count, triWidth(p)/Block)
		if j1 <= at.j0 {
			continue
		}
		gemm(b.u[triOff(p)+tileLen*at.j0:], b.s[p*width+tileLen*at.l0:p*width+tileLen*l1],
			b.s[tileLen*at.l0:], b.off[3*at.j0:3*j1], at.l0)
	}
}
