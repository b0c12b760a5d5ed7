package sparse

import (
	"cmp"
	"fmt"
	"slices"
)

// Column is a sparse vector: Vals[i] at degree of freedom Dofs[i] (6 node + 0..5).
// Repeated degrees of freedom add up.
type Column struct {
	Dofs []int32
	Vals []float64
}

// Compliance returns the dense matrix C, row-major and exactly symmetric, with
// C[i][j] = cols[i]ᵀ K⁻¹ cols[j]. The columns are zero outside the `last` nodes of
// the analysis: these were eliminated last, in one front with factor L, and so
// cᵢᵀ K⁻¹ cⱼ = (L⁻¹ cᵢ)ᵀ (L⁻¹ cⱼ) without the rest of the mesh. It panics if a column
// touches another node or its slices differ in length.
func (f *Factor) Compliance(cols []Column) []float64 {
	n := len(cols)
	c := make([]float64, n*n)
	if n == 0 {
		return c
	}
	u, by := f.products(cols)
	for a := range n {
		for b := range a + 1 {
			v := -u[triOff(a/panelRows)+a%panelRows+panelRows*b]
			c[by[a]*n+by[b]], c[by[b]*n+by[a]] = v, v
		}
	}
	return c
}

// products is -C as a lower triangle of the columns in the order by, which is that of
// the first node of the root front that each touches.
func (f *Factor) products(cols []Column) (u []float64, by []int) {
	if f.a.last == 0 {
		panic("sparse: Compliance: the analysis has no last nodes")
	}
	n, fd := len(cols), f.data(int32(len(f.a.fronts)-1))
	first := make([]int, n) // first node of the front that each column touches
	for i, col := range cols {
		first[i] = f.firstNode(&fd, i, col)
	}
	by = make([]int, n) // columns by first node: leading zeros are skipped
	for i := range by {
		by[i] = i
	}
	slices.SortStableFunc(by, func(a, b int) int { return cmp.Compare(first[a], first[b]) })

	nodes := int(fd.pivots)
	units := (n + Block - 1) / Block // the columns in sixes, like nodes
	rows := make([]float64, rectLen(Block*units, fd.k()))
	for at, i := range by {
		f.scatter(&fd, rows[at/panelRows*panelRows*fd.k()+at%panelRows:], cols[i])
	}
	w := &dense{kernels: f.kern, team: newTeam(f.workers), triRow: f.a.triRow, signs: f.signs.from(fd.first)}
	w.team.slots <- struct{}{}
	start := func(p int) int { return first[by[min(panelRows*p, n-1)]] }
	w.rows(rows, fd.d, f.tri[blockLen*int(fd.first):], nodes, start)
	u = make([]float64, triLen(Block*units))
	w.schur(product{u: u, s: rows, count: units, nodes: nodes, start: start})
	return u, by
}

// firstNode checks column i and returns the first node of the front it touches.
func (f *Factor) firstNode(fd *frontData, i int, col Column) int {
	if len(col.Dofs) != len(col.Vals) {
		panic(fmt.Sprintf("sparse: Compliance: column %d has %d places and %d values", i, len(col.Dofs), len(col.Vals)))
	}
	first := int(fd.pivots) - 1
	for _, d := range col.Dofs {
		at := int(f.a.place[d/Block] - fd.first)
		if at < 0 {
			panic(fmt.Sprintf("sparse: Compliance: column %d touches node %d, which is not one of the last", i, d/Block))
		}
		first = min(first, at)
	}
	return first
}

// scatter adds a column to a row of a panel.
func (f *Factor) scatter(fd *frontData, row []float64, col Column) {
	for k, d := range col.Dofs {
		at := Block*int(f.a.place[d/Block]-fd.first) + int(d%Block)
		row[panelRows*at] += col.Vals[k]
	}
}
