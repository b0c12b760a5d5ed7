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
	for _, e := range entries {
		blk := m.val[int(e.block)*blockLen:][:blockLen]
		if e.flipped {
			blk = transposed(blk)
		}
		for r := range Block {
			dst := fd.pivotRow(int(e.row), r)[tileLen*int(e.col):]
			for c, v := range blk[Block*r:][:Block] {
				dst[panelRows*c] += v
			}
		}
	}
}

func transposed(blk []float64) []float64 {
	var t [blockLen]float64
	for r := range Block {
		for c := range Block {
			t[Block*r+c] = blk[Block*c+r]
		}
	}
	return t[:]
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

// extendAdd adds the update of a child to the front, two rows at a time; runs of
// nodes that follow each other in the parent go in one stroke.
func (fd *frontData) extendAdd(kn kernels, child *front, upd []float64) {
	runs := child.runs(int(fd.pivots))
	for a, ra := range child.rel {
		for q := range 3 {
			src := upd[triOff((Block*a+2*q)/panelRows)+(Block*a+2*q)%panelRows:]
			piv := fd.pivotRow(int(ra), 2*q)
			var below []float64
			if up := int(ra - fd.pivots); up >= 0 {
				i := Block*up + 2*q
				below = fd.u[triOff(i/panelRows)+i%panelRows:]
			}
			for _, run := range runs {
				if run.from > a {
					break
				}
				n := min(run.end, a+1) - run.from
				dst := piv
				if run.below {
					dst = below
				}
				kn.addPairs(dst[tileLen*run.to:], src[tileLen*run.from:], Block*n)
			}
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
