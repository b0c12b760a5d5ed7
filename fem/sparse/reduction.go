package sparse

import (
	"cmp"
	"fmt"
	"slices"
	"sort"

	"archload/fem/sparse/team"
)

// reduction carries sparse columns up the fronts of the last nodes, as if each were one
// more row below these. Columns stand in the order of the first place that they touch, so that
// those that meet a front stand close together; the others are left out there.
type reduction struct {
	f      *Factor
	pool   *team.Pool
	by     []int // the columns in their order
	units  int   // sixes of columns
	blocks []columnBlock
	tail   []tailFront
	u      []float64 // -C, see products
}

// columnBlock is blockCols columns: panels of eight, as wide as the fronts that they meet.
type columnBlock struct {
	rows   []float64
	stride int     // from panel to panel
	off    []int32 // where the pairs of a six of columns begin
	at     []int   // of each tail front: where its pivots begin in a panel
}

// tailFront is a front of last nodes with the rows of its own that lie below.
type tailFront struct {
	frontData
	off   []int32 // of its rows
	runs  []tailRun
	meets []bool // of each column: whether it is not zero here
}

// tailRun is a run of rows from..end of a front that stand side by side above it, from a pivot of a tail front on.
type tailRun struct {
	from, end   int
	front, node int
}

// blockCols is the number of columns of a block, blockPanels that of its panels.
const (
	blockCols   = blockNodes * Block
	blockPanels = blockCols / panelRows
)

// newReduction sorts the columns and finds the fronts that they meet.
func (f *Factor) newReduction(cols []Column) *reduction {
	if len(f.a.last) == 0 {
		panic("sparse: Compliance: the analysis has no last nodes")
	}
	n := len(cols)
	r := &reduction{f: f, pool: f.a.buffers(), units: (n + Block - 1) / Block, by: make([]int, n)}
	starts := make([]int, n)
	for i, col := range cols {
		starts[i], r.by[i] = f.firstPlace(i, col), i
	}
	slices.SortStableFunc(r.by, func(a, b int) int { return cmp.Compare(starts[a], starts[b]) })
	r.blocks = make([]columnBlock, (r.units+blockNodes-1)/blockNodes)
	r.tail = make([]tailFront, len(f.a.fronts)-f.a.tail)
	for k := range r.tail {
		fd := f.data(int32(f.a.tail + k))
		r.tail[k] = tailFront{frontData: fd, off: rectRows(nil, len(fd.rows), fd.k()), meets: make([]bool, n)}
	}
	for k := range r.tail {
		r.tail[k].runs = r.runsOf(r.tail[k].rows)
	}
	for at, i := range r.by {
		for _, d := range cols[i].Dofs {
			r.tail[r.holder(f.a.place[d/Block])].meets[at] = true
		}
	}
	for k := range r.tail { // children before parents
		if up := int(r.tail[k].parent) - f.a.tail; up >= 0 {
			for at, yes := range r.tail[k].meets {
				r.tail[up].meets[at] = r.tail[up].meets[at] || yes
			}
		}
	}
	return r
}

// holder is the tail front that has a place among its pivots.
func (r *reduction) holder(place int32) int {
	return sort.Search(len(r.tail), func(k int) bool { return r.tail[k].first > place }) - 1
}

// runsOf are the runs of rows in front of each other. One that passes from a front to the next is one run: a
// block that meets the first meets both.
func (r *reduction) runsOf(rows []int32) (runs []tailRun) {
	for from, end := 0, 0; from < len(rows); from = end {
		for end = from + 1; end < len(rows) && rows[end] == rows[end-1]+1; {
			end++
		}
		up := r.holder(rows[from])
		runs = append(runs, tailRun{from: from, end: end, front: up, node: int(rows[from] - r.tail[up].first)})
	}
	return runs
}

// firstPlace checks column i and returns the first place that it touches.
func (f *Factor) firstPlace(i int, col Column) int {
	if len(col.Dofs) != len(col.Vals) {
		panic(fmt.Sprintf("sparse: Compliance: column %d has %d places and %d values", i, len(col.Dofs), len(col.Vals)))
	}
	first := f.a.n
	for _, d := range col.Dofs {
		if f.a.lastAt[d/Block] < 0 {
			panic(fmt.Sprintf("sparse: Compliance: column %d touches node %d, which is not one of the last", i, d/Block))
		}
		first = min(first, int(f.a.place[d/Block]))
	}
	return first
}

// within narrows a range of columns, taken by so many at a time, down to those that meet the front; both are
// told in such steps.
func (t *tailFront) within(lo, hi, step int) (int, int) {
	some := t.meets[min(step*lo, len(t.meets)):min(step*hi, len(t.meets))]
	from := slices.Index(some, true)
	if from < 0 {
		return lo, lo
	}
	end := len(some)
	for !some[end-1] {
		end--
	}
	return lo + from/step, lo + (end+step-1)/step
}

// fill lays out a block and writes its columns into the panels.
func (r *reduction) fill(b int, cols []Column) {
	blk := &r.blocks[b]
	blk.at = make([]int, len(r.tail))
	for k := range r.tail {
		blk.at[k] = blk.stride
		if lo, hi := r.tail[k].within(b, b+1, blockCols); lo < hi {
			blk.stride += tileLen * int(r.tail[k].pivots)
		}
	}
	blk.off = rectRows(nil, blockNodes, blk.stride/panelRows)
	some := r.by[blockCols*b : min(blockCols*(b+1), len(r.by))]
	blk.rows = r.pool.Get(panels((len(some)+Block-1)/Block*Block) * blk.stride)
	clear(blk.rows)
	for at, i := range some {
		row := at/panelRows*blk.stride + at%panelRows
		for k, d := range cols[i].Dofs {
			place := r.f.a.place[d/Block]
			up := r.holder(place)
			blk.rows[row+blk.at[up]+tileLen*int(place-r.tail[up].first)+panelRows*int(d%Block)] += cols[i].Vals[k]
		}
	}
}

// dense is the arithmetic of a front.
func (r *reduction) dense(t *tailFront) dense {
	return dense{kernels: r.f.kern, triRow: r.f.a.triRow, signs: r.f.signs.from(t.first)}
}

// eliminate solves for a group of panels of one block with L.
func (r *reduction) eliminate(lo, hi int) {
	block := lo / blockPanels
	blk := &r.blocks[block]
	for k := range r.tail {
		t := &r.tail[k]
		lo, hi := t.within(lo, hi, panelRows)
		if lo == hi {
			continue
		}
		lo, hi = lo-blockPanels*block, hi-blockPanels*block
		w, nodes, at := r.dense(t), int(t.pivots), blk.at[k]
		for j0 := 0; j0 < nodes; j0 += blockNodes {
			w.rowBlock(blk.rows[at:], t.d, r.f.tri[blockLen*int(t.first):], rowBlock{nodes, blk.stride, lo, hi, j0})
		}
		for _, run := range t.runs {
			to := blk.at[run.front] + tileLen*run.node
			for l0 := 0; l0 < nodes; l0 += chunkNodes {
				l1 := min(l0+chunkNodes, nodes)
				for p := lo; p < hi; p++ {
					panel := blk.rows[p*blk.stride : (p+1)*blk.stride]
					w.subtract(panel[to:], panel[at+tileLen*l0:at+tileLen*l1], t.s[tileLen*l0:], t.off[3*run.from:3*run.end], l0)
				}
			}
		}
	}
}

// multiply sets the rows of u that belong to a group of panels of one block to the negative
// products of its columns with those before them and with each other.
func (r *reduction) multiply(lo, hi int) {
	block, u := lo/blockPanels, r.u
	clear(u[triOff(lo):min(triOff(hi), len(u))])
	blk := &r.blocks[block]
	for k := range r.tail {
		t := &r.tail[k]
		lo, hi := t.within(lo, hi, panelRows)
		if lo == hi {
			continue
		}
		w, nodes := r.dense(t), int(t.pivots)
		for l0 := 0; l0 < nodes; l0 += chunkNodes {
			from, end := tileLen*l0, tileLen*min(l0+chunkNodes, nodes)
			for b := range r.blocks[:block+1] {
				other := &r.blocks[b]
				first, last := t.within(blockNodes*b, min(blockNodes*(b+1), r.units), Block)
				for p := lo; p < hi; p++ {
					j1 := min(last, triWidth(p)/Block)
					if j1 <= first {
						continue
					}
					off := other.off[3*(first-blockNodes*b) : 3*(j1-blockNodes*b)]
					panel := blk.rows[(p-blockPanels*block)*blk.stride+blk.at[k]:]
					w.subtract(u[triOff(p)+tileLen*first:], panel[from:end], other.rows[other.at[k]+from:], off, l0)
				}
			}
		}
	}
}

// end leaves the memory to the next computation.
func (r *reduction) end() {
	for b := range r.blocks {
		r.pool.Put(r.blocks[b].rows)
	}
	r.pool.Put(r.u)
	r.f.a.idle.Put(r.pool)
}
