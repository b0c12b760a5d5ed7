package surface

import "archload/fem/sparse"

// blockWide and blockHigh are the splines of one block of the normal equations, along x and
// along y: six, which is what package sparse has at each node of its graph. Of the four ways to
// arrange six this leaves the least work: for an arch of usual size 3·10⁸ operations, 3 by 2
// 4·10⁸, six in a row 6 to 7·10⁸.
const (
	blockWide = 2
	blockHigh = sparse.Block / blockWide
)

// splineReach is the greatest distance of two splines that overlap, along x or y.
const splineReach = 3

// halfReach is how many of the splines that overlap one come at or after it: in its own row up
// to three further on, in each of the next three rows up to three before it and after.
const halfReach = 1 + splineReach + splineReach*(2*splineReach+1)

// halfAt returns the place among those of the spline dm further on along x and dn along y;
// -1: it comes before, or does not overlap.
func halfAt(dm, dn int) int {
	switch {
	case dm < -splineReach || dm > splineReach || dn < 0 || dn > splineReach || dn == 0 && dm < 0:
		return -1
	case dn == 0:
		return dm
	}
	return 1 + splineReach + (dn-1)*(2*splineReach+1) + dm + splineReach
}

// halves are the places of the later splines of a cell's sixteen among those that overlap an
// earlier one.
func halves() (at [16][16]int) {
	for a := range 16 {
		for b := a; b < 16; b++ {
			at[a][b] = halfAt(b%4-a%4, b/4-a/4)
		}
	}
	return at
}

// blocks puts the splines of a grid into blocks of six and knows the order in which these are
// eliminated. Blocks that stick out of the grid are filled up with unknowns of their own.
type blocks struct {
	across, up int   // blocks along x and y
	unknown    []int // of each spline, by its index in the grid
	pattern    *sparse.Matrix
	analysis   *sparse.Analysis
	tables     tables
}

func newBlocks(g grid) (*blocks, error) {
	wide, high := g.nx+3, g.ny+3
	b := &blocks{across: (wide + blockWide - 1) / blockWide, up: (high + blockHigh - 1) / blockHigh, unknown: make([]int, g.count()), tables: newTables()}
	for j := range high {
		for i := range wide {
			at := j/blockHigh*b.across + i/blockWide
			b.unknown[g.index(i, j)] = sparse.Block*at + j%blockHigh*blockWide + i%blockWide
		}
	}
	b.pattern = sparse.NewMatrix(b.across*b.up, b.pairs())
	var err error
	b.analysis, err = sparse.Analyse(b.pattern, b.places(), nil)
	return b, err
}

// total is the number of unknowns, those that fill up included.
func (b *blocks) total() int { return sparse.Block * b.across * b.up }

// pairs lists the blocks that hold splines which overlap, two by two.
func (b *blocks) pairs() (list [][]int32) {
	for j := range b.up {
		for i := range b.across {
			for dj := 0; dj <= blocksBeyond && j+dj < b.up; dj++ {
				for k := max(i-blocksAside, 0); k <= min(i+blocksAside, b.across-1); k++ {
					if dj > 0 || k > i {
						list = append(list, []int32{int32(j*b.across + i), int32((j+dj)*b.across + k)})
					}
				}
			}
		}
	}
	return list
}

// places are the blocks' places on the plan, in splines.
func (b *blocks) places() [][2]float64 {
	var list [][2]float64
	for j := range b.up {
		for i := range b.across {
			list = append(list, [2]float64{float64(blockWide * i), float64(blockHigh * j)})
		}
	}
	return list
}

// entry says where an entry of a block stands among those of a half: of the row's spline or of
// the column's.
type entry struct {
	col bool
	at  int // -1: the two do not overlap
}

// entries are those of a block whose column lies di blocks along x and dj along y from its row.
func entries(di, dj int) (list [sparse.Block * sparse.Block]entry) {
	for r := range sparse.Block {
		for c := range sparse.Block {
			dm := blockWide*di + c%blockWide - r%blockWide
			dn := blockHigh*dj + c/blockWide - r/blockWide
			e := entry{at: halfAt(dm, dn)}
			if e.at < 0 {
				e = entry{col: true, at: halfAt(-dm, -dn)}
			}
			list[sparse.Block*r+c] = e
		}
	}
	return list
}

// fill makes of m, a matrix of the blocks, the sum of data and lambda times rough, each
// halfReach values for each unknown. What only fills up has a diagonal of one.
func (b *blocks) fill(m *sparse.Matrix, data, rough []float64, lambda float64) {
	m.SetBlocks(workers(), func(i, j int32, values []float64) {
		di, dj := int(j)%b.across-int(i)%b.across, int(j)/b.across-int(i)/b.across
		for k, e := range &b.tables[di+blocksAside][-dj] {
			if e.at < 0 {
				continue
			}
			u := sparse.Block*int(i) + k/sparse.Block
			if e.col {
				u = sparse.Block*int(j) + k%sparse.Block
			}
			values[k] = data[halfReach*u+e.at] + lambda*rough[halfReach*u+e.at]
		}
	})
}

// blocksAside and blocksBeyond are the greatest distance of two blocks with splines that overlap.
const (
	blocksAside  = (blockWide - 1 + splineReach) / blockWide
	blocksBeyond = (blockHigh - 1 + splineReach) / blockHigh
)

// tables are the entries of a block whose column lies up to blocksAside blocks along x from its
// row, on either side, and 0 to blocksBeyond blocks before it along y.
type tables [2*blocksAside + 1][blocksBeyond + 1][sparse.Block * sparse.Block]entry

func newTables() (t tables) {
	for di := range t {
		for dj := range t[di] {
			t[di][dj] = entries(di-blocksAside, -dj)
		}
	}
	return t
}
