package sparse

import (
	"cmp"
	"fmt"
	"slices"
	"sort"
)

// reduction carries sparse columns up the fronts of the last nodes, as if each were one
// more row below these. Columns stand in the order of the first place that they touch;
// blocks of blockNodes sixes of them are left out of the fronts where they are zero.
type reduction struct {
	f     *Factor
	by    []int     // the columns in their order
	units int       // sixes of columns
	width int       // degrees of freedom of the last nodes
	rows  []float64 // panels of eight columns
	off   []int32   // where the pairs of a six begin
	tail  []tailFront
}

// tailFront is a front of last nodes with the rows of its own that lie below.
type tailFront struct {
	frontData
	at    int     // where its pivots begin in a panel of columns
	off   []int32 // of its rows
	meets []bool  // of each block of columns: whether one of them is not zero here
}

// blockPanels is the number of panels of a block of columns.
const blockPanels = blockNodes * Block / panelRows

// newReduction sorts the columns and writes them into panels.
func (f *Factor) newReduction(cols []Column) *reduction {
	n, first := len(cols), f.a.n-len(f.a.last)
	r := &reduction{f: f, units: (n + Block - 1) / Block, width: Block * len(f.a.last), by: make([]int, n)}
	starts := make([]int, n)
	for i, col := range cols {
		starts[i], r.by[i] = f.firstPlace(i, col), i
	}
	slices.SortStableFunc(r.by, func(a, b int) int { return cmp.Compare(starts[a], starts[b]) })
	r.rows = make([]float64, rectLen(Block*r.units, r.width))
	r.off = rectRows(nil, r.units, r.width)
	for k := f.a.tail; k < len(f.a.fronts); k++ {
		fd := f.data(int32(k))
		r.tail = append(r.tail, tailFront{frontData: fd, at: tileLen * (int(fd.first) - first),
			off: rectRows(nil, len(fd.rows), fd.k()), meets: make([]bool, (n+Block*blockNodes-1)/(Block*blockNodes))})
	}
	for at, i := range r.by {
		row := r.rows[at/panelRows*panelRows*r.width+at%panelRows:]
		for k, d := range cols[i].Dofs {
			p := int(f.a.place[d/Block])
			row[panelRows*(Block*(p-first)+int(d%Block))] += cols[i].Vals[k]
			own := sort.Search(len(r.tail), func(t int) bool { return int(r.tail[t].first) > p }) - 1
			r.tail[own].meets[at/(Block*blockNodes)] = true
		}
	}
	for t := range r.tail { // children before parents
		if up := int(r.tail[t].parent) - f.a.tail; up >= 0 {
			for b, yes := range r.tail[t].meets {
				r.tail[up].meets[b] = r.tail[up].meets[b] || yes
			}
		}
	}
	return r
}

// firstPlace checks column i and returns the first place that it touches.
func (f *Factor) firstPlace(i int, col Column) int {
	if len(col.Dofs) != len(col.Vals) {
		panic(fmt.Sprintf("sparse: Compliance: column %d has %d places and %d values", i, len(col.Dofs), len(col.Vals)))
	}
	first := f.a.n
	for _, d := range col.Dofs {
		at := int(f.a.place[d/Block])
		if at < f.a.n-len(f.a.last) {
			panic(fmt.Sprintf("sparse: Compliance: column %d touches node %d, which is not one of the last", i, d/Block))
		}
		first = min(first, at)
	}
	return first
}

// dense is the arithmetic of a front.
func (r *reduction) dense(t *tailFront) dense {
	return dense{kernels: r.f.kern, triRow: r.f.a.triRow, signs: r.f.signs.from(t.first)}
}

// eliminate solves for a group of panels of one block with L.
func (r *reduction) eliminate(lo, hi int) {
	stride := panelRows * r.width
	for k := range r.tail {
		t := &r.tail[k]
		if !t.meets[lo/blockPanels] {
			continue
		}
		w, nodes := r.dense(t), int(t.pivots)
		for j0 := 0; j0 < nodes; j0 += blockNodes {
			w.rowBlock(r.rows[t.at:], t.d, r.f.tri[blockLen*int(t.first):], rowBlock{nodes, stride, lo, hi, j0})
		}
		for from, end := 0, 0; from < len(t.rows); from = end {
			for end = from + 1; end < len(t.rows) && t.rows[end] == t.rows[end-1]+1; {
				end++
			}
			to := t.at + tileLen*int(t.rows[from]-t.first)
			for l0 := 0; l0 < nodes; l0 += chunkNodes {
				l1 := min(l0+chunkNodes, nodes)
				for p := lo; p < hi; p++ {
					panel := r.rows[p*stride : (p+1)*stride]
					w.subtract(panel[to:], panel[t.at+tileLen*l0:t.at+tileLen*l1], t.s[tileLen*l0:], t.off[3*from:3*end], l0)
				}
			}
		}
	}
}

// multiply subtracts from the rows of u that belong to a group of panels of one block the
// products of its columns with those before them and with each other.
func (r *reduction) multiply(u []float64, lo, hi int) {
	stride := panelRows * r.width
	for k := range r.tail {
		t := &r.tail[k]
		if !t.meets[lo/blockPanels] {
			continue
		}
		w, nodes := r.dense(t), int(t.pivots)
		for l0 := 0; l0 < nodes; l0 += chunkNodes {
			from, end := t.at+tileLen*l0, t.at+tileLen*min(l0+chunkNodes, nodes)
			for b := 0; b <= lo/blockPanels; b++ {
				if !t.meets[b] {
					continue
				}
				for p := lo; p < hi; p++ {
					j0, j1 := blockNodes*b, min(blockNodes*(b+1), r.units, triWidth(p)/Block)
					w.subtract(u[triOff(p)+tileLen*j0:], r.rows[p*stride+from:p*stride+end], r.rows[from:], r.off[3*j0:3*j1], l0)
				}
			}
		}
	}
}
