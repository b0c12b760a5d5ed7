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
	by    []int       // the columns in their order
	units int         // sixes of columns
	width int         // degrees of freedom of the last nodes
	rows  [][]float64 // of each block: panels of eight columns
	off   []int32     // where the pairs of a six of a block begin
	tail  []tailFront
}

// tailFront is a front of last nodes with the rows of its own that lie below.
type tailFront struct {
	frontData
	at    int     // where its pivots begin in a panel of columns
	off   []int32 // of its rows
	meets []bool  // of each block of columns: whether one of them is not zero here
}

// blockCols is the number of columns of a block, blockPanels that of its panels.
const (
	blockCols   = blockNodes * Block
	blockPanels = blockCols / panelRows
)

// newReduction sorts the columns and writes them into panels.
func (f *Factor) newReduction(cols []Column) *reduction {
	n, first := len(cols), f.a.n-len(f.a.last)
	r := &reduction{f: f, units: (n + Block - 1) / Block, width: Block * len(f.a.last), by: make([]int, n)}
	starts := make([]int, n)
	for i, col := range cols {
		starts[i], r.by[i] = f.firstPlace(i, col), i
	}
	slices.SortStableFunc(r.by, func(a, b int) int { return cmp.Compare(starts[a], starts[b]) })
	r.rows = make([][]float64, (r.units+blockNodes-1)/blockNodes)
	r.off = rectRows(nil, blockNodes, r.width)
	for k := f.a.tail; k < len(f.a.fronts); k++ {
		fd := f.data(int32(k))
		r.tail = append(r.tail, tailFront{frontData: fd, at: tileLen * (int(fd.first) - first),
			off: rectRows(nil, len(fd.rows), fd.k()), meets: make([]bool, len(r.rows))})
	}
	for at, i := range r.by {
		for _, d := range cols[i].Dofs {
			p := f.a.place[d/Block]
			own := sort.Search(len(r.tail), func(t int) bool { return r.tail[t].first > p }) - 1
			r.tail[own].meets[at/blockCols] = true
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

// fill writes the columns of a block into its panels.
func (r *reduction) fill(b int, cols []Column) {
	first := int32(r.f.a.n - len(r.f.a.last))
	some := r.by[blockCols*b : min(blockCols*(b+1), len(r.by))]
	r.rows[b] = make([]float64, rectLen((len(some)+Block-1)/Block*Block, r.width))
	for at, i := range some {
		row := r.rows[b][at/panelRows*panelRows*r.width+at%panelRows:]
		for k, d := range cols[i].Dofs {
			row[panelRows*(Block*(r.f.a.place[d/Block]-first)+d%Block)] += cols[i].Vals[k]
		}
	}
}

// dense is the arithmetic of a front.
func (r *reduction) dense(t *tailFront) dense {
	return dense{kernels: r.f.kern, triRow: r.f.a.triRow, signs: r.f.signs.from(t.first)}
}

// eliminate solves for a group of panels of one block with L.
func (r *reduction) eliminate(lo, hi int) {
	stride, block := panelRows*r.width, lo/blockPanels
	rows := r.rows[block]
	lo, hi = lo-blockPanels*block, hi-blockPanels*block
	for k := range r.tail {
		t := &r.tail[k]
		if !t.meets[block] {
			continue
		}
		w, nodes := r.dense(t), int(t.pivots)
		for j0 := 0; j0 < nodes; j0 += blockNodes {
			w.rowBlock(rows[t.at:], t.d, r.f.tri[blockLen*int(t.first):], rowBlock{nodes, stride, lo, hi, j0})
		}
		for from, end := 0, 0; from < len(t.rows); from = end {
			for end = from + 1; end < len(t.rows) && t.rows[end] == t.rows[end-1]+1; {
				end++
			}
			to := t.at + tileLen*int(t.rows[from]-t.first)
			for l0 := 0; l0 < nodes; l0 += chunkNodes {
				l1 := min(l0+chunkNodes, nodes)
				for p := lo; p < hi; p++ {
					panel := rows[p*stride : (p+1)*stride]
					w.subtract(panel[to:], panel[t.at+tileLen*l0:t.at+tileLen*l1], t.s[tileLen*l0:], t.off[3*from:3*end], l0)
				}
			}
		}
	}
}

// multiply subtracts from the rows of u that belong to a group of panels of one block the
// products of its columns with those before them and with each other.
func (r *reduction) multiply(u []float64, lo, hi int) {
	stride, block := panelRows*r.width, lo/blockPanels
	for k := range r.tail {
		t := &r.tail[k]
		if !t.meets[block] {
			continue
		}
		w, nodes := r.dense(t), int(t.pivots)
		for l0 := 0; l0 < nodes; l0 += chunkNodes {
			from, end := t.at+tileLen*l0, t.at+tileLen*min(l0+chunkNodes, nodes)
			for b := 0; b <= block; b++ {
				if !t.meets[b] {
					continue
				}
				for p := lo; p < hi; p++ {
					panel := r.rows[block][(p-blockPanels*block)*stride:]
					j0, j1 := blockNodes*b, min(blockNodes*(b+1), r.units, triWidth(p)/Block)
					w.subtract(u[triOff(p)+tileLen*j0:], panel[from:end], r.rows[b][from:], r.off[:3*(j1-j0)], l0)
				}
			}
		}
	}
}
