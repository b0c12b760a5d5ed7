package sparse

import "slices"

// frontData is the memory of one front: the lower triangle d of its pivots, the
// rows s below them and the update u, all in panels of 8 rows.
type frontData struct {
	*front
	number  int32
	d, s, u []float64
}

// data returns the front's part of the factor, without an update.
func (f *Factor) data(k int32) frontData {
	fr, part := &f.a.fronts[k], f.parts[k]
	mid := triLen(fr.k())
	return frontData{front: fr, number: k, d: part[:mid], s: part[mid:]}
}

// addMatrix adds the blocks of the matrix that belong to the front.
func (fd *frontData) addMatrix(m *Matrix, entries []entry) {
	for _, e := range entries {
		blk := (*[blockLen]float64)(m.val[int(e.block)*blockLen:])
		for r := range Block {
			dst := fd.pivotRow(int(e.row), r)[tileLen*int(e.col):]
			if e.flipped {
				addStrided(dst, blk[r], blk[r+Block], blk[r+2*Block], blk[r+3*Block], blk[r+4*Block], blk[r+5*Block])
				continue
			}
			row := (*[Block]float64)(blk[Block*r:])
			addStrided(dst, row[0], row[1], row[2], row[3], row[4], row[5])
		}
	}
}

// addStrided adds six values to a row of a tile.
func addStrided(dst []float64, a, b, c, d, e, f float64) {
	to := (*[tileLen - panelRows + 1]float64)(dst)
	to[0] += a
	to[panelRows] += b
	to[2*panelRows] += c
	to[3*panelRows] += d
	to[4*panelRows] += e
	to[5*panelRows] += f
}

// pivotRow returns row r of a node of the front, from its first pivot column on.
func (fd *frontData) pivotRow(node, r int) []float64 {
	if node < int(fd.pivots) {
		i := Block*node + r
		return fd.d[triOff(i/panelRows)+i%panelRows:]
	}
	i := Block*(node-int(fd.pivots)) + r
	return fd.s[i/panelRows*panelRows*fd.k()+i%panelRows:]
}

// updateRow returns row r of a node of the front that is not a pivot, in the update.
func (fd *frontData) updateRow(node, r int) []float64 {
	i := Block*(node-int(fd.pivots)) + r
	return fd.u[triOff(i/panelRows)+i%panelRows:]
}

// childData is the update of a child on its way into the parent.
type childData struct {
	*front
	u      []float64
	pivots []run // its columns that are pivots of the parent
	below  []run // the others
}

// run is a run of a child's rows from..end that stand side by side in the parent,
// from pivot or row `to` on.
type run struct{ from, end, to int }

// childOf finds the runs of a child in a parent with the given number of pivots.
func childOf(f *front, u []float64, pivots int) childData {
	c := childData{front: f, u: u}
	for b, r := range f.rel {
		list, to := &c.pivots, int(r)
		if to >= pivots {
			list, to = &c.below, to-pivots
		}
		if n := len(*list); n > 0 && (*list)[n-1].to+b-(*list)[n-1].from == to {
			(*list)[n-1].end = b + 1
			continue
		}
		*list = append(*list, run{from: b, end: b + 1, to: to})
	}
	return c
}

// addPivots adds the child's columns that are pivots of the front.
func (fd *frontData) addPivots(kn kernels, c *childData) {
	if c.pivots != nil {
		fd.extendAdd(kn, c, c.pivots, span{0, len(c.rel)}, fd.pivotRow)
	}
}

// addUpdate adds the child's other columns, as far as they belong to nodes lo..hi
// of the update.
func (fd *frontData) addUpdate(kn kernels, c *childData, lo, hi int) {
	if c.below == nil {
		return
	}
	from, _ := slices.BinarySearch(c.rel, fd.pivots+int32(lo))
	end, _ := slices.BinarySearch(c.rel, fd.pivots+int32(hi))
	fd.extendAdd(kn, c, c.below, span{from, end}, fd.updateRow)
}

// span is a range of a child's nodes.
type span struct{ from, end int }

// extendAdd adds the rows of some nodes of a child, a panel at a time; runs of
// columns that follow each other in the parent go in one stroke.
func (fd *frontData) extendAdd(kn kernels, c *childData, runs []run, nodes span, row func(node, r int) []float64) {
	for p := Block * nodes.from / panelRows; p < panels(Block*nodes.end); p++ {
		var to target
		for q := range to.node {
			i := panelRows*p + 2*q
			node := i / Block
			if node < nodes.from || node >= nodes.end {
				to.node[q] = -1
				continue
			}
			to.node[q], to.row[q] = node, row(int(c.rel[node]), i%Block)
		}
		to.add(kn, c.u[triOff(p):], runs)
	}
}

// target says where the four pairs of rows of a child's panel go.
type target struct {
	node [panelRows / 2]int       // of the child; -1: the pair goes nowhere
	row  [panelRows / 2][]float64 // of the parent
}

// add adds the panel: the columns that all four pairs have in one stroke for each
// run, then those up to each pair's own diagonal.
func (to *target) add(kn kernels, panel []float64, runs []run) {
	common := 0
	if to.node[0] >= 0 && to.node[3] >= 0 {
		common = to.node[0] + 1
	}
	for _, run := range runs {
		if run.from > to.node[3] && run.from > to.node[0] {
			break
		}
		end := min(run.end, common)
		if end > run.from {
			kn.AddPanel(&to.row, tileLen*run.to, panel[tileLen*run.from:tileLen*end])
		}
		for q, node := range to.node {
			first, end := max(run.from, common), min(run.end, node+1)
			if end > first {
				at := run.to + first - run.from
				kn.AddPairs(to.row[q][tileLen*at:], panel[tileLen*first+2*q:], Block*(end-first))
			}
		}
	}
}
