package sparse

import (
	"cmp"
	"slices"

	"archload/fem/sparse/team"
)

// Reach is the part of K⁻¹ between the last nodes of an analysis. With it the
// compliance of any columns on them is two thin products, without the factor:
//
//	C = V G Vᵀ,   V the columns as rows, G = K⁻¹ on the last nodes                   (1)
//
// It costs about as much as the compliance of as many columns as the last nodes have
// degrees of freedom, and 8 bytes for the square of these.
type Reach struct {
	f   *Factor
	g   []float64 // in panels of eight rows, every one as wide as the last nodes have freedoms
	off []int32   // where pairs of rows begin in g
}

// Reach computes it. It panics if the analysis has no last nodes.
func (f *Factor) Reach() *Reach {
	x := &Reach{f: f}
	k := Block * len(f.a.last)
	cols, one := make([]Column, k), []float64{1}
	for i := range cols {
		node := f.a.last[i/Block]
		cols[i] = Column{Dofs: []int32{Block*node + int32(i%Block)}, Vals: one}
	}
	r := f.newReduction(cols)
	defer r.end()
	u, by := r.products(cols), r.by
	x.g = make([]float64, rectLen(k, k))
	for a, i := range by {
		for b, j := range by[:a+1] {
			v := -u[triOff(a/panelRows)+a%panelRows+panelRows*b]
			x.g[i/panelRows*panelRows*k+i%panelRows+panelRows*j] = v
			x.g[j/panelRows*panelRows*k+j%panelRows+panelRows*i] = v
		}
	}
	x.off = rectRows(nil, len(f.a.last), k)
	return x
}

// reachRows is how many columns are taken together: whole panels and whole nodes.
const reachRows = 24

// reachGroup is some columns, as rows in panels, zero outside the nodes lo..hi.
type reachGroup struct {
	by     []int // which columns
	lo, hi int
	v      []float64
	off    []int32 // where pairs of rows begin in v
	panels [reachRows / panelRows]runsOfNodes
	sixes  [reachRows / Block]runsOfNodes
}

// runsOfNodes are the stretches of nodes, counted from the first of a group, on which some of its rows have values.
type runsOfNodes [][2]int

// with are the runs with one node more, which comes after all of them. A gap of one node is not worth a run.
func (r runsOfNodes) with(node int) runsOfNodes {
	if n := len(r); n > 0 && node <= r[n-1][1]+1 {
		r[n-1][1] = node + 1
		return r
	}
	return append(r, [2]int{node, node + 1})
}

// Compliance is Factor.Compliance from the flexibility of the last nodes; the two agree
// to rounding. It panics as that does.
func (x *Reach) Compliance(cols []Column) []float64 {
	n := len(cols)
	c := make([]float64, n*n)
	list := x.groups(cols)
	work := &team.Pool{}
	team.New(x.f.workers).Each(len(list), func(g int) {
		t := work.Get(Block * len(x.f.a.last) * reachRows)
		defer work.Put(t)
		x.times(t, &list[g])
		for h := g; h < len(list); h++ {
			x.products(c, n, t, &list[g], &list[h])
		}
	})
	return c
}

// groups parts the columns into groups that touch nodes close together.
func (x *Reach) groups(cols []Column) (list []reachGroup) {
	span, by := make([][2]int, len(cols)), make([]int, len(cols))
	for i, col := range cols {
		x.f.firstPlace(i, col)
		span[i] = [2]int{len(x.f.a.last) - 1, 0}
		for _, d := range col.Dofs {
			at := int(x.f.a.lastAt[d/Block])
			span[i] = [2]int{min(span[i][0], at), max(span[i][1], at+1)}
		}
		by[i] = i
	}
	slices.SortStableFunc(by, func(a, b int) int { return cmp.Compare(span[a][0], span[b][0]) })
	for some := range slices.Chunk(by, reachRows) {
		g := reachGroup{by: some, lo: span[some[0]][0]}
		for _, i := range some {
			g.hi = max(g.hi, span[i][1])
		}
		g.hi = max(g.hi, g.lo+1)
		width := Block * (g.hi - g.lo)
		g.v, g.off = make([]float64, reachRows*width), rectRows(nil, reachRows/Block, width)
		for at, i := range some {
			row := g.v[at/panelRows*panelRows*width+at%panelRows:]
			for k, d := range cols[i].Dofs {
				row[panelRows*(Block*(int(x.f.a.lastAt[d/Block])-g.lo)+int(d%Block))] += cols[i].Vals[k]
			}
		}
		g.findRuns(width)
		list = append(list, g)
	}
	return list
}

// findRuns finds where the rows have values: a column touches a few nodes of its group alone.
func (g *reachGroup) findRuns(width int) {
	for node := range g.hi - g.lo {
		for row := range reachRows {
			at := g.v[row/panelRows*panelRows*width+row%panelRows+tileLen*node:]
			for d := range Block {
				if at[panelRows*d] != 0 {
					g.panels[row/panelRows] = g.panels[row/panelRows].with(node)
					g.sixes[row/Block] = g.sixes[row/Block].with(node)
					break
				}
			}
		}
	}
}

// times sets t to -V G of a group from its first node on, in panels: groups after it touch
// none before.
func (x *Reach) times(t []float64, g *reachGroup) {
	nodes := len(x.f.a.last) - g.lo
	width := Block * (g.hi - g.lo)
	for p, runs := range g.panels {
		to, v := t[tileLen*nodes*p:][:tileLen*nodes], g.v[panelRows*width*p:]
		clear(to)
		for _, r := range runs {
			x.f.kern.Gemm(to, v[tileLen*r[0]:tileLen*r[1]], x.g[tileLen*(g.lo+r[0]):], x.off[3*g.lo:])
		}
	}
}

// products sets the compliance between the columns of two groups, t being -V G of the
// first.
func (x *Reach) products(c []float64, n int, t []float64, g, h *reachGroup) {
	nodes := len(x.f.a.last) - g.lo
	var tile [reachRows * panelRows]float64
	for p := range reachRows / panelRows {
		clear(tile[:])
		for six, runs := range h.sixes {
			for _, r := range runs {
				x.f.kern.Gemm(tile[tileLen*six:], t[tileLen*(nodes*p+h.lo+r[0]-g.lo):][:tileLen*(r[1]-r[0])], h.v[tileLen*r[0]:], h.off[3*six:3*six+3])
			}
		}
		g.keep(c, n, p, h, &tile)
	}
}

// keep writes the compliance between the columns of a group's panel p and those of another group, or its own up to the
// diagonal, and its mirror image.
func (g *reachGroup) keep(c []float64, n, p int, h *reachGroup, tile *[reachRows * panelRows]float64) {
	rows := g.by[min(panelRows*p, len(g.by)):min(panelRows*(p+1), len(g.by))]
	for j, b := range h.by {
		first := 0
		if g == h {
			first = max(0, j-panelRows*p)
		}
		v, row := (*[panelRows]float64)(tile[panelRows*j:]), c[b*n:(b+1)*n]
		for i := first; i < len(rows); i++ {
			row[rows[i]] = v[i]
		}
	}
	for i, a := range rows {
		row, by := c[a*n:(a+1)*n], h.by
		if g == h {
			by = by[:min(panelRows*p+i+1, len(by))]
		}
		for j, b := range by {
			row[b] = tile[panelRows*j+i]
		}
	}
}
