package sparse

// frontData is the memory of one front: the lower triangle d of its pivots, the
// rows s below them and the update u, all in panels of 8 rows.
type frontData struct {
	*front
	d, s, u []float64
}

// data returns the front's part of the factor, without an update.
func (f *Factor) data(k int32) frontData {
	fr := &f.a.fronts[k]
	mid := fr.at + triLen(fr.k())
	return frontData{front: fr, d: f.val[fr.at:mid], s: f.val[mid : mid+rectLen(fr.r(), fr.k())]}
}

// addMatrix adds the blocks of the matrix that belong to the front.
func (fd *frontData) addMatrix(m *Matrix, entries []entry) {
	var turned [blockLen]float64
	for _, e := range entries {
		blk := m.val[int(e.block)*blockLen:][:blockLen]
		if e.flipped {
			transposeTo(&turned, blk)
			blk = turned[:]
		}
		for r := range Block {
			dst := fd.pivotRow(int(e.row), r)[tileLen*int(e.col):]
			for c, v := range blk[Block*r:][:Block] {
				dst[panelRows*c] += v
			}
		}
	}
}

// transposeTo sets dst to the transpose of a block.
func transposeTo(dst *[blockLen]float64, blk []float64) {
	for r := range Block {
		for c := range Block {
			dst[Block*r+c] = blk[Block*c+r]
		}
	}
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
	if node < int(fd.pivots) {
		return nil
	}
	i := Block*(node-int(fd.pivots)) + r
	return fd.u[triOff(i/panelRows)+i%panelRows:]
}

// extendAdd adds the update of a child to the front, two rows at a time; runs of
// nodes that follow each other in the parent go in one stroke.
func (fd *frontData) extendAdd(kn kernels, child *front, upd []float64) {
	runs := child.runs(int(fd.pivots))
	for i := 0; i < child.r(); i += 2 {
		node, r := i/Block, i%Block
		src := upd[triOff(i/panelRows)+i%panelRows:]
		pivot := fd.pivotRow(int(child.rel[node]), r)
		update := fd.updateRow(int(child.rel[node]), r)
		for _, run := range runs {
			if run.from > node {
				break
			}
			dst := pivot
			if run.below {
				dst = update
			}
			cols := Block * (min(run.end, node+1) - run.from)
			kn.addPairs(dst[tileLen*run.to:], src[tileLen*run.from:], cols)
		}
	}
}

// run is a run of a child's rows from..end that stand side by side in the parent,
// from pivot `to` on or, if below, from row `to` on.
type run struct {
	from, end, to int
	below         bool
}

// runs finds the runs of f's rows in a parent with the given number of pivots.
func (f *front) runs(pivots int) []run {
	var list []run
	for b, r := range f.rel {
		to, below := int(r), int(r) >= pivots
		if below {
			to -= pivots
		}
		if n := len(list); n > 0 && list[n-1].below == below && list[n-1].to+b-list[n-1].from == to {
			list[n-1].end = b + 1
			continue
		}
		list = append(list, run{from: b, end: b + 1, to: to, below: below})
	}
	return list
}
