package sparse

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"sync"

	"archload/fem/sparse/dissection"
	"archload/fem/sparse/etree"
	"archload/fem/sparse/team"
)

// Analysis is the plan of a factorisation: elimination order, tree of fronts and
// where every block of the matrix goes. It depends on the pattern alone, is never
// changed but for the memory that lies idle, and serves any number of factorisations at the same time.
type Analysis struct {
	n        int
	ptr, col []int32 // pattern it was made for
	order    []int32 // place -> node
	place    []int32 // node -> place
	fronts   []front // children before parents
	entries  []entry // blocks of the matrix, front by front
	last     []int32 // nodes asked for at the end; nil: none
	lastAt   []int32 // node -> where it stands in last, or -1
	end      int     // first place of them and of the nodes around them
	tail     int     // first front that eliminates one of these
	triRow   []int32 // rows of a lower triangle, as large as any front needs
	sizes    sizes
	idle     sync.Pool // of *team.Pool: buffers of one computation for the next
}

// buffers are those that another computation has left, or none; put them back into idle when done.
func (a *Analysis) buffers() *team.Pool {
	if p, ok := a.idle.Get().(*team.Pool); ok {
		return p
	}
	return &team.Pool{}
}

// front is one step of the elimination: a dense symmetric matrix whose first
// pivots nodes are eliminated; the rest, the update, is added to the parent.
type front struct {
	first, pivots int32   // places of the pivots: first .. first+pivots-1
	rows          []int32 // places of the other nodes, ascending
	parent        int32   // front or -1
	rel           []int32 // where each of rows stands in the parent: pivots first, then its rows
	children      []int32
	subtree       int32   // first front of the subtree that ends here
	entry, entryN int     // its range in entries
	at            int     // how many values of the factor come before its own
	cost          float64 // of itself, in units of etree.Cost
}

// entry places one block of the matrix in a front.
type entry struct {
	block   int32 // index in the matrix
	row     int32 // node row in the front: pivots first
	col     int32 // pivot
	flipped bool  // the block is stored transposed
}

// sizes are lengths fixed by the analysis.
type sizes struct {
	factor     int // values of the factor as stored
	pivots     int // most pivot nodes of a front
	rows       int // most other nodes of a front
	nnz, flops float64
}

func (f *front) k() int { return Block * int(f.pivots) }
func (f *front) r() int { return Block * len(f.rows) }

// size is the number of values that it leaves in the factor.
func (f *front) size() int { return triLen(f.k()) + rectLen(f.r(), f.k()) }

// all says of every front that it is to do.
func (a *Analysis) all() []bool { return slices.Repeat([]bool{true}, len(a.fronts)) }

// Analyse plans the factorisation of matrices with the pattern of m. xy are the
// plan coordinates of the nodes, mm; nil, or any that are not finite, make it work
// on the graph alone. The nodes of last are eliminated after all others (see
// Factor.Compliance), together with those around them that shorten their rim: those that only others
// of them touch by nested dissection, the rest in one front of their own, the root.
func Analyse(m *Matrix, xy [][2]float64, last []int32) (*Analysis, error) {
	if xy != nil && len(xy) != m.n {
		return nil, fmt.Errorf("sparse: want %d plan coordinates, one for each node, found %d", m.n, len(xy))
	}
	lastAt := slices.Repeat([]int32{-1}, m.n)
	for i, v := range last {
		if v < 0 || int(v) >= m.n {
			return nil, fmt.Errorf("sparse: last node %d: want 0..%d", v, m.n-1)
		}
		if lastAt[v] >= 0 {
			return nil, fmt.Errorf("sparse: last node %d is named twice", v)
		}
		lastAt[v] = int32(i)
	}
	g := dissection.NewGraph(m.n, m.ptr, m.col)
	end := g.Around(last)
	order, rim := g.Order(xy, end)

	a := &Analysis{n: m.n, ptr: m.ptr, col: m.col, last: slices.Clone(last), lastAt: lastAt, end: m.n - len(end)}
	a.plan(etree.Supernodes(g, order, rim))
	if err := a.measure(); err != nil {
		return nil, err
	}
	a.placeBlocks()
	return a, nil
}

// plan makes fronts of merged supernodes.
func (a *Analysis) plan(nodes []etree.Supernode, at []int32) {
	for _, sn := range nodes {
		k, r := Block*float64(sn.End-sn.First), Block*float64(len(sn.Rows))
		a.sizes.nnz += k*(k+1)/2 + k*r
	}
	root := -1
	if len(a.last) > 0 {
		root = len(nodes) - 1
	}
	holder := etree.Merge(nodes, root, Block)
	seq, parent := mergedTree(nodes, holder)
	a.setOrder(at, nodes, holder, seq)
	a.setFronts(at, nodes, seq, parent)
	a.tail = sort.Search(len(a.fronts), func(k int) bool { return int(a.fronts[k].first) >= a.end })
}

// mergedTree returns the remaining supernodes in postorder and, for each
// supernode, the place in that order of the parent of its holder (-1: none).
func mergedTree(nodes []etree.Supernode, holder []int32) (seq, parent []int32) {
	var ids []int32
	rank := make([]int32, len(nodes))
	for s := range nodes {
		if holder[s] == int32(s) {
			rank[s] = int32(len(ids))
			ids = append(ids, int32(s))
		}
	}
	up := make([]int32, len(ids))
	for k, s := range ids {
		up[k] = -1
		if p := nodes[s].Parent; p >= 0 {
			up[k] = rank[holder[p]]
		}
	}
	list := etree.Postorder(up)
	newRank := make([]int32, len(ids))
	seq, parent = make([]int32, len(ids)), make([]int32, len(ids))
	for k, i := range list {
		newRank[i] = int32(k)
		seq[k] = ids[i]
	}
	for k, i := range list {
		parent[k] = -1
		if up[i] >= 0 {
			parent[k] = newRank[up[i]]
		}
	}
	return seq, parent
}

// setOrder numbers the columns front by front; inside a front the merged
// supernodes keep their order.
func (a *Analysis) setOrder(at []int32, nodes []etree.Supernode, holder, seq []int32) {
	members := make([][]int32, len(nodes))
	for i := range nodes {
		members[holder[i]] = append(members[holder[i]], int32(i))
	}
	a.order = make([]int32, 0, a.n)
	a.fronts = make([]front, len(seq))
	for k, h := range seq {
		f := &a.fronts[k]
		f.first = int32(len(a.order))
		for _, i := range members[h] {
			a.order = append(a.order, at[nodes[i].First:nodes[i].End]...)
		}
		f.pivots = int32(len(a.order)) - f.first
	}
	a.place = make([]int32, a.n)
	for k, v := range a.order {
		a.place[v] = int32(k)
	}
}

// setFronts fills in rows, tree and sizes of the fronts.
func (a *Analysis) setFronts(at []int32, nodes []etree.Supernode, seq, parent []int32) {
	for k, h := range seq {
		f := &a.fronts[k]
		f.rows = make([]int32, len(nodes[h].Rows))
		for i, p := range nodes[h].Rows {
			f.rows[i] = a.place[at[p]]
		}
		slices.Sort(f.rows)
		f.parent = parent[k]
		f.at = a.sizes.factor
		f.cost = etree.Cost(float64(f.k()), float64(f.r()))
		if len(f.children) == 0 {
			f.subtree = int32(k)
		} else {
			f.subtree = a.fronts[f.children[0]].subtree
		}
		a.sizes.factor += f.size()
		if f.parent >= 0 {
			up := &a.fronts[f.parent]
			up.children = append(up.children, int32(k))
		}
	}
	for k := range a.fronts {
		if p := a.fronts[k].parent; p >= 0 {
			a.fronts[k].relate(&a.fronts[p])
		}
	}
}

// relate finds the rows of f in its parent.
func (f *front) relate(up *front) {
	f.rel = make([]int32, len(f.rows))
	at := 0
	for i, p := range f.rows {
		if p < up.first+up.pivots {
			f.rel[i] = p - up.first
			continue
		}
		for up.rows[at] < p {
			at++
		}
		f.rel[i] = up.pivots + int32(at)
	}
}

// measure sums the sizes and makes the table of triangle rows. A front must not
// be larger than its 32 bit indices reach.
func (a *Analysis) measure() error {
	z := &a.sizes
	for i := range a.fronts {
		f := &a.fronts[i]
		k, r := float64(f.k()), float64(f.r())
		if most := max(triLen(f.k()), triLen(f.r()), rectLen(f.r(), f.k())); most > math.MaxInt32 {
			return fmt.Errorf("sparse: front %d of order %d holds %d values, want at most %d: the mesh has no good cuts",
				i, f.k()+f.r(), most, math.MaxInt32)
		}
		z.pivots = max(z.pivots, int(f.pivots))
		z.rows = max(z.rows, len(f.rows))
		z.flops += k*k*k/3 + k*k*r + k*r*r
	}
	a.triRow = triRows(max(z.pivots, z.rows))
	return nil
}

// placeBlocks assigns every block of the matrix to the front that eliminates its
// earlier node.
func (a *Analysis) placeBlocks() {
	owner := make([]int32, a.n) // by place
	for k := range a.fronts {
		f := &a.fronts[k]
		for p := f.first; p < f.first+f.pivots; p++ {
			owner[p] = int32(k)
		}
	}
	for i := range int32(a.n) {
		for _, j := range a.col[a.ptr[i]:a.ptr[i+1]] {
			a.fronts[owner[min(a.place[i], a.place[j])]].entryN++
		}
	}
	total := 0
	for k := range a.fronts {
		a.fronts[k].entry = total
		total += a.fronts[k].entryN
		a.fronts[k].entryN = 0
	}
	a.entries = make([]entry, total)
	for i := range int32(a.n) {
		for b := a.ptr[i]; b < a.ptr[i+1]; b++ {
			pi, pj := a.place[i], a.place[a.col[b]]
			f := &a.fronts[owner[min(pi, pj)]]
			a.entries[f.entry+f.entryN] = entry{block: b, row: max(pi, pj), col: min(pi, pj), flipped: pi < pj}
			f.entryN++
		}
	}
	a.enterFronts(owner)
}

// enterFronts turns the places of the entries into rows and pivots of their fronts.
// It uses the memory of at, one for each place.
func (a *Analysis) enterFronts(at []int32) {
	for k := range a.fronts {
		f := &a.fronts[k]
		for p := range f.pivots {
			at[f.first+p] = p
		}
		for i, p := range f.rows {
			at[p] = f.pivots + int32(i)
		}
		for i := range a.entries[f.entry : f.entry+f.entryN] {
			e := &a.entries[f.entry+i]
			e.row, e.col = at[e.row], at[e.col]
		}
	}
}

// Stats describes a factorisation.
type Stats struct {
	Nodes    int     // nodes of 6 degrees of freedom
	Fronts   int     // dense fronts
	MaxFront int     // order of the largest front, degrees of freedom
	NNZ      float64 // nonzeros of L, lower triangle with diagonal
	Stored   float64 // values stored for L, with the zeros of merged fronts and the padding
	Flops    float64 // multiplications and additions
}

// Stats returns the sizes of the factorisation planned.
func (a *Analysis) Stats() Stats {
	s := Stats{Nodes: a.n, Fronts: len(a.fronts), NNZ: a.sizes.nnz, Stored: float64(a.sizes.factor), Flops: a.sizes.flops}
	for i := range a.fronts {
		s.MaxFront = max(s.MaxFront, a.fronts[i].k()+a.fronts[i].r())
	}
	return s
}
